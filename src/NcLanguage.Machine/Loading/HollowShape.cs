using NcLanguage.Machine.Geometry;
using NcLanguage.Machine.Json;
using NcLanguage.Machine.Setups;

namespace NcLanguage.Machine.Loading;

/// <summary>One hollow of the stock: a bore (center, diameter) or a slot or pocket along the axes (min, max), down to its bottom or through.</summary>
static class HollowShape
{
    const string LeftOut = "the hollow is left out";
    static readonly string[] BoxParts = ["min", "max"];
    static readonly string[] RoundParts = ["center", "diameter"];
    static readonly string[] PlaceNames = ["X", "Y"];

    sealed record Draft
    {
        public string? Name { get; init; }

        /// <summary>X and Y in the file's unit, as <see cref="Max"/> and <see cref="Center"/>.</summary>
        public double[]? Min { get; init; }

        public double[]? Max { get; init; }

        public double[]? Center { get; init; }

        public double? Diameter { get; init; }

        public double? Bottom { get; init; }

        public double? CornerRadius { get; init; }
    }

    static readonly ObjectShape<Draft> Shape = new(
        "a hollow",
        new("name", (draft, m, read) => draft with { Name = read.Text(m, "it is called by its number in the list") }),
        new("min", (draft, m, read) => draft with { Min = read.Numbers(m, PlaceNames, LeftOut) }, Presence.NotNull),
        new("max", (draft, m, read) => draft with { Max = read.Numbers(m, PlaceNames, LeftOut) }, Presence.NotNull),
        new("center", (draft, m, read) => draft with { Center = read.Numbers(m, PlaceNames, LeftOut) }, Presence.NotNull),
        new("diameter", (draft, m, read) => draft with { Diameter = read.Length(m, Bounds.AboveZero, LeftOut) }, Presence.NotNull),
        new("bottom", (draft, m, read) => draft with { Bottom = read.Length(m, Bounds.Coordinate, LeftOut) ?? double.NaN }),
        new("cornerRadius", (draft, m, read) => draft with { CornerRadius = read.Length(m, Bounds.AboveZero, "its corners count as sharp") }));

    /// <summary>What a row describes, or null where it cannot be known. Where it gives no name, its <paramref name="number"/> in the list, from 1, is its name.</summary>
    public static Hollow? Read(JsonValue row, int number, Box3 stock, ValueReader read)
    {
        if (!read.IsObject(row, "A hollow", "it is left out"))
            return null;
        var draft = Shape.Read(new Draft(), row, read);
        var name = draft.Name ?? $"hollow {number}";
        if (!HasOneForm(row, name, read) || draft.Bottom is double.NaN || Outline(draft, row, name, read) is not { } hollow || !IsInStock(hollow, draft.Bottom, row, stock, read))
            return null;
        return hollow with { Bottom = Math.Max(draft.Bottom ?? stock.Min.Z, stock.Min.Z), Line = read.Problems.LineOf(row.Range) };
    }

    static bool HasOneForm(JsonValue row, string name, ValueReader read)
    {
        string[] given = [.. BoxParts.Concat(RoundParts).Where(row.Has)];
        var isBox = given.Intersect(BoxParts).Any();
        var isRound = given.Intersect(RoundParts).Any();
        var missing = (isBox ? BoxParts : RoundParts).Except(given).Select(part => $"\"{part}\"");
        var complaint = (isBox, isRound) switch
        {
            (true, true) => "mixes the members of a pocket (min, max) with those of a bore (center, diameter)",
            (false, false) => "needs center and diameter (a bore), or min and max (a slot or pocket)",
            _ when missing.Any() => $"lacks {string.Join(" and ", missing)}",
            _ when isRound && row.Has("cornerRadius") => "is a bore and has no corners, but \"cornerRadius\" is given",
            _ => null,
        };
        if (complaint is null)
            return true;
        read.Wrong(new(row.Range.Start, row.Range.Start + 1), $"{MessageText.Clip(MessageText.Capital(name))} {complaint}", LeftOut);
        return false;
    }

    static Hollow? Outline(Draft draft, JsonValue row, string name, ValueReader read)
    {
        if (draft is { Center: [var centerX, var centerY], Diameter: { } diameter } && read.ToMm(centerX) is { } x && read.ToMm(centerY) is { } y)
        {
            var radius = diameter / 2;
            return new Hollow(name, x - radius, y - radius, x + radius, y + radius, radius, 0) { IsRound = true };
        }
        if (draft is not { Min: [var lowX, var lowY], Max: [var highX, var highY] }
            || read.Box(Place(lowX, lowY, read), Place(highX, highY, read), row, MessageText.Clip(name), LeftOut) is not { Min: var min, Max: var max })
            return null;
        var narrow = Math.Min(max.X - min.X, max.Y - min.Y);
        if (narrow <= 0)
        {
            read.Wrong(row.Range, $"{MessageText.Clip(MessageText.Capital(name))} has no size in {(max.X == min.X ? 'X' : 'Y')}: min and max are equal", LeftOut);
            return null;
        }
        var corner = draft.CornerRadius ?? 0;
        if (corner <= narrow / 2 * (1 + 1e-9))
            return new Hollow(name, min.X, min.Y, max.X, max.Y, Math.Min(corner, narrow / 2), 0);
        var scale = read.Unit.Millimetres;
        read.Wrong(
            row.Single("cornerRadius")?.Range ?? row.Range,
            $"The corner radius of {MessageText.Clip(name)}, {Bounds.Format(corner / scale)}, is more than half its width, {Bounds.Format(narrow / scale)}", LeftOut);
        return null;
    }

    static Point3? Place(double x, double y, ValueReader read) => read.ToMm(x) is { } atX && read.ToMm(y) is { } atY ? new Point3(atX, atY, 0) : null;

    static bool IsInStock(Hollow hollow, double? bottom, JsonValue row, Box3 stock, ValueReader read)
    {
        var scale = read.Unit.Millimetres;
        var name = MessageText.Clip(hollow.Name);
        if (bottom >= stock.Max.Z)
        {
            read.Wrong(
                row.Single("bottom")?.Range ?? row.Range,
                $"The bottom of {name}, {Bounds.Format(bottom.Value / scale)}, is not below the stock's top, {Bounds.Format(stock.Max.Z / scale)}", LeftOut);
            return false;
        }
        if (hollow.MaxX > stock.Min.X && hollow.MinX < stock.Max.X && hollow.MaxY > stock.Min.Y && hollow.MinY < stock.Max.Y)
            return true;
        read.Wrong(row.Range, $"{MessageText.Capital(name)} lies beside the stock", LeftOut);
        return false;
    }
}
