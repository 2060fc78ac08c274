using System.Text.Json;
using NcLanguage.Checks.Analysis;
using NcLanguage.Checks.Comparison;
using NcLanguage.Control.Moves;
using NcLanguage.Control.State;

namespace NcLanguage.Reports.Comparison;

/// <summary>A comparison as JSON. Lines count from 1; lengths in mm in work coordinates.</summary>
public static class ComparisonJson
{
    /// <exception cref="OperationCanceledException">The token was cancelled.</exception>
    public static void Write(ComparisonReport report, Utf8JsonWriter json, CancellationToken cancel = default)
    {
        ArgumentNullException.ThrowIfNull(report);
        ArgumentNullException.ThrowIfNull(json);
        json.WriteStartObject();
        json.WriteString("first", report.First.Path);
        json.WriteString("second", report.Second.Path);
        json.WriteBoolean("same", report.IsSame);
        json.WriteStartArray("moves");
        foreach (var change in report.Motion.Changes)
        {
            json.WriteStartObject();
            json.WriteString("change", ComparisonReport.Word(change.Kind));
            WriteMotion("first", change.First, json);
            WriteMotion("second", change.Second, json);
            json.WriteEndObject();
            if (json.FlushWhereMuch())
                cancel.ThrowIfCancellationRequested();
        }
        json.WriteEndArray();
        json.WriteStartArray("holes");
        foreach (var change in report.Holes)
        {
            json.WriteStartObject();
            json.WriteString("change", ComparisonReport.Word(change.Kind));
            if (change.What.Length > 0)
                json.WriteString("what", change.What);
            WriteHole("first", change.First, report.NamesCoordinates, json);
            WriteHole("second", change.Second, report.NamesCoordinates, json);
            json.WriteEndObject();
        }
        json.WriteEndArray();
        json.WriteStartArray("notCompared");
        foreach (var clause in report.NotCompared())
            json.WriteStringValue(clause);
        json.WriteEndArray();
        json.WriteEndObject();
    }

    static void WriteMotion(string name, Motion? motion, Utf8JsonWriter json)
    {
        if (motion is not { } move)
        {
            json.WriteNull(name);
            return;
        }
        json.WriteStartObject(name);
        json.WriteNumber("line", move.Line + 1);
        json.WriteString("kind", ComparisonReport.Word(move.Kind));
        json.WriteWay(move.Kind == MoveKind.Arc, move.From, move.To, move.Center, move.Clockwise);
        json.WriteKnown("feed", move.Feed);
        json.WriteKnown("speed", move.Speed);
        json.WriteString("spindle", move.Spindle.ToString().ToLowerInvariant());
        json.WriteString("coolant", move.Coolant.ToString().ToLowerInvariant());
        if (move.Kind == MoveKind.Dwell)
            json.WriteKnown("seconds", move.Dwell);
        if (move.Modes.Side != CompensationSide.Off)
            json.WriteString("side", $"{move.Modes.Side.ToString().ToLowerInvariant()} by D{move.Modes.SideBy}");
        if (move.Modes.LengthBy > 0)
            json.WriteString("length", $"{move.Modes.Length.ToString().ToLowerInvariant()} by H{move.Modes.LengthBy}");
        if (move.Modes.CuttingSpeed != 0)
            json.WriteKnown("cuttingSpeed", move.Modes.CuttingSpeed);
        if (move.Modes.OverridesOff)
            json.WriteBoolean("overridesOff", true);
        if (move.Modes.Stop > 0)
            json.WriteString("stop", $"M{move.Modes.Stop / 10}");
        json.WriteEndObject();
    }

    static void WriteHole(string name, HoleRow? row, bool namesCoordinates, Utf8JsonWriter json)
    {
        if (row is not { } hole)
        {
            json.WriteNull(name);
            return;
        }
        json.WriteStartObject(name);
        json.WriteNumber("number", hole.Number);
        json.WriteNumber("line", hole.Line + 1);
        json.WriteString("cycle", $"G{hole.Hole.Cycle}");
        if (namesCoordinates)
            json.WriteCoordinates(hole.Coordinates);
        json.WriteKnown("x", hole.Hole.X);
        json.WriteKnown("y", hole.Hole.Y);
        json.WriteKnown("bottom", hole.Hole.Bottom);
        json.WriteEndObject();
    }
}
