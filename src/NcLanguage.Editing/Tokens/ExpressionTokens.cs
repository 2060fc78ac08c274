using NcLanguage.Syntax.Lexing;

namespace NcLanguage.Editing;

/// <summary>The colours within an expression: variables, functions and word operators, numbers, signs.</summary>
static class ExpressionTokens
{
    /// <param name="block">The block.</param>
    /// <param name="start">Byte column where the expression begins.</param>
    /// <param name="end">Byte column behind it.</param>
    /// <param name="line">From 0.</param>
    /// <param name="modifiers">Of all its parts.</param>
    /// <param name="tokens">Takes them.</param>
    /// <param name="isSetting">Whether the first variable is set by it.</param>
    public static void Add(in Block block, int start, int end, int line, TokenModifiers modifiers, List<ColouredToken> tokens, bool isSetting = false)
    {
        var text = block.Line;
        for (var at = start; at < end;)
        {
            var from = at;
            var c = text[at];
            if (c == '#')
            {
                at = EndOfVariable(text, at, end);
                tokens.Add(new(line, from, at, TokenType.Variable, modifiers | (isSetting && from == start ? TokenModifiers.Modification : 0)));
            }
            else if (IsLetter(c))
            {
                while (at < end && IsLetter(text[at]))
                    at++;
                var isFunction = at < end && SkipBlanks(text, at, end) is var next && next < end && text[next] == '[' && !IsOperator(text[from..at]);
                tokens.Add(new(line, from, at, isFunction ? TokenType.Function : TokenType.Operator, modifiers));
            }
            else if (c is >= (byte)'0' and <= (byte)'9' or (byte)'.')
            {
                while (at < end && text[at] is >= (byte)'0' and <= (byte)'9' or (byte)'.')
                    at++;
                tokens.Add(new(line, from, at, TokenType.Number, modifiers));
            }
            else
            {
                at++;
                if (c is (byte)'+' or (byte)'-' or (byte)'*' or (byte)'/' or (byte)'=')
                    tokens.Add(new(line, from, at, TokenType.Operator, modifiers));
            }
        }
    }

    static int EndOfVariable(ReadOnlySpan<byte> text, int at, int end)
    {
        at = SkipBlanks(text, at + 1, end);
        if (at < end && text[at] == '<')
            return text[at..end].IndexOf((byte)'>') is >= 0 and var length ? at + length + 1 : end;
        while (at < end && text[at] is >= (byte)'0' and <= (byte)'9')
            at++;
        return at;
    }

    static int SkipBlanks(ReadOnlySpan<byte> text, int at, int end)
    {
        while (at < end && text[at] is (byte)' ' or (byte)'\t')
            at++;
        return at;
    }

    // XOR [ … ]: a bracket behind an operator makes it no function.
    static bool IsOperator(ReadOnlySpan<byte> word)
    {
        foreach (var name in (ReadOnlySpan<string>)["AND", "OR", "XOR", "MOD", "EQ", "NE", "GT", "GE", "LT", "LE"])
            if (System.Text.Ascii.EqualsIgnoreCase(word, name))
                return true;
        return false;
    }

    static bool IsLetter(byte c) => (uint)((c | 0x20) - 'a') < 26;
}
