using NcLanguage.Machine.Json;
using NcLanguage.Machine.Setups;

namespace NcLanguage.Machine.Loading;

/// <summary>One row of the setup's tool list.</summary>
static class ToolShape
{
    const int NoNumber = -1;

    public static ObjectShape<Tool> Shape { get; } = new(
        "a tool",
        new("number", (tool, m, read) => tool with { Number = read.Whole(m, Bounds.ToolNumber, "the tool is left out") ?? NoNumber }, Presence.Required)
        {
            Unread = tool => tool with { Number = NoNumber },
        },
        new("kind", (tool, m, read) => tool with { Kind = read.Choice(m, ToolKindName.All) is { } name ? ToolKindName.Parse(name) : null }),
        new("diameter", (tool, m, read) => tool with { Diameter = read.Length(m, Bounds.AboveZero) }),
        new("pointAngle", (tool, m, read) => tool with { PointAngle = read.Number(m, Bounds.Angle) }),
        new("cornerRadius", (tool, m, read) => tool with { CornerRadius = WithinRadius(read.Length(m, Bounds.AboveZero), tool, m, read) }),
        new("length", (tool, m, read) => tool with { Length = read.Length(m, Bounds.AboveZero) }),
        new("fluteLength", (tool, m, read) => tool with { FluteLength = WithinLength(read.Length(m, Bounds.AboveZero), tool, m, read) }),
        new("flutes", (tool, m, read) => tool with { Flutes = read.Whole(m, Bounds.Flutes) }),
        new("centreCutting", (tool, m, read) => tool with { CentreCutting = read.Truth(m) }),
        new("throughCoolant", (tool, m, read) => tool with { ThroughCoolant = read.Truth(m) }),
        new("turns", (tool, m, read) => tool with { Turns = read.Truth(m) }),
        new("shankDiameter", (tool, m, read) => tool with { ShankDiameter = read.Length(m, Bounds.AboveZero) }),
        new("holderDiameter", (tool, m, read) => tool with { HolderDiameter = read.Length(m, Bounds.AboveZero) }),
        new("holderGauge", (tool, m, read) => tool with { HolderGauge = WithinLength(read.Length(m, Bounds.FromZero), tool, m, read) }),
        new("material", (tool, m, read) => tool with { Material = read.Text(m) }),
        new("lengthOffset", (tool, m, read) => tool with { LengthOffset = read.Whole(m, Bounds.ToolNumber) }),
        new("radiusOffset", (tool, m, read) => tool with { RadiusOffset = read.Whole(m, Bounds.ToolNumber) }),
        new("pitch", (tool, m, read) => tool with { Pitch = read.Length(m, Bounds.AboveZero) }));

    /// <summary>The tool of a row, or null where it has no number to be called by.</summary>
    public static Tool? Read(JsonValue row, ValueReader read)
    {
        if (!read.IsObject(row, "A tool", "it is left out"))
            return null;
        var tool = Shape.Read(new Tool { Number = NoNumber, Line = read.Problems.LineOf(row.Range) }, row, read);
        return tool.Number == NoNumber ? null : tool;
    }

    static double? WithinRadius(double? corner, Tool tool, JsonMember member, ValueReader read)
    {
        if (corner is not { } mm || tool.Diameter is not { } diameter || mm <= diameter / 2)
            return corner;
        var scale = read.Unit.Millimetres;
        read.Wrong(member.Value.Range, $"\"{member.Name}\" is {Bounds.Format(mm / scale)} but the tool's radius is only {Bounds.Format(diameter / 2 / scale)}");
        return null;
    }

    // Length runs from the gauge line to the tip: what is a part of it cannot be longer.
    static double? WithinLength(double? part, Tool tool, JsonMember member, ValueReader read)
    {
        if (part is not { } mm || tool.Length is not { } length || mm <= length)
            return part;
        var scale = read.Unit.Millimetres;
        read.Wrong(member.Value.Range, $"\"{member.Name}\" is {Bounds.Format(mm / scale)} but the tool's whole length is only {Bounds.Format(length / scale)}");
        return null;
    }
}
