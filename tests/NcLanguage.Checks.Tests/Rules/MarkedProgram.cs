using System.Text;
using NcLanguage.Checks.Analysis;
using NcLanguage.Machine.Loading;
using NcLanguage.Machine.Profiles;
using NcLanguage.Machine.Setups;
using NcLanguage.Syntax.Text;

namespace NcLanguage.Checks.Tests.Rules;

/// <summary>A program with expected findings marked in it: under a block a line that begins with ~ and has ^ under the
/// place, optionally followed by the finding's name.</summary>
public sealed record MarkedProgram(string Text, IReadOnlyList<ExpectedFinding> Expected)
{
    public static MarkedProgram Parse(string marked, string? name = null)
    {
        var text = new StringBuilder();
        var expected = new List<ExpectedFinding>();
        var line = -1;
        foreach (var row in marked.ReplaceLineEndings("\n").Split('\n'))
        {
            if (!row.StartsWith('~'))
            {
                line++;
                text.Append(line == 0 ? "" : "\n").Append(row);
                continue;
            }
            // The mark stands in the first column's stead: a mark for column 0 is written with ^ in place of ~ after it.
            var start = row.IndexOf('^');
            var end = row.LastIndexOf('^') + 1;
            var label = row[end..].Trim();
            // A finding that begins in the first column is marked from the second on.
            expected.Add(new ExpectedFinding(label.Length > 0 ? label : name ?? "", line, start == 1 ? 0 : start, end));
        }
        return new MarkedProgram(text.ToString(), expected);
    }
}

public sealed record ExpectedFinding(string Name, int Line, int StartColumn, int EndColumn);

/// <summary>Runs a program as the tests of rules do.</summary>
public static class Examples
{
    public static ProgramAnalysis Analyse(string text, RuleInfo info)
    {
        var machine = MachineProfile.IsoMill with { IsChosen = true };
        if (info.Machine is { } file)
        {
            var read = MachineFile.Read("example.machine.json", Encoding.UTF8.GetBytes(file), MachineProfile.FindBuiltIn);
            Assert.Empty(read.Problems);
            machine = read.Machine with { IsChosen = true };
        }
        foreach (var reading in (info.Readings ?? "").Split(' ', StringSplitOptions.RemoveEmptyEntries))
        {
            machine = ReadingOption.Apply(machine, reading, out var error);
            Assert.Null(error);
        }
        return ProgramAnalysis.Create(SourceText.From(text), SetupOf(info), machine, new AnalysisOptions(Portable: info.Portable, MentionMissingSetup: info.MentionMissingSetup, MostBlocks: AnalysisOptions.MostBlocksWhileTyping));
    }

    static Setup SetupOf(RuleInfo info)
    {
        if (info.Setup is not { } json)
            return Setup.None;
        var read = SetupFile.Read("example.setup.json", Encoding.UTF8.GetBytes(json));
        Assert.Empty(read.Problems);
        return read.Setup;
    }

    public static string Show(ProgramAnalysis analysis) =>
        string.Join("\n", analysis.Findings.Select(f =>
            $"{f.Line + 1}:{f.StartColumn}-{f.EndColumn} {f.Name}: {f.Message}   | {analysis.Text.LineText(f.Line)}"));
}
