using NcLanguage.Control.Codes;

namespace NcLanguage.Editing;

/// <summary>A word with a number that the setup, the cutting data or the drawing gives.</summary>
/// <param name="Text">As it is put in: S2400, X15 Y20.</param>
/// <param name="Detail">One line: where the number comes from.</param>
/// <param name="Documentation">Markdown with the formula and the source; null where the detail says all.</param>
/// <param name="Low">Whether it is listed behind all others.</param>
sealed record WordValue(string Text, string Detail, string? Documentation = null, bool Low = false)
{
    /// <summary>What is known of the words of a letter, best first; empty where nothing is.</summary>
    public static IReadOnlyList<WordValue> Of(Spot spot, char letter)
    {
        if (spot.After.Plane != Control.State.WorkPlane.XY && letter is 'X' or 'Y' or 'Z' or 'R')
            return [];
        var use = WordUses.Of(letter, spot.Step, spot.Readings)?.Use;
        if (spot.Step.Words.Find(ModalGroup.MacroCall) is not null && letter is not ('P' or 'L'))
            return [];
        return letter switch
        {
            'T' => ToolValues.Tools(spot),
            'H' => ToolValues.LengthOffsets(spot),
            'D' => ToolValues.RadiusOffsets(spot),
            'S' => SpeedValues.Of(spot, spot.Tool),
            'F' => FeedValues.Of(spot, spot.Cycle),
            'P' when use is { Unit: WordUnit.Dwell } => DwellValues.Of(spot),
            'Q' when spot.Cycle is 73 or 83 => PeckValues.Of(spot),
            'R' when spot.Cycle > 0 && use is { Unit: WordUnit.Length } => DepthValues.RLevels(spot),
            'Z' when spot.Cycle > 0 => DepthValues.Bottoms(spot, spot.Cycle, spot.After.RLevel),
            'X' or 'Y' when spot.Cycle > 0 => HoleValues.Of(spot, letter),
            _ => [],
        };
    }
}
