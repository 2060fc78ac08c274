using NcLanguage.Checks.Analysis;
using NcLanguage.Control.State;
using NcLanguage.Machine.Setups;

namespace NcLanguage.Checks.Rules;

/// <summary>Fixes of rules that find the spindle turning the wrong way, or turning at all.</summary>
static class SpindleTurn
{
    /// <summary>Writes M3 for the M4 that has set the spindle going for a block, or M4 for the M3; null where another code did.</summary>
    /// <param name="line">The block's line, from 0.</param>
    /// <param name="toClockwise">Whether the spindle is to turn clockwise.</param>
    public static Fix? Fix(ProgramAnalysis analysis, int line, bool toClockwise)
    {
        var setter = analysis.Main.LastSetter(Slot.Spindle, line);
        if (setter < 0)
            return null;
        var block = analysis.Main.BlockAt(setter);
        var (old, word) = toClockwise ? (4, "M3") : (3, "M4");
        return WordEdits.IndexOfCode(block, 'M', old) is >= 0 and var token
            ? new Fix($"Turn the spindle the other way ({word})", FixSafety.Choice, [WordEdits.Replace(setter, block, token, word)])
            : null;
    }

    /// <summary>The tool that works with the spindle standing and that a step is the first to feed while it turns; null where there is none.</summary>
    public static Tool? StandingToolFed(in StepContext step) =>
        step.HasHappened(Happened.UsedTurning) && step.Job.Setup.FindTool(step.Step.After.Tool) is { Stands: true } tool ? tool : null;

    /// <summary>Writes M5 as a block of its own before a block; none where the block itself switches the spindle on, which no block before it stops.</summary>
    /// <param name="line">The block's line, from 0.</param>
    public static IEnumerable<Fix> StopBefore(ProgramAnalysis analysis, int line)
    {
        ArgumentNullException.ThrowIfNull(analysis);
        return (analysis.Main.StepAt(line).Sets & Slot.Spindle) != 0 ? []
            : [new Fix("Stop the spindle with M5 in the block before", FixSafety.Choice, [Inserts.BlockBefore(analysis, line, "M5")])];
    }
}
