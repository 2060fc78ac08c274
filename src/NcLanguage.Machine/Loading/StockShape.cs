using NcLanguage.Machine.Geometry;
using NcLanguage.Machine.Json;
using NcLanguage.Machine.Setups;

namespace NcLanguage.Machine.Loading;

/// <summary>The stock: a box along the axes, and where it is hollow already.</summary>
static class StockShape
{
    const string NotGiven = "the stock counts as not given";

    sealed record Draft(Point3? Min, Point3? Max, JsonMember? Hollows);

    static readonly ObjectShape<Draft> Shape = new(
        "the stock",
        new("min", (draft, m, read) => draft with { Min = read.Point(m, NotGiven) }, Presence.Required),
        new("max", (draft, m, read) => draft with { Max = read.Point(m, NotGiven) }, Presence.Required),
        new("hollows", (draft, m, _) => draft with { Hollows = m }));

    public static Setup Read(Setup setup, JsonMember member, ValueReader read)
    {
        if (!read.IsObject(member.Value, "\"stock\""))
            return setup;
        var draft = Shape.Read(new Draft(null, null, null), member.Value, read);
        if (Box(draft, member, read) is not { } box)
            return setup;
        return setup with { Stock = box, Hollows = draft.Hollows is { } list ? [.. Hollows(list, box, read)] : [] };
    }

    static IEnumerable<Hollow> Hollows(JsonMember list, Box3 stock, ValueReader read) =>
        (read.Items(list) ?? []).Select((row, i) => HollowShape.Read(row, i + 1, stock, read)).OfType<Hollow>();

    static Box3? Box(Draft draft, JsonMember member, ValueReader read)
    {
        if (read.Box(draft.Min, draft.Max, member.Value, "the stock", NotGiven) is not { } box)
            return null;
        var size = box.Max - box.Min;
        if (size is { X: > 0, Y: > 0, Z: > 0 })
            return box;
        var axis = size.X == 0 ? 'X' : size.Y == 0 ? 'Y' : 'Z';
        read.Wrong(member.Value.Range, $"The stock has no size in {axis}: min and max are equal", NotGiven);
        return null;
    }
}
