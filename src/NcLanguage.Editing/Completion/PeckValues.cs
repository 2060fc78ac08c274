namespace NcLanguage.Editing;

/// <summary>Depths of a peck.</summary>
static class PeckValues
{
    /// <summary>Q words: one diameter, and half a diameter for chips that jam; empty where the diameter is not known.</summary>
    public static IReadOnlyList<WordValue> Of(Spot spot)
    {
        if (spot.Tool?.Diameter is not (> 0 and var diameter))
            return [];
        const string source = "Pecks of half a diameter to one.\n\nSource: common practice";
        return
        [
            new WordValue(spot.Style.Length('Q', diameter), "a peck of one diameter", source),
            new WordValue(spot.Style.Length('Q', diameter / 2), "a peck of half a diameter", source),
        ];
    }
}
