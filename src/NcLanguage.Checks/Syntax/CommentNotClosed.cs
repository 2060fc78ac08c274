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
        Fix =
            "Closes the comment at the end of the line. Where something in it reads as a word (a letter directly followed by a number, as Z30), that is a "
            + "choice, and so is closing the comment before the first such word: whether Z30 is to run only whoever wrote it knows.",
        NotFound = "Words that were swallowed by the comment are not looked at.",
        Source = "NISTIR 6556 §3.3.4.",
    };

    public override StepEvents Interest => StepEvents.OddText;

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
        var line = analysis.Text.Line(finding.Line);
        var end = line.TrimEnd(" \t"u8).Length;
        var word = FirstWord(line[..end], finding.StartColumn + 1);
        Edit[] inner = [.. BracketsIn(line[..end], finding.StartColumn + 1).Select(at => new Edit(finding.Line, at, at + 1, ""))];
        var title = inner.Length == 0 ? "Close the comment at the end of the line" : "Close the comment at the end of the line and take the brackets out of it";
        var atEnd = new Fix(title, word < 0 ? FixSafety.Safe : FixSafety.Choice, [.. inner, new Edit(finding.Line, end, end, ")")]);
        if (word < 0)
            return [atEnd];
        var before = line[..word].TrimEnd(" \t"u8).Length;
        // Nothing stands between the bracket and the word: there is no comment to close. A word that the block has already makes no block that runs.
        return before <= finding.StartColumn + 1 || Repeats(analysis.Main.BlockAt(finding.Line), line[word..])
            ? [atEnd]
            : [new Fix($"Close the comment before {Quote.Text(WordAt(line, word))}", FixSafety.Choice, [new Edit(finding.Line, before, before, ")")]), atEnd];
    }

    /// <summary>Where opening brackets stand: a comment holds no other.</summary>
    static List<int> BracketsIn(ReadOnlySpan<byte> line, int from)
    {
        var brackets = new List<int>();
        for (var i = from; i < line.Length; i++)
            if (line[i] == '(')
                brackets.Add(i);
        return brackets;
    }

    /// <summary>Whether words give an address, G and M aside, that the block gives before them or that they give twice.</summary>
    static bool Repeats(in Block block, ReadOnlySpan<byte> words)
    {
        var given = new HashSet<byte>();
        foreach (var token in BlockLexer.LexLine(words))
            if (token.Kind == TokenKind.Word && (char)token.Letter is not ('G' or 'M') && (block.IndexOf((char)token.Letter) >= 0 || !given.Add(token.Letter)))
                return true;
        return false;
    }

    /// <summary>Where the first thing begins that reads as a word: a letter that follows no other, directly followed by a number, a variable or an
    /// expression; −1 where there is none.</summary>
    static int FirstWord(ReadOnlySpan<byte> line, int from)
    {
        for (var i = from; i + 1 < line.Length; i++)
            if (char.IsAsciiLetter((char)line[i]) && !char.IsAsciiLetter((char)line[i - 1]) && StartsValue(line[(i + 1)..]))
                return i;
        return -1;
    }

    static bool StartsValue(ReadOnlySpan<byte> text)
    {
        var value = text.TrimStart("+-."u8);
        return !value.IsEmpty && (char.IsAsciiDigit((char)value[0]) || value[0] is (byte)'#' or (byte)'[');
    }

    static ReadOnlySpan<byte> WordAt(ReadOnlySpan<byte> line, int start)
    {
        var end = start + 1;
        while (end < line.Length && (char.IsAsciiDigit((char)line[end]) || line[end] is (byte)'+' or (byte)'-' or (byte)'.'))
            end++;
        return line[start..end];
    }
}
