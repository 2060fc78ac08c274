using NcLanguage.Checks.Analysis;
using NcLanguage.Control.Execution;
using NcLanguage.Syntax.Lexing;

namespace NcLanguage.Checks.Rules;

/// <summary>A comment without its closing bracket.</summary>
public sealed class CommentNotClosed : Rule
{
    public override RuleInfo Info { get; } = new()
    {
        Id = "NC1005",
        Name = "comment-not-closed",
        Severity = Severity.Error,
        Title = "A comment is not closed",
        Finds = "An opening round bracket without a closing one on its line.",
        AtTheMachine = "The control refuses the block with an alarm, or takes everything to the end of the line as comment, words included.",
        Example = """
            G21 G90 G17 G54
            G0 X10 Y10 (left front hole
            ~          ^^^^^^^^^^^^^^^^
            M30
            """,
        Instead = """
            G21 G90 G17 G54
            G0 X10 Y10 (left front hole)
            M30
            """,
        FixSafety = FixSafety.Safe,
        Fix = "Closes the comment at the end of the line, which is how far it was read anyway.",
        NotFound = "Words that were swallowed by the comment are not looked at.",
        Source = "NISTIR 6556 §3.3.4.",
    };

    public override StepEvents Interest => StepEvents.Words;

    public override void CheckStep(in StepContext step)
    {
        if (!step.IsRun)
            return;
        var tokens = step.Block.Tokens;
        for (var i = 0; i < tokens.Length; i++)
            if (tokens[i].Kind == TokenKind.UnclosedComment)
                step.Report(this, i, "This comment has no closing bracket: the control stops with an alarm, or skips all words up to the end of the line.");
    }

    public override IEnumerable<Fix> Fixes(Finding finding, ProgramAnalysis analysis)
    {
        var end = analysis.Text.Line(finding.Line).TrimEnd(" \t"u8).Length;
        return [new Fix("Close the comment at the end of the line", FixSafety.Safe, [new Edit(finding.Line, end, end, ")")])];
    }
}
