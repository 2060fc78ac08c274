using System.Buffers.Text;
using System.Globalization;

namespace NcLanguage.Syntax.Lexing;

/// <summary>One number as it stands in a line.</summary>
/// <param name="Value">Its value; NaN when malformed. Minus nought is nought.</param>
/// <param name="End">Index of the byte after its last character; the start given when there is no number at all.</param>
/// <param name="HasPoint">Whether it was written with a decimal point.</param>
/// <param name="Digits">All its digits, leading zeros included.</param>
/// <param name="Decimals">The digits after the point.</param>
/// <param name="Malformed">No digit, a second point, or beyond what a double holds.</param>
public readonly record struct NumberReading(double Value, int End, bool HasPoint, int Digits, int Decimals, bool Malformed);

/// <summary>Reads numbers as NISTIR 6556 §3.3.2.1 and appendix E.2 lay them down: an optional sign, at least one digit, at most one
/// point, no exponent; spaces and tabs between the characters have no meaning (§3.3).</summary>
public static class NumberReader
{
    /// <summary>Digits kept when a number is longer than the exact path takes; more cannot change the nearest double, but for the
    /// question whether anything other than 0 follows.</summary>
    const int KeptDigits = 780;

    /// <summary>Those that are exact as a double.</summary>
    internal static readonly double[] PowersOfTen =
    [
        1e0, 1e1, 1e2, 1e3, 1e4, 1e5, 1e6, 1e7, 1e8, 1e9, 1e10, 1e11, 1e12, 1e13, 1e14, 1e15, 1e16, 1e17, 1e18, 1e19, 1e20, 1e21, 1e22,
    ];

    /// <summary>Reads the number that begins at <paramref name="start"/>, spaces before it skipped. Never throws, allocates nothing;
    /// the value is the double nearest to the digits.</summary>
    /// <param name="line">The bytes of one line; anything that cannot belong to the number ends it.</param>
    /// <param name="start">Where to begin; at or behind the end of the line there is no number.</param>
    public static NumberReading ReadNumber(ReadOnlySpan<byte> line, int start)
    {
        var at = start;
        var end = start;
        var negative = false;
        var signed = false;
        var points = 0;
        var digits = 0;
        var decimals = 0;
        var significant = 0;
        ulong mantissa = 0;

        for (; (uint)at < (uint)line.Length; at++)
        {
            var c = line[at];
            var digit = (uint)(c - '0');
            if (digit <= 9)
            {
                digits++;
                if (points > 0)
                    decimals++;
                if (significant > 0 || digit != 0)
                {
                    significant++;
                    if (significant <= 19)
                        mantissa = mantissa * 10 + digit;
                }
            }
            else if (c == '.')
            {
                points++;
            }
            else if (Scan.IsBlank(c))
            {
                continue;
            }
            else if (c is (byte)'+' or (byte)'-' && !signed && digits == 0 && points == 0)
            {
                signed = true;
                negative = c == '-';
            }
            else
            {
                break;
            }

            end = at + 1;
        }

        if (digits == 0 || points > 1)
            return new(double.NaN, end, points > 0, digits, decimals, true);

        // Two doubles that are exact give a quotient that is the nearest double.
        var value = significant <= 19 && mantissa <= 1UL << 53 && decimals < PowersOfTen.Length
            ? mantissa / PowersOfTen[decimals]
            : ReadLong(line[start..end], decimals);
        if (negative && value != 0)
            value = -value;
        return double.IsFinite(value)
            ? new(value, end, points > 0, digits, decimals, false)
            : new(double.NaN, end, points > 0, digits, decimals, true);
    }

    /// <summary>The value, without its sign, of a number too long for the exact path.</summary>
    static double ReadLong(ReadOnlySpan<byte> number, int decimals)
    {
        Span<byte> text = stackalloc byte[KeptDigits + 16];
        var length = 0;
        var exponent = -(long)decimals;
        var rest = false;
        foreach (var c in number)
        {
            if (!Scan.IsDigit(c) || (length == 0 && c == '0'))
                continue;
            if (length < KeptDigits)
            {
                text[length++] = c;
            }
            else
            {
                exponent++;
                rest |= c != '0';
            }
        }

        if (length == 0)
            return 0;
        if (rest)
        {
            text[length++] = (byte)'1';
            exponent--;
        }

        text[length++] = (byte)'E';
        Utf8Formatter.TryFormat(exponent, text[length..], out var written);
        return double.Parse(text[..(length + written)], NumberStyles.Float, CultureInfo.InvariantCulture);
    }
}
