using NcLanguage.Checks.Analysis;
using NcLanguage.Control.Execution;
using NcLanguage.Syntax.Lexing;

namespace NcLanguage.Checks.Rules;

/// <summary>An address letter without its number, or text outside a comment.</summary>
public sealed class WordWithoutNumber : Rule
{
    public override RuleInfo Info { get; } = new()
    {
        Id = "NC1002",
        Name = "word-without-number",
        Severity = Severity.Error,
        Title = "A letter has no number behind it",
        Finds = "An address letter that no number or expression follows; several in a row are reported as one piece of text.",
        AtTheMachine = "The control stops at the block with an alarm. Text for people belongs in round brackets, where the control skips it.",
        Example = """
            G21 G90 G17 G54
            G0 X10 Y
            ~      ^
            M30
            """,
        Instead = """
            G21 G90 G17 G54
            G0 X10 Y10
            M30
            """,
        NotFound = "Text that happens to hold numbers reads as words.",
        Source = "NISTIR 6556 §3.3.2 (a word is a letter followed by a real value).",
    };

    public override StepEvents Interest => StepEvents.OddText;

    public override void CheckStep(in StepContext step)
    {
        if (!step.IsRun)
            return;
        var tokens = step.Block.Tokens;
        for (var i = 0; i < tokens.Length; i++)
        {
            if (tokens[i].Kind != TokenKind.BareLetter)
                continue;
            var last = i;
            while (last + 1 < tokens.Length && tokens[last + 1].Kind == TokenKind.BareLetter)
                last++;
            var text = Quote.Text(step.Block.Line[tokens[i].Start..tokens[last].End]);
            step.Report(this, i, last, last == i
                ? $"{text.ToUpperInvariant()} has no number behind it: the control stops here with an alarm."
                : $"\"{text}\" is no word (a letter with a number): the control stops here with an alarm; text for people belongs in ( ).");
            return;
        }
    }
}
