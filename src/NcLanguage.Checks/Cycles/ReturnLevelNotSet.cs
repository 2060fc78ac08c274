using NcLanguage.Checks.Analysis;
using NcLanguage.Checks.Clearance;
using NcLanguage.Control.Execution;
using NcLanguage.Control.State;

namespace NcLanguage.Checks.Rules;

/// <summary>A cycle drills before any G98 or G99.</summary>
public sealed class ReturnLevelNotSet : Rule
{
    public override RuleInfo Info { get; } = new()
    {
        Id = "NC3061",
        Name = "return-level-not-set",
        Severity = Severity.Warning,
        Title = "A cycle drills before any G98 or G99",
        Finds = "The first hole of a program where neither G98 nor G99 stands in its block or before it.",
        AtTheMachine = "Whether the tool returns to the initial level or only to R depends on the control, or on the program that ran before: between clamps that is the "
            + "difference between passing over one and running into it.",
        Example = CycleExample.Program("""
            G81 X12 Y20 Z-8 R2 F120
            ~^^
            X40
            """),
        Instead = CycleExample.Program("""
            G98 G81 X12 Y20 Z-8 R2 F120
            X40
            """),
        FixSafety = FixSafety.Safe,
        Fix = "Writes G98 before the cycle's code: of the two the one that never crosses lower.",
        NotFound = "Parts of a file that another program calls: there the mode may come from the caller.",
        Source = "NISTIR 6556 §3.5.20 (G98, G99); which of them holds at the start the report leaves open.",
    };

    public override StepEvents Interest => StepEvents.HolesDiffer;

    public override void CheckStep(in StepContext step)
    {
        if (step.Step.After.ReturnLevel != ReturnLevel.Unknown || step.Step.After.IsCalled || step.Step.Before.HasSet(Slot.Hole))
            return;
        CycleRuns.Report(
            this, step, '\0', "No G98 or G99 so far: whether the tool returns to the initial level or to R between these holes is left to the control.");
    }

    public override IEnumerable<Fix> Fixes(Finding finding, ProgramAnalysis analysis)
    {
        ArgumentNullException.ThrowIfNull(finding);
        ArgumentNullException.ThrowIfNull(analysis);
        yield return new Fix("Return to the initial level (G98)", FixSafety.Safe, [ReturnWord.Write(analysis.Main, finding.Line, ReturnLevel.Initial)]);
    }
}
