using NcLanguage.Checks;
using NcLanguage.Control.State;

namespace NcLanguage.Editing;

/// <summary>Times as hovers give them.</summary>
static class Times
{
    /// <summary>0.5 s; of a time too short for three decimals the first figure that counts, so that it is not shown as none.</summary>
    public static string Of(double seconds) =>
        !double.IsFinite(seconds) ? "time " + Lengths.NotKnown
        : seconds is > 0 and < 0.0005 ? (seconds < 0.000001 ? "under 0.000001" : Say.Number(seconds, (int)Math.Ceiling(-Math.Log10(seconds)))) + " s"
        : Say.Seconds(seconds);

    /// <summary>Turns of the spindle in that time, as "12.5 turns at S1500"; empty where the spindle stands or is not known.</summary>
    public static string Turns(double seconds, in ControlState state)
    {
        var turns = seconds * state.Speed / 60;
        if (!StepFacts.Turns(state) || !double.IsFinite(turns))
            return "";
        return $"{(turns is > 0 and < 0.05 ? "under 0.1" : Say.Number(turns, 1))} turns at S{Say.Number(state.Speed)}";
    }
}
