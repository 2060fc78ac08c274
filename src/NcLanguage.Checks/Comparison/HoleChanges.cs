using NcLanguage.Checks.Analysis;

namespace NcLanguage.Checks.Comparison;

/// <summary>What may differ between two holes at one place by one tool and cycle.</summary>
[Flags]
public enum HoleDifferences
{
    None = 0, Depth = 1, RLevel = 2, ReturnLevel = 4, TraverseLevel = 8, Peck = 16, Dwell = 32, Feed = 64, Speed = 128,

    /// <summary>What belongs to the way from hole to hole, and not to the hole.</summary>
    Way = ReturnLevel | TraverseLevel,
}

/// <summary>One hole that is not the same in both programs; the side that lacks it is null.</summary>
/// <param name="Differs">What differs where both have it.</param>
public readonly record struct HoleChange(ChangeKind Kind, HoleRow? First, HoleRow? Second, HoleDifferences Differs)
{
    static readonly (HoleDifferences One, string Name)[] _names =
    [
        (HoleDifferences.Depth, "depth"), (HoleDifferences.RLevel, "R level"), (HoleDifferences.ReturnLevel, "return level"), (HoleDifferences.TraverseLevel, "level of the traverse"),
        (HoleDifferences.Peck, "peck"), (HoleDifferences.Dwell, "dwell"), (HoleDifferences.Feed, "feed"), (HoleDifferences.Speed, "speed"),
    ];

    /// <summary>What differs, such as "depth, feed"; empty where only one has it.</summary>
    public string What
    {
        get
        {
            var differs = Differs;
            return string.Join(", ", _names.Where(name => (differs & name.One) != 0).Select(name => name.Name));
        }
    }
}

/// <summary>Pairs the holes of two programs by place, work offset, tool and cycle, in the order drilled.</summary>
public static class HoleChanges
{
    /// <param name="tolerance">How far apart places may be and still be one, mm.</param>
    public static IReadOnlyList<HoleChange> Of(IEnumerable<HoleRow> first, IEnumerable<HoleRow> second, double tolerance = MotionComparison.UsualTolerance)
    {
        ArgumentNullException.ThrowIfNull(first);
        ArgumentNullException.ThrowIfNull(second);
        var free = new Dictionary<(long, long, int, int, int), Queue<HoleRow>>();
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
                changes.Add(new HoleChange(ChangeKind.Removed, row, null, HoleDifferences.None));
            else if (Differences(row, other, tolerance) is not HoleDifferences.None and var differs)
                changes.Add(new HoleChange(ChangeKind.Altered, row, other, differs));
        }
        changes.AddRange(free.Values.SelectMany(rows => rows).OrderBy(row => row.Number).Select(row => new HoleChange(ChangeKind.Added, null, row, HoleDifferences.None)));
        return changes;
    }

    /// <summary>Looks in the neighbouring squares too: two places nearly the same may fall on both sides of a border.</summary>
    static bool TryTake(Dictionary<(long, long, int, int, int), Queue<HoleRow>> free, in HoleRow row, double tolerance, out HoleRow taken)
    {
        var (x, y, tool, cycle, workOffset) = Key(row, tolerance);
        for (var dx = -1; dx <= 1; dx++)
        {
            for (var dy = -1; dy <= 1; dy++)
            {
                if (!free.TryGetValue((x + dx, y + dy, tool, cycle, workOffset), out var rows) || !rows.TryPeek(out taken) || !IsAt(row, taken, tolerance))
                    continue;
                rows.Dequeue();
                return true;
            }
        }
        taken = default;
        return false;
    }

    static bool IsAt(in HoleRow a, in HoleRow b, double tolerance) =>
        a.Coordinates.PlacesAs(b.Coordinates, tolerance) && Motion.Same(a.Hole.X, b.Hole.X, tolerance) && Motion.Same(a.Hole.Y, b.Hole.Y, tolerance);

    static (long, long, int, int, int) Key(in HoleRow row, double tolerance) => (Square(row.Hole.X, tolerance), Square(row.Hole.Y, tolerance), row.Hole.Tool, row.Hole.Cycle, row.Coordinates.WorkOffset);

    static long Square(double at, double tolerance) => double.IsNaN(at) ? long.MinValue / 2 : (long)Math.Floor(at / (2 * tolerance + 1e-9));

    static HoleDifferences Differences(in HoleRow a, in HoleRow b, double tolerance) =>
        Unless(Motion.Same(a.Hole.Bottom, b.Hole.Bottom, tolerance), HoleDifferences.Depth)
        | Unless(Motion.Same(a.Hole.RLevel, b.Hole.RLevel, tolerance), HoleDifferences.RLevel)
        | Unless(Motion.Same(a.Hole.ReturnTo, b.Hole.ReturnTo, tolerance), HoleDifferences.ReturnLevel)
        | Unless(Motion.Same(a.Hole.ArriveAt, b.Hole.ArriveAt, tolerance), HoleDifferences.TraverseLevel)
        | Unless(Motion.Same(a.Hole.Peck, b.Hole.Peck, tolerance), HoleDifferences.Peck)
        | Unless(Motion.Near(a.Hole.DwellSeconds, b.Hole.DwellSeconds, MotionComparison.Share), HoleDifferences.Dwell)
        | Unless(Motion.Near(a.Hole.Feed, b.Hole.Feed, MotionComparison.Share), HoleDifferences.Feed)
        | Unless(Motion.Near(a.Hole.Speed, b.Hole.Speed, MotionComparison.Share), HoleDifferences.Speed);

    static HoleDifferences Unless(bool isSame, HoleDifferences difference) => isSame ? HoleDifferences.None : difference;
}
