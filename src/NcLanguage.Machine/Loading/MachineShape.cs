using NcLanguage.Machine.Geometry;
using NcLanguage.Machine.Json;
using NcLanguage.Machine.Profiles;

namespace NcLanguage.Machine.Loading;

/// <summary>The members of a machine file. The target starts as the profile that "base" names.</summary>
static class MachineShape
{
    static readonly string[] LimitNames = ["min", "max"];

    public static ObjectShape<MachineProfile> Shape { get; } = new(
        "the machine",
        new("$schema", (machine, _, _) => machine),
        new("base", (machine, _, _) => machine), // read ahead of all others: MachineFile
        new("units", (machine, _, _) => machine), // read ahead of all others: UnitReader
        new("name", (machine, m, read) => machine with { Name = read.Text(m, $"the machine is called {machine.Name}") ?? machine.Name }),
        new("travel", Travel) { Unread = machine => machine with { TravelX = null, TravelY = null, TravelZ = null } },
        new("home", (machine, m, read) => machine with { Home = read.Point(m, "where it lies is not known") ?? Point3.Unknown })
        {
            Unread = machine => machine with { Home = Point3.Unknown },
        },
        new("toolChange", (machine, m, read) => machine with { ToolChange = read.Point(m, "where it lies is not known") ?? Point3.Unknown })
        {
            Unread = machine => machine with { ToolChange = Point3.Unknown },
        },
        new("rapid", Rapid),
        new("acceleration", (machine, m, read) => machine with
        {
            Acceleration = read.Length(m, Bounds.Rate, Stays(machine.Acceleration, "mm/s²")) ?? machine.Acceleration,
        }),
        new("maxFeed", (machine, m, read) => machine with { MaxFeed = read.Length(m, Bounds.Rate) }) { Unread = machine => machine with { MaxFeed = null } },
        new("spindle", Spindle) { Unread = machine => machine with { Spindle = null } },
        new("toolChangeSeconds", (machine, m, read) => machine with
        {
            ToolChangeSeconds = read.Number(m, Bounds.Seconds, Stays(machine.ToolChangeSeconds, "s")) ?? machine.ToolChangeSeconds,
        }),
        new("tools", (machine, m, read) => machine with { Tools = read.Whole(m, Bounds.ToolPlaces) }) { Unread = machine => machine with { Tools = null } },
        new("codes", (machine, m, read) => machine with { Codes = MachineCodeShape.Read(machine.Codes, m, read) }),
        new("readings", (machine, m, read) => machine with { Readings = ReadingsShape.Read(machine.Readings, m, read) }));

    static readonly ObjectShape<MachineProfile> TravelShape = new(
        "the travel",
        new("x", (machine, m, read) => machine with { TravelX = AxisTravel(m, read) }) { Unread = machine => machine with { TravelX = null } },
        new("y", (machine, m, read) => machine with { TravelY = AxisTravel(m, read) }) { Unread = machine => machine with { TravelY = null } },
        new("z", (machine, m, read) => machine with { TravelZ = AxisTravel(m, read) }) { Unread = machine => machine with { TravelZ = null } });

    static readonly ObjectShape<Point3> RapidShape = new("the rapid rate", AxisRapid("x", 0), AxisRapid("y", 1), AxisRapid("z", 2));

    static readonly ObjectShape<(double? Min, double? Max)> SpindleShape = new(
        "the spindle",
        new("min", (speeds, m, read) => (read.Number(m, Bounds.Speed), speeds.Max)) { Unread = speeds => (null, speeds.Max) },
        new("max", (speeds, m, read) => (speeds.Min, read.Number(m, Bounds.Speed)), Presence.Required) { Unread = speeds => (speeds.Min, null) });

    static MachineProfile Travel(MachineProfile machine, JsonMember member, ValueReader read) =>
        read.IsObject(member.Value, "\"travel\"")
            ? TravelShape.Read(machine, member.Value, read)
            : machine with { TravelX = null, TravelY = null, TravelZ = null };

    static Limits? AxisTravel(JsonMember member, ValueReader read)
    {
        if (read.Numbers(member, LimitNames) is not { } limits)
            return null;
        if (limits[0] <= limits[1])
            return read.Unit.IsKnown ? new Limits(read.ToMm(limits[0])!.Value, read.ToMm(limits[1])!.Value) : null;
        read.Wrong(
            member.Value.Items[0].Range,
            $"In {char.ToUpperInvariant(member.Name[0])} the min of the travel, {Bounds.Format(limits[0])}, is above its max, {Bounds.Format(limits[1])}",
            "the travel of this axis is not known");
        return null;
    }

    static MachineProfile Rapid(MachineProfile machine, JsonMember member, ValueReader read)
    {
        if (member.Value.Kind == JsonKind.Object)
            return machine with { Rapid = RapidShape.Read(machine.Rapid, member.Value, read) };
        if (member.Value.Kind == JsonKind.Number)
            return read.Length(member, Bounds.Rate, "the rapid rates of the base stay") is { } rate ? machine with { Rapid = new(rate, rate, rate) } : machine;
        read.Wrong(
            member.Value.Range, $"\"rapid\" must be a number for all axes or an object with x, y and z, not {ValueReader.Describe(member.Value)}",
            "the rapid rates of the base stay");
        return machine;
    }

    static Field<Point3> AxisRapid(string name, int axis) => new(
        name,
        (rapid, m, read) => rapid.With(axis, read.Length(m, Bounds.Rate, Stays(rapid[axis], "mm/min")) ?? rapid[axis]));

    static MachineProfile Spindle(MachineProfile machine, JsonMember member, ValueReader read)
    {
        if (!read.IsObject(member.Value, "\"spindle\""))
            return machine with { Spindle = null };
        var (min, max) = SpindleShape.Read((machine.Spindle?.Min ?? 0, null), member.Value, read);
        if (min is not { } least || max is not { } greatest)
            return machine with { Spindle = null };
        if (least <= greatest)
            return machine with { Spindle = new Limits(least, greatest) };
        read.Wrong(
            (member.Value.Single("min") ?? member.Value).Range,
            $"The spindle's min, {Bounds.Format(least)}, is above its max, {Bounds.Format(greatest)}", "its limits are not known");
        return machine with { Spindle = null };
    }

    static string Stays(double value, string unit) => $"the base's {Bounds.Format(value)} {unit} stays";
}
