namespace NcLanguage.Syntax.Text;

/// <summary>What two versions of a row have in common: an edit leaves its beginning and its end the very same objects.</summary>
public static class SharedEnds
{
    /// <returns>How many items at the beginning and, of the others, at the end are the same objects.</returns>
    public static (int AtBeginning, int AtEnd) Of<T>(ReadOnlySpan<T> before, ReadOnlySpan<T> after)
        where T : class
    {
        var most = Math.Min(before.Length, after.Length);
        var same = 0;
        while (same < most && ReferenceEquals(before[same], after[same]))
            same++;
        var sameAtEnd = 0;
        while (sameAtEnd < most - same && ReferenceEquals(before[^(sameAtEnd + 1)], after[^(sameAtEnd + 1)]))
            sameAtEnd++;
        return (same, sameAtEnd);
    }
}
