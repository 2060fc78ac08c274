using System.Runtime.CompilerServices;
using NcLanguage.Control.Moves;
using NcLanguage.Control.State;
using NcLanguage.Machine.Geometry;

namespace NcLanguage.Checks.Clearance;

/// <summary>A room beside and above the obstacles in which one tool keeps farther from all of them than a distance: for a move within it nothing has to be searched.</summary>
/// <remarks>Places are of the tool's tip in the obstacles' frame, mm. The default one holds nothing.</remarks>
readonly struct FreeRoom
{
    // What a bound may be off by, so that what it lets pass is farther away to the last digit.
    const double Slack = 1e-6;

    readonly double _minX, _maxX, _minY, _maxY, _floor;

    FreeRoom(double minX, double maxX, double minY, double maxY, double floor) => (_minX, _maxX, _minY, _maxY, _floor) = (minX, maxX, minY, maxY, floor);

    /// <summary>The room about a move of a tool; one that holds nothing where an obstacle is neither beside nor below it, or its place is not known.</summary>
    /// <param name="low">The least coordinates of the tip on its way.</param>
    /// <param name="high">The greatest.</param>
    /// <param name="radius">Radius of the thickest part of the tool, mm.</param>
    /// <param name="distance">The distance to keep, mm, 0 or more.</param>
    public static FreeRoom About(in Point3 low, in Point3 high, double radius, double distance, ReadOnlySpan<Solid> solids)
    {
        var reach = radius + distance + Slack;
        var (minX, maxX, minY, maxY, floor) =
            (double.NegativeInfinity, double.PositiveInfinity, double.NegativeInfinity, double.PositiveInfinity, double.NegativeInfinity);
        foreach (ref readonly var solid in solids)
        {
            var overTop = solid.Top + distance + Slack;
            if (low.Z > overTop)
            {
                floor = Math.Max(floor, overTop);
                continue;
            }
            var (left, right) = (low.X - solid.Right, solid.Left - high.X);
            var (front, back) = (low.Y - solid.Back, solid.Front - high.Y);
            var widest = Math.Max(Math.Max(left, right), Math.Max(front, back));
            if (!(widest > reach))
                return default;
            if (widest == left)
                minX = Math.Max(minX, solid.Right + reach);
            else if (widest == right)
                maxX = Math.Min(maxX, solid.Left - reach);
            else if (widest == front)
                minY = Math.Max(minY, solid.Back + reach);
            else
                maxY = Math.Min(maxY, solid.Front - reach);
        }
        return new FreeRoom(minX, maxX, minY, maxY, floor);
    }

    /// <summary>Whether the tip may be anywhere between the least and the greatest coordinates. False where one is not known.</summary>
    public bool Holds(in Point3 low, in Point3 high) =>
        low.X > _minX && high.X < _maxX && low.Y > _minY && high.Y < _maxY && low.Z > _floor && high.Z < double.PositiveInfinity;

    /// <summary>Whether the tip may be anywhere on a move; false where that is not plain: an arc in another plane than XY, one too large to be followed, a place that is not known.</summary>
    public bool Holds(in Move move, in Point3 toFrame)
    {
        var (low, high) = (move.From.Z + toFrame.Z, move.To.Z + toFrame.Z);
        if (!(low > _floor && high > _floor && low < double.PositiveInfinity && high < double.PositiveInfinity))
            return false;
        if (move.Kind != MoveKind.Arc)
            return HoldsAcross(move.From.X + toFrame.X, move.From.Y + toFrame.Y) && HoldsAcross(move.To.X + toFrame.X, move.To.Y + toFrame.Y);
        return move.Plane == WorkPlane.XY && HoldsAcross(move, toFrame);
    }

    /// <summary>Whether the tip may be anywhere on an arc in the XY plane at some height; false where that is not plain.</summary>
    bool HoldsAcross(in Move move, in Point3 toFrame)
    {
        // No radius is greater than the sum of its parts along X and Y: most arcs are done with without a root.
        var (ofStart, ofEnd) = (Sides(move.From, move.Center), Sides(move.To, move.Center));
        if (HoldsCircle(move.Center, toFrame, ofStart > ofEnd ? ofStart : ofEnd) && ofStart + ofEnd >= 0)
            return true;
        var (atStart, atEnd) = (Square(move.From, move.Center), Square(move.To, move.Center));
        return atStart + atEnd >= 0 && HoldsCircle(move.Center, toFrame, Math.Sqrt(atStart > atEnd ? atStart : atEnd));
    }

    [MethodImpl(MethodImplOptions.AggressiveInlining)]
    bool HoldsCircle(in Point3 centre, in Point3 toFrame, double radius)
    {
        var (x, y, reach) = (centre.X + toFrame.X, centre.Y + toFrame.Y, radius + Slack);
        return reach < Arcs.GreatestRadius && HoldsAcross(x - reach, y - reach) && HoldsAcross(x + reach, y + reach);
    }

    /// <summary>Whether the tip may be at a place. False where it is not known.</summary>
    public bool Holds(in Point3 place) => place.Z > _floor && place.Z < double.PositiveInfinity && HoldsAcross(place.X, place.Y);

    /// <summary>Whether the tip may be at a place at some height. False where it is not known.</summary>
    [MethodImpl(MethodImplOptions.AggressiveInlining)]
    public bool HoldsAcross(double x, double y) => x > _minX && x < _maxX && y > _minY && y < _maxY;

    /// <summary>The least and greatest coordinates of the tip on the straight moves of a step, in the obstacles' frame, NaN where one is not known or nothing moves; false where it has an arc.</summary>
    public static bool TryBound(ReadOnlySpan<Move> moves, in Point3 toFrame, out Point3 low, out Point3 high)
    {
        var (minX, minY, minZ) = (double.PositiveInfinity, double.PositiveInfinity, double.PositiveInfinity);
        var (maxX, maxY, maxZ) = (double.NegativeInfinity, double.NegativeInfinity, double.NegativeInfinity);
        // Compared as numbers, one that is not known would be passed over: here it makes the sum not known.
        var sum = 0.0;
        foreach (ref readonly var move in moves)
        {
            if (move.Kind == MoveKind.Arc)
            {
                (low, high) = (Point3.Unknown, Point3.Unknown);
                return false;
            }
            if (!move.IsMotion)
                continue;
            var (from, to) = (move.From, move.To);
            sum += from.X + from.Y + from.Z + to.X + to.Y + to.Z;
            (minX, maxX) = (from.X < minX ? from.X : minX, from.X > maxX ? from.X : maxX);
            (minX, maxX) = (to.X < minX ? to.X : minX, to.X > maxX ? to.X : maxX);
            (minY, maxY) = (from.Y < minY ? from.Y : minY, from.Y > maxY ? from.Y : maxY);
            (minY, maxY) = (to.Y < minY ? to.Y : minY, to.Y > maxY ? to.Y : maxY);
            (minZ, maxZ) = (from.Z < minZ ? from.Z : minZ, from.Z > maxZ ? from.Z : maxZ);
            (minZ, maxZ) = (to.Z < minZ ? to.Z : minZ, to.Z > maxZ ? to.Z : maxZ);
        }
        var isKnown = double.IsFinite(sum) && minX <= maxX;
        (low, high) = isKnown ? (new Point3(minX, minY, minZ) + toFrame, new Point3(maxX, maxY, maxZ) + toFrame) : (Point3.Unknown, Point3.Unknown);
        return true;
    }

    /// <summary>The least and greatest coordinates of the tip on a move, in the obstacles' frame; false where the move is an arc that lies in another plane than XY, or is too large to be followed.</summary>
    public static bool TryBound(in Move move, in Point3 toFrame, out Point3 low, out Point3 high)
    {
        var (from, to) = (move.From + toFrame, move.To + toFrame);
        (low, high) = (Sweep.Lower(from, to), Sweep.Higher(from, to));
        if (move.Kind != MoveKind.Arc)
            return true;
        var centre = move.Center + toFrame;
        var radius = Math.Sqrt(Math.Max(Square(from, centre), Square(to, centre))) + Slack;
        low = low with { X = centre.X - radius, Y = centre.Y - radius };
        high = high with { X = centre.X + radius, Y = centre.Y + radius };
        return move.Plane == WorkPlane.XY && radius < Arcs.GreatestRadius;
    }

    static double Sides(in Point3 a, in Point3 b) => Math.Abs(a.X - b.X) + Math.Abs(a.Y - b.Y);

    static double Square(in Point3 a, in Point3 b) => (a.X - b.X) * (a.X - b.X) + (a.Y - b.Y) * (a.Y - b.Y);
}
