using NcLanguage.Control.Flow;

namespace NcLanguage.Checks.Comparison;

/// <summary>What became of a motion of the first program in the second.</summary>
public enum ChangeKind : byte
{
    /// <summary>It is there, but another feed, speed, spindle, coolant or dwell goes with it.</summary>
    Altered,

    /// <summary>Only the first program makes it.</summary>
    Removed,

    /// <summary>Only the second program makes it.</summary>
    Added,
}

/// <summary>One difference: the motions concerned, null for the side that has none.</summary>
public readonly record struct MotionChange(ChangeKind Kind, Motion? First, Motion? Second);

/// <summary>Two programs motion for motion: do they make the machine do the same?</summary>
public sealed record MotionComparison
{
    /// <summary>How far apart places may be and still count as one, mm: half of what programs are written to.</summary>
    public const double UsualTolerance = 0.0005;

    /// <summary>How far apart feeds, speeds and dwells may be, as a share: what is left of them after a change of units.</summary>
    internal const double Share = 1e-4;

    /// <summary>Differences told one by one; what lies further apart is told as removed and added.</summary>
    const int MostDifferences = 2000;

    public required MotionList First { get; init; }

    public required MotionList Second { get; init; }

    /// <summary>All differences in the order of the run; behind it those of further programs of the text that are not called, each as if it were begun by itself.</summary>
    public required IReadOnlyList<MotionChange> Changes { get; init; }

    /// <summary>Motions of the first that were held against the second.</summary>
    public required int Compared { get; init; }

    /// <summary>Whether no motion differs and both runs end alike.</summary>
    public bool IsSame => Changes.Count == 0 && First.End == Second.End;

    /// <summary>Differences as far as both runs were followed: where both were broken off as too long, what one has more at its end the other would have made later.</summary>
    /// <exception cref="OperationCanceledException">The token was cancelled.</exception>
    public static MotionComparison Of(MotionList first, MotionList second, double tolerance = UsualTolerance, CancellationToken cancel = default)
    {
        ArgumentNullException.ThrowIfNull(first);
        ArgumentNullException.ThrowIfNull(second);
        var most = MostHeldAgainst(first, second, tolerance);
        var (a, b) = (first.Against(second, most, cancel), second.Against(first, most, cancel));
        var start = CommonStart(a, b, tolerance);
        var (endA, endB) = (a.Count, b.Count);
        if (first.End == FlowEnd.TooLong && second.End == FlowEnd.TooLong && start == Math.Min(endA, endB))
            (endA, endB) = (start, start);
        var behind = endA;
        while (endA > start && endB > start && a[endA - 1].GoesAs(b[endB - 1], tolerance))
            (endA, endB) = (endA - 1, endB - 1);
        cancel.ThrowIfCancellationRequested();
        var changes = new List<MotionChange>();
        AddAltered(a, b, 0, 0, start, changes);
        AddDifferences(a, b, (start, endA), (start, endB), tolerance, changes, cancel);
        AddAltered(a, b, endA, endB, behind - endA, changes);
        return new MotionComparison { First = first, Second = second, Changes = changes, Compared = a.Count };
    }

    /// <summary>How many motions of two first programs can be held against each other: where both runs were broken off and one did nothing but what the other did, those of the shorter.</summary>
    static int MostHeldAgainst(MotionList first, MotionList second, double tolerance)
    {
        if (first.OwnEnd != FlowEnd.TooLong || second.OwnEnd != FlowEnd.TooLong)
            return int.MaxValue;
        var least = Math.Min(first.Motions.Count, second.Motions.Count);
        return CommonStart(first.Motions, second.Motions, tolerance) == least ? least : int.MaxValue;
    }

    /// <summary>How many motions go alike at the beginning.</summary>
    static int CommonStart(IReadOnlyList<Motion> a, IReadOnlyList<Motion> b, double tolerance)
    {
        var start = 0;
        while (start < a.Count && start < b.Count && a[start].GoesAs(b[start], tolerance))
            start++;
        return start;
    }

