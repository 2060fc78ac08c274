using System.Runtime.CompilerServices;

namespace NcLanguage.Syntax.Lexing;

/// <summary>Looking at bytes where spaces and tabs have no meaning.</summary>
static class Scan
{
    [MethodImpl(MethodImplOptions.AggressiveInlining)]
    public static int SkipSpaces(ReadOnlySpan<byte> line, int at)
    {
        while ((uint)at < (uint)line.Length && IsBlank(line[at]))
            at++;
        return at;
    }

    [MethodImpl(MethodImplOptions.AggressiveInlining)]
    public static bool IsBlank(byte c) => c is (byte)' ' or (byte)'\t';

    public static bool IsDigit(byte c) => (uint)(c - '0') <= 9;

    /// <summary>A letter in upper case; any other byte as it is.</summary>
    public static byte Upper(byte c) => IsLetter(c) ? (byte)(c & ~0x20) : c;

    public static bool IsLetter(byte c) => (uint)((c | 0x20) - 'a') < 26;

    /// <summary>Whether <paramref name="lower"/> stands at <paramref name="at"/>, in any case and however spaced;
    /// <paramref name="end"/> is the index behind it, or <paramref name="at"/> where it does not stand there.</summary>
    public static bool Matches(ReadOnlySpan<byte> line, int at, ReadOnlySpan<byte> lower, out int end)
    {
        end = at;
        var i = at;
        foreach (var c in lower)
        {
            i = SkipSpaces(line, i);
            if (i >= line.Length || (line[i] | 0x20) != c)
                return false;
            i++;
        }

        end = i;
        return true;
    }
}
