using NcLanguage.Checks.Analysis;
using NcLanguage.Control.Execution;
using NcLanguage.Syntax.Lexing;

namespace NcLanguage.Checks.Rules;

/// <summary>A comment within a comment.</summary>
public sealed class CommentNested : Rule
{
    public override RuleInfo Info { get; } = new()
    {
        Id = "NC1006",
        Name = "comment-nested",
        Severity = Severity.Error,
        Title = "A comment holds another one",
        Finds = "An opening round bracket inside a comment.",
        AtTheMachine = "The control ends the comment at the first closing bracket and reads the rest as words, or stops with an alarm.",
        Example = """
            G21 G90 G17 G54
            G0 X10 Y10 (hole 1 (left) front)
            ~          ^^^^^^^^^^^^^^^^^^^^^
            M30
            """,
        Instead = """
            G21 G90 G17 G54
            G0 X10 Y10 (hole 1, left, front)
            M30
            """,
        NotFound = "Square brackets in comments, which are harmless.",
        Source = "NISTIR 6556 §3.3.4.",
    };

    public override StepEvents Interest => StepEvents.OddText;

    public override void CheckStep(in StepContext step)
    {
        if (!step.IsRun)
            return;
        var tokens = step.Block.Tokens;
        for (var i = 0; i < tokens.Length; i++)
            if (tokens[i].IsNested)
                step.Report(this, i, "A comment cannot hold another: the control ends it at the first closing bracket and reads on, or stops with an alarm.");
    }
}
