using NcLanguage.Machine.Geometry;

namespace NcLanguage.Machine.Setups;

/// <summary>Where the stock is open from above before the first cut: a cored or drilled bore, a slot, a pocket. Upright walls, in the setup's frame, all lengths in mm.
/// A round one is a box whose corners are as round as it is wide.</summary>
/// <param name="Name">What it is called in messages.</param>
/// <param name="CornerRadius">Radius of its corners as seen from above; 0 where they are sharp.</param>
/// <param name="Bottom">Z of its floor; the stock's underside where it goes through.</param>
public sealed record Hollow(string Name, double MinX, double MinY, double MaxX, double MaxY, double CornerRadius, double Bottom)
{
    /// <summary>True for a bore: its diameter is its width.</summary>
    public bool IsRound { get; init; }

    /// <summary>1-based line of the hollow in the setup file.</summary>
    public int Line { get; init; }

    public double CenterX => (MinX + MaxX) / 2;

    public double CenterY => (MinY + MaxY) / 2;

    /// <summary>Extent along X; of a round one its diameter.</summary>
    public double Width => MaxX - MinX;

    /// <summary>The part of the stock that it takes, as a box.</summary>
    public Box3 Within(Box3 stock) => new(
        new Point3(Math.Max(MinX, stock.Min.X), Math.Max(MinY, stock.Min.Y), Bottom), new Point3(Math.Min(MaxX, stock.Max.X), Math.Min(MaxY, stock.Max.Y), stock.Max.Z));

    /// <summary>A place on its outline: the share of the way round that is gone, 0 to 1, counterclockwise, counts the turn of the corners alone; between them it goes straight on.</summary>
    public Point3 OutlineAt(double share)
    {
        var quarter = (int)Math.Floor(share * 4) % 4;
        var (sin, cos) = Math.SinCos(share * 2 * Math.PI);
        var (signX, signY) = (quarter is 0 or 3 ? 1 : -1, quarter < 2 ? 1 : -1);
        return new Point3(
            CenterX + signX * (Width / 2 - CornerRadius) + CornerRadius * cos, CenterY + signY * ((MaxY - MinY) / 2 - CornerRadius) + CornerRadius * sin, 0);
    }

    /// <summary>How far a place lies outside the wall as seen from above, mm; below 0 inside, by as much as the wall is away.</summary>
    public double DistanceTo(double x, double y)
    {
        var acrossX = Math.Abs(x - CenterX) - (Width / 2 - CornerRadius);
        var acrossY = Math.Abs(y - CenterY) - ((MaxY - MinY) / 2 - CornerRadius);
        return double.Hypot(Math.Max(acrossX, 0), Math.Max(acrossY, 0)) + Math.Min(Math.Max(acrossX, acrossY), 0) - CornerRadius;
    }

    /// <summary>Whether a disc about a place lies in it as seen from above, but for a hundredth of a millimetre.</summary>
    public bool Holds(double x, double y, double radius) => DistanceTo(x, y) + radius <= Rounding;

    /// <summary>Numbers of a drawing are rounded to a hundredth, mm.</summary>
    const double Rounding = 0.01;
}
