using NcLanguage.Checks;
using NcLanguage.Checks.Cutting;
using NcLanguage.Machine.Cutting;
using NcLanguage.Machine.Setups;

namespace NcLanguage.Editing;

/// <summary>Spindle speeds from the cutting data, for the tool in the spindle or being changed to and the setup's material.</summary>
static class SpeedValues
{
    /// <summary>S words: the mean of the range, its least and its greatest, none faster than the machine turns.</summary>
    public static IReadOnlyList<WordValue> Of(Spot spot, Tool? of)
    {
        if (spot.After.SurfaceSpeed || of is not { Diameter: > 0 and var diameter } tool || ToolRange.Speed(spot.Setup, tool) is not { } range)
            return [];
        var values = new List<WordValue>();
        foreach (var (cutting, which) in Spread(range))
        {
            var turns = Rounded(CuttingSpeed.SpindleSpeed(cutting, diameter));
            var limit = "";
            if (spot.Machine.Spindle is { } limits && turns > limits.Max)
                (turns, limit) = (limits.Max, " · the machine's greatest");
            if (spot.Machine.Spindle is { } least && turns < least.Min)
                (turns, limit) = (least.Min, " · the machine's least");
            var text = spot.Style.Case("S" + Say.Number(turns));
            if (values.Exists(value => value.Text == text))
                continue;
            values.Add(new WordValue(
                text, $"{which} {CuttingSay.Speeds(range, spot.Say)}, {ToolRange.Describe(tool, spot.Say)}, {range.Material}{limit}",
                $"{CuttingSay.Speed(CuttingSpeed.AtDiameter(turns, diameter), spot.Say)} at the edge: n = 1000·v / (π·D), rounded.\n\nSource: {Sources(range)}"));
        }
        return values;
    }

    /// <summary>The mean, the least and the greatest; one where they are the same.</summary>
    internal static IEnumerable<(double Value, string Which)> Spread(CuttingRange range)
    {
        if (range.Least == range.Greatest)
            return [(range.Least, "")];
        return [((range.Least + range.Greatest) / 2, "mean of"), (range.Least, "least of"), (range.Greatest, "greatest of")];
    }

    internal static string Sources(in CuttingRange range) => string.Join("; ", range.Source.Split("; ").Select(Markdown.Plain));

    /// <summary>Steps of 10 below 1,000 turns, of 50 below 5,000, of 100 above.</summary>
    internal static double Rounded(double turns)
    {
        var step = turns < 100 ? 1 : turns < 1000 ? 10 : turns < 5000 ? 50 : 100;
        return Math.Max(1, Math.Round(turns / step, MidpointRounding.AwayFromZero) * step);
    }
}
