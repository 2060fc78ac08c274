using NcLanguage.Checks.Analysis;
using NcLanguage.Control.Execution;
using NcLanguage.Machine.Profiles;

namespace NcLanguage.Checks.Rules;

/// <summary>A cycle that dwells at the bottom has no P.</summary>
public sealed class DwellMissing : Rule
{
    /// <summary>Turns of the spindle that clean the bottom.</summary>
    const double Turns = 2;

    public override RuleInfo Info { get; } = new()
    {
        Id = "NC3011",
        Name = "dwell-missing",
        Severity = Severity.Warning,
        Title = "A cycle that dwells at the bottom has no P",
        Finds = "The first hole of G82, G88 or G89 with no P in its block or before it in the same cycle; a note for G86, where not every control dwells.",
        AtTheMachine = "The control stops with an alarm, does not dwell at all, or dwells for a time left over from an earlier cycle.",
        Example = CycleExample.Program("""
            G98 G82 X12 Y20 Z-3 R2 F120
            ~   ^^^
            X40
            """),
        Instead = CycleExample.Program("""
            G98 G82 X12 Y20 Z-3 R2 P0.1 F120
            X40
            """),
        FixSafety = FixSafety.Choice,
        Fix = "Writes a P of about two turns of the spindle at the speed in force, in the unit in force.",
        NotFound = "A P that a called program gives.",
        Source = "NISTIR 6556 §3.5.16 (P in G82, G86, G88, G89); ISO 6983-1 has no dwell in G86 (from memory). Two turns are common practice.",
    };

    public override StepEvents Interest => StepEvents.HolesDiffer;

    public override void CheckStep(in StepContext step)
    {
        ref readonly var state = ref step.Step.After;
        if (state.Cycle is not (82 or 86 or 88 or 89) || !double.IsNaN(state.DwellNumber) || step.Step.Words.Has('P') || !CycleRuns.Begins(step.Step))
            return;
        var turns = state.Speed > 0 ? Turns * 60 / state.Speed : double.NaN;
        CycleRuns.Report(
            this, step, '\0', $"G{state.Cycle} dwells at the bottom, but no P says how long{(double.IsNaN(turns) ? "" : $": two turns at S{Say.Number(state.Speed)} take {Say.Seconds(turns)}")}.",
            value: turns, severity: state.Cycle == 86 ? Severity.Note : null);
    }

    public override IEnumerable<Fix> Fixes(Finding finding, ProgramAnalysis analysis)
    {
        ArgumentNullException.ThrowIfNull(finding);
        ArgumentNullException.ThrowIfNull(analysis);
        if (double.IsNaN(finding.Value))
            yield break;
        // Rounded up to a hundredth of a second: a P is written by hand.
        var seconds = Math.Ceiling(finding.Value * 100 - 1e-9) / 100;
        var word = DwellWord.Write(seconds, analysis.Machine.Readings.Dwell);
        yield return new Fix($"Dwell for about two turns ({word})", FixSafety.Choice, [CycleWords.AfterLevels(analysis.Main, finding.Line, word)]);
    }
}
