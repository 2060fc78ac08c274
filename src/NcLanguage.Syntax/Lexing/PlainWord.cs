using System.Runtime.CompilerServices;
using NcLanguage.Syntax.Expressions;

namespace NcLanguage.Syntax.Lexing;

/// <summary>Reads at one go what nearly all words are: a letter and right behind it a number of a few digits, then a blank, the next letter or the end of the line.</summary>
static class PlainWord
{
    /// <summary>So many digits are exact as a double, and so is the power of ten they are divided by: the quotient is the nearest double.</summary>
    const int MostDigits = 15;

    /// <summary>The word at a place; false for whatever needs a closer look.</summary>
    /// <param name="word">Becomes the word where there is one, and stays as it is where there is none.</param>
    [MethodImpl(MethodImplOptions.AggressiveInlining)]
    public static bool TryRead(ReadOnlySpan<byte> line, int at, ref Token word)
    {
        var start = at + 1;
        if (start >= line.Length || !Scan.IsLetter(line[at]))
            return false;
        var isNegative = line[start] == '-';
        var first = isNegative ? start + 1 : start;
        var (end, mantissa, decimals) = (first, 0L, 0);
        while ((uint)end < (uint)line.Length && line[end] - '0' is var digit && (uint)digit <= 9)
            (mantissa, end) = (mantissa * 10 + digit, end + 1);
        var digits = end - first;
        var hasPoint = (uint)end < (uint)line.Length && line[end] == '.';
        if (hasPoint)
        {
            var behind = ++end;
            while ((uint)end < (uint)line.Length && line[end] - '0' is var digit && (uint)digit <= 9)
                (mantissa, end) = (mantissa * 10 + digit, end + 1);
            decimals = end - behind;
            digits += decimals;
        }
        if (digits is 0 or > MostDigits || !IsOver(line, end))
            return false;
        var value = decimals == 0 ? mantissa : mantissa / NumberReader.PowersOfTen[decimals];
        // Minus nought is nought.
        word.BecomeWord((byte)(line[at] & ~0x20), hasPoint, at, end, isNegative && mantissa != 0 ? -value : value);
        return true;
    }

    /// <summary>Whether nothing that follows may belong to the number: blanks between its characters have no meaning, and a letter O may stand for a 0.</summary>
    [MethodImpl(MethodImplOptions.AggressiveInlining)]
    static bool IsOver(ReadOnlySpan<byte> line, int at)
    {
        if (at >= line.Length)
            return true;
        if (!Scan.IsBlank(line[at]))
            return Scan.IsLetter(line[at]) && Scan.Upper(line[at]) != 'O';
        at = Scan.SkipSpaces(line, at + 1);
        return at >= line.Length || Scan.IsLetter(line[at]);
    }
}
