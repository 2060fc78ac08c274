using System.Runtime.InteropServices;
using System.Text.Json;
using NcLanguage.Checks.Clearance;
using NcLanguage.Control.Moves;
using NcLanguage.Control.State;
using NcLanguage.Machine.Geometry;
using NcLanguage.Machine.Profiles;
using NcLanguage.Machine.Setups;
using NcLanguage.Reports.Drawing;
using NcLanguage.Reports.Holes;
using NcLanguage.Reports.Trace;

namespace NcLanguage.Reports.MotionView;

/// <summary>
/// A recording as the page takes it. What there is one of for each block or move stands in arrays of numbers, little-endian, as base64: a browser opens
/// those of 100,000 moves many times faster than objects. Numbers are in mm and rounded as in the trace; NaN is not known. Lines count from 1. Texts tell lengths in the
/// unit of the program, and so does the page (isInch).
/// </summary>
static class MotionJson
{
    public static void Write(MotionRecording recording, ProjectionMethod method, Utf8JsonWriter json)
    {
        var scene = MotionScene.Of(recording);
        json.WriteStartObject();
        json.WriteString("path", recording.Path);
        json.WriteString("name", Path.GetFileName(recording.Path));
        json.WriteString("machine", recording.Job.Machine.Name);
        json.WriteString("projection", method == ProjectionMethod.FirstAngle ? "first" : "third");
        json.WriteString("frame", MotionNotes.Frame(recording, scene));
        json.WriteBoolean("isInch", recording.Lengths.IsInch);
        json.WriteKnown("seconds", recording.Totals.Seconds);
        json.WriteKnown("rapidDistance", recording.Totals.RapidDistance);
        json.WriteKnown("cutDistance", recording.Totals.CutDistance);
        json.WriteNumber("moveCount", recording.MoveCount);
        json.WriteNumber("unknownMoves", recording.Totals.UnknownMoves);
        json.WriteBoolean("isCut", recording.IsCut);
        json.WriteKnown("contactAt", Sweep.ClearanceTolerance);
        json.WritePoint("low", scene.World.Min);
        json.WritePoint("high", scene.World.Max);
        WriteReadings(recording.Job.Machine, json);
        WriteStrings("notes", MotionNotes.Of(recording, scene), json);
        WriteSetup(recording, json);
        WriteLeft(recording.Left, json);
        WriteTools(recording, json);
        WriteStates(recording, json);
        WriteSteps(recording, json);
        WriteMoves(recording, json);
        json.WriteStartArray("shifts");
        foreach (var shift in scene.Shifts)
            json.WritePoint(shift);
        json.WriteEndArray();
        WriteApproaches("contacts", recording, recording.Contacts, json);
        json.WriteNumber("contactCount", recording.ContactCount);
        WriteApproaches("closest", recording, recording.Closest, json);
        HoleJson.WriteHoles(recording.Holes, json, recording.Drilled.Count);
        json.WriteNumber("holeCount", recording.Holes.Count);
        json.WriteBoolean("namesCoordinates", recording.Holes.NamesCoordinates);
        json.WriteStartObject("drilled");
        WriteInts("step", recording.Drilled.Select(hole => hole.Step), json);
        WriteInts("move", recording.Drilled.Select(hole => hole.LastMove), json);
        json.WriteEndObject();
        WriteHolePlaces(HolePlace.Of(recording, scene), json);
        json.WriteEndObject();
    }

    static void WriteReadings(MachineProfile machine, Utf8JsonWriter json)
    {
        json.WriteStartArray("readings");
        foreach (var (name, choice, meaning) in MotionNotes.Readings(machine))
        {
            json.WriteStartObject();
            json.WriteString("name", name);
            json.WriteString("choice", choice);
            json.WriteString("meaning", meaning);
            json.WriteEndObject();
        }
        json.WriteEndArray();
    }

