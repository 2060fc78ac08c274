using System.Runtime.CompilerServices;

namespace NcLanguage.Syntax.Expressions;

/// <summary>Looking at bytes where spaces and tabs have no meaning.</summary>
static class Scan
{
    [MethodImpl(MethodImplOptions.AggressiveInlining)]
    public static int SkipSpaces(ReadOnlySpan<byte> line, int at)
    {
        while ((uint)at < (uint)line.Length && line[at] is (byte)' ' or (byte)'\t')
            at++;
        return at;
    }

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
