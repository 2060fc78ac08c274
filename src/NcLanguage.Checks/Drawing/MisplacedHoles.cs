using NcLanguage.Checks.Analysis;

namespace NcLanguage.Checks.Drawing;

/// <summary>Pairs each hole that is missing with one of its size that the program drills where the drawing has none: one slip, one finding.</summary>
static class MisplacedHoles
{
    /// <summary>Holes that are looked at: where more are missing, or drilled beside the drawing, it was no slip.</summary>
    const int MostHoles = 500;

    /// <summary>Those of the drawing's holes that are not made in their size, each with an extra one that stands in its stead, as far as there are any.</summary>
    /// <remarks>A hole of another part, under an offset of its own, that has the numbers of one of the drawing's is that part's own; but where it has those of the missing one, and none like that
    /// is made as drawn, the slip is the offset.</remarks>
    /// <param name="isKindMade">Whether a hole like this one is made as drawn.</param>
    public static IReadOnlyDictionary<DrawingMatch, DrawingMatch> Of(IEnumerable<DrawingMatch> wanted, IEnumerable<DrawingMatch> extra, Job job, Predicate<DrawingMatch> isKindMade)
    {
        var pairs = new Dictionary<DrawingMatch, DrawingMatch>(ReferenceEqualityComparer.Instance);
        var left = extra.Take(MostHoles).ToList();
        List<DrawingMatch> ofTheDrawing = [.. wanted.Take(MostHoles)];
        var copies = left.Where(other => DrawingComparison.IsOfAnotherPart(other, job) && ofTheDrawing.Exists(match => HasItsNumbers(match, other)))
            .ToHashSet<DrawingMatch>(ReferenceEqualityComparer.Instance);
        foreach (var match in ofTheDrawing)
        {
            var nearest = left.Where(other => Fits(match, other) && (!copies.Contains(other) || (HasItsNumbers(match, other) && !isKindMade(match)))).MinBy(other => double.Hypot(match.X - other.X, match.Y - other.Y));
            if (nearest is null)
                continue;
            pairs.Add(match, nearest);
            left.Remove(nearest);
        }
        return pairs;
    }

    static bool HasItsNumbers(DrawingMatch match, DrawingMatch extra) =>
        extra.Work!.Value.ToFrame is var shift && Math.Abs(extra.X - shift.X - match.X) <= DrawingComparison.SamePlace && Math.Abs(extra.Y - shift.Y - match.Y) <= DrawingComparison.SamePlace;

    static bool Fits(DrawingMatch match, DrawingMatch extra) => match switch
    {
        { Unfinished: HoleUnfinished.NotTapped } => extra.By == HoleMaking.None && extra.Work!.Value.Threads,
        { Status: HoleStatus.Missing } => extra.By != HoleMaking.None && !IsOther(match.Wanted!.Diameter, extra.Diameter),
        { IsOtherSize: true } => match.Diameter < match.Wanted!.Diameter && extra.By != HoleMaking.None && extra.Diameter >= 0 && !IsOther(match.Wanted.Diameter, extra.Diameter),
        _ => false,
    };

    static bool IsOther(double? wanted, double made) => Math.Abs((wanted ?? double.NaN) - made) > 0.01;
}
