using NcLanguage.Checks;
using NcLanguage.Control.Execution;
using NcLanguage.Control.Moves;
using NcLanguage.Control.State;
using NcLanguage.Machine.Geometry;

namespace NcLanguage.Editing;

/// <summary>One move in a setter's words: what, from where to where, at which level or feed, how long.</summary>
static class MoveText
{
    const string Dot = " · ";

    public static string Of(Step step, int index)
    {
        ref readonly var move = ref step.Moves[index];
        var lengths = Lengths.Of(step.After);
        return move.Kind switch
        {
            MoveKind.Rapid => RapidName(step, index) + Way(move, lengths) + Dot + Times.Of(move.Seconds),
            MoveKind.Feed when move.Role == MoveRole.Probe => "feed until contact, at most" + Way(move, lengths) + Dot + lengths.Feed(move.Feed),
            MoveKind.Feed => "feed" + Way(move, lengths) + Dot + lengths.Feed(move.Feed) + Dot + Times.Of(move.Seconds),
            MoveKind.Arc => ArcName(move) + Way(move, lengths) + Dot + Centre(move, lengths) + Dot + lengths.Feed(move.Feed) + Dot + Times.Of(move.Seconds),
            MoveKind.Dwell => "dwell " + Times.Of(move.Seconds) + InBrackets(Times.Turns(move.Seconds, step.After)),
            MoveKind.Spindle => Spindle(move, step),
            MoveKind.Coolant => step.After.Coolant == CoolantState.Off ? "coolant off" : "coolant on",
            MoveKind.ToolChange => $"tool change to {(step.After.Tool < 0 ? "a tool " + Lengths.NotKnown : "T" + step.After.Tool)}{Dot}{Times.Of(move.Seconds)}",
            _ => move.Role == MoveRole.InHole ? "stop: the tool is taken out by hand" : "stop",
        };
    }

    /// <summary>All strokes of a pecked hole as one line; moves from <paramref name="first"/> up to <paramref name="end"/> of the step.</summary>
    public static string Pecks(Step step, int first, int end)
    {
        var lengths = Lengths.Of(step.After);
        var axis = Arcs.Axes(step.After.Plane).Third;
        var levels = new List<string>();
        var seconds = 0.0;
        var feed = double.NaN;
        for (var i = first; i < end; i++)
        {
            ref readonly var move = ref step.Moves[i];
            seconds += move.Seconds;
            if (move.Kind != MoveKind.Feed)
                continue;
            feed = move.Feed;
            levels.Add(lengths.Axis((char)('X' + axis), move.To[axis]));
        }
        const int MostLevels = 6;
        var told = levels.Count <= MostLevels ? string.Join(' ', levels) : $"{string.Join(' ', levels.Take(MostLevels - 1))} … {levels[^1]}";
        var between = step.Holes[0].Cycle == 83 ? $"out to {OutTo(step, first, lengths, axis)} between" : "backing off between";
        return $"{Say.Count(levels.Count, "peck")} to {told}, {between}{Dot}{lengths.Feed(feed)}{Dot}{Times.Of(seconds)}";
    }

    /// <summary>Where the first peck comes out to: R, or the level the hole is left at.</summary>
    static string OutTo(Step step, int first, Lengths lengths, int axis)
    {
        while (first < step.Moves.Count - 1 && step.Moves[first].Kind != MoveKind.Rapid)
            first++;
        var level = step.Moves[first].To[axis];
        return level == step.Holes[0].RLevel ? "R" : lengths.Axis((char)('X' + axis), level);
    }

    static string RapidName(Step step, int index) => step.Moves[index].Role switch
    {
        MoveRole.Lift => "lift",
        MoveRole.Hop or MoveRole.FirstTraverse => "traverse",
        MoveRole.Return => "return",
        MoveRole.Machine when step.Words.HasCode('G', 280) || step.Words.HasCode('G', 300) =>
            index + 1 < step.Moves.Count && step.Moves[index + 1].Role == MoveRole.Machine ? "rapid" : "rapid to the reference point",
        MoveRole.Machine => "rapid in machine coordinates",
        _ => "rapid",
    };

    static string ArcName(in Move move) => (move.From == move.To ? "full circle " : "arc ") + (move.Clockwise ? "clockwise" : "counterclockwise");

    /// <summary>Only the axes that move, and the level where the way is level.</summary>
    static string Way(in Move move, Lengths lengths)
    {
        var level = Same(move.From.Z, move.To.Z) && !double.IsNaN(move.To.Z) ? " at Z" + lengths.Number(move.To.Z) : "";
        var to = Axes(move, move.To, lengths);
        if (to.Length == 0)
        {
            var (first, second, _) = Arcs.Axes(move.Plane);
            return move.Kind == MoveKind.Arc ? $" from {Axis(first, move.To, lengths)} {Axis(second, move.To, lengths)}{level}" : level;
        }
        if (to.Contains('?', StringComparison.Ordinal))
            return ", place " + Lengths.NotKnown;
        var from = Axes(move, move.From, lengths);
        return from.Contains('?', StringComparison.Ordinal) ? $" to {to}{level}, from a place {Lengths.NotKnown}" : $" {from} → {to}{level}";
    }

    static string Axes(in Move move, Point3 place, Lengths lengths)
    {
        var text = "";
        for (var axis = 0; axis < 3; axis++)
            if (!Same(move.From[axis], move.To[axis]))
                text += (text.Length > 0 ? " " : "") + Axis(axis, place, lengths);
        return text;
    }

    static string Axis(int axis, Point3 place, Lengths lengths) => (char)('X' + axis) + lengths.Number(place[axis]);

    static bool Same(double a, double b) => a.Equals(b);

    static string Centre(in Move move, Lengths lengths)
    {
        if (!move.Center.IsKnown)
            return "centre " + Lengths.NotKnown;
        var (first, second, _) = Arcs.Axes(move.Plane);
        var radius = Math.Sqrt(Math.Pow(move.From[first] - move.Center[first], 2) + Math.Pow(move.From[second] - move.Center[second], 2));
        return $"centre {Axis(first, move.Center, lengths)} {Axis(second, move.Center, lengths)}, radius {lengths.Length(radius)}";
    }

    static string Spindle(in Move move, Step step)
    {
        if (move.Role is MoveRole.InHole or MoveRole.Return)
        {
            return (StepFacts.CycleOf(step) is 84 or 74, move.Role) switch
            {
                (true, MoveRole.InHole) => "spindle reverses",
                (true, _) => "spindle turns forward again",
                (false, MoveRole.Return) => "spindle on again",
                _ => "spindle stops",
            };
        }
        var speed = double.IsNaN(step.After.Speed) ? ", speed " + Lengths.NotKnown : $" at S{Say.Number(step.After.Speed)}";
        return step.After.Spindle switch
        {
            SpindleState.Clockwise => "spindle clockwise" + speed,
            SpindleState.Counterclockwise => "spindle counterclockwise" + speed,
            _ => "spindle stops",
        };
    }

    static string InBrackets(string text) => text.Length == 0 ? "" : $" ({text})";
}
