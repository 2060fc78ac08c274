using NcLanguage.Checks;
using NcLanguage.Control.Execution;
using NcLanguage.Control.Moves;
using NcLanguage.Control.State;
using NcLanguage.Machine.Geometry;

namespace NcLanguage.Editing;

/// <summary>One move in a setter's words.</summary>
static class MoveText
{
    public static string Of(in Move move, Step step, int index) => move.Kind switch
    {
        MoveKind.Rapid => $"{RapidName(move)} {Way(move)}, {Say.Seconds(move.Seconds)}",
        MoveKind.Feed => $"feed {Way(move)} at {Feed(move)}, {Say.Seconds(move.Seconds)}",
        MoveKind.Arc => $"arc {(move.Clockwise ? "clockwise" : "counterclockwise")} {Way(move)} about {Centre(move)}, "
            + $"radius {Say.Mm(Radius(move))}, at {Feed(move)}, {Say.Seconds(move.Seconds)}",
        MoveKind.Dwell => $"dwell {Say.Seconds(move.Seconds)}{Turns(move, step)}",
        MoveKind.Spindle => Spindle(move, step, index),
        MoveKind.Coolant => step.After.Coolant == CoolantState.Off ? "coolant off" : "coolant on",
        MoveKind.ToolChange => $"tool change to {(step.After.Tool < 0 ? "a tool not known here" : "T" + step.After.Tool)}, {Say.Seconds(move.Seconds)}",
        _ => "stop",
    };

    static string RapidName(in Move move) => move.Role switch
    {
        MoveRole.Lift => "lift",
        MoveRole.Hop or MoveRole.FirstTraverse => "traverse",
        MoveRole.Approach => "rapid down to the R level",
        MoveRole.Return => "return",
        MoveRole.Machine => "rapid (machine coordinates)",
        _ => "rapid",
    };

    /// <summary>Only the axes that move, and the level where the way is level.</summary>
    static string Way(in Move move)
    {
        var from = Axes(move, move.From);
        var to = Axes(move, move.To);
        var level = Same(move.From.Z, move.To.Z) && !double.IsNaN(move.To.Z) ? $" at {Say.Level(move.To.Z)}" : "";
        return to.Length == 0 ? $"at {Say.Place(move.To.X, move.To.Y)}{level}" : $"from {from} to {to}{level}";
    }

    static string Axes(in Move move, Point3 place)
    {
        var parts = new List<string>(3);
        for (var axis = 0; axis < 3; axis++)
            if (!Same(move.From[axis], move.To[axis]))
                parts.Add($"{(char)('X' + axis)}{Say.Number(place[axis])}");
        return string.Join(' ', parts);
    }

    static bool Same(double a, double b) => a.Equals(b);

    static string Centre(in Move move)
    {
        var (first, second, _) = Arcs.Axes(move.Plane);
        return $"{(char)('X' + first)}{Say.Number(move.Center[first])} {(char)('X' + second)}{Say.Number(move.Center[second])}";
    }

    static double Radius(in Move move)
    {
        var (first, second, _) = Arcs.Axes(move.Plane);
        return Math.Sqrt(Math.Pow(move.From[first] - move.Center[first], 2) + Math.Pow(move.From[second] - move.Center[second], 2));
    }

    static string Feed(in Move move) => double.IsNaN(move.Feed) ? "a feed not known here" : $"{Say.Number(move.Feed, 1)} mm/min";

    static string Turns(in Move move, Step step)
    {
        if (step.After.Spindle is not (SpindleState.Clockwise or SpindleState.Counterclockwise))
            return "";
        var turns = move.Seconds * step.After.Speed / 60;
        return double.IsNaN(turns) ? "" : $" ({Say.Number(turns, 1)} turns of the spindle)";
    }

    static string Spindle(in Move move, Step step, int index)
    {
        if (move.Role is MoveRole.InHole or MoveRole.Return)
        {
            var isTap = step.After.Cycle is 84 or 74;
            return (isTap, move.Role) switch
            {
                (true, MoveRole.InHole) => "spindle reverses",
                (true, _) => "spindle turns forward again",
                (false, MoveRole.Return) => "spindle on again",
                _ => "spindle stops",
            };
        }
        return step.After.Spindle switch
        {
            SpindleState.Clockwise => $"spindle clockwise at {Speed(step)}",
            SpindleState.Counterclockwise => $"spindle counterclockwise at {Speed(step)}",
            _ => "spindle stops",
        };
    }

    static string Speed(Step step) => double.IsNaN(step.After.Speed) ? "a speed not known here" : $"S{Say.Number(step.After.Speed)}";
}
