using NcLanguage.Checks.Analysis;
using NcLanguage.Control.Execution;

namespace NcLanguage.Checks.Rules;

/// <summary>A code lacks a word it cannot do without.</summary>
public sealed class WordMissing : Rule
{
    public override RuleInfo Info { get; } = new()
    {
        Id = "NC2090",
        Name = "word-missing",
        Severity = Severity.Error,
        Title = "A code lacks a word it needs",
        Finds = "G43 without H, G4 without P, an arc without I, J or R, G92 without an axis.",
        AtTheMachine = "The control stops with an alarm, or takes a value left over from before: for G43 the length of another tool.",
        Example = """
            G21 G90 G17 G54
            S1500 M3
            G4
            ~^
            G0 X0 Y0
            M5
            M30
            """,
        Instead = """
            G21 G90 G17 G54
            S1500 M3
            G4 P2
            G0 X0 Y0
            M5
            M30
            """,
        NotFound = "Words that cycles lack (cycle-word-missing), and codes whose motion is not followed.",
        Source = "NISTIR 6556 §3.5.3 (arcs), §3.5.4 (G4), §3.5.11 (G43), §3.5.18 (G92).",
    };

    public override StepEvents Interest => StepEvents.Faults;

    public override void CheckStep(in StepContext step)
    {
        foreach (ref readonly var fault in step.Step.Faults.Items)
        {
            if (fault.Kind != FaultKind.WordMissing || CycleWordMissing.IsOfCycle(fault.Letter, step.Step))
                continue;
            var code = Quote.Word(step.Block, step.Block.Tokens[fault.Token]);
            step.Report(this, fault.Token, fault.Letter switch
            {
                'H' => $"{code} has no H: the control does not know which tool length to apply.",
                'P' => $"{code} has no P: the control does not know how long to wait.",
                'X' => $"{code} has no X, Y or Z: there is nothing for it to set.",
                _ => $"{code} moves on an arc, but the block has neither {fault.Letter} nor R: the control does not know where its centre is.",
            });
        }
    }
}
