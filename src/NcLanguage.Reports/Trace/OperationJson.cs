using System.Text.Json;
using NcLanguage.Checks.Analysis;
using NcLanguage.Checks.Clearance;
using NcLanguage.Checks.Operations;

namespace NcLanguage.Reports.Trace;

/// <summary>Operations, tools and closest approaches as members of a trace. Lines from 1; work coordinates in mm, mm/min, 1/min, seconds, mm³, mm³/min.</summary>
public static class OperationJson
{
    /// <summary>Approaches that are listed at most, the nearest.</summary>
    public const int MostApproaches = 100;

    /// <summary>The members "operations", "tools", "returnLevels" and, where the setup lists obstacles, "approaches".</summary>
    /// <param name="namesCoordinates">Whether places are told with the work offset that they are meant in.</param>
    public static void Write(OperationList list, Job job, bool namesCoordinates, Utf8JsonWriter json)
    {
        ArgumentNullException.ThrowIfNull(list);
        ArgumentNullException.ThrowIfNull(job);
        ArgumentNullException.ThrowIfNull(json);
        json.WriteStartArray("operations");
        foreach (var operation in list.Operations)
            Write(operation, job, json);
        json.WriteEndArray();
        json.WriteStartArray("tools");
        foreach (var tool in list.Tools)
            Write(tool, json);
        json.WriteEndArray();
        WriteReturns(list.Returns, json);
        if (job.Obstacles.IsEmpty)
            return;
        json.WriteStartArray("approaches");
        foreach (var (operation, pass) in list.Approaches.Take(MostApproaches))
            Write(operation, pass, job, namesCoordinates, json);
        json.WriteEndArray();
    }

    /// <summary>cycle, feed, probing or none.</summary>
    public static string Word(OperationKind kind) => kind switch
    {
        OperationKind.Cycle => "cycle",
        OperationKind.Feed => "feed",
        OperationKind.Probing => "probing",
        _ => "none",
    };

    static void Write(Operation operation, Job job, Utf8JsonWriter json)
    {
        json.WriteStartObject();
        json.WriteNumber("number", operation.Number);
        json.WriteTool(operation.Tool);
        json.WriteString("kind", Word(operation.Kind));
        if (operation.Cycle > 0)
            json.WriteString("cycle", $"G{operation.Cycle}");
        json.WriteString("title", operation.Title);
        json.WriteNumber("line", operation.FirstLine + 1);
        json.WriteNumber("endLine", operation.LastLine + 1);
        if (operation.File is { } file)
            json.WriteString("file", file);
        json.WriteNumber("holes", operation.Holes);
        WriteTotals(operation.Totals, json);
        json.WriteNumber("stops", operation.Stops);
        WriteRange("speed", operation.Speed, json);
        WriteRange("feed", operation.Feed, json);
        json.WriteKnown("deepest", operation.Deepest);
        if (job.Setup.Stock is not null)
        {
            json.WriteKnown("removed", operation.Removed);
            json.WriteKnown("depthOfCut", operation.DepthOfCut);
            json.WriteKnown("removalRate", operation.RemovalRate);
        }
        WriteReturns(operation.Returns, json);
        if (operation.Nearest is { } nearest)
        {
            json.WriteStartObject("clearance");
            json.WriteString("obstacle", job.Obstacles[nearest.Obstacle].Name);
            json.WriteKnown("distance", nearest.Distance);
            json.WriteNumber("line", nearest.Line + 1);
            json.WriteEndObject();
        }
        json.WriteEndObject();
    }

    static void Write(ToolWork tool, Utf8JsonWriter json)
    {
        json.WriteStartObject();
        json.WriteTool(tool.Tool);
        json.WriteStartArray("operations");
        foreach (var operation in tool.Operations)
            json.WriteNumberValue(operation.Number);
        json.WriteEndArray();
        WriteTotals(tool.Totals, json);
        WriteRange("speed", tool.Speed, json);
        WriteRange("feed", tool.Feed, json);
        json.WriteEndObject();
    }

    static void Write(Operation operation, NearestPass pass, Job job, bool namesCoordinates, Utf8JsonWriter json)
    {
        json.WriteStartObject();
        json.WriteKnown("distance", pass.Distance);
        json.WriteString("obstacle", job.Obstacles[pass.Obstacle].Name);
        json.WriteNumber("operation", operation.Number);
        json.WriteNumber("line", pass.Line + 1);
        if (pass.File is { } file)
            json.WriteString("file", file);
        json.WriteTool(pass.Tool);
        json.WriteString("part", Word(pass.Part));
        json.WriteString("kind", pass.IsRapid ? "rapid" : "feed");
        json.WritePoint("at", pass.Tip);
        if (namesCoordinates)
            json.WriteCoordinates(pass.Coordinates);
        json.WriteEndObject();
    }

    /// <summary>cutter, shank or holder.</summary>
    public static string Word(ToolPart part) => part switch
    {
        ToolPart.Holder => "holder",
        ToolPart.Shank => "shank",
        _ => "cutter",
    };

    static void WriteTotals(MoveTotals totals, Utf8JsonWriter json)
    {
        json.WriteKnown("seconds", totals.Seconds);
        json.WriteStartObject("secondsOf");
        json.WriteKnown("rapid", totals.RapidSeconds);
        json.WriteKnown("feed", totals.FeedSeconds);
        json.WriteKnown("dwell", totals.DwellSeconds);
        json.WriteKnown("toolChange", totals.ChangeSeconds);
        json.WriteEndObject();
        json.WriteStartObject("distance");
        json.WriteKnown("rapid", totals.RapidDistance);
        json.WriteKnown("cut", totals.CutDistance);
        json.WriteEndObject();
        json.WriteNumber("unknownMoves", totals.UnknownMoves);
    }

    static void WriteRange(string name, ValueRange range, Utf8JsonWriter json)
    {
        json.WriteStartObject(name);
        json.WriteKnown("least", range.Least);
        json.WriteKnown("greatest", range.Greatest);
        json.WriteEndObject();
    }

    static void WriteReturns(ReturnCost? returns, Utf8JsonWriter json)
    {
        if (returns is not { } cost)
            return;
        json.WriteStartObject("returnLevels");
        json.WriteNumber("hops", cost.Hops);
        json.WriteNumber("higher", cost.Higher);
        json.WriteNumber("notJudged", cost.NotJudged);
        json.WriteKnown("secondsChosen", cost.Chosen);
        json.WriteKnown("secondsLeast", cost.Least);
        json.WriteKnown("secondsCost", cost.Difference);
        json.WriteEndObject();
    }
}
