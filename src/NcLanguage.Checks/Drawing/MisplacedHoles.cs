namespace NcLanguage.Checks.Drawing;

/// <summary>Pairs each hole that is missing with one of its size that the program drills where the drawing has none: one slip, one finding.</summary>
static class MisplacedHoles
{
    /// <summary>Holes that are looked at: where more are missing, or drilled beside the drawing, it was no slip.</summary>
    const int MostHoles = 500;

    /// <summary>Those of the drawing's holes that are not made in their size, each with an extra one that stands in its stead, as far as there are any.</summary>
    public static IReadOnlyDictionary<DrawingMatch, DrawingMatch> Of(IEnumerable<DrawingMatch> wanted, IEnumerable<DrawingMatch> extra)
    {
        var pairs = new Dictionary<DrawingMatch, DrawingMatch>(ReferenceEqualityComparer.Instance);
        var left = extra.Take(MostHoles).ToList();
        foreach (var match in wanted.Take(MostHoles))
        {
            var nearest = left.Where(other => Fits(match, other)).MinBy(other => double.Hypot(match.X - other.X, match.Y - other.Y));
            if (nearest is null)
                continue;
            pairs.Add(match, nearest);
            left.Remove(nearest);
        }
        return pairs;
    }

    static bool Fits(DrawingMatch match, DrawingMatch extra) => match switch
    {
        { Unfinished: HoleUnfinished.NotTapped } => extra.By == HoleMaking.None && extra.Work!.Value.Threads,
        { Status: HoleStatus.Missing } => extra.By != HoleMaking.None && !IsOther(match.Wanted!.Diameter, extra.Diameter),
        { IsOtherSize: true } => match.Diameter < match.Wanted!.Diameter && extra.By != HoleMaking.None && extra.Diameter >= 0 && !IsOther(match.Wanted.Diameter, extra.Diameter),
        _ => false,
    };

    static bool IsOther(double? wanted, double made) => Math.Abs((wanted ?? double.NaN) - made) > 0.01;
}
