using System.Collections.Immutable;
using NcLanguage.Machine.Geometry;
using NcLanguage.Machine.Json;
using NcLanguage.Machine.Setups;

namespace NcLanguage.Machine.Loading;

/// <summary>The members of a setup file.</summary>
static class SetupShape
{
    static readonly string UsualClearance = $"the usual {Setup.DefaultClearance:0.###} mm is used";
    const string UnknownFrame = "where stock, obstacles and holes stand is not known";

    public static ObjectShape<Setup> Shape { get; } = new(
        "the setup",
        new("$schema", (setup, _, _) => setup),
        new("units", (setup, _, read) => setup with { IsInch = read.Unit == LengthUnit.Inch }), // read ahead of all others: UnitReader
        new("frame", (setup, m, read) => setup with
        {
            Frame = read.Choice(m, WorkOffsetName.All, UnknownFrame, name => WorkOffsetName.Parse(name) is not null, WorkOffsetName.FurtherNames) is { } name ? WorkOffsetName.Parse(name)!.Value : Setup.UnknownFrame,
        })
        { Unread = setup => setup with { Frame = Setup.UnknownFrame } },
        new("machine", (setup, m, read) => setup with { Machine = read.Text(m) }),
        new("material", (setup, m, read) => setup with { Material = read.Text(m) }),
        new("stock", StockShape.Read),
        new("clearance", (setup, m, read) => setup with { Clearance = read.Length(m, Bounds.FromZero, UsualClearance) ?? Setup.DefaultClearance }),
        new("clampHeight", (setup, m, read) => setup with { ClampHeight = read.Length(m, Bounds.Coordinate) }),
        new("obstacles", (setup, m, read) => WithObstacles(setup, m, read)) { Unread = setup => setup with { ObstaclesAreKnown = false } },
        new("supports", (setup, m, read) => WithSupports(setup, m, read)) { Unread = setup => setup with { ObstaclesAreKnown = false } },
        new("workOffsets", (setup, m, read) => setup with { WorkOffsets = WorkOffsets(m, read) }),
        new("tools", (setup, m, read) => setup with { Tools = Tools(m, read) }),
        new("holes", (setup, m, read) => setup with { Holes = [.. read.Rows(m, HoleShape.Read)] }),
        new("variables", Variables));

    static readonly ObjectShape<ImmutableDictionary<int, Point3>> WorkOffsetsShape = new(
        "the list of work offsets",
        [.. WorkOffsetName.All.Select(WorkOffsetField)])
    {
        Family = name => name.StartsWith("G54.1", StringComparison.Ordinal) && WorkOffsetName.Parse(name) is not null ? WorkOffsetField(name) : null,
        WhyNot = name =>
            name == "G53" ? "G53 is machine coordinates, which have no offset."
            : name.StartsWith("G54.1", StringComparison.OrdinalIgnoreCase) ? $"a further work offset is written \"G54.1 P3\", with a whole number from 1 to {WorkOffsetName.MostFurther}."
            : null,
    };

    static Field<ImmutableDictionary<int, Point3>> WorkOffsetField(string name) =>
        new(name, (offsets, m, read) => read.Point(m) is { } place ? offsets.SetItem(WorkOffsetName.Parse(name)!.Value, place) : offsets);

    static Setup WithObstacles(Setup setup, JsonMember member, ValueReader read)
    {
        var obstacles = Obstacles(member, ObstacleShape.Obstacle, read, out var complete);
        foreach (var (obstacle, place) in obstacles)
        {
            if (setup.Stock is not { } stock || !stock.Contains(obstacle.Bounds.Min) || !stock.Contains(obstacle.Bounds.Max) || setup.Hollows.Any(hollow => StandsIn(hollow, obstacle.Bounds)))
                continue;
            read.Problems.Add(
                ProblemKind.ObstacleInside, new(place.Start, place.Start + 1),
                $"{MessageText.Clip(obstacle.Name)} lies wholly inside the stock, from Z{Shown(obstacle.Bottom, read)} to Z{Shown(obstacle.Top, read)} where the stock "
                + $"reaches from Z{Shown(stock.Min.Z, read)} to Z{Shown(stock.Max.Z, read)}: nothing can be clamped there.");
        }
        return setup with
        {
            Obstacles = [.. obstacles.Select(o => o.Obstacle)], ObstaclesAreListed = true, ObstaclesAreKnown = setup.ObstaclesAreKnown && complete,
        };
    }

    /// <summary>Whether a box stands in a hollow: a clamp in a window, a bolt through a bore. Its corners may be in the hollow's.</summary>
    static bool StandsIn(Hollow hollow, Box3 box) =>
        box.Min.Z >= hollow.Bottom && box.Min.X >= hollow.MinX && box.Max.X <= hollow.MaxX && box.Min.Y >= hollow.MinY && box.Max.Y <= hollow.MaxY;

    static Setup WithSupports(Setup setup, JsonMember member, ValueReader read)
    {
        var supports = Obstacles(member, ObstacleShape.Support, read, out var complete);
        return setup with { Supports = [.. supports.Select(s => s.Obstacle)], ObstaclesAreKnown = setup.ObstaclesAreKnown && complete };
    }

    static List<(Obstacle Obstacle, ByteRange Place)> Obstacles(JsonMember member, ObstacleShape shape, ValueReader read, out bool complete)
    {
        var found = new List<(Obstacle, ByteRange)>();
        var items = read.Items(member);
        for (var i = 0; i < (items?.Count ?? 0); i++)
        {
            if (shape.Read(items![i], i + 1, read) is { } obstacle)
                found.Add((obstacle, items[i].Range));
        }
        complete = items is not null && found.Count == items.Count;
        return found;
    }

    static ImmutableArray<Tool> Tools(JsonMember member, ValueReader read)
    {
        var tools = new List<Tool>();
        var byNumber = new Dictionary<int, Tool>();
        foreach (var row in read.Items(member) ?? [])
        {
            if (ToolShape.Read(row, read) is not { } tool)
                continue;
            if (!byNumber.TryAdd(tool.Number, tool))
            {
                read.Problems.Add(
                    ProblemKind.ToolRepeated, row.Single("number")?.Range ?? row.Range,
                    $"Tool {tool.Number} is listed already on line {byNumber[tool.Number].Line}; only that first row is used.");
            }
            else
            {
                tools.Add(tool);
            }
        }
        return [.. tools];
    }

    static ImmutableDictionary<int, Point3> WorkOffsets(JsonMember member, ValueReader read)
    {
        var none = ImmutableDictionary<int, Point3>.Empty;
        return read.IsObject(member.Value, "\"workOffsets\"") ? WorkOffsetsShape.Read(none, member.Value, read) : none;
    }

    static Setup Variables(Setup setup, JsonMember member, ValueReader read)
    {
        var (values, lines) = (ImmutableDictionary<string, double>.Empty, ImmutableDictionary<string, int>.Empty);
        if (!read.IsObject(member.Value, "\"variables\""))
            return setup;
        foreach (var group in member.Value.Members.GroupBy(m => m.Name))
        {
            if (!VariableName.IsSound(group.Key))
                VariableName.Report(group.First(), read);
            else if (read.TheOnly([.. group]) is { Value.Kind: not JsonKind.Null } only && read.Number(only, Bounds.Variable) is { } number)
                (values, lines) = (values.SetItem(group.Key, number), lines.SetItem(group.Key, read.Problems.LineOf(only.NameRange)));
        }
        return setup with { Variables = values, VariableLines = lines };
    }

    static string Shown(double mm, ValueReader read) => Bounds.Format(mm / read.Unit.Millimetres);
}
