using NcLanguage.Checks.Analysis;
using NcLanguage.Control.Moves;
using NcLanguage.Machine.Profiles;

namespace NcLanguage.Editing;

/// <summary>Where a hole would be on a control that reads positions inside cycles the other way.</summary>
static class OtherReading
{
    /// <summary>The first hole of a line's block (0-based) under the other reading; null where it drills none.</summary>
    public static Hole? HoleAt(ProgramAnalysis analysis, int line)
    {
        var run = analysis.Runs.OtherPositions ?? ProgramRun.Create(
            analysis.Text, new Job(ReadingSwitch.Positions(analysis.Machine), analysis.Setup, analysis.Options.Skip), [], [], CancellationToken.None);
        var step = run.StepAt(line);
        return step.Holes.Count > 0 ? step.Holes[0] : null;
    }

    /// <summary>How the other reading takes the numbers.</summary>
    public static string PositionsName(ProgramAnalysis analysis) =>
        analysis.Machine.Readings.HolePositions == HolePositionReading.DistanceMode ? "as distances" : "as G90 and G91 say";
}
