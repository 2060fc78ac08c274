using NcLanguage.Checks;
using NcLanguage.Machine.Setups;

namespace NcLanguage.Editing;

/// <summary>The tools of the setup and their offsets.</summary>
static class ToolValues
{
    /// <summary>T words: every tool of the setup, the one in the spindle last.</summary>
    public static IReadOnlyList<WordValue> Tools(Spot spot) =>
    [
        .. spot.Setup.Tools.Select(tool => new WordValue(
            spot.Style.Whole('T', tool.Number), InShort(tool, spot.Say) + (tool.Number == spot.Before.Tool ? " · in the spindle" : ""),
            $"In the setup: {ToolText.Describe(tool)}.", Low: tool.Number == spot.Before.Tool)),
    ];

    /// <summary>H words: the offset of the tool in the spindle, or of the one being changed to, first.</summary>
    public static IReadOnlyList<WordValue> LengthOffsets(Spot spot) => Offsets(
        spot, 'H', tool => tool.LengthOffset ?? tool.Number, tool => tool.Length is { } length ? $" · length {spot.Say.Length(length)}" : "");

    /// <summary>D words, likewise.</summary>
    public static IReadOnlyList<WordValue> RadiusOffsets(Spot spot) => Offsets(
        spot, 'D', tool => tool.RadiusOffset ?? tool.Number, tool => tool.Diameter is { } diameter ? $" · radius {spot.Say.Length(diameter / 2)}" : "");

    static IReadOnlyList<WordValue> Offsets(Spot spot, char letter, Func<Tool, int> number, Func<Tool, string> value)
    {
        var own = spot.ToolNumber;
        return
        [
            .. spot.Setup.Tools.OrderBy(tool => tool.Number == own ? 0 : 1).Select(tool => new WordValue(
                spot.Style.Whole(letter, number(tool)), $"T{tool.Number} {InShort(tool, spot.Say)}{value(tool)}", null, Low: own > 0 && tool.Number != own)),
        ];
    }

    /// <summary>drill 6.8 mm, tap 8 mm × 1.25 mm</summary>
    public static string InShort(Tool tool, LengthText say)
    {
        var text = ToolText.Kind(tool);
        if (tool.Diameter is { } diameter)
            text += " " + say.Length(diameter);
        return tool.Pitch is { } pitch ? $"{text} × {say.Length(pitch)}" : text;
    }
}
