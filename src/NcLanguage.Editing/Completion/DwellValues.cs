using NcLanguage.Checks;
using NcLanguage.Checks.Cutting;
using NcLanguage.Machine.Profiles;

namespace NcLanguage.Editing;

/// <summary>Dwells in the unit that this control reads them in.</summary>
static class DwellValues
{
    /// <summary>Turns that clean the bottom of a hole (common practice: one to three).</summary>
    const double Turns = 2;

    /// <summary>The P word of a dwell of two turns; empty where the speed is not known.</summary>
    public static IReadOnlyList<WordValue> Of(Spot spot)
    {
        if (!(spot.After.Speed > 0) || spot.After.SurfaceSpeed)
            return [];
        var seconds = TwoFigures.Up(DrillingTime.Dwell(Turns, spot.After.Speed));
        var isSeconds = spot.Readings.Dwell == DwellReading.Seconds;
        // Milliseconds are whole: a point would make seconds of them where the point decides.
        var text = spot.Style.Case("P" + (isSeconds ? Say.Number(seconds, 4) : Say.Number(Math.Ceiling(seconds * 1000 - 1e-6), 0)));
        return
        [
            new WordValue(text, $"{Say.Number(Turns)} turns at S{Say.Number(spot.After.Speed)}, {Say.Number(seconds, 4)} s", $"t = 60·turns / n, rounded up. P is read in {(isSeconds ? "seconds" : "milliseconds")} here.\n\nSource: common practice"),
        ];
    }
}
