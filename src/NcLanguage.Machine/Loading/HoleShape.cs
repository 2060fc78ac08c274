using NcLanguage.Machine.Json;
using NcLanguage.Machine.Setups;

namespace NcLanguage.Machine.Loading;

/// <summary>One hole that the drawing asks for.</summary>
static class HoleShape
{
    const string LeftOut = "the hole is left out";

    public static ObjectShape<DrawingHole> Shape { get; } = new(
        "a hole",
        new("x", (hole, m, read) => hole with { X = read.Length(m, Bounds.Coordinate, LeftOut) ?? double.NaN }, Presence.Required),
        new("y", (hole, m, read) => hole with { Y = read.Length(m, Bounds.Coordinate, LeftOut) ?? double.NaN }, Presence.Required),
        new("diameter", (hole, m, read) => hole with { Diameter = read.Length(m, Bounds.AboveZero) }),
        new("depth", (hole, m, read) => hole with { Depth = read.Length(m, Bounds.AboveZero) }),
        new("thread", (hole, m, read) => hole with { Thread = read.Text(m) }));

    /// <summary>The hole of a row, or null where its place is not known.</summary>
    public static DrawingHole? Read(JsonValue row, ValueReader read)
    {
        if (!read.IsObject(row, "A hole", "it is left out"))
            return null;
        var start = new DrawingHole(double.NaN, double.NaN, null, null, null) { Line = read.Problems.LineOf(row.Range) };
        var hole = Shape.Read(start, row, read);
        return double.IsNaN(hole.X) || double.IsNaN(hole.Y) ? null : hole;
    }
}
