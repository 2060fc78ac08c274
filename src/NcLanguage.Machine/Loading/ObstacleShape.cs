using NcLanguage.Machine.Geometry;
using NcLanguage.Machine.Json;
using NcLanguage.Machine.Setups;

namespace NcLanguage.Machine.Loading;

/// <summary>One obstacle or support: a box (min, max) or an upright cylinder (center, diameter, bottom, top).</summary>
sealed class ObstacleShape
{
    static readonly string[] BoxParts = ["min", "max"];
    static readonly string[] CylinderParts = ["center", "diameter", "bottom", "top"];
    static readonly string[] CenterNames = ["X", "Y"];

    sealed record Draft
    {
        public string? Name { get; init; }

        public Point3? Min { get; init; }

        public Point3? Max { get; init; }

        /// <summary>X and Y in the file's unit.</summary>
        public double[]? Center { get; init; }

        public double? Diameter { get; init; }

        public double? Bottom { get; init; }

        public double? Top { get; init; }
    }

    readonly string _what;
    readonly string _withArticle;
    readonly string _leftOut;
    readonly ObjectShape<Draft> _shape;

    ObstacleShape(string what, string withArticle)
    {
        (_what, _withArticle, _leftOut) = (what, withArticle, $"the {what} is left out");
        _shape = new(
            withArticle,
            new("name", (draft, m, read) => draft with { Name = read.Text(m, "it is called by its number in the list") }),
            new("min", (draft, m, read) => draft with { Min = read.Point(m, _leftOut) }, Presence.NotNull),
            new("max", (draft, m, read) => draft with { Max = read.Point(m, _leftOut) }, Presence.NotNull),
            new("center", (draft, m, read) => draft with { Center = read.Numbers(m, CenterNames, _leftOut) }, Presence.NotNull),
            new("diameter", (draft, m, read) => draft with { Diameter = read.Length(m, Bounds.AboveZero, _leftOut) }, Presence.NotNull),
            new("bottom", (draft, m, read) => draft with { Bottom = read.Length(m, Bounds.Coordinate, _leftOut) }, Presence.NotNull),
            new("top", (draft, m, read) => draft with { Top = read.Length(m, Bounds.Coordinate, _leftOut) }, Presence.NotNull));
    }

    public static ObstacleShape Obstacle { get; } = new("obstacle", "an obstacle");

    public static ObstacleShape Support { get; } = new("support", "a support");

    /// <summary>What a row describes, or null where it cannot be known. Where it gives no name, its <paramref name="number"/> in the list, from 1, is its name.</summary>
    public Obstacle? Read(JsonValue row, int number, ValueReader read)
    {
        if (!read.IsObject(row, MessageText.Capital(_withArticle), "it is left out"))
            return null;
        var draft = _shape.Read(new Draft(), row, read);
        var name = draft.Name ?? $"{_what} {number}";
        var line = read.Problems.LineOf(row.Range);
        if (!HasOneForm(row, draft.Name ?? MessageText.Capital(name), read))
            return null;
        if (row.Has("min"))
            return read.Box(draft.Min, draft.Max, row, name, _leftOut) is { } box ? new BoxObstacle(name, box) { Line = line } : null;
        return Cylinder(draft, row, name, read) is { } cylinder ? cylinder with { Line = line } : null;
    }

    bool HasOneForm(JsonValue row, string name, ValueReader read)
    {
        string[] given = [.. BoxParts.Concat(CylinderParts).Where(row.Has)];
        var isBox = given.Intersect(BoxParts).Any();
        var isCylinder = given.Intersect(CylinderParts).Any();
        var missing = (isBox ? BoxParts : CylinderParts).Except(given).Select(part => $"\"{part}\"");
        var complaint = (isBox, isCylinder) switch
        {
            (true, true) => "mixes the members of a box (min, max) with those of a cylinder (center, diameter, bottom, top)",
            (false, false) => "needs min and max (a box), or center, diameter, bottom and top (an upright cylinder)",
            _ when missing.Any() => $"lacks {string.Join(" and ", missing)}",
            _ => null,
        };
        if (complaint is null)
            return true;
        read.Wrong(new(row.Range.Start, row.Range.Start + 1), $"{MessageText.Clip(name)} {complaint}", _leftOut);
        return false;
    }

    CylinderObstacle? Cylinder(Draft draft, JsonValue row, string name, ValueReader read)
    {
        var x = read.ToMm(draft.Center?[0]);
        var y = read.ToMm(draft.Center?[1]);
        if (x is null || y is null || draft.Diameter is null || draft.Bottom is not { } bottom || draft.Top is not { } top)
            return null;
        if (bottom <= top)
            return new CylinderObstacle(name, x.Value, y.Value, draft.Diameter.Value, bottom, top);
        var scale = read.Unit.Millimetres;
        read.Wrong(
            row.Single("bottom")?.Range ?? row.Range,
            $"The bottom of {MessageText.Clip(name)}, {Bounds.Format(bottom / scale)}, is above its top, {Bounds.Format(top / scale)}", _leftOut);
        return null;
    }
}
