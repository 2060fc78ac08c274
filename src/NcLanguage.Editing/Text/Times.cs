using NcLanguage.Checks;
using NcLanguage.Control.State;

namespace NcLanguage.Editing;

/// <summary>Times as hovers give them.</summary>
static class Times
{
    /// <summary>0.5 s</summary>
    public static string Of(double seconds) => double.IsFinite(seconds) ? Say.Seconds(seconds) : "time " + Lengths.NotKnown;

    /// <summary>Turns of the spindle in that time, as "12.5 turns at S1500"; empty where the spindle stands or is not known.</summary>
    public static string Turns(double seconds, in ControlState state)
    {
        var turns = seconds * state.Speed / 60;
        return StepFacts.Turns(state) && double.IsFinite(turns) ? $"{Say.Number(turns, 1)} turns at S{Say.Number(state.Speed)}" : "";
    }
}
