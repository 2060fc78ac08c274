using NcLanguage.Control.Codes;
using NcLanguage.Control.State;

namespace NcLanguage.Editing;

/// <summary>Whole blocks that begin a cycle, with the numbers that setup, cutting data and drawing give.</summary>
static class CycleLines
{
    public static void Add(Spot spot, CompletionItems items, int rank)
    {
        if (spot.After.Plane != WorkPlane.XY || spot.Before.Cycle != 0)
            return;
        foreach (var cycle in LikelyCodes.Cycles(spot.Tool))
            items.Add(rank++, Entry(spot, cycle));
    }

    static CompletionEntry Entry(Spot spot, int cycle)
    {
        var code = CodeTable.Find('G', cycle * 10)!;
        var writer = new LineWriter(spot);
        writer.Text(code.Text);
        if (!spot.Before.HasSet(Slot.ReturnLevel))
            writer.Text("G98");
        AddPlace(spot, writer);
        writer.Word('Z', Number(DepthValues.Bottoms(spot, cycle, DepthValues.RLevel(spot))));
        writer.Word('R', Number(DepthValues.RLevels(spot)));
        if (cycle is 73 or 83 or 76)
            writer.Word('Q', cycle == 76 ? null : Number(PeckValues.Of(spot)));
        if (cycle is 82 or 86 or 89)
            writer.Word('P', Number(DwellValues.Of(spot)));
        writer.Word('F', Number(FeedValues.Of(spot, cycle)));
        var letters = cycle switch { 73 or 83 or 76 => "X Y Z R Q F", 82 or 86 or 89 => "X Y Z R P F", _ => "X Y Z R F" };
        return writer.Entry($"{code.Text} {letters}", $"{code.Name}, a whole block");
    }

    static void AddPlace(Spot spot, LineWriter writer)
    {
        var words = HoleValues.Of(spot, 'X') is [{ Low: false } first, ..] ? first.Text.Split(' ') : null;
        writer.Word('X', words?[0][1..]).Word('Y', words?[1][1..]);
    }

    static string? Number(IReadOnlyList<WordValue> values) => values.Count > 0 ? values[0].Text[1..] : null;
}
