using NcLanguage.Checks.Analysis;
using NcLanguage.Control.Execution;
using NcLanguage.Control.State;
using NcLanguage.Machine.Profiles;

namespace NcLanguage.Editing;

/// <summary>Where a hole would be on a control that reads positions inside cycles the other way.</summary>
static class OtherReading
{
    /// <summary>How far to go back from the hole, blocks, where the analysis has not run the other reading itself.</summary>
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
        for (var from = LastPlaced(main, line, line); from >= 0; from = LastPlaced(main, line - 2 * (line - from), line))
            if (FirstOf(RunFrom(main, main.Text.ChunkOfLine(from), line, executor)) is { } place)
                return place;
        return null;
    }

    /// <summary>The last line above another (0-based) such that X and Y were both set from there on by blocks that drill nothing, so that either reading may have led to the same place; the
    /// program's first line where it begins before. −1 where that is too far from the hole.</summary>
    static int LastPlaced(ProgramRun main, int above, int hole)
    {
        var set = Slot.None;
        for (var line = above - 1; line >= 0 && hole - line <= MostBlocks; line--)
        {
            var sets = main.SetsOf(line);
            if ((sets & Slot.Hole) == 0)
                set |= sets & (Slot.X | Slot.Y);
            if (set == (Slot.X | Slot.Y) || line == 0)
                return line;
        }
        return -1;
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
