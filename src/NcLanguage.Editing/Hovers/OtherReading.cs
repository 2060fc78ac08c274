using NcLanguage.Checks.Analysis;
using NcLanguage.Control.Execution;
using NcLanguage.Machine.Profiles;

namespace NcLanguage.Editing;

/// <summary>Where a hole would be on a control that reads positions inside cycles the other way.</summary>
static class OtherReading
{
    /// <summary>Blocks run at most, going back from the hole, where the analysis has not run the other reading itself.</summary>
    const int MostBlocks = 2000;

    /// <summary>One sentence where the first hole of a line's block (0-based) lies elsewhere; empty where it does not or that is not known.</summary>
    public static string Text(ProgramAnalysis analysis, int line, Step step)
    {
        var here = Place.OfHole(step, 0);
        if (!here.IsKnown || At(analysis, line) is not { } other || here.IsAt(other))
            return "";
        var name = analysis.Machine.Readings.HolePositions == HolePositionReading.DistanceMode ? "as distances" : "as G90 and G91 say";
        return $"\nA control that reads positions inside cycles {name} drills at {Lengths.Of(step.After).Place(other)}.\n";
    }

    /// <summary>The place of the first hole under the other reading; null where the block drills none there or the place is not known.</summary>
    static Place? At(ProgramAnalysis analysis, int line)
    {
        if (analysis.Runs.OtherPositions is { } run)
            return FirstOf(run.StepAt(line));
        var main = analysis.Main;
        // The stretch above a line tells nothing where the run comes to it from elsewhere.
        if (main.Flow is not null)
            return null;
        var executor = new BlockExecutor(ReadingSwitch.Positions(analysis.Machine), analysis.Setup, analysis.Options.Skip);
        var chunk = main.Text.ChunkOfLine(line);
        for (var back = 1; ; back *= 2)
        {
            var start = Math.Max(0, chunk - back + 1);
            if (line - main.Text.FirstLineOf(start) > MostBlocks && back > 1)
                return null;
            if (FirstOf(RunFrom(main, start, line, executor)) is { } place)
                return place;
            if (start == 0)
                return null;
        }
    }

    /// <summary>Runs from the beginning of a chunk to a line. The readings may have led to different places above: there X, Y and Z are
    /// taken as not known, so that a place that comes out known does not depend on them.</summary>
    static Step RunFrom(ProgramRun main, int chunk, int line, BlockExecutor executor)
    {
        var state = main.EntryOf(chunk);
        if (chunk > 0)
        {
            state.Position = Machine.Geometry.Point3.Unknown;
            state.MachinePosition = Machine.Geometry.Point3.Unknown;
            state.Programmed = Machine.Geometry.Point3.Unknown;
            state.Shift = Machine.Geometry.Point3.Unknown;
            state.LocalShift = Machine.Geometry.Point3.Unknown;
        }
        var (step, ahead) = main.StepWithAhead();
        for (var at = main.Text.FirstLineOf(chunk); at <= line; at++)
        {
            ahead.Line = at;
            executor.Run(main.BlockAt(at), ref state, step);
        }
        return step;
    }

    static Place? FirstOf(Step step) => step.Holes.Count > 0 && Place.OfHole(step, 0) is { IsKnown: true } place ? place : null;
}
