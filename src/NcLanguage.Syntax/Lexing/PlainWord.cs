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
        var (end, point, mantissa) = (isNegative ? start + 1 : start, -1, 0L);
        var first = end;
        for (; (uint)end < (uint)line.Length && end - first <= MostDigits; end++)
        {
            var digit = line[end] - '0';
            if ((uint)digit <= 9)
                mantissa = mantissa * 10 + digit;
            else if (line[end] == '.' && point < 0)
                point = end;
            else
                break;
        }
        var digits = point < 0 ? end - first : end - first - 1;
        if (digits is 0 or > MostDigits || !IsOver(line, end))
            return false;
        var value = point < 0 ? mantissa : mantissa / NumberReader.PowersOfTen[end - point - 1];
        // Minus nought is nought.
        word.BecomeWord((byte)(line[at] & ~0x20), point >= 0, at, end, isNegative && mantissa != 0 ? -value : value);
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
