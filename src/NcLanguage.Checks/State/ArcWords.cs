using NcLanguage.Checks.Analysis;
using NcLanguage.Control.Codes;
using NcLanguage.Control.Execution;
using NcLanguage.Control.Moves;
using NcLanguage.Control.State;

namespace NcLanguage.Checks.Rules;

/// <summary>Whether the words of an arc were written for another plane than the one in force.</summary>
static class ArcWords
{
    /// <summary>The index of the word that tells it; −1 where the words fit the plane in force, where they fit no other or give neither centre nor
    /// radius, and where the block sets the plane itself.</summary>
    /// <remarks>In the XY plane only a centre along Z tells: an end along Z is a helix. In the other planes, where no helix runs along the
    /// tool, an end along the third axis tells too, as long as the words leave out an axis of the plane.</remarks>
    public static int OfOtherPlane(in StepContext step)
    {
        ref readonly var state = ref step.Step.After;
        if (state.Plane == WorkPlane.Unknown || state.Cycle != 0 || (step.Step.Sets & Slot.Plane) != 0 || !IsArc(step.Step))
            return -1;
        var words = step.Step.Words;
        var byRadius = words.Has('R');
        var hasCentre = words.Has('I') || words.Has('J') || words.Has('K');
        var (first, second, third) = Arcs.Axes(state.Plane);
        if (!byRadius && !hasCentre)
            return -1;
        if (Names(words, first, byRadius) && Names(words, second, byRadius))
            return -1;
        if (!byRadius && words.Has(Centre(third)))
            return words.TokenOf(Centre(third));
        return state.Plane != WorkPlane.XY && words.Has(End(third)) ? words.TokenOf(End(third)) : -1;
    }

    /// <summary>"G17", or "G18 or G19" where both would do.</summary>
    public static string PlanesThatFit(in StepContext step)
    {
        var words = step.Step.Words;
        var byRadius = words.Has('R');
        var fits = new List<string>();
        foreach (var (plane, code) in Planes)
        {
            var third = Arcs.Axes(plane).Third;
            if (plane != step.Step.After.Plane && !Names(words, third, byRadius))
                fits.Add(code);
        }
        return string.Join(" or ", fits);
    }

    /// <summary>The code of a plane.</summary>
    public static string Code(WorkPlane plane) => Planes.First(row => row.Plane == plane).Code;

    /// <summary>Sets the plane in which the words of an arc fit: none where rotation or scaling make no arc of it in that plane either.</summary>
    public static IEnumerable<Fix> FixOfPlane(string code, Finding finding, ProgramAnalysis analysis)
    {
        var plane = Planes.First(row => row.Code == code).Plane;
        return analysis.Main.StepAt(finding.Line).After.ProgramFrame?.KeepsArcs(plane) == false
            ? []
            : [new Fix($"Add {code} to this block", FixSafety.Choice, [Inserts.Before(analysis, finding.Line, code)])];
    }

    static readonly (WorkPlane Plane, string Code)[] Planes = [(WorkPlane.XY, "G17"), (WorkPlane.ZX, "G18"), (WorkPlane.YZ, "G19")];

    static bool IsArc(Step step)
    {
        if (step.After.Motion is not (MotionMode.ArcClockwise or MotionMode.ArcCounterclockwise))
            return false;
        foreach (ref readonly var move in step.Moves.Items)
            if (move.Kind == MoveKind.Arc)
                return true;
        return false;
    }

    static bool Names(BlockWords words, int axis, bool byRadius) => words.Has(End(axis)) || (!byRadius && words.Has(Centre(axis)));

    static char End(int axis) => (char)('X' + axis);

    static char Centre(int axis) => (char)('I' + axis);
}
