using NcLanguage.Machine.Geometry;

namespace NcLanguage.Checks.Clearance;

/// <summary>All places, seen from above, within some distance of one place: what a tool reaches that goes straight down.</summary>
/// <param name="at">The place, mm; only X and Y count.</param>
/// <param name="reach">The distance, mm.</param>
internal readonly struct Disc(Point3 at, double reach) : ILevelPath
{
    private readonly double _x = at.X, _y = at.Y;

    public RowSpan Span(double y)
    {
        var square = reach * reach - (y - _y) * (y - _y);
        if (square < 0)
            return new(double.PositiveInfinity, double.NegativeInfinity, 0, 0);
        var half = Math.Sqrt(square);
        return new(_x - half, _x + half, 0, 0);
    }

    public double SquareTo(double x, double y) => (x - _x) * (x - _x) + (y - _y) * (y - _y);
}
