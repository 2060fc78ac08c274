using NcLanguage.Checks.Analysis;
using NcLanguage.Control.Execution;
using NcLanguage.Control.State;

namespace NcLanguage.Checks.Rules;

/// <summary>Coolant that still runs at the end of the program.</summary>
public sealed class CoolantLeftOn : Rule
{
    public override RuleInfo Info { get; } = new()
    {
        Id = "NC2019",
        Name = "coolant-left-on",
        Severity = Severity.Warning,
        Title = "The coolant still runs at the end of the program",
        Finds = "M2 or M30 while the coolant still runs, without M9 in the same block or before.",
        AtTheMachine = "Most controls turn the coolant off with the program; one that does not lets it run while the operator changes the work.",
        Example = """
            G21 G90 G17 G54
            M8
            G0 X10 Y10
            M30
            ~^^
            """,
        Instead = """
            G21 G90 G17 G54
            M8
            G0 X10 Y10
            M9 M30
            """,
        FixSafety = FixSafety.Safe,
        Fix = "Adds M9 to the block; it acts before the program ends.",
        NotFound = "Program ends inside a called program; files that end without M2 or M30.",
        Source = "NISTIR 6556 §3.6.1: the end of a program stops spindle and coolant. That the program says so itself is common practice.",
    };

    public override StepEvents Interest => StepEvents.ProgramEnd;

    public override void CheckStep(in StepContext step)
    {
        var words = step.Step.Words;
        var token = Math.Max(words.TokenOfCode('M', 20), words.TokenOfCode('M', 300));
        if (token < 0 || (step.Step.Before.Coolant & (CoolantState.Mist | CoolantState.Flood)) == 0 || words.HasCode('M', 90))
            return;
        step.Report(this, token, $"{Quote.Word(step.Block, step.Block.Tokens[token])} comes while the coolant still runs: a control that does not turn it off lets it run over the table and the open guard.", Slot.Coolant, "The coolant was turned on here.", asMet: true);
    }

    public override IEnumerable<Fix> Fixes(Finding finding, ProgramAnalysis analysis) =>
        // M9 acts before the move of its block, the program's end behind it.
        StopAtEnd.FitsInto(analysis.Main, finding.Line, Slot.Coolant)
            ? [new Fix("Add M9 before it", FixSafety.Safe, [new Edit(finding.Line, finding.StartColumn, finding.StartColumn, "M9 ")])]
            : [];
}
