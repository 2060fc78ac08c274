using System.Runtime.CompilerServices;
using NcLanguage.Syntax.Expressions;
using NcLanguage.Syntax.Text;

namespace NcLanguage.Syntax.Lexing;

/// <summary>Cuts lines into tokens. Never fails: what cannot be read becomes a token that says so.</summary>
public static class BlockLexer
{
    /// <summary>Bytes of one line that are read; the rest becomes one <see cref="TokenKind.Excess"/> token.</summary>
    public const int LongestRead = 4096;

    /// <summary>What some editors put before UTF-8 text: no part of the program. Treated as blank where a line begins with it.</summary>
    public static ReadOnlySpan<byte> ByteOrderMark => [0xEF, 0xBB, 0xBF];

    /// <summary>NUL and DEL, as a tape or a line has them before and behind the text: the control passes over them (ISO 6983-1, ISO 840; from memory). Treated as blank at both ends of a line.</summary>
    static ReadOnlySpan<byte> Idle => [0, 0x7F];

    static ReadOnlySpan<byte> IdleAndBlank => [0, 0x7F, (byte)' ', (byte)'\t'];

    /// <summary>Lexes a chunk into storage that the caller keeps.</summary>
    internal static void Lex(Chunk chunk, BlockBuffer buffer)
    {
        buffer.Begin(chunk.LineCount);
        for (var line = 0; line < chunk.LineCount; line++)
        {
            var text = chunk.Line(line);
            LexLine(text, buffer);
            buffer.EndLine(line, chunk.LineStart(line) + text.Length);
        }
    }

    /// <summary>The tokens of one line, without terminator.</summary>
    public static Token[] LexLine(ReadOnlySpan<byte> line) => BlockBuffer.Keep(line);

    internal static void LexLine(ReadOnlySpan<byte> line, BlockBuffer tokens)
    {
        var read = line.Length > LongestRead ? line[..LongestRead] : line;
        var first = tokens.Count;
        var handsOver = false;
        var start = read.StartsWith(ByteOrderMark) ? ByteOrderMark.Length : 0;
        if (read.Length > 0 && (MayBeIdle(read[start < read.Length ? start : 0]) || MayBeIdle(read[^1])))
        {
            read = WithoutIdleEnd(read);
            start = read.Length - WithoutIdleStart(read[start..]).Length;
        }
        for (var at = Scan.SkipSpaces(read, start); at < read.Length; at = Scan.SkipSpaces(read, at))
        {
            ref var next = ref tokens.Next;
            if (PlainWord.TryRead(read, at, ref next))
            {
                tokens.TakeNext();
                at = next.End;
                continue;
            }
            var token = read[at] == '[' && handsOver
                ? ReadValue(read, at, at, TokenKind.Argument, 0, StatementKind.None)
                : Next(read, at, atStart: tokens.Count == first);
            tokens.Add(token);
            handsOver |= token.Statement is StatementKind.Call or StatementKind.Return or StatementKind.EndSub;
            at = token.End;
        }
        if (line.Length > LongestRead)
            tokens.Add(Plain(TokenKind.Excess, LongestRead, line.Length));
    }

    static bool MayBeIdle(byte c) => c is 0 or 0x7F || Scan.IsBlank(c);

    static ReadOnlySpan<byte> WithoutIdleEnd(ReadOnlySpan<byte> line) =>
        line.TrimEnd(IdleAndBlank) is var rest && line[rest.Length..].IndexOfAny(Idle) >= 0 ? rest : line;

    static ReadOnlySpan<byte> WithoutIdleStart(ReadOnlySpan<byte> line) =>
        line.TrimStart(IdleAndBlank) is var rest && line[..^rest.Length].IndexOfAny(Idle) >= 0 ? rest : line;

    static Token Next(ReadOnlySpan<byte> line, int at, bool atStart)
    {
        var c = line[at];
        if (Scan.IsLetter(c))
            return ReadLetter(line, at);
        return c switch
        {
            (byte)'(' => ReadComment(line, at),
            (byte)';' => Plain(TokenKind.LineComment, at, line.Length),
            (byte)'%' => Plain(TokenKind.Percent, at, at + 1),
            (byte)'/' when atStart => ReadSkip(line, at),
            (byte)':' => ReadWord(line, at, at + 1),
            (byte)'#' => ReadAssignment(line, at),
            _ => Plain(TokenKind.Unknown, at, EndOfUnknown(line, at)),
        };
    }

    static Token ReadLetter(ReadOnlySpan<byte> line, int at) =>
        Statements.TryRead(line, at, out var statement, out var end)
            ? ReadStatement(line, at, statement, end)
            : ReadWord(line, at, at + 1);

