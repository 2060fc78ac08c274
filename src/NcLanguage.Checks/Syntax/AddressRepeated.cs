using NcLanguage.Checks.Analysis;
using NcLanguage.Control.Execution;

namespace NcLanguage.Checks.Rules;

/// <summary>The same address twice in a block.</summary>
public sealed class AddressRepeated : Rule
{
    public override RuleInfo Info { get; } = new()
    {
        Id = "NC1007",
        Name = "address-repeated",
        Severity = Severity.Error,
        Title = "A letter stands twice in a block",
        Finds = "An address other than G and M that occurs more than once in a block.",
        AtTheMachine = "The control stops with an alarm, or silently takes one of the two: which one depends on the control.",
        Example = """
            G21 G90 G17 G54
            G0 X10 Y10 X20
            ~          ^^^
            M30
            """,
        Instead = """
            G21 G90 G17 G54
            G0 X10 Y10
            X20
            M30
            """,
        NotFound = "Arguments of G65, where I, J and K may repeat on some controls.",
        Source = "NISTIR 6556 §3.3.5.",
    };

    public override StepEvents Interest => StepEvents.Faults;

    public override void CheckStep(in StepContext step)
    {
        foreach (ref readonly var fault in step.Step.Faults.Items)
        {
            if (fault.Kind != FaultKind.AddressRepeated)
                continue;
            var first = Quote.Word(step.Block, step.Block.Tokens[fault.Other]);
            var second = Quote.Word(step.Block, step.Block.Tokens[fault.Token]);
            step.Report(this, fault.Token, $"{fault.Letter} stands twice in this block, as {first} and as {second}: the control stops with an alarm, or takes one of them.");
        }
    }
}
