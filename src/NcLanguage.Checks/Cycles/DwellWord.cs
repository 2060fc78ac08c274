using NcLanguage.Checks.Analysis;
using NcLanguage.Control.Execution;
using NcLanguage.Control.State;
using NcLanguage.Machine.Profiles;

namespace NcLanguage.Checks.Rules;

/// <summary>The word of a dwell, P in G4 or in a cycle, X in G4 where the point decides, and what it says under the reading in force and under the other.</summary>
/// <param name="Token">Index of the word.</param>
/// <param name="Letter">P or X.</param>
/// <param name="Number">As written.</param>
/// <param name="InCycle">In a cycle; false for G4.</param>
/// <param name="Seconds">Under the reading in force.</param>
/// <param name="OtherSeconds">Under the other unit.</param>
/// <param name="Turn">Seconds of one turn of the spindle; NaN where the speed is not known.</param>
/// <param name="Turns">True when the spindle is known to turn.</param>
readonly record struct DwellWord(int Token, char Letter, double Number, bool InCycle, double Seconds, double OtherSeconds, double Turn, bool Turns)
{
    /// <summary>The dwell of a block; false where it sets none.</summary>
    public static bool TryRead(in StepContext step, out DwellWord dwell)
    {
        dwell = default;
        var words = step.Step.Words;
        var isG4 = words.HasCode('G', 40);
        // X in G4 hangs on the reading only where the point decides.
        var letter = isG4 && !words.Has('P') && DwellReadings.IsByPoint('X', step.Job.Readings) ? 'X' : 'P';
        if (!words.Has(letter) || (step.Step.Events & (StepEvents.NotRun | StepEvents.Skipped)) != 0)
            return false;
        ref readonly var state = ref step.Step.After;
        if (!isG4 && ((step.Step.Sets & Slot.CycleDwell) == 0 || !IsUsedBy(state.Cycle)))
            return false;
        var number = words[letter];
        if (!(number > 0))
            return false;
        var token = words.TokenOf(letter);
        var hasPoint = step.Block.Tokens[token].HasPoint || step.Block.Tokens[token].IsExpression;
        var seconds = DwellReadings.Seconds(letter, number, hasPoint, step.Job.Readings);
        var other = seconds == number ? number / 1000 : number;
        dwell = new DwellWord(
            token, letter, number, !isG4, seconds, other, state.Speed > 0 ? 60 / state.Speed : double.NaN,
            state.Spindle is SpindleState.Clockwise or SpindleState.Counterclockwise);
        return true;
    }

    /// <summary>Cycles that dwell at the bottom.</summary>
    public static bool IsUsedBy(int cycle) => cycle is 82 or 86 or 88 or 89 or 76;

    /// <summary>A time of two figures that is no shorter: what somebody would write by hand.</summary>
    public static double Handy(double seconds)
    {
        var grain = Math.Pow(10, Math.Floor(Math.Log10(seconds)) - 1);
        return Math.Ceiling(seconds / grain - 1e-9) * grain;
    }

    /// <summary>Seconds as an X word of G4, with a point: so they are seconds under every reading.</summary>
    public static string WriteX(double seconds) => "X" + Say.WithPoint(Say.Number(seconds, 6));

    /// <summary>Seconds as the number of a P word in the unit in force.</summary>
    public static string Write(double seconds, DwellReading reading) => reading switch
    {
        DwellReading.Milliseconds => "P" + Say.Number(seconds * 1000),
        // With a point it is seconds, without one milliseconds.
        DwellReading.ByPoint => Say.Number(seconds * 1000) is var thousandths && !thousandths.Contains('.', StringComparison.Ordinal)
            ? "P" + thousandths
            : "P" + Say.Number(seconds, 6),
        _ => "P" + Say.Number(seconds),
    };
}
