using NcLanguage.Checks.Analysis;
using NcLanguage.Control.Execution;
using NcLanguage.Syntax.Lexing;

namespace NcLanguage.Checks.Rules;

/// <summary>A character that begins nothing a control reads.</summary>
public sealed class UnknownCharacter : Rule
{
    public override RuleInfo Info { get; } = new()
    {
        Id = "NC1001",
        Name = "unknown-character",
        Severity = Severity.Error,
        Title = "A character has no meaning in a block",
        Finds =
            "A character outside comments that begins no word: neither a letter, a bracket of a comment, #, / at the beginning nor ; or %. A % counts as "
            + "one where it does not stand alone on its line. The first of a block is reported.",
        AtTheMachine = "The control refuses the file when it is loaded, or stops with an alarm at this block, perhaps in the middle of a cut.",
        Example = """
            G21 G90 G17 G54
            G0 X10,Y10
            ~     ^
            M30
            """,
        Instead = """
            G21 G90 G17 G54
            G0 X10 Y10
            M30
            """,
        NotFound = "Characters inside comments: see character-not-sendable.",
        Source = "NISTIR 6556 §3.3 and appendix E.",
    };

    public override StepEvents Interest => StepEvents.OddText;

    public override void CheckStep(in StepContext step)
    {
        if (!step.IsRun)
            return;
        var tokens = step.Block.Tokens;
        var end = step.Block.TextIndex is >= 0 and var text ? text : tokens.Length;
        for (var i = 0; i < end; i++)
        {
            if (tokens[i].Kind is not (TokenKind.Unknown or TokenKind.Percent))
                continue;
            step.Report(this, i, tokens[i].Kind == TokenKind.Percent
                ? "% opens or closes a file and stands alone on its line: inside a block the control stops at it with an alarm."
                : $"{Shown(step.Block.TextOf(tokens[i]))} has no meaning in a block: the control stops at it with an alarm.");
            return;
        }
    }

    static string Shown(ReadOnlySpan<byte> text) =>
        Quote.ControlCharacter(text) is { } control ? char.ToUpperInvariant(control[0]) + control[1..] : $"\"{Quote.Text(text)}\"";
}
