using System.Globalization;
using System.Text;
using NcLanguage.Machine.Geometry;
using NcLanguage.Machine.Setups;

namespace NcLanguage.Checks.Tests.Clearance.Sampling;

/// <summary>A random table: boxes, upright cylinders, tools. Made of a seed, so that a failure can be made again. Lengths in mm.</summary>
sealed class Fixture
{
    public Fixture(Random random)
    {
        for (var i = random.Next(1, 5); i > 0; i--)
            Obstacles.Add(random.Next(2) == 0 ? Box(random, $"block {i}") : Stud(random, $"stud {i}"));
        for (var i = 1; i <= 2; i++)
            Tools.Add(RandomTool(random, i));
    }

    public List<Obstacle> Obstacles { get; } = [];

    public List<Tool> Tools { get; } = [];

    /// <summary>As a setup file.</summary>
    public string Json(double clearance = 2)
    {
        var text = new StringBuilder(string.Create(CultureInfo.InvariantCulture, $$"""{ "clearance": {{clearance}}, "obstacles": ["""));
        text.AppendJoin(", ", Obstacles.Select(obstacle => obstacle is CylinderObstacle stud
            ? string.Create(CultureInfo.InvariantCulture, $$"""{ "name": "{{stud.Name}}", "center": [{{stud.CenterX}}, {{stud.CenterY}}], "diameter": {{stud.Diameter}}, "bottom": {{stud.Bottom}}, "top": {{stud.Top}} }""")
            : $$"""{ "name": "{{obstacle.Name}}", "min": {{List(obstacle.Bounds.Min)}}, "max": {{List(obstacle.Bounds.Max)}} }"""));
        text.Append("], \"tools\": [");
        text.AppendJoin(", ", Tools.Select(Row));
        return text.Append("] }").ToString();
    }

    static string Row(Tool tool)
    {
        var members = new List<string> { $"\"number\": {tool.Number}", $"\"kind\": \"{ToolKindName.Format(tool.Kind!.Value)}\"" };
        void Add(string name, double? value)
        {
            if (value is { } known)
                members.Add(string.Create(CultureInfo.InvariantCulture, $"\"{name}\": {known}"));
        }
        Add("diameter", tool.Diameter);
        Add("pointAngle", tool.PointAngle);
        Add("fluteLength", tool.FluteLength);
        Add("shankDiameter", tool.ShankDiameter);
        Add("length", tool.Length);
        Add("holderDiameter", tool.HolderDiameter);
        Add("holderGauge", tool.HolderGauge);
        Add("radiusOffset", tool.Number);
        return "{ " + string.Join(", ", members) + " }";
    }

    static string List(Point3 place) => string.Create(CultureInfo.InvariantCulture, $"[{place.X}, {place.Y}, {place.Z}]");

    /// <summary>A length on the grid of 0.001 mm, now and then on whole millimetres, where faces and moves line up.</summary>
    public static double Between(Random random, double low, double high)
    {
        var value = low + random.NextDouble() * (high - low);
        return Math.Round(value, random.Next(4) == 0 ? 0 : 3);
    }

    static BoxObstacle Box(Random random, string name)
    {
        var corner = new Point3(Between(random, -50, 30), Between(random, -50, 30), Between(random, -20, 12));
        // Rounded once more: sums of decimals are none.
        var other = new Point3(Math.Round(corner.X + Between(random, 2, 40), 3), Math.Round(corner.Y + Between(random, 2, 40), 3), Math.Round(corner.Z + Between(random, 2, 30), 3));
        return new(name, new(corner, other));
    }

    static CylinderObstacle Stud(Random random, string name)
    {
        var bottom = Between(random, -20, 12);
        return new(name, Between(random, -50, 50), Between(random, -50, 50), Between(random, 2, 40), bottom, Math.Round(bottom + Between(random, 2, 30), 3));
    }

    static Tool RandomTool(Random random, int number)
    {
        var (kind, angle) = random.Next(4) switch
        {
            0 => (ToolKind.Drill, 118.0),
            1 => (ToolKind.SpotDrill, Between(random, 60, 150)),
            2 => (ToolKind.EndMill, (double?)null),
            _ => (ToolKind.SlotMill, null),
        };
        var tool = new Tool { Number = number, Kind = kind, PointAngle = angle, Diameter = Between(random, 1, 20) };
        if (random.Next(4) > 0)
            tool = tool with { FluteLength = Between(random, 2, 25), ShankDiameter = random.Next(2) == 0 ? Between(random, 1, 24) : null };
        if (random.Next(4) > 0)
            tool = tool with { HolderGauge = 50, Length = Math.Round(50 + Between(random, 26, 60), 3), HolderDiameter = Between(random, 20, 60) };
        return tool;
    }
}
