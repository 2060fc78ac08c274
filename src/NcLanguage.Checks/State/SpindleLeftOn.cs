using NcLanguage.Checks.Analysis;
using NcLanguage.Control.Execution;
using NcLanguage.Control.State;

namespace NcLanguage.Checks.Rules;

/// <summary>A spindle that still turns at the end of the program.</summary>
public sealed class SpindleLeftOn : Rule
{
    public override RuleInfo Info { get; } = new()
    {
        Id = "NC2018",
        Name = "spindle-left-on",
        Severity = Severity.Warning,
        Title = "The spindle still turns at the end of the program",
        Finds = "M2 or M30 while the spindle still turns, without M5 in the same block or before.",
        AtTheMachine = "Most controls stop the spindle with the program; one that does not leaves it turning while the operator opens the guard.",
        Example = """
            G21 G90 G17 G54
            M3 S1500
            G0 X10 Y10
            M30
            ~^^
            """,
        Instead = """
            G21 G90 G17 G54
            M3 S1500
            G0 X10 Y10
            M5 M30
            """,
        FixSafety = FixSafety.Safe,
        Fix = "Adds M5 to the block; it acts before the program ends.",
        NotFound = "Program ends inside a called program; files that end without M2 or M30.",
        Source = "NISTIR 6556 §3.6.1: the end of a program stops spindle and coolant. That the program says so itself is common practice.",
    };

    public override StepEvents Interest => StepEvents.ProgramEnd;

    public override void CheckStep(in StepContext step)
    {
        var words = step.Step.Words;
        var token = Math.Max(words.TokenOfCode('M', 20), words.TokenOfCode('M', 300));
        if (token < 0 || step.Step.Before.Spindle is not (SpindleState.Clockwise or SpindleState.Counterclockwise) || words.HasCode('M', 50) || words.HasCode('M', 190))
            return;
        step.Report(this, token, $"{Quote.Word(step.Block, step.Block.Tokens[token])} comes while the spindle still turns: a control that does not stop it leaves it turning while the operator reaches in.", Slot.Spindle, "The spindle was started here.", asMet: true);
    }

    public override IEnumerable<Fix> Fixes(Finding finding, ProgramAnalysis analysis) =>
        // M5 acts before the move of its block, the program's end behind it.
        StopAtEnd.FitsInto(analysis.Main, finding.Line, Slot.Spindle)
            ? [new Fix("Add M5 before it", FixSafety.Safe, [new Edit(finding.Line, finding.StartColumn, finding.StartColumn, "M5 ")])]
            : [];
}
