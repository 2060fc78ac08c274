using System.Collections.Immutable;
using NcLanguage.Control.Execution;
using NcLanguage.Control.Flow;
using NcLanguage.Syntax.Text;

namespace NcLanguage.Checks.Analysis;

/// <summary>What can be told at once of an edited program whose run has to be followed anew because it leaves the order of the text: the lines that are new, as they meet the state that was known
/// there, and all else as it was told before, at its new line.</summary>
static class Glance
{
    /// <summary>New lines that are run: what an editor has in view.</summary>
    const int MostLines = 300;

    /// <param name="before">The program as it was followed last.</param>
    /// <param name="toldText">The text that <paramref name="told"/> is about: that of before or a later one.</param>
    /// <param name="told">What was told last.</param>
    /// <param name="text">The text as it is now.</param>
    public static ImmutableArray<Finding> At(ProgramAnalysis before, SourceText toldText, ImmutableArray<Finding> told, SourceText text)
    {
        var (first, end) = new LineMap(before.Text, text).Changed;
        var lines = new LineMap(toldText, text);
        var findings = new List<Finding>();
        foreach (var finding in told)
            // The second place of a finding is looked up in the run, which is still to come.
            if (lines.Move(finding) is { } moved && (moved.Line < first || moved.Line >= end))
                findings.Add(moved with { Concerns = default, ConcernsMessage = "" });
        if (!HoldsAllow(text, Math.Max(0, first - 1), Math.Min(end, first + MostLines)))
            Run(before, text, first, Math.Min(end, first + MostLines), findings);
        findings.Sort(FindingAssembly.ByPlace);
        return [.. findings];
    }

    /// <summary>Whether a comment there may silence what is found: which, the whole look tells.</summary>
    static bool HoldsAllow(SourceText text, int first, int end)
    {
        for (var line = first; line < end; line++)
            foreach (var _ in AllowComments.In(text.BlockAt(line)))
                return true;
        return false;
    }

    static void Run(ProgramAnalysis before, SourceText text, int first, int end, List<Finding> findings)
    {
        var run = before.Main;
        var state = first < run.Text.LineCount ? run.StateBefore(first) : run.Exit;
        var line = first;
        var scan = new PartScan(run.Job, before.Options.RulesInForce.Step) { OnFinding = finding => findings.Add(PlaceNames.Told(finding, run.PlainCoordinates) with { Line = line, Concerns = default, ConcernsMessage = "" }) };
        var ahead = new TextAhead(text);
        scan.Step.Ahead = ahead;
        scan.Begin(state, MostLines);
        for (; line < end; line++)
        {
            var block = text.BlockAt(line);
            if (block.Tokens.Length == 0)
                continue;
            ahead.Line = line;
            run.Job.Executor.Run(block, ref state, scan.Step);
            scan.Note(block, scan.Step);
            if (scan.Step.Transfer.Kind != TransferKind.None)
                return;
        }
    }
}
