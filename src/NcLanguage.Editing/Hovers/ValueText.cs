using NcLanguage.Checks;
using NcLanguage.Checks.Analysis;
using NcLanguage.Control.Execution;
using NcLanguage.Control.Moves;
using NcLanguage.Control.State;
using NcLanguage.Machine.Profiles;

namespace NcLanguage.Editing;

/// <summary>The value of a word with its unit, and what follows from it.</summary>
static class ValueText
{
    public static string Of(ProgramAnalysis analysis, int line, char letter, Step step)
    {
        var value = step.Words[letter];
        if (double.IsNaN(value))
            return "Its value is not known here.";
        return letter switch
        {
            'X' or 'Y' or 'Z' when step.Words.HasCode('G', 40) => $"{Say.Seconds(value)}.",
            'X' or 'Y' or 'Z' => Axis(analysis, line, letter, step),
            'R' when step.After.Cycle > 0 => $"R level at {Say.Level(step.After.RLevel)}; it stays until changed.",
            'F' => Feed(analysis, step),
            'S' => Speed(analysis, step),
            'P' => Dwell(analysis, step, value),
            'Q' when step.After.Cycle is 73 or 83 => Peck(step),
            'T' => Tool(analysis, (int)value),
            'H' => Length(analysis, step),
            'L' or 'K' when step.Holes.Count > 1 => $"{step.Holes.Count} holes in this block.",
            _ => "",
        };
    }

    static string Axis(ProgramAnalysis analysis, int line, char letter, Step step)
    {
        var axis = letter - 'X';
        if (step.After.Cycle > 0 && axis == Arcs.Axes(step.After.Plane).Third)
            return $"Bottom of the hole at {Say.Level(step.After.Bottom, letter)}{Incremental(step, " counted from the R level")}; it stays until changed.";
        var here = step.Holes.Count > 0 ? (axis == 0 ? step.Holes[0].X : step.Holes[0].Y) : step.After.Position[axis];
        if (double.IsNaN(here))
            return "Where this leads is not known here.";
        var asDistance = step.After.Distance == DistanceMode.Incremental
            || (step.Holes.Count > 0 && analysis.Machine.Readings.HolePositions == HolePositionReading.Incremental);
        var way = here - step.Before.Position[axis];
        var inch = step.After.Units == LengthUnit.Inch ? $" ({Say.Number(here / 25.4, 4)} in)" : "";
        return asDistance
            ? $"A distance: {Say.Mm(way)} further, to {letter}{Say.Number(here)} mm{inch}."
            : $"A position: {letter}{Say.Number(here)} mm{inch} in the work coordinates{(double.IsNaN(way) ? "" : $", {Say.Mm(Math.Abs(way))} from where the tool stands")}.";
    }

    static string Incremental(Step step, string text) => step.After.Distance == DistanceMode.Incremental ? text : "";

    static string Feed(ProgramAnalysis analysis, Step step)
    {
        var feed = step.After.Feed;
        var speed = step.After.Speed;
        var text = step.After.FeedMode switch
        {
            FeedMode.PerMinute => $"{Say.Number(feed)} mm/min",
            FeedMode.PerTurn => $"{Say.Number(feed)} mm per turn",
            FeedMode.InverseTime => $"the move takes {Say.Seconds(60 / feed)}",
            _ => "feed mode not known here",
        };
        if (step.After.FeedMode == FeedMode.PerMinute && speed > 0)
        {
            text += $"; {Say.Number(feed / speed, 4)} mm per turn at S{Say.Number(speed)}";
            var tool = analysis.Setup.FindTool(step.After.Tool);
            if (tool?.Flutes is > 1 and var flutes)
                text += $", {Say.Number(feed / speed / flutes, 4)} mm per tooth with {flutes} teeth";
            if (tool?.Pitch is { } pitch)
                text += $"; the pitch of {Say.Mm(pitch)} asks for F{Say.Number(pitch * speed, 1)}";
        }
        return text + ". It stays until changed.";
    }

    static string Speed(ProgramAnalysis analysis, Step step)
    {
        var speed = step.After.Speed;
        if (double.IsNaN(speed))
            return "Its value is not known here.";
        var text = $"{Say.Number(speed)} turns per minute";
        if (analysis.Setup.FindTool(step.After.Tool)?.Diameter is { } diameter)
            text += $"; {Say.Number(Math.PI * diameter * speed / 1000, 1)} m/min at the diameter of {Say.Mm(diameter)}";
        return text + ". It stays until changed.";
    }

    static string Dwell(ProgramAnalysis analysis, Step step, double value)
    {
        if (!step.Words.HasCode('G', 40) && step.After.Cycle <= 0)
            return "";
        var seconds = double.NaN;
        foreach (ref readonly var move in step.Moves.Items)
            if (move.Kind == MoveKind.Dwell)
                seconds = move.Seconds;
        if (double.IsNaN(seconds))
            return "";
        var unit = analysis.Machine.Readings.Dwell switch
        {
            DwellReading.Milliseconds => "read in milliseconds",
            DwellReading.Seconds => "read in seconds",
            _ => "read by its decimal point",
        };
        var turns = step.After.Spindle is SpindleState.Clockwise or SpindleState.Counterclockwise && step.After.Speed > 0
            ? $", {Say.Number(seconds * step.After.Speed / 60, 1)} turns at S{Say.Number(step.After.Speed)}"
            : "";
        return $"{Say.Seconds(seconds)} ({unit} by {analysis.Machine.Name}){turns}.";
    }

    static string Peck(Step step)
    {
        var depth = step.After.RLevel - step.After.Bottom;
        var strokes = Math.Ceiling(Math.Round(depth / step.After.Peck, 9));
        return $"{Say.Mm(step.After.Peck)} a peck{(double.IsNaN(strokes) ? "" : $": {Say.Number(strokes)} strokes over {Say.Mm(depth)}")}; it stays until changed.";
    }

    static string Tool(ProgramAnalysis analysis, int number)
    {
        if (!analysis.Setup.IsPresent)
            return "";
        if (analysis.Setup.FindTool(number) is not { } tool)
            return "The setup does not list it.";
        var kind = tool.Kind is { } known ? Machine.Setups.ToolKindName.Format(known).Replace('-', ' ') : "tool";
        var parts = new List<string> { kind };
        if (tool.Diameter is { } diameter)
            parts.Add($"diameter {Say.Mm(diameter)}");
        if (tool.PointAngle is { } angle)
            parts.Add($"point {Say.Number(angle)}°");
        if (tool.Pitch is { } pitch)
            parts.Add($"pitch {Say.Mm(pitch)}");
        if (tool.FluteLength is { } flute)
            parts.Add($"flutes {Say.Mm(flute)} long");
        if (tool.Length is { } length)
            parts.Add($"length {Say.Mm(length)}");
        if (tool.LengthOffset is { } offset)
            parts.Add($"H{offset}");
        return "In the setup: " + string.Join(", ", parts) + ".";
    }

    static string Length(ProgramAnalysis analysis, Step step)
    {
        var tool = analysis.Setup.FindLengthOffset(step.After.H);
        return tool?.Length is { } length ? $"In the setup: {Say.Mm(length)}, the length of T{tool.Number}." : "";
    }
}
