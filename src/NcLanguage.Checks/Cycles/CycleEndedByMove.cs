using NcLanguage.Checks.Analysis;
using NcLanguage.Control.Codes;
using NcLanguage.Control.Execution;
using NcLanguage.Control.State;

namespace NcLanguage.Checks.Rules;

/// <summary>G0 to G3 end a cycle that G80 should end.</summary>
public sealed class CycleEndedByMove : Rule
{
    public override RuleInfo Info { get; } = new()
    {
        Id = "NC3002",
        Name = "cycle-ended-by-move",
        Severity = Severity.Warning,
        Title = "A move ends the cycle where G80 should",
        Finds = "G0, G1, G2 or G3 while a cycle is on, without G80, under the reading in which they end a cycle as G80 does.",
        AtTheMachine = "On this control the cycle is off from here. A control on which only G80 ends a cycle takes the block's axis words as one more hole.",
        Example = CycleExample.Bare("""
            G98 G81 X12 Y20 Z-8 R2 F120
            X40
            G0 Z60
            ~^
            """),
        Instead = CycleExample.Bare("""
            G98 G81 X12 Y20 Z-8 R2 F120
            X40
            G80 G0 Z60
            """),
        FixSafety = FixSafety.Safe,
        Fix = "Writes G80 before the move's code: on this control nothing changes.",
        NotFound = "Nothing under the reading rapidsEndCycle=false: there the block drills, and other findings say so. A cycle that a tool change or a stop has met is reported there "
            + "(cycle-not-cancelled).",
        Source = "NISTIR 6556 table 4 (G0 to G3 and the cycles in one modal group); controls on which only G80 ends a cycle are common practice.",
    };

    public override StepEvents Interest => StepEvents.News;

    public override bool Concerns(Job job) => job.Readings.RapidsEndCycle;

    public override void CheckStep(in StepContext step)
    {
        ref readonly var before = ref step.Step.Before;
        // A cycle that a tool change or a stop met has its finding there.
        if (!before.InCycle || before.CycleLeftOn || step.Step.After.Cycle != 0 || step.Step.Words.HasCode('G', 800) || step.Step.Words.Find(ModalGroup.Motion) is not { } word)
            return;
        var code = $"G{Say.Number(word.Code.Tenths / 10.0)}";
        step.Report(
            this, word.Token, $"{code} ends G{before.Cycle} here without G80: a control on which only G80 ends a cycle would drill again at this block.",
            Slot.Cycle, $"G{before.Cycle} was started here.", asMet: true);
    }

    public override IEnumerable<Fix> Fixes(Finding finding, ProgramAnalysis analysis)
    {
        ArgumentNullException.ThrowIfNull(finding);
        ArgumentNullException.ThrowIfNull(analysis);
        yield return new Fix("End the cycle with G80", FixSafety.Safe, [new Edit(finding.Line, finding.StartColumn, finding.StartColumn, "G80 ")]);
    }
}
