using System.Globalization;
using NcLanguage.Checks;
using NcLanguage.Checks.Analysis;
using NcLanguage.Checks.Operations;
using NcLanguage.Machine.Geometry;
using NcLanguage.Reports.Holes;

namespace NcLanguage.Reports.Sheet;

/// <summary>Values of the sheet, lengths and feeds in the unit that the program is written in. In tables the unit stands in the column's head.</summary>
sealed class SheetSay(LengthText lengths)
{
    /// <summary>What the setup should say and does not.</summary>
    public const string NotGiven = "not given";

    /// <summary>What does not apply.</summary>
    public const string None = "–";

    public LengthText Lengths => lengths;

    /// <summary>A length or coordinate of the program.</summary>
    public string Length(double mm) => double.IsNaN(mm) ? "not known" : lengths.Number(mm);

    /// <summary>A length or coordinate of the setup.</summary>
    public string Given(double? mm) => mm is { } length ? lengths.Number(length) : NotGiven;

    /// <summary>A length of the setup that not every tool has.</summary>
    public string Given(double? mm, bool isNeeded) => mm is { } length ? lengths.Number(length) : Absent(isNeeded);

    /// <summary>A number of the setup, no length, that not every tool has.</summary>
    public static string GivenNumber(double? value, bool isNeeded) => value is { } number ? Say.Number(number) : Absent(isNeeded);

    static string Absent(bool isNeeded) => isNeeded ? NotGiven : None;

    /// <summary>X10 Y20 Z0</summary>
    public string Place(Point3 place) => lengths.Place(place.X, place.Y, place.Z);

    /// <summary>100 × 60 × 20 mm</summary>
    public string Size(Box3 box)
    {
        var size = box.Max - box.Min;
        return $"{lengths.Number(size.X)} × {lengths.Number(size.Y)} × {lengths.Length(size.Z)}";
    }

    public string Volume(double? cubicMm) => cubicMm is { } volume ? Say.Number(lengths.OfVolume(volume), 2) : "not known";

    public static string Tool(int tool) => tool < 0 ? "not known" : $"T{tool.ToString(CultureInfo.InvariantCulture)}";

    /// <summary>The coordinates that a row's places are meant in.</summary>
    public string Coordinates(WorkCoordinates coordinates) => coordinates.IsKnown ? coordinates.Name(lengths.IsInch) : "not known";

    /// <summary>1200; 9000→8000 where the machine's limits make another of it.</summary>
    public static string Speed(DrillingRate rate) => double.IsNaN(rate.Machine) ? "not known" : HoleReport.Rate(rate, 0);

    /// <summary>120; 900→800 where the machine's limits make another of it.</summary>
    public string Feed(DrillingRate rate) => double.IsNaN(rate.Machine) ? "not known" : HoleReport.Feed(rate, lengths);

    /// <summary>1200, or 1200 to 4000.</summary>
    public static string Speeds(ValueRange range) => Range(range, value => Say.Number(value, 0));

    /// <summary>120, or 120 to 400.</summary>
    public string Feeds(ValueRange range) => Range(range, lengths.RoundedFeed);

    static string Range(ValueRange range, Func<double, string> say) => !range.IsKnown ? None
        : say(range.Least) is var least && say(range.Greatest) is var greatest && least == greatest ? least
        : $"{least} to {greatest}";

    /// <summary>Seconds as a number; more than that where some moves' time is not known.</summary>
    public static string Seconds(MoveTotals totals) => Over(totals, totals.Seconds);

    /// <summary>The way without a cut, in the same way.</summary>
    public string Rapid(MoveTotals totals) => Over(totals, lengths.Of(totals.RapidDistance));

    /// <summary>The way of cuts, in the same way.</summary>
    public string Cut(MoveTotals totals) => Over(totals, lengths.Of(totals.CutDistance));

    static string Over(MoveTotals totals, double known) => (totals.UnknownMoves > 0 ? "over " : "") + Say.Number(known, 1);

    /// <summary>A line as people count, with its file where that is another.</summary>
    public static string Line(int line, string? file) => (line + 1).ToString(CultureInfo.InvariantCulture) + (file is null ? "" : $" of {file}");

    public static string Lines(Operation operation) => operation.FirstLine == operation.LastLine
        ? Line(operation.FirstLine, operation.File)
        : $"{operation.FirstLine + 1}–{Line(operation.LastLine, operation.File)}";
}
