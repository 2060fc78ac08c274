using NcLanguage.Control.Execution;
using NcLanguage.Control.Moves;
using NcLanguage.Control.State;
using NcLanguage.Machine.Geometry;

namespace NcLanguage.Editing;

/// <summary>A hole's place in the plane its cycle works in: X and Y under G17, X and Z under G18, Y and Z under G19. Work coordinates, mm;
/// NaN where not known.</summary>
readonly record struct Place(char FirstLetter, double First, char SecondLetter, double Second)
{
    public bool IsKnown => double.IsFinite(First + Second);

    /// <summary>Whether both are the same place, to what is shown.</summary>
    public bool IsAt(in Place other) => Math.Abs(First - other.First) < 0.0005 && Math.Abs(Second - other.Second) < 0.0005;

    /// <summary>The place of a step's hole, by its index in the step.</summary>
    public static Place OfHole(Step step, int index)
    {
        var hole = step.Holes[index];
        if (step.After.Plane is WorkPlane.XY or WorkPlane.Unknown)
            return Of(new Point3(hole.X, hole.Y, double.NaN), WorkPlane.XY);
        // The traverse ends over the hole; where there is none, the tool stands there already.
        var end = index + 1 < step.Holes.Count ? step.Holes[index + 1].FirstMove : step.Moves.Count;
        for (var i = hole.FirstMove; i < end; i++)
            if (step.Moves[i].Role is MoveRole.FirstTraverse or MoveRole.Hop)
                return Of(step.Moves[i].To, step.After.Plane);
        return Of(hole.FirstMove < end ? step.Moves[hole.FirstMove].From : step.After.Position, step.After.Plane);
    }

    static Place Of(Point3 at, WorkPlane plane)
    {
        // Letters in the order of the alphabet, as a program writes them.
        var (first, second, _) = Arcs.Axes(plane);
        if (first > second)
            (first, second) = (second, first);
        return new((char)('X' + first), at[first], (char)('X' + second), at[second]);
    }
}
