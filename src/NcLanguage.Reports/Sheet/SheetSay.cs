using System.Globalization;
using NcLanguage.Checks;
using NcLanguage.Checks.Analysis;
using NcLanguage.Checks.Operations;
using NcLanguage.Reports.Holes;

namespace NcLanguage.Reports.Sheet;

/// <summary>Values in the cells of the sheet. The unit stands in the column's head.</summary>
static class SheetSay
{
    /// <summary>What the setup should say and does not.</summary>
    public const string NotGiven = "not given";

    /// <summary>What does not apply.</summary>
    public const string None = "–";

    public static string Number(double value, int decimals = 3) => double.IsNaN(value) ? "not known" : Say.Number(value, decimals);

    /// <summary>A value of the setup.</summary>
    public static string Given(double? value) => value is { } number ? Say.Number(number) : NotGiven;

    /// <summary>A value of the setup that not every tool has.</summary>
    public static string Given(double? value, bool isNeeded) => value is { } number ? Say.Number(number) : isNeeded ? NotGiven : None;

    public static string Tool(int tool) => tool < 0 ? "not known" : $"T{tool.ToString(CultureInfo.InvariantCulture)}";

    /// <summary>The coordinates that a row's places are meant in.</summary>
    public static string Coordinates(WorkCoordinates coordinates) => coordinates.IsKnown ? coordinates.Name() : "not known";

    /// <summary>120; 9000→8000 where the machine's limits make another of it.</summary>
    public static string Rate(DrillingRate rate, int decimals) => double.IsNaN(rate.Machine) ? "not known" : HoleReport.Rate(rate, decimals);

    /// <summary>120, or 120 to 400.</summary>
    public static string Range(ValueRange range, int decimals = 1) => !range.IsKnown ? None
        : Say.Number(range.Least, decimals) is var least && Say.Number(range.Greatest, decimals) is var greatest && least == greatest ? least
        : $"{least} to {greatest}";

    /// <summary>Seconds as a number; more than that where some moves' time is not known.</summary>
    public static string Seconds(MoveTotals totals) => Over(totals, totals.Seconds);

    /// <summary>Mm without a cut, in the same way.</summary>
    public static string Rapid(MoveTotals totals) => Over(totals, totals.RapidDistance);

    /// <summary>Mm of cuts, in the same way.</summary>
    public static string Cut(MoveTotals totals) => Over(totals, totals.CutDistance);

    static string Over(MoveTotals totals, double known) => (totals.UnknownMoves > 0 ? "over " : "") + Say.Number(known, 1);

    /// <summary>A line as people count, with its file where that is another.</summary>
    public static string Line(int line, string? file) => (line + 1).ToString(CultureInfo.InvariantCulture) + (file is null ? "" : $" of {file}");

    public static string Lines(Operation operation) => operation.FirstLine == operation.LastLine
        ? Line(operation.FirstLine, operation.File)
        : $"{operation.FirstLine + 1}–{Line(operation.LastLine, operation.File)}";
}
