using System.Buffers;
using NcLanguage.Syntax.Lexing;

namespace NcLanguage.Editing.Formatting;

/// <summary>Writes one block tidily: capital letters, one blank between words, none within them. What stands before the first word is left as it is, and so
/// is a block of which anything cannot be read.</summary>
static class BlockFormat
{
    /// <param name="number">The block number to write in place of the block's own; empty to leave that as it is.</param>
    public static void Write(in Block block, ReadOnlySpan<byte> number, IBufferWriter<byte> output)
    {
        if (block.Tokens.Length == 0 || !CanBeRead(block))
        {
            // Without the blanks that end it, a line of which not all is read would be another.
            output.Write(block.Tokens is [.., { Kind: TokenKind.Excess }] ? block.Line : block.Line.TrimEnd(" \t"u8));
            return;
        }
        output.Write(block.Line[..block.Tokens[0].Start]);
        var isFirst = true;
        var hasNumber = number.IsEmpty;
        var isBehindStatement = false;
        foreach (ref readonly var token in block.Tokens)
        {
            if (!hasNumber && !StandsBeforeNumber(token))
            {
                WriteBlank(isFirst, output);
                output.Write(number);
                (isFirst, hasNumber) = (false, true);
            }
            if (token.IsWord('N') && !number.IsEmpty && !isBehindStatement)
                continue;
            isBehindStatement |= token.Kind == TokenKind.Statement;
            WriteBlank(isFirst, output);
            WriteToken(block, token, output);
            // What stands behind / alone stands close to it.
            isFirst = token.Kind == TokenKind.Skip && token.End == token.Start + 1;
        }
        // NULs that end a line are no blanks.
        output.Write(block.Line[block.Tokens[^1].End..].TrimEnd(" \t"u8).TrimStart(" \t"u8));
    }

    /// <summary>Whether a token stands in front of a block's number: / and a % that the block follows.</summary>
    public static bool StandsBeforeNumber(in Token token) => token.Kind is TokenKind.Skip or TokenKind.Percent;

    static void WriteBlank(bool isFirst, IBufferWriter<byte> output)
    {
        if (!isFirst)
            output.Write(" "u8);
    }

    /// <summary>Whether every part of a block means something.</summary>
    public static bool CanBeRead(in Block block)
    {
        foreach (ref readonly var token in block.Tokens)
            if (token.IsMalformed || token.Kind is TokenKind.BareLetter or TokenKind.Unknown or TokenKind.Excess or TokenKind.UnclosedComment)
                return false;
        return true;
    }

    static void WriteToken(in Block block, in Token token, IBufferWriter<byte> output)
    {
        var text = block.TextOf(token);
        if (token.IsComment)
        {
            output.Write(token.Kind == TokenKind.LineComment ? text.TrimEnd(" \t"u8) : text);
            return;
        }
        // A plain word holds no blank that means anything; in expressions and statements one keeps the parts apart.
        var keepsBlanks = token.IsExpression || token.Kind is TokenKind.Statement or TokenKind.Assignment or TokenKind.Argument;
        var written = output.GetSpan(text.Length);
        var length = 0;
        var isInName = false;
        foreach (var c in text)
        {
            isInName = c == '<' || (isInName && c != '>');
            if (c is (byte)' ' or (byte)'\t')
            {
                if (keepsBlanks && length > 0 && written[length - 1] is not ((byte)' ' or (byte)'['))
                    written[length++] = (byte)' ';
                continue;
            }
            if (c == ']' && length > 0 && written[length - 1] == ' ')
                length--;
            written[length++] = !isInName && (uint)(c - 'a') < 26 ? (byte)(c & ~0x20) : c;
        }
        output.Advance(length);
    }
}
