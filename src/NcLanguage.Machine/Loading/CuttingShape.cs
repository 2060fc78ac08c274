using System.Collections.Immutable;
using NcLanguage.Machine.Cutting;
using NcLanguage.Machine.Json;
using NcLanguage.Machine.Profiles;
using NcLanguage.Machine.Setups;

namespace NcLanguage.Machine.Loading;

/// <summary>The members of a file of cutting data.</summary>
static class CuttingShape
{
    /// <summary>A foot, exact since the inch is 25.4 mm.</summary>
    const double MetresPerFoot = 0.3048;

    const string LeftOut = "the row is left out";
    static readonly string[] LimitNames = ["least", "greatest"];

    /// <summary>What a file holds.</summary>
    internal sealed record Content(ImmutableArray<CuttingMaterial> Materials, ImmutableArray<CuttingRow> Rows);

    public static ObjectShape<Content> Shape { get; } = new(
        "the cutting data",
        new("$schema", (content, _, _) => content),
        new("units", (content, _, _) => content), // read ahead of all others: UnitReader
        new("materials", (content, m, read) => content with { Materials = [.. read.Rows(m, Material)] }),
        new("rows", (content, m, read) => content with { Rows = [.. read.Rows(m, Row)] }));

    static readonly ObjectShape<CuttingMaterial> MaterialShape = new(
        "a material",
        new("name", (material, m, read) => material with { Name = read.Text(m, "the material is left out") ?? "" }, Presence.Required) { Unread = material => material with { Name = "" } },
        new("alsoCalled", (material, m, read) => material with { AlsoCalled = Texts(m, read) ?? [] }),
        new("family", (material, m, read) => material with { Family = read.Text(m) }));

    // A row that is to be left out has no kinds.
    static readonly ObjectShape<CuttingRow> RowShape = new(
        "a row",
        new("material", (row, m, read) => Texts(m, read, LeftOut) is { } names ? row with { Materials = names } : row with { Kinds = default }),
        new("kind", (row, m, read) => row with { Kinds = row.Kinds.IsDefault ? default : Kinds(m, read) }, Presence.Required) { Unread = row => row with { Kinds = default } },
        new("toolMaterial", (row, m, read) => Texts(m, read, LeftOut) is { } names ? row with { ToolMaterials = names } : row with { Kinds = default }),
        new("diameter", (row, m, read) => Limits(m, read, Millimetres(read), LeftOut) is { } sizes ? row with { Diameter = sizes } : row with { Kinds = default }),
        new("speed", (row, m, read) => row with { Speed = Limits(m, read, read.Unit.IsKnown ? read.Unit == LengthUnit.Inch ? MetresPerFoot : 1 : null) }),
        new("feedPerTurn", (row, m, read) => row with { FeedPerTurn = Limits(m, read, Millimetres(read)) }),
        new("feedPerTooth", (row, m, read) => row with { FeedPerTooth = Limits(m, read, Millimetres(read)) }),
        new("source", (row, m, read) => row with { Source = read.Text(m, LeftOut) ?? "" }, Presence.Required));

    static double? Millimetres(ValueReader read) => read.Unit.IsKnown ? read.Unit.Millimetres : null;

    static CuttingMaterial? Material(JsonValue value, ValueReader read)
    {
        if (!read.IsObject(value, "A material", "it is left out"))
            return null;
        var material = MaterialShape.Read(new CuttingMaterial("", [], null), value, read);
        return material.Name.Length == 0 ? null : material;
    }

    static CuttingRow? Row(JsonValue value, ValueReader read)
    {
        if (!read.IsObject(value, "A row", "it is left out"))
            return null;
        var row = RowShape.Read(new CuttingRow(), value, read);
        if (value.Single("kind") is { Kind: JsonKind.Array, Items.Count: 0 } none)
            read.Wrong(none.Range, "\"kind\" names no kind of tool", LeftOut);
        if (!value.Has("speed") && !value.Has("feedPerTurn") && !value.Has("feedPerTooth"))
            read.Wrong(new(value.Range.Start, value.Range.Start + 1), "A row needs \"speed\", \"feedPerTurn\" or \"feedPerTooth\"", "it is left out");
        return row.Kinds.IsDefaultOrEmpty || row.Source.Length == 0 ? null : row;
    }

    static ImmutableArray<ToolKind> Kinds(JsonMember member, ValueReader read)
    {
        var kinds = ImmutableArray.CreateBuilder<ToolKind>();
        foreach (var item in read.Items(member) ?? [])
            if (read.Choice(new JsonMember(member.Name, member.NameRange, item), ToolKindName.All, "it is left out") is { } name)
                kinds.Add(ToolKindName.Parse(name)!.Value);
        return kinds.ToImmutable();
    }

    /// <summary>A list of names; null where it is none.</summary>
    static ImmutableArray<string>? Texts(JsonMember member, ValueReader read, string? instead = null)
    {
        if (member.Value.Kind != JsonKind.Array)
        {
            read.Wrong(member.Value.Range, $"\"{member.Name}\" must be a list in brackets [ ], not {ValueReader.Describe(member.Value)}", instead);
            return null;
        }
        var texts = ImmutableArray.CreateBuilder<string>();
        foreach (var item in member.Value.Items)
            if (read.Text(new JsonMember(member.Name, member.NameRange, item), "it is left out") is { } text)
                texts.Add(text);
        // A list of nothing but mistakes must not stand for "all".
        return texts.Count > 0 || member.Value.Items.Count == 0 ? texts.ToImmutable() : null;
    }

    /// <summary>Two numbers above 0, the least first, times <paramref name="scale"/>; null where they are none or the unit is not known.</summary>
    static Limits? Limits(JsonMember member, ValueReader read, double? scale, string? instead = null)
    {
        if (read.Numbers(member, LimitNames, instead) is not { } limits)
            return null;
        for (var i = 0; i < limits.Length; i++)
        {
            if (limits[i] > 0)
                continue;
            read.Wrong(member.Value.Items[i].Range, $"The {LimitNames[i]} of \"{member.Name}\" is {Bounds.Format(limits[i])} but must be above 0", instead);
            return null;
        }
        if (limits[0] > limits[1])
        {
            read.Wrong(
                member.Value.Items[0].Range, $"The least of \"{member.Name}\", {Bounds.Format(limits[0])}, is above its greatest, {Bounds.Format(limits[1])}", instead);
            return null;
        }
        return scale is { } factor ? new Limits(limits[0] * factor, limits[1] * factor) : null;
    }
}
