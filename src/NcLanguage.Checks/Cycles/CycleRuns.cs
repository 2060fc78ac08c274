using NcLanguage.Checks.Analysis;
using NcLanguage.Control.Execution;
using NcLanguage.Control.Moves;
using NcLanguage.Control.State;

namespace NcLanguage.Checks.Rules;

/// <summary>What the rules on cycles ask of a program and its steps.</summary>
static class CycleRuns
{
    /// <summary>True when the next hole after a line (0-based) comes from the cycle that is on there, by no code of its own.</summary>
    public static bool GoesOnAfter(ProgramRun run, int line)
    {
        var table = HoleTable.Of(run);
        var (next, count) = table.At(line);
        return next + count < table.Count && run.LastSetter(Slot.Cycle, table.LineOf(next + count)) <= line;
    }

    /// <summary>True at the first hole of a run, and where the block starts a cycle.</summary>
    public static bool Begins(Step step) => !step.Before.StandsAtHole || (step.Sets & Slot.Cycle) != 0;

    /// <summary>How far a bar for fine boring or back boring is moved aside, mm, and the first word that may say it: Q, or I and J.</summary>
    public static (double Shift, char Letter) BoreShiftOf(in ControlState state) =>
        state.BoreShiftGiven ? (double.Hypot(state.BoreShift.X, state.BoreShift.Y), 'I') : (Math.Abs(state.Peck), 'Q');

    /// <summary>True for a block whose R is a distance that leads up from where the tool stands: meant as a level, it has all of the hole stand too high.</summary>
    public static bool IsRDistance(Step step) =>
        step.After.Distance == DistanceMode.Incremental && step.Words.Has('R') && step.Holes.Count > 0 && step.Holes[0].RLevel > step.Holes[0].InitialLevel;

    /// <summary>The axis that cycles drill along: 'Z' in XY, 'Y' in ZX, 'X' in YZ.</summary>
    public static char DepthAxis(WorkPlane plane) => (char)('X' + Arcs.Axes(plane).Third);

    /// <summary>The cycle's code in the block, or −1.</summary>
    public static int CodeToken(in StepContext step) => WordEdits.IndexOfCycle(step.Block);

    /// <summary>Reports a word of the block where it has it, else the cycle's code, else the whole block.</summary>
    public static void Report(
        Rule rule, in StepContext step, char letter, string message, Slot concerns = Slot.None, string concernsMessage = "",
        double value = double.NaN, string text = "", Severity? severity = null)
    {
        var token = letter != '\0' && step.Step.Words.Has(letter) ? step.Step.Words.TokenOf(letter) : CodeToken(step);
        if (token >= 0)
            step.Report(rule, token, message, concerns, concernsMessage, value, text, severity);
        else
            step.ReportBlock(rule, message, concerns, concernsMessage, value, text, severity);
    }

    /// <summary>True for a block that only gives a depth while a cycle is on, and a higher one than before: meant as a lift, it drills again.</summary>
    public static bool IsLoneRise(in StepContext step)
    {
        ref readonly var state = ref step.Step.Before;
        if (!state.InCycle || !state.BottomGiven || step.Step.After.Cycle != state.Cycle || step.Step.Holes.Count == 0 || CodeToken(step) >= 0)
            return false;
        var words = step.Step.Words;
        var depth = Arcs.Axes(step.Step.After.Plane).Third;
        for (var axis = 0; axis < 3; axis++)
            if (words.Has((char)('X' + axis)) != (axis == depth))
                return false;
        return !words.Has('R') && step.Step.After.Bottom > state.Bottom;
    }
}
