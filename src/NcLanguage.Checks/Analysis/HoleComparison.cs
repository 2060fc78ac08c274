using NcLanguage.Control.State;

namespace NcLanguage.Checks.Analysis;

/// <summary>A stretch of a part's holes that belong to one uninterrupted run.</summary>
/// <param name="BeginsRun">Whether the run begins with the stretch's first hole.</param>
/// <param name="Count">Its holes.</param>
/// <param name="Differing">How many of them are drilled elsewhere under the other reading.</param>
/// <param name="First">Index in the part of the first of these; −1 where there is none.</param>
readonly record struct HoleStretch(bool BeginsRun, int Count, int Differing, int First);

/// <summary>The holes of a part under two readings.</summary>
sealed class HoleComparison
{
    /// <summary>Places nearer than this are one place, mm.</summary>
    const double SamePlace = 1e-6;

    HoleComparison(PartResult other, HoleStretch[] stretches)
    {
        Other = other;
        Stretches = stretches;
    }

    /// <summary>The part under the other reading.</summary>
    public PartResult Other { get; }

    public HoleStretch[] Stretches { get; }

    public static HoleComparison Of(PartResult mine, PartResult other)
    {
        var stretches = new List<HoleStretch>();
        for (var start = 0; start < mine.Holes.Length;)
        {
            var end = start + 1;
            while (end < mine.Holes.Length && mine.Holes.IsHop(end))
                end++;
            var (differing, first) = (0, -1);
            for (var i = start; i < end && mine.Holes.Length == other.Holes.Length; i++)
                if (Differ(mine.Holes[i], other.Holes[i]) && differing++ == 0)
                    first = i;
            stretches.Add(new HoleStretch(!mine.Holes.IsHop(start), end - start, differing, first));
            start = end;
        }
        return new HoleComparison(other, [.. stretches]);
    }

    // A hole along another axis than Z has no place in X and Y.
    static bool Differ(in HoleResult a, in HoleResult b) =>
        a.Plane == WorkPlane.XY && b.Plane == WorkPlane.XY && (Math.Abs(a.Hole.X - b.Hole.X) > SamePlace || Math.Abs(a.Hole.Y - b.Hole.Y) > SamePlace);
}
