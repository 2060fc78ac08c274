using System.Text.Json;
using NcLanguage.Control.Moves;
using NcLanguage.Corpus.Tests.ClosedForms;
using NcLanguage.Machine.Profiles;
using NcLanguage.Reports.Trace;
using NcLanguage.Syntax.Lexing;

namespace NcLanguage.Corpus.Tests;

/// <summary>Operations, tools and program say the same, for every program of the corpus; and the time they say is that of a velocity integrated numerically.</summary>
public sealed class OperationTests
{
    /// <summary>JSON numbers are rounded to a millionth each.</summary>
    const double Rounding = 1e-4;

    public static TheoryData<string> Programs => [.. CorpusProgram.Names];

    [Theory]
    [MemberData(nameof(Programs))]
    public void Operations_and_tools_add_up_to_the_trace(string name)
    {
        var trace = TraceOf(name);
        var operations = trace.GetProperty("operations").EnumerateArray().ToList();
        foreach (var parts in new[] { operations, [.. trace.GetProperty("tools").EnumerateArray()] })
        {
            Assert.Equal(Number(trace, "seconds"), parts.Sum(part => Number(part, "seconds")), Rounding);
            Assert.Equal(Number(trace, "unknownMoves"), parts.Sum(part => Number(part, "unknownMoves")));
            foreach (var way in new[] { "rapid", "cut" })
                Assert.Equal(Number(trace.GetProperty("distance"), way), parts.Sum(part => Number(part.GetProperty("distance"), way)), Rounding);
            Assert.All(parts, part => Assert.Equal(Number(part, "seconds"), part.GetProperty("secondsOf").EnumerateObject().Sum(kind => kind.Value.GetDouble()), Rounding));
        }
        var moves = trace.GetProperty("steps").EnumerateArray().SelectMany(step => step.GetProperty("moves").EnumerateArray()).ToList();
        foreach (var (kind, kinds) in new[] { ("rapid", "rapid"), ("feed", "feed arc"), ("dwell", "dwell"), ("toolChange", "toolChange") })
            Assert.Equal(
                moves.Where(move => kinds.Split(' ').Contains(move.GetProperty("kind").GetString())).Sum(move => Number(move, "seconds")),
                operations.Sum(operation => Number(operation.GetProperty("secondsOf"), kind)), Rounding);
        if (trace.TryGetProperty("removed", out var removed) && removed.ValueKind == JsonValueKind.Number)
            Assert.Equal(removed.GetDouble(), operations.Sum(operation => Number(operation, "removed")), Rounding);
        Assert.Equal(trace.GetProperty("holes").GetArrayLength(), operations.Sum(operation => Number(operation, "holes")));
        Assert.Equal(Enumerable.Range(1, operations.Count), operations.Select(operation => operation.GetProperty("number").GetInt32()));
    }

    [Theory]
    [MemberData(nameof(Programs))]
    public void The_closest_approach_is_the_least_clearance_of_a_move(string name)
    {
        var trace = TraceOf(name);
        var known = trace.GetProperty("steps").EnumerateArray()
            .SelectMany(step => step.GetProperty("moves").EnumerateArray())
            .Where(move => move.TryGetProperty("clearance", out var clearance) && clearance.GetProperty("distance").ValueKind == JsonValueKind.Number)
            .Select(move => Number(move.GetProperty("clearance"), "distance")).ToList();
        if (!trace.TryGetProperty("approaches", out var listed))
        {
            Assert.Empty(known);
            return;
        }
        var approaches = listed.EnumerateArray().ToList();
        Assert.NotEmpty(approaches);
        Assert.Equal(approaches.Select(approach => Number(approach, "distance")).Order(), approaches.Select(approach => Number(approach, "distance")));
        Assert.Equal(known.Min(), Number(approaches[0], "distance"), 1e-5);
        // One for each obstacle in each operation, and the nearest of an operation is the one it tells itself.
        Assert.Distinct(approaches.Select(approach => (Number(approach, "operation"), approach.GetProperty("obstacle").GetString())));
        foreach (var operation in trace.GetProperty("operations").EnumerateArray().Where(operation => operation.TryGetProperty("clearance", out _)))
            Assert.Equal(
                approaches.Where(approach => Number(approach, "operation") == Number(operation, "number")).Min(approach => Number(approach, "distance")),
                Number(operation.GetProperty("clearance"), "distance"), 1e-5);
    }

    /// <summary>Each rapid's speed over time, rising and falling with the acceleration that its slowest axis allows, summed by the trapezoidal rule.</summary>
    [Theory]
    [InlineData("jig-plate")]
    [InlineData("arrow-sizes")]
    [InlineData("two-vises")]
    public void Rapids_take_the_time_of_their_integrated_speed(string name)
    {
        var analysis = CorpusProgram.Of(name).Analyse();
        var machine = analysis.Machine;
        Assert.Equal(RapidPathReading.Straight, machine.Readings.RapidPath);
        var (integrated, rapids) = (0.0, 0);
        var (operations, _) = OperationRun.Of(analysis.Main, (in Block _, in TracedStep step) =>
        {
            foreach (ref readonly var move in step.Step.Moves.Items)
                if (move.Kind == MoveKind.Rapid && !double.IsNaN(move.Length))
                    (integrated, rapids) = (integrated + Integrated(move, machine), rapids + 1);
        }, CancellationToken.None);
        var unknown = Moves.Of(name).Where(move => move.Kind == MoveKind.Rapid && double.IsNaN(move.Length) && !double.IsNaN(move.Seconds)).Sum(move => move.Seconds);
        Assert.True(rapids > 10);
        Assert.Equal(integrated, operations.Totals.RapidSeconds - unknown, rapids * 2e-4);
    }

    /// <summary>Seconds until the way is behind the tool, by small steps of time.</summary>
    static double Integrated(in Move move, MachineProfile machine)
    {
        const double Step = 1e-4;
        var (way, length) = (move.To - move.From, move.Length);
        if (length == 0)
            return 0;
        var (rate, acceleration) = (double.PositiveInfinity, double.PositiveInfinity);
        for (var axis = 0; axis < 3; axis++)
        {
            if (way[axis] == 0)
                continue;
            rate = Math.Min(rate, machine.Rapid[axis] / 60 * length / Math.Abs(way[axis]));
            acceleration = Math.Min(acceleration, machine.Acceleration * length / Math.Abs(way[axis]));
        }
        var (gone, speed, time) = (0.0, 0.0, 0.0);
        // What is left once the tool can only slow down takes as long as the speed takes to fall.
        while (length - gone > speed * speed / (2 * acceleration))
        {
            var next = Math.Min(rate, speed + acceleration * Step);
            gone += (speed + next) / 2 * Step;
            (speed, time) = (next, time + Step);
        }
        return time + speed / acceleration;
    }

    static double Number(JsonElement element, string name) => element.GetProperty(name) is { ValueKind: JsonValueKind.Number } number ? number.GetDouble() : 0;

    static JsonElement TraceOf(string name)
    {
        var analysis = CorpusProgram.Of(name).Analyse();
        using var stream = new MemoryStream();
        using (var json = new Utf8JsonWriter(stream))
            TraceJson.Write(name, analysis.Text, analysis.Main.Job, json, CancellationToken.None);
        return JsonDocument.Parse(stream.ToArray()).RootElement;
    }
}
