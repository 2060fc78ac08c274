namespace NcLanguage.Checks.Drawing;

/// <summary>Pairs each hole that is missing with one of its size that the program drills where the drawing has none: one slip, one finding.</summary>
static class MisplacedHoles
{
    /// <summary>Missing holes with the extra one that stands in their stead, as far as there are any.</summary>
    public static Dictionary<DrawingMatch, DrawingMatch> Of(IEnumerable<DrawingMatch> missing, IEnumerable<DrawingMatch> extra)
    {
        var pairs = new Dictionary<DrawingMatch, DrawingMatch>(ReferenceEqualityComparer.Instance);
        var left = extra.Where(match => match.By != HoleMaking.None).ToList();
        foreach (var match in missing)
        {
            var nearest = left.Where(other => Fits(match, other)).MinBy(other => Distance(match, other));
            if (nearest is null)
                continue;
            pairs.Add(match, nearest);
            left.Remove(nearest);
        }
        return pairs;
    }

    static bool Fits(DrawingMatch missing, DrawingMatch extra) =>
        missing.Wanted!.Diameter is not { } wanted || double.IsNaN(extra.Diameter) || Math.Abs(extra.Diameter - wanted) < 0.01;

    static double Distance(DrawingMatch a, DrawingMatch b) => double.Hypot(a.X - b.X, a.Y - b.Y);
}
