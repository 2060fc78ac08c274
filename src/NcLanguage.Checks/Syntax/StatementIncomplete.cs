using NcLanguage.Checks.Analysis;
using NcLanguage.Control.Codes;
using NcLanguage.Control.Execution;

namespace NcLanguage.Checks.Rules;

/// <summary>A statement without all that belongs to it.</summary>
public sealed class StatementIncomplete : Rule
{
    public override RuleInfo Info { get; } = new()
    {
        Id = "NC1015",
        Name = "statement-incomplete",
        Severity = Severity.Error,
        Title = "Something is missing from a statement",
        Finds = "IF without GOTO or THEN, WHILE without DO, GOTO, DO or END without a number, and other statements that lack what they need.",
        AtTheMachine = "The control stops at the block with an alarm.",
        Example = """
            G21 G90 G17 G54
            #1=3
            IF [#1 GT 2]
            ~^^^^^^^^^^^
            N80 M30
            """,
        Instead = """
            G21 G90 G17 G54
            #1=3
            IF [#1 GT 2] GOTO 80
            N80 M30
            """,
        NotFound = "Statements behind the program's end.",
        Source = "Common practice.",
    };

    public override StepEvents Interest => StepEvents.Faults;

    public override void CheckStep(in StepContext step)
    {
        // What cannot be read has a finding of its own, and swallows what follows it.
        foreach (ref readonly var token in step.Block.Tokens)
            if (token.IsMalformed)
                return;
        foreach (ref readonly var fault in step.Step.Faults.Items)
        {
            if (fault.Kind != FaultKind.StatementIncomplete)
                continue;
            var row = StatementTable.Find(step.Block.Tokens[fault.Token].Statement.ToString(), step.Step.Words.Has('O'));
            step.Report(this, fault.Token, row is null
                ? "This statement says nothing here: the control stops with an alarm."
                : $"Something is missing here, it is written {row.Form}: the control stops with an alarm.");
            return;
        }
    }
}
