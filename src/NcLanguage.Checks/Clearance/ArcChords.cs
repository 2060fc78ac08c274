using NcLanguage.Machine.Geometry;

namespace NcLanguage.Checks.Clearance;

/// <summary>The equal chords of an arc, one behind the other, each from where the one before ends.</summary>
/// <param name="arc">A path that is known.</param>
/// <param name="count">How many, at least one.</param>
readonly ref struct ArcChords(in ArcPath arc, int count)
{
    readonly ref readonly ArcPath _arc = ref arc;

    public int Count => count;

    public Enumerator GetEnumerator() => new(in _arc, count);

    /// <summary>Walks them from the arc's start.</summary>
    internal ref struct Enumerator(in ArcPath arc, int count)
    {
        readonly ref readonly ArcPath _arc = ref arc;
        Point3 _from, _to = arc.From;
        int _at;

        public readonly (Point3 From, Point3 To) Current => (_from, _to);

        public bool MoveNext()
        {
            if (_at == count)
                return false;
            _at++;
            (_from, _to) = (_to, _arc.At((double)_at / count));
            return true;
        }
    }
}
