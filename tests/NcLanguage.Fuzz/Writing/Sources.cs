using System.Collections.Immutable;
using System.Runtime.CompilerServices;
using System.Text;
using NcLanguage.Checks;
using NcLanguage.Fuzz.Cases;

namespace NcLanguage.Fuzz.Writing;

/// <summary>What cases are made from: the programs of tests/corpus with the files beside them, and the examples of all rules.</summary>
static class Sources
{
    static readonly byte[] CorpusMachine = File.ReadAllBytes(Path.Combine(Corpus(), "nc.machine.json"));

    /// <summary>Sound programs with their setup and machine.</summary>
    public static ImmutableArray<FuzzCase> Sound { get; } = [.. Directory.GetDirectories(Corpus()).Order(StringComparer.Ordinal).Select(OfFolder)];

    /// <summary>Programs with one fault each.</summary>
    public static ImmutableArray<FuzzCase> Faulty { get; } = [.. RuleList.All.Select(OfRule)];

    /// <summary>Every line that occurs in one of them, each once.</summary>
    public static ImmutableArray<string> Lines { get; } =
        [.. Sound.Concat(Faulty).SelectMany(source => Encoding.Latin1.GetString(source.Program).Split('\n')).Distinct(StringComparer.Ordinal)];

    static FuzzCase OfFolder(string folder)
    {
        var name = Path.GetFileName(folder);
        var called = Directory.GetFiles(folder, "O*.nc").FirstOrDefault();
        return new FuzzCase
        {
            Program = File.ReadAllBytes(Path.Combine(folder, name + ".nc")),
            Setup = File.ReadAllBytes(Path.Combine(folder, name + ".setup.json")),
            Machine = CorpusMachine,
            Called = called is null ? null : File.ReadAllBytes(called),
        };
    }

    static FuzzCase OfRule(Rule rule) => new()
    {
        // Lines that begin with ~ mark the place of the finding.
        Program = Encoding.UTF8.GetBytes(string.Join('\n', rule.Info.Example.ReplaceLineEndings("\n").Split('\n').Where(line => !line.StartsWith('~')))),
        Setup = rule.Info.Setup is { } setup ? Encoding.UTF8.GetBytes(setup) : null,
        Machine = rule.Info.Machine is { } machine ? Encoding.UTF8.GetBytes(machine) : null,
        Readings = [.. (rule.Info.Readings ?? "").Split(' ', StringSplitOptions.RemoveEmptyEntries)],
        IsPortable = rule.Info.Portable,
    };

    static string Corpus([CallerFilePath] string here = "") => Path.GetFullPath(Path.Combine(Path.GetDirectoryName(here)!, "..", "..", "corpus"));
}
