using NcLanguage.Checks.Analysis;

namespace NcLanguage.Checks.Comparison;

/// <summary>One hole that is not the same in both programs; the side that lacks it is null.</summary>
/// <param name="What">What differs where both have it, such as "depth, feed"; empty otherwise.</param>
public readonly record struct HoleChange(ChangeKind Kind, HoleRow? First, HoleRow? Second, string What);

/// <summary>Pairs the holes of two programs by place, tool and cycle, in the order drilled.</summary>
public static class HoleChanges
{
    /// <param name="tolerance">How far apart places may be and still be one, mm.</param>
    public static IReadOnlyList<HoleChange> Of(IEnumerable<HoleRow> first, IEnumerable<HoleRow> second, double tolerance = MotionComparison.UsualTolerance)
    {
        ArgumentNullException.ThrowIfNull(first);
        ArgumentNullException.ThrowIfNull(second);
        var free = new Dictionary<(long, long, int, int), Queue<HoleRow>>();
        foreach (var row in second)
        {
            var key = Key(row, tolerance);
            if (!free.TryGetValue(key, out var rows))
                free.Add(key, rows = new Queue<HoleRow>());
            rows.Enqueue(row);
        }
        var changes = new List<HoleChange>();
        foreach (var row in first)
        {
            if (!TryTake(free, row, tolerance, out var other))
                changes.Add(new HoleChange(ChangeKind.Removed, row, null, ""));
            else if (Differences(row, other, tolerance) is { Length: > 0 } what)
                changes.Add(new HoleChange(ChangeKind.Altered, row, other, what));
        }
        changes.AddRange(free.Values.SelectMany(rows => rows).OrderBy(row => row.Number).Select(row => new HoleChange(ChangeKind.Added, null, row, "")));
        return changes;
    }

    /// <summary>Looks in the neighbouring squares too: two places nearly the same may fall on both sides of a border.</summary>
    static bool TryTake(Dictionary<(long, long, int, int), Queue<HoleRow>> free, in HoleRow row, double tolerance, out HoleRow taken)
    {
        var (x, y, tool, cycle) = Key(row, tolerance);
        for (var dx = -1; dx <= 1; dx++)
        {
            for (var dy = -1; dy <= 1; dy++)
            {
                if (!free.TryGetValue((x + dx, y + dy, tool, cycle), out var rows) || !rows.TryPeek(out taken) || !IsAt(row, taken, tolerance))
                    continue;
                rows.Dequeue();
                return true;
            }
        }
        taken = default;
        return false;
    }

    static bool IsAt(in HoleRow a, in HoleRow b, double tolerance) => Motion.Same(a.Hole.X, b.Hole.X, tolerance) && Motion.Same(a.Hole.Y, b.Hole.Y, tolerance);

    static (long, long, int, int) Key(in HoleRow row, double tolerance) => (Square(row.Hole.X, tolerance), Square(row.Hole.Y, tolerance), row.Hole.Tool, row.Hole.Cycle);

    static long Square(double at, double tolerance) => double.IsNaN(at) ? long.MinValue / 2 : (long)Math.Floor(at / (2 * tolerance + 1e-9));

    static string Differences(in HoleRow a, in HoleRow b, double tolerance)
    {
        var what = new List<string>();
        Add(Motion.Same(a.Hole.Bottom, b.Hole.Bottom, tolerance), "depth");
        Add(Motion.Same(a.Hole.RLevel, b.Hole.RLevel, tolerance), "R level");
        Add(Motion.Same(a.Hole.ReturnTo, b.Hole.ReturnTo, tolerance), "return level");
        Add(Motion.Same(a.Hole.ArriveAt, b.Hole.ArriveAt, tolerance), "level of the traverse");
        Add(Motion.Same(a.Hole.Peck, b.Hole.Peck, tolerance), "peck");
        Add(Motion.Near(a.Hole.DwellSeconds, b.Hole.DwellSeconds, MotionComparison.Share), "dwell");
        Add(Motion.Near(a.Hole.Feed, b.Hole.Feed, MotionComparison.Share), "feed");
        Add(Motion.Near(a.Hole.Speed, b.Hole.Speed, MotionComparison.Share), "speed");
        return string.Join(", ", what);

        void Add(bool isSame, string name)
        {
            if (!isSame)
                what.Add(name);
        }
    }
}
