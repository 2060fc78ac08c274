using System.Text.Json;
using NcLanguage.Checks.Analysis;
using NcLanguage.Checks.Drawing;

namespace NcLanguage.Reports.Holes;

/// <summary>The hole table as JSON. Work coordinates for the program's holes, the setup's frame for the drawing's.</summary>
public static class HoleJson
{
    public static void Write(HoleReport report, Utf8JsonWriter json)
    {
        ArgumentNullException.ThrowIfNull(report);
        ArgumentNullException.ThrowIfNull(json);
        json.WriteStartObject();
        json.WriteString("path", report.Path);
        json.WriteString("machine", report.Run.Job.Machine.Name);
        WriteHoles(report.Holes, json);
        if (report.HasDrawing)
        {
            json.WriteStartArray("drawing");
            foreach (var match in report.Drawing.Matches)
                WriteMatch(match, json);
            json.WriteEndArray();
        }
        json.WriteEndObject();
    }

    /// <summary>The member "holes". Where not all of them stand under one unshifted work offset, each has "workOffset", and "shift" where the program has shifted it. "feed" and "speed" are
    /// what the machine does; where its limits allow no more, or no less, "programmedFeed" and "programmedSpeed" are what the program says.</summary>
    /// <param name="most">Those behind are left out.</param>
    public static void WriteHoles(HoleTable holes, Utf8JsonWriter json, int most = int.MaxValue)
    {
        ArgumentNullException.ThrowIfNull(holes);
        ArgumentNullException.ThrowIfNull(json);
        json.WriteStartArray("holes");
        var names = holes.NamesCoordinates;
        foreach (var row in holes.Take(most))
        {
            WriteHole(row, names, json);
            json.FlushWhereMuch();
        }
        json.WriteEndArray();
    }

    static void WriteHole(in HoleRow row, bool namesCoordinates, Utf8JsonWriter json)
    {
        var hole = row.Hole;
        json.WriteStartObject();
        json.WriteNumber("number", row.Number);
        json.WriteNumber("line", row.Line + 1);
        if (row.File is { } file)
            json.WriteString("file", file);
        json.WriteString("cycle", $"G{hole.Cycle}");
        json.WriteTool(hole.Tool);
        json.WriteKnown("x", hole.X);
        json.WriteKnown("y", hole.Y);
        json.WriteKnown("rLevel", hole.RLevel);
        json.WriteKnown("bottom", hole.Bottom);
        json.WriteKnown("returnTo", hole.ReturnTo);
        json.WriteKnown("arriveAt", hole.ArriveAt);
        json.WriteKnown("dwellSeconds", hole.DwellSeconds);
        json.WriteKnown("feed", row.Feed.Machine);
        json.WriteKnown("speed", row.Speed.Machine);
        if (row.Feed.IsLimited)
            json.WriteKnown("programmedFeed", row.Feed.Programmed);
        if (row.Speed.IsLimited)
            json.WriteKnown("programmedSpeed", row.Speed.Programmed);
        json.WriteKnown("leastReturn", row.LeastReturn);
        if (namesCoordinates)
            json.WriteCoordinates(row.Coordinates);
        json.WriteEndObject();
    }

    static void WriteMatch(DrawingMatch match, Utf8JsonWriter json)
    {
        json.WriteStartObject();
        json.WriteKnown("x", match.X);
        json.WriteKnown("y", match.Y);
        json.WriteString("status", HoleReport.Word(match.Status));
        if (HoleReport.Note(match) is { } note)
            json.WriteString("note", note);
        if (match.Wanted is { } wanted)
        {
            json.WriteStartObject("wanted");
            json.WriteKnown("diameter", wanted.Diameter);
            json.WriteKnown("depth", wanted.Depth);
            json.WriteString("thread", wanted.Thread);
            json.WriteEndObject();
        }
        json.WriteStartObject("made");
        json.WriteKnown("diameter", match.Diameter);
        json.WriteKnown("depth", HoleReport.Depth(match.Depth));
        json.WriteKnown("threadDepth", HoleReport.Depth(match.ThreadDepth));
        json.WriteString("by", HoleReport.Word(match.By));
        json.WriteStartArray("holes");
        foreach (var number in match.Holes)
            json.WriteNumberValue(number);
        json.WriteEndArray();
        json.WriteStartArray("lines");
        foreach (var line in match.Lines)
            json.WriteNumberValue(line + 1);
        json.WriteEndArray();
        json.WriteEndObject();
        json.WriteEndObject();
    }
}
