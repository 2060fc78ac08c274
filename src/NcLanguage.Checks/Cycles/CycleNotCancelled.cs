using NcLanguage.Checks.Analysis;
using NcLanguage.Control.Codes;
using NcLanguage.Control.Execution;
using NcLanguage.Control.State;

namespace NcLanguage.Checks.Rules;

/// <summary>A cycle is still on at a tool change, a stop or the end of the program.</summary>
public sealed class CycleNotCancelled : Rule
{
    public override RuleInfo Info { get; } = new()
    {
        Id = "NC3001",
        Name = "cycle-not-cancelled",
        Severity = Severity.Error,
        Title = "A cycle is still on at a tool change, a stop or the end",
        Finds = "A tool change, a program stop or the end of the program, also by M99 in a program that nothing calls, that meets a cycle which no G80 has ended; a stop is a warning, because the cycle may be meant to go on behind it. Once for each cycle left on, and at each stop.",
        AtTheMachine = "The next block with an X, Y or Z drills a hole: with the next tool, where the tool was only to be moved to, or at the start of the next program.",
        Example = CycleExample.Open("""
            G98 G81 X12 Y20 Z-8 R2 F120
            X40
            M9
            M5
            M30
            ~^^
            """),
        Instead = CycleExample.Bare("""
            G98 G81 X12 Y20 Z-8 R2 F120
            X40
            G80
            """),
        FixSafety = FixSafety.Safe,
        Fix = "Writes G80 as a block of its own before the block. Offered as a choice after which you have to look where holes of the same cycle follow a tool change "
            + "without the cycle's code, and at a stop; not at all where they follow a stop, because there the cycle may be meant to go on.",
        NotFound = "Cycles that a called program started, and programs that simply end without M2 or M30 (program-end-missing).",
        Source = "NISTIR 6556 §3.5.15 (G80) and §3.6.1 (what the end of a program resets; other controls keep the cycle: common practice).",
    };

    public override StepEvents Interest => StepEvents.Codes | StepEvents.ToolChange | StepEvents.ProgramEnd | StepEvents.StartsAgain;

    public override void CheckStep(in StepContext step)
    {
        ref readonly var before = ref step.Step.Before;
        if (!before.InCycle || (before.CycleLeftOn && step.Step.Holes.Count == 0))
            return;
        var words = step.Step.Words;
        if ((step.Step.Events & (StepEvents.ToolChange | StepEvents.ProgramEnd | StepEvents.StartsAgain)) == 0 && words.Find(ModalGroup.Stop) is null)
            return;
        if (words.HasCode('G', 800) || (step.Job.Readings.RapidsEndCycle && words.Find(ModalGroup.Motion) is not null))
            return;
        var cycle = $"G{before.Cycle}";
        var message = (step.Step.Events & StepEvents.ToolChange) != 0
            ? $"{cycle} is still on at this tool change: the next block with an X, Y or Z drills a hole with the new tool."
            : (step.Step.Events & StepEvents.ProgramEnd) != 0
                ? $"The program ends with {cycle} still on: a control that does not cancel it here drills at the first position of the next program."
                : (step.Step.Events & StepEvents.StartsAgain) != 0
                ? $"M99 begins the program again with {cycle} still on: the first block with an X, Y or Z drills a hole."
                : (step.Step.Events & (StepEvents.NotRun | StepEvents.Skipped)) == 0 && words.Find(ModalGroup.Stop) is not null
                    ? $"{cycle} is still on at this stop: whatever X, Y or Z comes next drills a hole."
                    : "";
        if (message.Length == 0)
            return;
        // After a stop the cycle is often meant to go on.
        var isStop = (step.Step.Events & (StepEvents.ToolChange | StepEvents.ProgramEnd | StepEvents.StartsAgain)) == 0;
        step.ReportBlock(this, message, Slot.Cycle, $"{cycle} was started here.", asMet: true, severity: isStop ? Severity.Warning : Severity.Error);
    }

    public override IEnumerable<Fix> Fixes(Finding finding, ProgramAnalysis analysis)
    {
        ArgumentNullException.ThrowIfNull(finding);
        ArgumentNullException.ThrowIfNull(analysis);
        var goesOn = CycleRuns.GoesOnAfter(analysis.Main, finding.Line);
        var changesTool = (analysis.Main.StepAt(finding.Line).Events & StepEvents.ToolChange) != 0;
        // Behind a stop comes the tool change or the end that is reported too, or a block that ends the cycle.
        var isStop = finding.Severity == Severity.Warning;
        if (!goesOn || changesTool)
            yield return new Fix("End the cycle with G80", goesOn || isStop || EndsBefore(finding, analysis) ? FixSafety.Choice : FixSafety.Safe, [Inserts.BlockBefore(analysis, finding.Line, "G80")]);
    }

    /// <summary>Whether the fix of a lone Z before, in the same run of the cycle, ends the cycle there: a second G80 would stand idle.</summary>
    static bool EndsBefore(Finding finding, ProgramAnalysis analysis)
    {
        var rise = analysis.Main.LastSetterBefore(Slot.CycleBottom, finding.Line);
        if (rise < 0 || rise < analysis.Main.LastSetterBefore(Slot.Cycle, finding.Line))
            return false;
        foreach (var other in analysis.Findings)
            if (other.Line == rise && other.Rule is DepthChangedInCycle)
                return analysis.FixesOf(other).Any(fix => fix.Safety == FixSafety.Safe);
        return false;
    }
}
