using NcLanguage.Checks.Analysis;
using NcLanguage.Control.Execution;

namespace NcLanguage.Checks.Rules;

/// <summary>A G or M code that the control does not have.</summary>
public sealed class CodeUnknown : Rule
{
    public override RuleInfo Info { get; } = new()
    {
        Id = "NC1008",
        Name = "code-unknown",
        Severity = Severity.Error,
        Title = "The control does not have this code",
        Finds =
            "A G or M number that neither the table of codes nor the \"codes\" of the machine file has, and a code that belongs to the other choice of the reading units (G70 where G20 "
            + "selects inch).",
        AtTheMachine = "The control stops with an alarm at this block; a few skip it without a word, and what it was to do does not happen.",
        Example = """
            G21 G90 G17 G54
            G77
            ~^^
            G0 X10 Y10
            M30
            """,
        Instead = """
            G21 G90 G17 G54
            G0 X10 Y10
            M30
            """,
        NotFound = "Codes that one machine has of its own, such as M codes for clamps, are told until its machine file names them under \"codes\", with what they do: {\"codes\": {\"M13\": {\"does\": \"spindle and coolant\", \"as\": \"M3 M8\"}}}.",
        Source = "The table of codes; NISTIR 6556 tables 5 and 7, ISO 6983-1.",
    };

    public override StepEvents Interest => StepEvents.Faults;

    public override void CheckStep(in StepContext step)
    {
        foreach (ref readonly var fault in step.Step.Faults.Items)
        {
            if (fault.Kind == FaultKind.CodeUnknown)
                step.Report(this, fault.Token, $"{Quote.Word(step.Block, step.Block.Tokens[fault.Token])} is not a code this control knows: it stops here with an alarm.");
            else if (fault.Kind == FaultKind.CodeNotInReading)
                step.Report(this, fault.Token, $"This control does not have {Quote.Word(step.Block, step.Block.Tokens[fault.Token])}: {Instead(fault.A)}.");
        }
    }

    static string Instead(double code) => code switch
    {
        20 => "G70 selects inches",
        21 => "G71 selects millimetres",
        70 => "G20 selects inches",
        _ => "G21 selects millimetres",
    };
}