    static Token ReadWord(ReadOnlySpan<byte> line, int at, int afterLetter)
    {
        var letter = Scan.Upper(line[at]);
        var value = Scan.SkipSpaces(line, afterLetter);
        if (value >= line.Length || !BeginsValue(line, value))
            return new Token(TokenKind.BareLetter, TokenTraits.None, letter, StatementKind.None, ExpressionError.None, at, afterLetter, afterLetter, double.NaN);
        return ReadValue(line, at, value, TokenKind.Word, letter, StatementKind.None);
    }

    static Token ReadValue(ReadOnlySpan<byte> line, int start, int value, TokenKind kind, byte letter, StatementKind statement)
    {
        var c = line[value];
        var afterSign = c is (byte)'+' or (byte)'-' ? Scan.SkipSpaces(line, value + 1) : value;
        var signedExpression = afterSign != value && afterSign < line.Length && (line[afterSign] is (byte)'[' or (byte)'#' || BeginsFunction(line, afterSign));
        if (!signedExpression && (Scan.IsDigit(c) || c is (byte)'+' or (byte)'-' or (byte)'.'))
        {
            var number = NumberReader.ReadNumber(line, value);
            if (kind == TokenKind.Word && EndOfRest(line, letter, value, number.End) is var rest && rest > number.End)
                return new Token(kind, TokenTraits.Malformed, letter, statement, ExpressionError.None, start, rest, value, double.NaN);
            var traits = (number.HasPoint ? TokenTraits.HasPoint : 0) | (number.Malformed ? TokenTraits.Malformed : 0);
            return new Token(kind, traits, letter, statement, ExpressionError.None, start, Math.Max(number.End, value + 1), value,
                number.Malformed ? double.NaN : number.Value);
        }

        var nothingKnown = default(UnknownVariables);
        var result = Expression.Read(line, signedExpression ? afterSign : value, ref nothingKnown);
        if (result.Error != ExpressionError.None)
        {
            // What follows a broken expression cannot be told apart from it: one token, one finding.
            return new Token(kind, TokenTraits.IsExpression | TokenTraits.Malformed, letter, statement, result.Error,
                start, EndOfBroken(line, value), value, double.NaN);
        }
        var expressionTraits = TokenTraits.IsExpression | (result.ReadsVariables ? TokenTraits.ReadsVariables : 0);
        var sign = signedExpression && c == '-' ? -1 : 1;
        return new Token(kind, expressionTraits, letter, statement, ExpressionError.None, start, result.End, value, sign * result.Value);
    }

    static Token ReadStatement(ReadOnlySpan<byte> line, int at, StatementKind statement, int end)
    {
        var value = Scan.SkipSpaces(line, end);
        return Statements.TakesValue(statement) && value < line.Length && BeginsValue(line, value)
            ? ReadValue(line, at, value, TokenKind.Statement, 0, statement)
            : new Token(TokenKind.Statement, TokenTraits.None, 0, statement, ExpressionError.None, at, end, end, double.NaN);
    }

    static Token ReadAssignment(ReadOnlySpan<byte> line, int at)
    {
        var nothingKnown = default(UnknownVariables);
        var target = Expression.Read(line, at, ref nothingKnown);
        var equals = Scan.SkipSpaces(line, target.End);
        if (target.Error == ExpressionError.None && equals < line.Length && line[equals] == '=')
        {
            var value = Scan.SkipSpaces(line, equals + 1);
            if (value < line.Length && BeginsValue(line, value))
                return ReadSetting(line, at, value);
        }
        var error = target.Error != ExpressionError.None ? target.Error : ExpressionError.MissingOperand;
        return new Token(TokenKind.Assignment, TokenTraits.IsExpression | TokenTraits.Malformed, 0, StatementKind.None, error,
            at, EndOfBroken(line, at), at, double.NaN);
    }

    /// <summary>A plain number keeps its traits; everything else is an expression, which needs no brackets here.</summary>
    static Token ReadSetting(ReadOnlySpan<byte> line, int start, int value)
    {
        var nothingKnown = default(UnknownVariables);
        var result = Expression.ReadSetting(line, value, ref nothingKnown);
        var number = NumberReader.ReadNumber(line, value);
        if (result.End > number.End)
        {
            var traits = TokenTraits.IsExpression | (result.ReadsVariables ? TokenTraits.ReadsVariables : 0) | (result.Error == ExpressionError.None ? 0 : TokenTraits.Malformed);
            return new Token(TokenKind.Assignment, traits, 0, StatementKind.None, result.Error, start, result.End, value, result.Value);
        }
        return ReadValue(line, start, value, TokenKind.Assignment, 0, StatementKind.None);
    }

    static Token ReadSkip(ReadOnlySpan<byte> line, int at)
    {
        var digit = Scan.SkipSpaces(line, at + 1);
        return digit < line.Length && Scan.IsDigit(line[digit])
            ? new Token(TokenKind.Skip, TokenTraits.None, 0, StatementKind.None, ExpressionError.None, at, digit + 1, digit, line[digit] - '0')
            : Plain(TokenKind.Skip, at, at + 1);
    }