    static void WriteSetup(MotionRecording recording, Utf8JsonWriter json)
    {
        var setup = recording.Job.Setup;
        if (setup.Stock is { } stock)
        {
            json.WriteStartObject("stock");
            json.WritePoint("min", stock.Min);
            json.WritePoint("max", stock.Max);
            json.WriteStartArray("hollows");
            foreach (var hollow in setup.Hollows)
                WriteHollow(hollow, stock, json);
            json.WriteEndArray();
            json.WriteEndObject();
        }
        json.WriteKnown("clearance", setup.Clearance);
        WriteSolids("obstacles", setup.Obstacles, json);
        WriteSolids("supports", setup.Supports, json);
    }

    /// <summary>The outline as the file has it, which may lead beyond the stock; levels within it.</summary>
    static void WriteHollow(Hollow hollow, Box3 stock, Utf8JsonWriter json)
    {
        json.WriteStartObject();
        json.WriteString("name", hollow.Name);
        json.WritePoint("min", new Point3(hollow.MinX, hollow.MinY, hollow.Bottom));
        json.WritePoint("max", new Point3(hollow.MaxX, hollow.MaxY, stock.Max.Z));
        json.WriteKnown("cornerRadius", hollow.CornerRadius);
        json.WriteEndObject();
    }

    /// <summary>What is left of the stock: a height for each cell, from the least X and Y, row by row along X; at the floor nothing stands.</summary>
    static void WriteLeft(StockLeft? left, Utf8JsonWriter json)
    {
        if (left is not { IsKnown: true, Removed: > 0, Field: var field })
            return;
        json.WriteStartObject("left");
        json.WriteNumber("columns", field.Columns);
        json.WriteNumber("rows", field.Rows);
        json.WriteNumber("cellWidth", field.CellWidth);
        json.WriteNumber("cellDepth", field.CellDepth);
        json.WriteNumber("floor", field.Floor);
        json.WriteBase64String("heights", MemoryMarshal.AsBytes(field.Heights));
        json.WriteEndObject();
    }

    static void WriteSolids(string name, IEnumerable<Obstacle> solids, Utf8JsonWriter json)
    {
        json.WriteStartArray(name);
        foreach (var solid in solids)
        {
            json.WriteStartObject();
            json.WriteString("name", solid.Name);
            json.WritePoint("min", solid.Bounds.Min);
            json.WritePoint("max", solid.Bounds.Max);
            if (solid is CylinderObstacle cylinder)
                json.WriteKnown("diameter", cylinder.Diameter);
            json.WriteEndObject();
        }
        json.WriteEndArray();
    }

    /// <summary>The tools of the setup as the clearance is reckoned with: cylinders from the tip up; one without an upper end has none.</summary>
    static void WriteTools(MotionRecording recording, Utf8JsonWriter json)
    {
        json.WriteStartArray("tools");
        foreach (var tool in recording.Job.Setup.Tools)
        {
            json.WriteStartObject();
            json.WriteNumber("number", tool.Number);
            json.WriteString("text", ToolText.Of(tool, recording.Lengths));
            json.WriteKnown("pointAngle", tool.PointAngle);
            json.WriteStartArray("cylinders");
            foreach (var cylinder in ToolShape.From(tool).Cylinders)
            {
                json.WriteStartObject();
                json.WriteKnown("radius", cylinder.Radius);
                json.WriteKnown("bottom", cylinder.Bottom);
                json.WriteKnown("top", cylinder.Top);
                json.WriteString("part", OperationJson.Word(cylinder.Part));
                json.WriteEndObject();
            }
            json.WriteEndArray();
            json.WriteEndObject();
        }
        json.WriteEndArray();
    }

