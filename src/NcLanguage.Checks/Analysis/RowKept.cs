namespace NcLanguage.Checks.Analysis;

/// <summary>Makes rows of values of which many in turn are alike: those that are hold the same one. Whoever holds one must not change it.</summary>
sealed class RowKept<T>
    where T : unmanaged
{
    T[] _last = [];

    public T[] Of(ReadOnlySpan<T> made)
    {
        if (made.IsEmpty)
            return [];
        if (!made.SequenceEqual(_last))
            _last = made.ToArray();
        return _last;
    }
}
