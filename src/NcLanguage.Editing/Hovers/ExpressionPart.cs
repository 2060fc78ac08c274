using NcLanguage.Control.Codes;

namespace NcLanguage.Editing;

/// <summary>A variable, a function or an operator within an expression; start and end are byte columns of the line, the end excluded.</summary>
/// <param name="Row">The function or operator; null for a variable.</param>
/// <param name="IsIndirect">For a variable: its number is not written as a number.</param>
readonly record struct ExpressionPart(int Start, int End, FunctionEntry? Row, bool IsIndirect = false)
{
    /// <summary>The part at a column; null where a number, a bracket, a sign of a number or nothing stands.</summary>
    /// <param name="line">The bytes of the line.</param>
    /// <param name="start">Where the expression begins.</param>
    /// <param name="end">Where it ends. It can be read.</param>
    /// <param name="column">The byte asked for.</param>
    public static ExpressionPart? At(ReadOnlySpan<byte> line, int start, int end, int column)
    {
        var isBehindValue = false;
        List<int> slashesOfAtan = [];
        for (var at = start; at < end && at <= column;)
        {
            if (IsBlank(line[at]))
            {
                at++;
                continue;
            }
            var part = line[at] == '#' ? Variable(line, at, end)
                : Letters(line, at) is { } row ? new ExpressionPart(at, at + row.Text.Length, row)
                : isBehindValue && !slashesOfAtan.Contains(at) && Operator(line, at) is { } sign ? new ExpressionPart(at, at + sign.Text.Length, sign)
                : new ExpressionPart(at, at + 1, null);
            var isPart = line[at] == '#' || part.Row is not null;
            if (isPart && column < part.End)
                return part;
            if (part.Row?.Text == "ATAN")
                slashesOfAtan.Add(SlashOf(line, part.End, end));
            isBehindValue = isPart ? line[at] == '#' && part.End > at + 1 : line[at] is (byte)']' or (byte)'.' || char.IsAsciiDigit((char)line[at]);
            at = part.End;
        }
        return null;
    }

    // #12 and #<name> in one; of #[ … ] and ##12 the sign alone, because what follows is a part of its own.
    static ExpressionPart Variable(ReadOnlySpan<byte> line, int at, int end)
    {
        var next = SkipBlanks(line, at + 1, end);
        if (next < end && line[next] == '<')
            return new(at, next + line[next..end].IndexOf((byte)'>') + 1, null);
        var digits = next;
        while (digits < end && (char.IsAsciiDigit((char)line[digits]) || line[digits] == '.'))
            digits++;
        return digits > next ? new(at, digits, null) : new(at, at + 1, null, IsIndirect: true);
    }

    static FunctionEntry? Letters(ReadOnlySpan<byte> line, int at) => char.IsAsciiLetter((char)line[at]) ? Longest(line, at) : null;

    static FunctionEntry? Operator(ReadOnlySpan<byte> line, int at) => char.IsAsciiLetter((char)line[at]) ? null : Longest(line, at);

    // The longest, so that ** is not taken for *.
    static FunctionEntry? Longest(ReadOnlySpan<byte> line, int at)
    {
        FunctionEntry? longest = null;
        foreach (var row in FunctionTable.All)
            if (row.Text.Length > (longest?.Text.Length ?? 0) && StandsAt(line, at, row.Text))
                longest = row;
        return longest;
    }

    static bool StandsAt(ReadOnlySpan<byte> line, int at, string text)
    {
        if (at + text.Length > line.Length)
            return false;
        for (var i = 0; i < text.Length; i++)
            if (char.ToUpperInvariant((char)line[at + i]) != text[i])
                return false;
        return true;
    }

    // ATAN[ … ]/[ … ]: its slash divides nothing.
    static int SlashOf(ReadOnlySpan<byte> line, int at, int end)
    {
        var open = 0;
        for (; at < end; at++)
        {
            open += line[at] == '[' ? 1 : line[at] == ']' ? -1 : 0;
            if (open == 0 && line[at] == ']')
                return SkipBlanks(line, at + 1, end);
        }
        return -1;
    }

    static int SkipBlanks(ReadOnlySpan<byte> line, int at, int end)
    {
        while (at < end && IsBlank(line[at]))
            at++;
        return at;
    }

    static bool IsBlank(byte c) => c is (byte)' ' or (byte)'\t';
}
