using NcLanguage.Checks;
using NcLanguage.Checks.Cutting;
using NcLanguage.Control.State;
using NcLanguage.Machine.Setups;

namespace NcLanguage.Editing;

/// <summary>Feeds from the cutting data, and those of taps from their pitch, in the unit and the feed mode in force.</summary>
static class FeedValues
{
    /// <summary>F words; those of a tap are exact: one turn must feed one pitch.</summary>
    public static IReadOnlyList<WordValue> Of(Spot spot, int cycle)
    {
        ref readonly var state = ref spot.After;
        if (state.FeedMode is not (FeedMode.PerMinute or FeedMode.PerTurn) || spot.Tool is not { } tool)
            return [];
        var perTurn = state.FeedMode == FeedMode.PerTurn;
        if (!perTurn && !(state.Speed > 0 && !state.SurfaceSpeed))
            return [];
        return cycle is 74 or 84 || tool.Kind == ToolKind.Tap ? OfTap(spot, tool, perTurn) : OfRange(spot, tool, perTurn);
    }

    static IReadOnlyList<WordValue> OfTap(Spot spot, Tool tool, bool perTurn)
    {
        if (tool.Pitch is not > 0)
            return [];
        var pitch = tool.Pitch.Value;
        var mm = perTurn ? pitch : CuttingSpeed.TapFeed(spot.After.Speed, pitch);
        var how = perTurn ? $"the pitch of T{tool.Number}" : $"pitch {spot.Say.Length(pitch)} × S{Say.Number(spot.After.Speed)}";
        return [new WordValue(Word(spot, Say.Number(InUnit(spot, mm), 4)), how, $"One turn must feed one pitch: F = {(perTurn ? "P" : "n·P")}.\n\nSource: NISTIR 6556 §3.5.16.5")];
    }

    static List<WordValue> OfRange(Spot spot, Tool tool, bool perTurn)
    {
        var values = new List<WordValue>();
        if (ToolRange.Feed(spot.Setup, tool) is not { } feed)
            return values;
        foreach (var (fine, which) in SpeedValues.Spread(feed.Range))
        {
            var mm = perTurn ? fine * feed.Teeth : CuttingSpeed.Feed(spot.After.Speed, feed.Teeth, fine);
            var limit = "";
            if (!perTurn && spot.Machine.MaxFeed is { } greatest && mm > greatest)
                (mm, limit) = (greatest, " · the machine's greatest");
            var text = Word(spot, Say.Number(limit.Length > 0 ? InUnit(spot, mm) : TwoFigures.Nearest(InUnit(spot, mm)), 5));
            if (values.Exists(value => value.Text == text))
                continue;
            var at = perTurn ? "" : $" at S{Say.Number(spot.After.Speed)}";
            values.Add(new WordValue(
                text, $"{which} {CuttingSay.Fines(feed.Range, spot.Say)} {feed.Per}{at}, {ToolRange.Describe(tool, spot.Say)}, {feed.Range.Material}{limit}",
                $"F = {(perTurn ? "" : "n·")}{(feed.IsPerTooth ? "z·fz" : "fn")}, rounded to two figures.\n\nSource: {SpeedValues.Sources(feed.Range)}"));
        }
        return values;
    }

    // A feed is no place: no control takes its number for increments, so that it needs no point.
    static string Word(Spot spot, string number) => spot.Style.Case("F" + number);

    static double InUnit(Spot spot, double mm) => spot.Say.IsInch ? mm / UnitLength.MmPerInch : mm;
}
