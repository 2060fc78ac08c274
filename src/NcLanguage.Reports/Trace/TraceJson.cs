using System.Text.Json;
using NcLanguage.Checks;
using NcLanguage.Checks.Analysis;
using NcLanguage.Control.Flow;
using NcLanguage.Control.Moves;
using NcLanguage.Reports.Holes;
using NcLanguage.Syntax.Lexing;
using NcLanguage.Syntax.Text;

namespace NcLanguage.Reports.Trace;

/// <summary>All steps and moves as JSON, written as the program runs. Work coordinates of the tool tip.</summary>
public static class TraceJson
{
    /// <exception cref="OperationCanceledException">The token was cancelled; the JSON is not complete.</exception>
    public static void Write(string path, SourceText text, Job job, Utf8JsonWriter json, CancellationToken cancel)
    {
        ArgumentNullException.ThrowIfNull(job);
        ArgumentNullException.ThrowIfNull(json);
        json.WriteStartObject();
        json.WriteString("path", path);
        json.WriteString("machine", job.Machine.Name);
        json.WriteStartArray("steps");
        var run = ProgramRun.Create(text, job, [], [], cancel);
        var (operations, totals) = OperationRun.Of(run, (in Block block, in TracedStep step) => WriteStep(block, step, run.NamesCoordinates, json), cancel);
        json.WriteEndArray();
        json.WriteKnown("seconds", totals.Seconds);
        json.WriteStartObject("distance");
        json.WriteKnown("rapid", totals.RapidDistance);
        json.WriteKnown("cut", totals.CutDistance);
        json.WriteEndObject();
        if (job.Setup.Stock is not null)
            json.WriteKnown("removed", operations.Removed);
        json.WriteNumber("unknownMoves", totals.UnknownMoves);
        if (CutShort(totals.End) is { } cutShort)
            json.WriteString("cutShort", cutShort);
        OperationJson.Write(operations, job, run.NamesCoordinates, json);
        HoleJson.WriteHoles(HoleTable.Of(run), json);
        json.WriteEndObject();
    }

    static void WriteStep(in Block block, in TracedStep step, bool namesCoordinates, Utf8JsonWriter json)
    {
        json.WriteStartObject();
        json.WriteNumber("line", step.Line + 1);
        if (step.File is { } file)
            json.WriteString("file", file);
        // Bytes that are no UTF-8 must not break the JSON.
        json.WriteString("block", System.Text.Encoding.UTF8.GetString(block.Line).Trim());
        if (namesCoordinates)
            json.WriteCoordinates(WorkCoordinates.Of(step.Step.After));
        json.WriteStartArray("moves");
        for (var i = 0; i < step.Step.Moves.Count; i++)
            WriteMove(step, i, json);
        json.WriteEndArray();
        json.WriteEndObject();
        json.FlushWhereMuch();
    }

    static void WriteMove(in TracedStep step, int index, Utf8JsonWriter json)
    {
        ref readonly var move = ref step.Step.Moves[index];
        json.WriteStartObject();
        json.WriteString("kind", Word(move.Kind));
        json.WriteWay(move.Kind == MoveKind.Arc, move.From, move.To, move.Center, move.Clockwise);
        json.WriteKnown("feed", move.Feed);
        json.WriteKnown("seconds", move.Seconds);
        if (step.ApproachOf(index) is { } approach)
        {
            json.WriteStartObject("clearance");
            json.WriteString("obstacle", step.NameOf(approach));
            if (approach.ObstacleIndex >= 0)
                json.WriteString("part", OperationJson.Word(approach.Part));
            json.WriteKnown("distance", approach.Distance);
            json.WriteEndObject();
        }
        json.WriteEndObject();
    }

    /// <summary>Why the trace stops before the program does; null where it does not.</summary>
    public static string? CutShort(FlowEnd end) => end switch
    {
        FlowEnd.TooLong => "too long",
        FlowEnd.Endless => "endless loop",
        FlowEnd.Stopped => "alarm",
        _ => null,
    };

    internal static string Word(MoveKind kind) => kind switch
    {
        MoveKind.Rapid => "rapid",
        MoveKind.Feed => "feed",
        MoveKind.Arc => "arc",
        MoveKind.Dwell => "dwell",
        MoveKind.Spindle => "spindle",
        MoveKind.Coolant => "coolant",
        MoveKind.ToolChange => "toolChange",
        _ => "stop",
    };
}