    static void WriteStates(MotionRecording recording, Utf8JsonWriter json)
    {
        var units = recording.Job.Readings.Units;
        json.WriteStartArray("states");
        foreach (var state in recording.States)
        {
            json.WriteStartObject();
            json.WriteString("codes", state.Codes(units));
            json.WriteNumber("tool", state.Tool);
            json.WriteString("toolText", state.ToolText);
            json.WriteString("feed", state.FeedText(recording.Lengths));
            json.WriteString("speed", state.SpeedText);
            json.WriteString("offset", state.Offset(recording.Lengths));
            json.WriteString("levels", state.Levels(recording.Lengths));
            json.WriteNumber("cycle", state.Cycle);
            json.WriteEndObject();
            json.FlushWhereMuch();
        }
        json.WriteEndArray();
    }

    static void WriteSteps(MotionRecording recording, Utf8JsonWriter json)
    {
        var steps = recording.Steps;
        WriteStrings("files", recording.Files, json);
        json.WriteStartObject("steps");
        json.WriteNumber("count", steps.Count);
        WriteStrings("text", steps.Select(step => step.Text), json);
        WriteInts("line", steps.Select(step => step.Line + 1), json);
        WriteInts("file", steps.Select(step => step.File), json);
        WriteInts("first", steps.Select(step => step.FirstMove), json);
        WriteInts("state", steps.Select(step => step.State), json);
        WriteInts("shift", steps.Select(step => step.Shift), json);
        WritePositions(recording, json);
        json.WriteEndObject();
    }

    static void WriteMoves(MotionRecording recording, Utf8JsonWriter json)
    {
        var moves = recording.Moves;
        json.WriteStartObject("moves");
        json.WriteNumber("count", moves.Count);
        json.WriteBase64String("kind", moves.Select(move => (byte)move.Move.Kind).ToArray());
        WriteStrings("kinds", Enum.GetValues<MoveKind>().Select(TraceJson.Word), json);
        WriteStarts(moves, json);
        WriteNumbers("to", moves.SelectMany(move => Coordinates(move.Move.To)), json);
        WriteNumbers("feed", moves.Select(move => move.Move.Feed), json);
        WriteNumbers("seconds", moves.Select(move => move.Move.Seconds), json);
        if (!recording.Job.Obstacles.IsEmpty)
        {
            WriteNumbers("clearance", moves.Select(move => move.Clearance), json);
            WriteInts("obstacle", moves.Select(move => move.Obstacle), json);
        }
        WriteArcs(recording, json);
        WriteBends(recording, json);
        json.WriteEndObject();
    }

    /// <summary>Where moves begin that do not begin where the move before has ended.</summary>
    static void WriteStarts(IReadOnlyList<RecordedMove> moves, Utf8JsonWriter json)
    {
        var jumps = new List<int>();
        var last = Point3.Unknown;
        for (var i = 0; i < moves.Count; last = moves[i].Move.To, i++)
            if (!last.Equals(moves[i].Move.From))
                jumps.Add(i);
        json.WriteStartObject("starts");
        WriteInts("move", jumps, json);
        WriteNumbers("from", jumps.SelectMany(i => Coordinates(moves[i].Move.From)), json);
        json.WriteEndObject();
    }

    /// <summary>Where the tool stands behind steps, for those where that is not the end of the last move.</summary>
    static void WritePositions(MotionRecording recording, Utf8JsonWriter json)
    {
        var (steps, moves) = (recording.Steps, recording.Moves);
        var jumps = new List<int>();
        var last = Point3.Unknown;
        for (var i = 0; i < steps.Count; last = steps[i].Position, i++)
        {
            var end = i + 1 < steps.Count ? steps[i + 1].FirstMove : moves.Count;
            if (!steps[i].Position.Equals(end > steps[i].FirstMove ? moves[end - 1].Move.To : last))
                jumps.Add(i);
        }
        json.WriteStartObject("places");
        WriteInts("step", jumps, json);
        WriteNumbers("place", jumps.SelectMany(i => Coordinates(steps[i].Position)), json);
        json.WriteEndObject();
    }

