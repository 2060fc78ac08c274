using System.Globalization;
using System.Text;
using NcLanguage.Syntax.Lexing;

namespace NcLanguage.Checks.Rules;

/// <summary>A loop's condition that holds a counter against a number by LT, LE, GT or GE.</summary>
/// <param name="Variable">The counter's number, as written.</param>
/// <param name="Words">"less than -8".</param>
/// <param name="HoldsBelow">Whether it holds below the number, so that counting up ends it.</param>
readonly record struct CounterComparison(string Variable, string Words, bool HoldsBelow)
{
    /// <summary>What a condition such as [#1 LT -8] compares; null where it is another one.</summary>
    public static CounterComparison? Of(ReadOnlySpan<byte> condition)
    {
        var text = Plain(condition);
        if (!text.StartsWith("[#", StringComparison.Ordinal) || !text.EndsWith(']'))
            return null;
        var end = 2;
        while (char.IsAsciiDigit(text[end]))
            end++;
        if (end == 2 || text.Length < end + 3)
            return null;
        var words = text[end..(end + 2)] switch { "LT" => "less than", "LE" => "at most", "GT" => "greater than", "GE" => "at least", _ => null };
        return words is not null && TryRead(text[(end + 2)..^1], out var number)
            ? new CounterComparison(text[2..end], $"{words} {Say.Number(number)}", text[end] == 'L')
            : null;
    }

    /// <summary>Whether a token gives the counter a value.</summary>
    public bool IsSetBy(in Block block, in Token token) =>
        token.Kind == TokenKind.Assignment && Plain(block.Line[token.Start..token.ValueStart]).TrimEnd('=') == "#" + Variable;

    /// <summary>By how much a token that sets the counter counts it on, as #1=#1-2 does; NaN where it does anything else.</summary>
    public double StepOf(in Block block, in Token token)
    {
        var text = Plain(block.Line[token.ValueStart..token.End]);
        if (text.StartsWith('[') && text.EndsWith(']'))
            text = text[1..^1];
        var (name, rest) = ("#" + Variable, text);
        if (!text.StartsWith(name, StringComparison.Ordinal) || (rest = text[name.Length..]).Length < 2 || rest[0] is not ('+' or '-'))
            return double.NaN;
        return TryRead(rest[1..], out var step) ? rest[0] == '-' ? -step : step : double.NaN;
    }

    static bool TryRead(string text, out double number) =>
        double.TryParse(text, NumberStyles.AllowLeadingSign | NumberStyles.AllowDecimalPoint, CultureInfo.InvariantCulture, out number);

    static string Plain(ReadOnlySpan<byte> text) =>
        Encoding.ASCII.GetString(text).Replace(" ", "", StringComparison.Ordinal).Replace("\t", "", StringComparison.Ordinal).ToUpperInvariant();
}
