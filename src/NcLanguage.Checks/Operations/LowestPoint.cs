using NcLanguage.Control.Moves;
using NcLanguage.Control.State;

namespace NcLanguage.Checks.Operations;

/// <summary>The lowest Z of a move.</summary>
static class LowestPoint
{
    /// <summary>Lowest Z of the tip on the way, work coordinates, mm; NaN where not known.</summary>
    public static double Of(in Move move)
    {
        var ends = Math.Min(move.From.Z, move.To.Z);
        // Only an arc across another plane than XY can go lower than both its ends.
        if (move.Kind != MoveKind.Arc || move.Plane is not (WorkPlane.ZX or WorkPlane.YZ) || !PassesBelowCentre(move))
            return ends;
        return Math.Min(ends, move.Center.Z - Radius(move));
    }

    static double Radius(in Move arc)
    {
        var (first, second, _) = Arcs.Axes(arc.Plane);
        return Math.Sqrt(Square(arc.From[first] - arc.Center[first]) + Square(arc.From[second] - arc.Center[second]));
    }

    static bool PassesBelowCentre(in Move arc)
    {
        var (first, second, _) = Arcs.Axes(arc.Plane);
        var start = Math.Atan2(arc.From[second] - arc.Center[second], arc.From[first] - arc.Center[first]);
        // Below the centre lies the negative direction of Z, which is the first axis in ZX and the second in YZ.
        var below = first == 2 ? Math.PI : -Math.PI / 2;
        var way = Math.IEEERemainder(arc.Clockwise ? start - below : below - start, 2 * Math.PI);
        return (way < 0 ? way + 2 * Math.PI : way) <= Arcs.Sweep(arc);
    }

    static double Square(double value) => value * value;
}