    static void AddAltered(IReadOnlyList<Motion> a, IReadOnlyList<Motion> b, int fromA, int fromB, int count, List<MotionChange> changes)
    {
        for (var i = 0; i < count; i++)
            if (!a[fromA + i].IsDoneAs(b[fromB + i], Share))
                changes.Add(new MotionChange(ChangeKind.Altered, a[fromA + i], b[fromB + i]));
    }

    /// <summary>The shortest way from one list to the other (Myers, 1986), as long as it is no longer than a bound.</summary>
    static void AddDifferences(
        IReadOnlyList<Motion> a, IReadOnlyList<Motion> b, (int Start, int End) inA, (int Start, int End) inB, double tolerance, List<MotionChange> changes, CancellationToken cancel)
    {
        var (n, m) = (inA.End - inA.Start, inB.End - inB.Start);
        if (n == 0 && m == 0)
            return;
        var steps = ShortestWay(a, b, inA.Start, inB.Start, n, m, tolerance, cancel);
        if (steps is null)
        {
            for (var i = 0; i < n; i++)
                changes.Add(new MotionChange(ChangeKind.Removed, a[inA.Start + i], null));
            for (var i = 0; i < m; i++)
                changes.Add(new MotionChange(ChangeKind.Added, null, b[inB.Start + i]));
            return;
        }
        var (x, y) = (0, 0);
        foreach (var (isRemoved, atX, atY) in steps)
        {
            AddAltered(a, b, inA.Start + x, inB.Start + y, atX - x, changes);
            changes.Add(isRemoved
                ? new MotionChange(ChangeKind.Removed, a[inA.Start + atX], null)
                : new MotionChange(ChangeKind.Added, null, b[inB.Start + atY]));
            (x, y) = isRemoved ? (atX + 1, atY) : (atX, atY + 1);
        }
        AddAltered(a, b, inA.Start + x, inB.Start + y, n - x, changes);
    }

    /// <summary>The removals and additions in order, each with the place in both lists where it happens; null where there are too many.</summary>
    static List<(bool IsRemoved, int X, int Y)>? ShortestWay(
        IReadOnlyList<Motion> a, IReadOnlyList<Motion> b, int startA, int startB, int n, int m, double tolerance, CancellationToken cancel)
    {
        var most = Math.Min(n + m, MostDifferences);
        var furthest = new int[2 * most + 2];
        var kept = new List<int[]>();
        for (var d = 0; d <= most; d++)
        {
            cancel.ThrowIfCancellationRequested();
            for (var k = -d; k <= d; k += 2)
            {
                var goesDown = k == -d || (k != d && furthest[most + k - 1] < furthest[most + k + 1]);
                var x = goesDown ? furthest[most + k + 1] : furthest[most + k - 1] + 1;
                while (x < n && x - k < m && a[startA + x].GoesAs(b[startB + x - k], tolerance))
                    x++;
                furthest[most + k] = x;
                if (x < n || x - k < m)
                    continue;
                kept.Add(furthest[(most - d)..(most + d + 1)]);
                return WayBack(kept, n, m);
            }
            kept.Add(furthest[(most - d)..(most + d + 1)]);
        }
        return null;
    }

    static List<(bool IsRemoved, int X, int Y)> WayBack(List<int[]> kept, int n, int m)
    {
        var steps = new List<(bool, int, int)>();
        var (x, y) = (n, m);
        for (var d = kept.Count - 1; d > 0; d--)
        {
            var before = kept[d - 1];
            var k = x - y;
            // Row d − 1 holds diagonals −(d−1) to d−1.
            int At(int diagonal) => diagonal < -(d - 1) || diagonal > d - 1 ? -1 : before[diagonal + d - 1];
            var goesDown = k == -d || (k != d && At(k - 1) < At(k + 1));
            var from = goesDown ? k + 1 : k - 1;
            var fromX = At(from);
            var fromY = fromX - from;
            steps.Add(goesDown ? (false, fromX, fromY) : (true, fromX, fromY));
            (x, y) = (fromX, fromY);
        }
        steps.Reverse();
        return steps;
    }
}
