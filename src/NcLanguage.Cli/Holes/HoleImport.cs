using System.Text;
using NcLanguage.Cli.Common;
using NcLanguage.Cli.Files;
using NcLanguage.Machine.Loading;

namespace NcLanguage.Cli.Holes;

/// <summary><c>holes --import FILE.csv</c>: the drawing's holes from a table of values, printed as the setup's "holes" or written into a setup file.</summary>
static class HoleImport
{
    /// <exception cref="CannotRunException">The table or the setup cannot be read or written, or has a mistake; nothing is written then.</exception>
    public static int Run(string table, string? setup, bool isInch)
    {
        var (holes, mistakes) = HoleListFile.Read(new UTF8Encoding(false).GetString(ProgramFile.Read(table).Text.ToBytes()), isInch);
        if (mistakes.Length > 0)
        {
            foreach (var (line, message) in mistakes)
                Console.Error.WriteLine($"nclanguage: {table}, line {line}: {message}");
            throw new CannotRunException($"{table} has {(mistakes.Length == 1 ? "a mistake" : $"{mistakes.Length} mistakes")}, so nothing is written");
        }
        if (setup is null)
            Console.Out.WriteLine($"  \"holes\": {SetupHoles.Text(holes, isInch, "\n")},");
        else
            Write(setup, holes);
        return ExitCode.Clean;
    }

    static void Write(string setup, IReadOnlyCollection<Machine.Setups.DrawingHole> holes)
    {
        var exists = File.Exists(setup);
        var old = exists ? ProgramFile.Read(setup).Text.ToBytes() : Encoding.UTF8.GetBytes("{\n  \"units\": \"mm\"\n}\n");
        var merged = SetupHoles.Merge(old, holes, out var error) ?? throw new CannotRunException($"{setup} cannot take the holes: {error}");
        if (exists)
            WrittenFile.Replace(setup, merged);
        else
            WrittenFile.Create(setup, merged);
        Console.Error.WriteLine($"{holes.Count} holes written to {setup}");
    }
}