    static Token ReadComment(ReadOnlySpan<byte> line, int at)
    {
        var firstClose = line[at..].IndexOf((byte)')');
        if (firstClose < 0)
            return Plain(TokenKind.UnclosedComment, at, line.Length);
        var end = at + firstClose + 1;
        if (line[(at + 1)..end].IndexOf((byte)'(') < 0)
            return Plain(TokenKind.Comment, at, end);
        var balanced = EndOfBalanced(line, at);
        return Plain(TokenKind.Comment, at, balanced > 0 ? balanced : end) with { Traits = TokenTraits.Nested };
    }

    /// <summary>How far the end of a comment with others in it is looked for, bytes: a line full of brackets would be read to its end for each.</summary>
    const int LongestNested = 4096;

    static int EndOfBalanced(ReadOnlySpan<byte> line, int at)
    {
        var depth = 0;
        for (var i = at; i < Math.Min(line.Length, at + LongestNested); i++)
        {
            if (line[i] == '(')
                depth++;
            else if (line[i] == ')' && --depth == 0)
                return i + 1;
        }
        return -1;
    }

    static int EndOfBroken(ReadOnlySpan<byte> line, int at)
    {
        var comment = line[at..].IndexOfAny((byte)'(', (byte)';');
        var end = comment < 0 ? line.Length : at + comment;
        while (end > at + 1 && Scan.IsBlank(line[end - 1]))
            end--;
        return Math.Max(end, at + 1);
    }

    // A run of characters of which none begins anything is one token: binary rubbish is one finding a line, not thousands.
    static int EndOfUnknown(ReadOnlySpan<byte> line, int at)
    {
        var end = at + 1;
        while (end < line.Length && !Scan.IsLetter(line[end]) && !Scan.IsBlank(line[end]) && line[end] is not ((byte)'(' or (byte)';' or (byte)'%' or (byte)'#' or (byte)':'))
            end++;
        return end;
    }

    // What cannot follow a number but was meant to belong to it: a comma for the point, a sign, the letter O for the digit 0.
    // One token, so that nothing is made of the part before it.
    static int EndOfRest(ReadOnlySpan<byte> line, byte letter, int start, int end)
    {
        var at = Scan.SkipSpaces(line, end);
        if (at >= line.Length)
            return end;
        var isDecimalComma = line[at] == ',' && at + 1 < line.Length && Scan.IsDigit(line[at + 1]);
        if (!isDecimalComma && line[at] is not ((byte)'+' or (byte)'-'))
            return EndOfLettersO(line, letter, start, end);
        end = at + 1;
        for (at = end; at < line.Length && (Scan.IsDigit(line[at]) || Scan.IsBlank(line[at]) || line[at] is (byte)'.' or (byte)',' or (byte)'+' or (byte)'-'); at++)
            if (!Scan.IsBlank(line[at]))
                end = at + 1;
        return end;
    }

    static int EndOfLettersO(ReadOnlySpan<byte> line, byte letter, int start, int end)
    {
        var at = end;
        while (at < line.Length && Scan.Upper(line[at]) == 'O')
            at++;
        if (at == end || end == start || !(Scan.IsDigit(line[end - 1]) || line[end - 1] == '.'))
            return end;
        if (at + 1 < line.Length && line[at] == '.' && Scan.IsDigit(line[at + 1]) && !line[start..end].Contains((byte)'.'))
        {
            while (++at < line.Length && Scan.IsDigit(line[at]))
            {
            }
            return at;
        }
        // A block number may have a program's number right behind it; no other word has.
        if (at < line.Length && Scan.IsDigit(line[at]) && letter != 'N')
        {
            while (at < line.Length && (Scan.IsDigit(line[at]) || line[at] == '.' || Scan.Upper(line[at]) == 'O'))
                at++;
            return at;
        }
        // O with its number, or the first letter of a word of text.
        return at < line.Length && (Scan.IsLetter(line[at]) ? at + 1 >= line.Length || !BeginsValue(line, at + 1) : Scan.IsDigit(line[at]) || line[at] == '[') ? end : at;
    }

    static bool BeginsValue(ReadOnlySpan<byte> line, int at)
    {
        var c = line[at];
        return Scan.IsDigit(c) || c is (byte)'+' or (byte)'-' or (byte)'.' or (byte)'[' or (byte)'#' || (Scan.IsLetter(c) && BeginsFunction(line, at));
    }

    // Two letters or more and then a bracket: a function, known or not; anything else is the next word.
    static bool BeginsFunction(ReadOnlySpan<byte> line, int at)
    {
        var end = at;
        while (end < line.Length && Scan.IsLetter(line[end]))
            end++;
        var bracket = Scan.SkipSpaces(line, end);
        return end - at >= 2 && bracket < line.Length && line[bracket] == '[' && !Statements.TryRead(line, at, out _, out _);
    }

    static Token Plain(TokenKind kind, int start, int end) =>
        new(kind, TokenTraits.None, 0, StatementKind.None, ExpressionError.None, start, end, end, double.NaN);
}
