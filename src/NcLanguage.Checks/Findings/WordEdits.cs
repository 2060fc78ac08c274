using NcLanguage.Control.State;
using NcLanguage.Machine.Profiles;
using NcLanguage.Syntax.Lexing;
using NcLanguage.Syntax.Text;

namespace NcLanguage.Checks;

/// <summary>Edits that put words into blocks and leave every other byte as it is.</summary>
public static class WordEdits
{
    /// <summary>A word in place of another; the letter keeps its case.</summary>
    public static Edit Replace(int line, in Block block, int token, string word) =>
        new(line, block.Tokens[token].Start, block.Tokens[token].End, InCaseOf(block, token, word));

    /// <summary>A word right before another.</summary>
    public static Edit Before(int line, in Block block, int token, string word) =>
        new(line, block.Tokens[token].Start, block.Tokens[token].Start, InCaseOf(block, token, word) + " ");

    /// <summary>A word right after another.</summary>
    public static Edit After(int line, in Block block, int token, string word) =>
        new(line, block.Tokens[token].End, block.Tokens[token].End, " " + InCaseOf(block, token, word));

    /// <summary>A word at the head of a block, behind skip mark, block number and comments that stand first.</summary>
    public static Edit AtHead(int line, in Block block, string word)
    {
        var first = FirstWord(block);
        return first >= 0 ? Before(line, block, first, word) : AtEnd(line, block, word);
    }

    /// <summary>Words behind the last word of a block, be it only its number, and before comments and text that end it: what stands behind a comment that runs to the line's end, or behind text, is taken in.</summary>
    public static Edit AtEnd(int line, in Block block, string words)
    {
        for (var i = (block.TextIndex is >= 0 and var text ? text : block.Tokens.Length) - 1; i >= 0; i--)
            if (!block.Tokens[i].IsComment)
                return new Edit(line, block.Tokens[i].End, block.Tokens[i].End, " " + words);
        return block.Tokens.Length == 0
            ? new Edit(line, block.Line.Length, block.Line.Length, words)
            : new Edit(line, block.Tokens[0].Start, block.Tokens[0].Start, words + " ");
    }

    /// <summary>A block of its own before the one on a line, with the line's own terminator; behind a program's number, with which the program begins.</summary>
    public static Edit BlockBefore(SourceText text, int line, string words)
    {
        var block = text.BlockAt(line);
        var end = LineEnding.Of(text, line);
        var first = block.BeginsProgram ? FirstWord(block, block.ProgramNumberIndex + 1) : -1;
        if (first < 0)
            return new Edit(line, 0, 0, words + end);
        var at = block.Tokens[first].Start;
        return new Edit(line, at, at, end + words + end);
    }

    /// <summary>A block of its own behind the one on a line, with the line's own terminator.</summary>
    public static Edit BlockBehind(SourceText text, int line, string words)
    {
        var end = text.Line(line).Length;
        return new Edit(line, end, end, LineEnding.Of(text, line) + words);
    }

    /// <summary>The index of the first word that is no block or program number, or −1.</summary>
    /// <param name="from">The token to begin with.</param>
    public static int FirstWord(in Block block, int from = 0)
    {
        for (var i = from; i < block.Tokens.Length; i++)
        {
            ref readonly var token = ref block.Tokens[i];
            if (token.Kind == TokenKind.Word && (char)token.Letter is not ('N' or 'O' or ':'))
                return i;
        }
        return -1;
    }

    /// <summary>The index of the first G or M word with this number, or −1.</summary>
    public static int IndexOfCode(in Block block, char letter, double number)
    {
        for (var i = 0; i < block.Tokens.Length; i++)
            if (block.Tokens[i].IsWord(letter) && block.Tokens[i].Value == number)
                return i;
        return -1;
    }

    /// <summary>The index of the word that starts a cycle (G73, G74, G76, G81 to G89), or −1.</summary>
    public static int IndexOfCycle(in Block block)
    {
        for (var i = 0; i < block.Tokens.Length; i++)
            if (block.Tokens[i].IsWord('G') && block.Tokens[i].Value is 73 or 74 or 76 or (>= 81 and <= 89))
                return i;
        return -1;
    }

    /// <summary>A length as the program writes it: in its unit, with a point where a number without one would mean something else.</summary>
    public static string Length(double mm, LengthUnit unit, Readings readings)
    {
        var text = unit == LengthUnit.Inch ? Say.Number(mm / UnitLength.MmPerInch, 4) : Say.Number(mm, 3);
        return readings.Integers == IntegerReading.Increments ? Say.WithPoint(text) : text;
    }

    static string InCaseOf(in Block block, int token, string word) =>
        block.Line[block.Tokens[token].Start] is >= (byte)'a' and <= (byte)'z' ? word.ToLowerInvariant() : word;
}
