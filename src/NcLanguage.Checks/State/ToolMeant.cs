using NcLanguage.Checks.Analysis;
using NcLanguage.Control.State;
using NcLanguage.Machine.Setups;

namespace NcLanguage.Checks.Rules;

/// <summary>Whether it is the T that is wrong where a tool gets another one's offsets: two words against one.</summary>
static class ToolMeant
{
    /// <summary>The tool of the setup's list whose length and whose radius offset are both taken between a tool change and the next; null where that is not so, and where the run leaves the order of the text.</summary>
    /// <param name="line">A block behind the change, whose H or D is another tool's.</param>
    public static Tool? At(int line, ProgramAnalysis analysis)
    {
        var run = analysis.Main;
        var change = run.LastSetterBefore(Slot.Tool, line);
        if (run.Flow is not null || change < 0)
            return null;
        var end = run.FirstSetter(Slot.Tool, change) is >= 0 and var next ? next : int.MaxValue;
        var (byLength, byRadius) = ((Tool?)null, (Tool?)null);
        // A length of its own that the tool has been given speaks for the T.
        if (run.LastSetterBefore(Slot.LengthOffset, line) is var given && given >= change && run.StepAt(given).After.H == LengthOffsets.Of(run.StepAt(line).After.Tool, analysis.Setup))
            return null;
        foreach (var finding in analysis.Findings)
        {
            if (finding.Line <= change || finding.Line >= end)
                continue;
            if (finding.Rule is LengthOffsetMismatch)
                byLength = analysis.Setup.FindLengthOffset(run.StepAt(finding.Line).After.H);
            else if (finding.Rule is RadiusOffsetMismatch)
                byRadius = analysis.Setup.FindRadiusOffset(run.StepAt(finding.Line).After.D);
        }
        return byLength is not null && ReferenceEquals(byLength, byRadius) ? byLength : null;
    }

    /// <summary>Calls that tool at the change; nothing where its T does not stand there.</summary>
    public static IEnumerable<Fix> Fixes(Tool meant, int line, ProgramAnalysis analysis)
    {
        var change = analysis.Main.LastSetterBefore(Slot.Tool, line);
        var block = analysis.Main.BlockAt(change);
        var word = "T" + Say.Number(meant.Number);
        if (block.IndexOf('T') is var token and >= 0)
            yield return new Fix($"Write {word} in line {change + 1}", FixSafety.Choice, [WordEdits.Replace(change, block, token, word)]);
    }
}