    /// <summary>Of each arc: which move, its centre, its angle in radians (negative clockwise) and the numbers of the two axes that it turns in.</summary>
    static void WriteArcs(MotionRecording recording, Utf8JsonWriter json)
    {
        var arcs = Enumerable.Range(0, recording.Moves.Count).Where(i => recording.Moves[i].Move.Kind == MoveKind.Arc).ToList();
        json.WriteStartObject("arcs");
        WriteInts("move", arcs, json);
        WriteNumbers("center", arcs.SelectMany(i => Coordinates(recording.Moves[i].Move.Center)), json);
        WriteNumbers("angle", arcs.Select(i => Arcs.Sweep(recording.Moves[i].Move) * (recording.Moves[i].Move.Clockwise ? -1 : 1)), json);
        WriteInts("plane", arcs.Select(i => recording.Moves[i].Move.Plane switch { WorkPlane.ZX => 18, WorkPlane.YZ => 19, _ => 17 }), json);
        json.WriteEndObject();
    }

    /// <summary>Of each rapid that bends: which move, and its corners.</summary>
    static void WriteBends(MotionRecording recording, Utf8JsonWriter json)
    {
        var (moves, places, corners) = (new List<int>(), new List<double>(), new List<Point3>());
        for (var i = 0; i < recording.Moves.Count; i++)
        {
            corners.Clear();
            MoveWay.AddBends(recording.Moves[i].Move, default, recording.Job, corners);
            foreach (var corner in corners)
            {
                moves.Add(i);
                places.AddRange(Coordinates(corner));
            }
        }
        json.WriteStartObject("bends");
        WriteInts("move", moves, json);
        WriteNumbers("corner", places, json);
        json.WriteEndObject();
    }

    static void WriteApproaches(string name, MotionRecording recording, IEnumerable<RecordedApproach> approaches, Utf8JsonWriter json)
    {
        json.WriteStartArray(name);
        foreach (var approach in approaches)
        {
            json.WriteStartObject();
            // One behind the moves that are kept has none to go to.
            if (approach.Move >= 0)
            {
                json.WriteNumber("move", approach.Move);
                json.WriteNumber("step", recording.Moves[approach.Move].Step);
            }
            json.WriteString("text", MotionNotes.Of(recording, approach));
            json.WriteString("part", OperationJson.Word(approach.Part));
            json.WriteKnown("distance", approach.IsToolKnown ? approach.Distance : double.NaN);
            json.WritePoint("tip", approach.Tip);
            json.WriteEndObject();
        }
        json.WriteEndArray();
    }

    static void WriteHolePlaces(List<HolePlace> places, Utf8JsonWriter json)
    {
        json.WriteStartArray("holePlaces");
        foreach (var place in places)
        {
            json.WriteStartObject();
            json.WriteKnown("x", place.X);
            json.WriteKnown("y", place.Y);
            json.WriteKnown("top", place.Top);
            json.WriteKnown("bottom", place.Bottom);
            json.WriteKnown("diameter", place.Diameter);
            json.WriteString("label", place.Label);
            json.WriteEndObject();
            json.FlushWhereMuch();
        }
        json.WriteEndArray();
    }

    static void WriteStrings(string name, IEnumerable<string> texts, Utf8JsonWriter json)
    {
        json.WriteStartArray(name);
        foreach (var text in texts)
        {
            json.WriteStringValue(text);
            json.FlushWhereMuch();
        }
        json.WriteEndArray();
    }

    static void WriteInts(string name, IEnumerable<int> values, Utf8JsonWriter json) =>
        json.WriteBase64String(name, MemoryMarshal.AsBytes(values.ToArray().AsSpan()));

    static void WriteNumbers(string name, IEnumerable<double> values, Utf8JsonWriter json) =>
        json.WriteBase64String(name, MemoryMarshal.AsBytes(values.Select(JsonNumbers.Rounded).ToArray().AsSpan()));

    static double[] Coordinates(Point3 place) => [place.X, place.Y, place.Z];
}
