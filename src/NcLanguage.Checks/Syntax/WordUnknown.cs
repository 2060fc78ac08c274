using NcLanguage.Checks.Analysis;
using NcLanguage.Control.Execution;

namespace NcLanguage.Checks.Rules;

/// <summary>An address that has no meaning on a three-axis mill.</summary>
public sealed class WordUnknown : Rule
{
    public override RuleInfo Info { get; } = new()
    {
        Id = "NC1009",
        Name = "word-unknown",
        Severity = Severity.Error,
        Title = "The control has no use for this address",
        Finds = "A word with the letter A, B, C, E, U, V or W.",
        AtTheMachine = "The control stops with an alarm: a three-axis mill has no such axis.",
        Example = """
            G21 G90 G17 G54
            G0 X10 Y10 U5
            ~          ^^
            M30
            """,
        Instead = """
            G21 G90 G17 G54
            G0 X10 Y10
            M30
            """,
        NotFound = "Fourth axes: this product reads three-axis programs.",
        Source = "NISTIR 6556 table 3; ISO 841.",
    };

    public override StepEvents Interest => StepEvents.Faults;

    public override void CheckStep(in StepContext step)
    {
        foreach (ref readonly var fault in step.Step.Faults.Items)
            if (fault.Kind == FaultKind.WordUnknown)
                step.Report(this, fault.Token,
                    $"{Quote.Word(step.Block, step.Block.Tokens[fault.Token])}: the letter {fault.Letter} says nothing on a three-axis mill, and the control stops with an alarm.");
    }
}
