using NcLanguage.Control.State;
using NcLanguage.Machine.Geometry;

namespace NcLanguage.Checks;

/// <summary>Lengths, places and feeds in the unit the program is written in, so that a number of a message can be typed as a
/// word; what goes in is mm and mm/min. Where the unit is not known it is mm.</summary>
/// <remarks>Places and levels carry the name of <see cref="Coordinates"/>, which is told where it has to be (<see cref="PlaceNames"/>).</remarks>
public readonly record struct LengthText(bool IsInch)
{
    const double CubicMmPerCubicCm = 1000;

    public LengthText(LengthUnit unit)
        : this(unit == LengthUnit.Inch)
    {
    }

    /// <summary>The coordinates that places and levels are meant in; null where they are to have no name.</summary>
    public WorkCoordinates? Coordinates { get; init; }

    /// <summary>The unit of lengths behind a number or in the head of a column.</summary>
    public string Unit => IsInch ? "in" : "mm";

    /// <summary>The unit of lengths in a sentence.</summary>
    public string UnitWord => IsInch ? "inches" : "mm";

    public string FeedUnit => Unit + "/min";

    public string VolumeUnit => IsInch ? "in³" : "cm³";

    /// <summary>A length in the unit.</summary>
    public double Of(double mm) => IsInch ? mm / UnitLength.MmPerInch : mm;

    /// <summary>A volume in its unit.</summary>
    public double OfVolume(double cubicMm) => cubicMm / (IsInch ? UnitLength.MmPerInch * UnitLength.MmPerInch * UnitLength.MmPerInch : CubicMmPerCubicCm);

    /// <summary>12.5, in inches with four decimals.</summary>
    public string Number(double mm) => Say.Number(Of(mm), IsInch ? 4 : 3);

    /// <summary>12.5 mm, 0.5 in</summary>
    public string Length(double mm) => $"{Number(mm)} {Unit}";

    /// <summary>Z2; the level of any axis is said with its letter.</summary>
    public string Level(double mm, char axis = 'Z') => double.IsNaN(mm) ? $"an unknown {axis}" : axis + Number(mm) + Mark;

    /// <summary>The lowest level, mm, that is written in full and not lower than this one: what clears has to clear as it is written.</summary>
    public double Upward(double mm)
    {
        const double Rounding = 1e-6;
        var (unit, steps) = IsInch ? (UnitLength.MmPerInch, 1e4) : (1, 1e3);
        return Math.Ceiling(mm / unit * steps - Rounding) / steps * unit;
    }

    /// <summary>X45 Y15</summary>
    public string Place(double x, double y) => $"X{Number(x)} Y{Number(y)}{Mark}";

    /// <summary>The place of a hole as seen along the axis that the cycles of a plane drill along: X45 Y15, in ZX X45 Z20, in YZ Y15 Z20.</summary>
    public string Place(in Point3 place, WorkPlane plane) => plane switch
    {
        WorkPlane.ZX => $"X{Number(place.X)} {Level(place.Z)}",
        WorkPlane.YZ => $"Y{Number(place.Y)} {Level(place.Z)}",
        _ => Place(place.X, place.Y),
    };

    /// <summary>X45 Y15 Z2</summary>
    public string Place(double x, double y, double z) => $"{Unnamed.Place(x, y)} {Level(z)}";

    /// <summary>The same without the coordinates' name: for a place that stands beside another in the same coordinates, and for machine coordinates.</summary>
    public LengthText Unnamed => this with { Coordinates = null };

    /// <summary>The number of an F word, up to three decimals.</summary>
    public string FeedNumber(double mmPerMinute) => Say.Number(Of(mmPerMinute));

    /// <summary>A feed for a table, as fine as anybody sets one.</summary>
    public string RoundedFeed(double mmPerMinute) => Say.Number(Of(mmPerMinute), IsInch ? 2 : 1);

    string Mark => Coordinates is { } coordinates ? PlaceNames.Marked(coordinates.Name(IsInch)) : "";

    /// <summary>120 mm/min, 5 in/min</summary>
    public string Feed(double mmPerMinute) => $"{FeedNumber(mmPerMinute)} {FeedUnit}";
}
