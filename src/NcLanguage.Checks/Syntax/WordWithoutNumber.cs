using NcLanguage.Checks.Analysis;
using NcLanguage.Control.Execution;
using NcLanguage.Machine.Profiles;
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
        Finds = "An address letter that no number or expression follows, and text for people that lacks its brackets: three letters or more in a row, with all that stands beside them.",
        AtTheMachine = "The control stops at the block with an alarm. Text for people belongs in round brackets, where the control skips it.",
        Example = """
            G21 G90 G17 G54
            SPOT 4 HOLES
            ~^^^^^^^^^^^
            M30
            """,
        Instead = """
            G21 G90 G17 G54
            (SPOT 4 HOLES)
            M30
            """,
        FixSafety = FixSafety.Choice,
        Fix = "Puts text for people into brackets, where the control takes all of its signs there. Which number a letter lacks nobody can say.",
        NotFound = "Text of which each letter has a number behind it, or in which no three letters stand together, reads as words.",
        Source = "NISTIR 6556 §3.3.2 (a word is a letter followed by a real value).",
    };

    public override StepEvents Interest => StepEvents.OddText;

    public override void CheckStep(in StepContext step)
    {
        if (!step.IsRun)
            return;
        var tokens = step.Block.Tokens;
        if (step.Block.TextIndex is >= 0 and var text)
        {
            var end = LastOfText(step.Block, text);
            step.Report(this, text, end, $"\"{Quote.Text(step.Block.Line[tokens[text].Start..tokens[end].End])}\" is text and no words: the control stops here with an alarm; text for people belongs in ( ).");
            return;
        }
        for (var i = 0; i < tokens.Length; i++)
        {
            if (tokens[i].Kind != TokenKind.BareLetter)
                continue;
            var last = i;
            while (last + 1 < tokens.Length && tokens[last + 1].Kind == TokenKind.BareLetter)
                last++;
            var letters = Quote.Text(step.Block.Line[tokens[i].Start..tokens[last].End]);
            step.Report(this, i, last, last == i
                ? $"{letters.ToUpperInvariant()} has no number behind it: the control stops here with an alarm."
                : $"\"{letters}\" is no word (a letter with a number): the control stops here with an alarm; text for people belongs in ( ).");
            return;
        }
    }

    /// <summary>The last token of text that begins with one, comments behind it left out.</summary>
    static int LastOfText(in Block block, int text)
    {
        var last = text;
        for (var i = text; i < block.Tokens.Length; i++)
            if (!block.Tokens[i].IsComment)
                last = i;
        return last;
    }

    public override IEnumerable<Fix> Fixes(Finding finding, ProgramAnalysis analysis)
    {
        ArgumentNullException.ThrowIfNull(finding);
        ArgumentNullException.ThrowIfNull(analysis);
        var block = analysis.Main.BlockAt(finding.Line);
        if (block.TextIndex is not (>= 0 and var text))
            return [];
        var (start, end) = (block.Tokens[text].Start, block.Tokens[LastOfText(block, text)].End);
        return block.Line[start..end].IndexOfAny((byte)'(', (byte)')') >= 0 || !CanBeComment(block, text, end, analysis.Machine.Readings.ProgramMarks)
            ? []
            : [new Fix("Put the text into brackets", FixSafety.Choice, [new Edit(finding.Line, start, start, "("), new Edit(finding.Line, end, end, ")")])];
    }

    /// <summary>Whether a control takes all signs of a text within brackets, and does not read the program's number in it.</summary>
    static bool CanBeComment(in Block block, int text, int end, ProgramMarks marks)
    {
        if (marks.Number)
            foreach (ref readonly var token in block.Tokens[text..])
                if (token.IsWord('O') || token.IsWord(':'))
                    return false;
        if (marks.Characters is not { } signs)
            return true;
        if (!signs.Contains('(', StringComparison.Ordinal) || !signs.Contains(')', StringComparison.Ordinal))
            return false;
        foreach (var sign in block.Line[block.Tokens[text].Start..end])
            if (sign is > (byte)' ' and < 0x7F && !char.IsAsciiLetterOrDigit((char)sign) && !signs.Contains((char)sign, StringComparison.Ordinal))
                return false;
        return true;
    }
}
