using System.Globalization;
using NcLanguage.Checks;
using NcLanguage.Checks.Analysis;
using NcLanguage.Checks.Drawing;

namespace NcLanguage.Reports.Holes;

/// <summary>The hole table as comma-separated values (RFC 4180, a point as decimal sign), one hole a row; with a drawing, the status of the
/// place, and a row without a number for each hole that is missing; where programs in other files drill, the file's name in a column,
/// and where not all holes stand under one unshifted work offset, their coordinates in another. Feed and speed are
/// what the machine does; where its limits change one, two more columns have those of the program.</summary>
public static class HoleCsv
{
    public static void Write(HoleReport report, TextWriter output)
    {
        ArgumentNullException.ThrowIfNull(report);
        ArgumentNullException.ThrowIfNull(output);
        output.Write("number,line,cycle,tool,x,y,rLevel,bottom,returnTo,arriveAt,dwellSeconds,feed,speed,leastReturn");
        output.Write(report.HasDrawing ? ",drawing" : "");
        var hasFiles = report.Holes.HasOtherFiles;
        output.Write(hasFiles ? ",file" : "");
        var hasCoordinates = report.Holes.NamesCoordinates;
        output.Write(hasCoordinates ? ",workOffset" : "");
        var hasLimits = report.Holes.MeetsLimits;
        output.Write(hasLimits ? ",programmedFeed,programmedSpeed\r\n" : "\r\n");
        var statuses = new Dictionary<int, HoleStatus?>();
        foreach (var match in report.Drawing.Matches)
            foreach (var number in match.Holes)
                statuses.TryAdd(number, match.Status);
        foreach (var row in report.Holes)
        {
            WriteRow(row, output);
            output.Write(report.HasDrawing ? $",{HoleReport.Word(statuses.GetValueOrDefault(row.Number))}" : "");
            output.Write(hasFiles ? "," + Text(row.File) : "");
            output.Write(hasCoordinates ? "," + Text(row.Coordinates.IsKnown ? row.Coordinates.Name() : null) : "");
            output.Write(hasLimits ? $",{Number(row.Feed.Programmed)},{Number(row.Speed.Programmed)}\r\n" : "\r\n");
        }
        foreach (var match in report.Drawing.Matches.Where(match => match.Holes.IsEmpty))
            output.Write($",,,,{Number(match.X)},{Number(match.Y)},,,,,,,,,{HoleReport.Word(match.Status)}{(hasFiles ? "," : "")}{(hasCoordinates ? "," + Text(WorkCoordinates.OfFrame(report.Run.Job.Setup)?.Name()) : "")}{(hasLimits ? ",," : "")}\r\n");
    }

    static void WriteRow(in HoleRow row, TextWriter output)
    {
        var hole = row.Hole;
        output.Write($"{row.Number},{row.Line + 1},G{hole.Cycle},{(hole.Tool < 0 ? "" : hole.Tool)},{Number(hole.X)},{Number(hole.Y)},");
        output.Write($"{Number(hole.RLevel)},{Number(hole.Bottom)},{Number(hole.ReturnTo)},{Number(hole.ArriveAt)},");
        output.Write($"{Number(hole.DwellSeconds)},{Number(row.Feed.Machine)},{Number(row.Speed.Machine)},{Number(row.LeastReturn)}");
    }

    /// <summary>In quotes where it holds what would part or end it (RFC 4180 §2).</summary>
    static string Text(string? value) =>
        value is null ? "" : value.AsSpan().IndexOfAny(",\"\r\n") < 0 ? value : $"\"{value.Replace("\"", "\"\"", StringComparison.Ordinal)}\"";

    static string Number(double value) =>
        double.IsFinite(value) ? JsonNumbers.Rounded(value).ToString("0.######", CultureInfo.InvariantCulture) : "";
}
