using NcLanguage.Checks;
using NcLanguage.Reports.Drawing;

namespace NcLanguage.Reports.Sheet;

/// <summary>Dimensions that all count from the datum, side by side along an edge of a view (running dimensions, ISO 129-1, from memory): one leader and
/// one number for each place, numbers kept apart where places lie close. Lengths in mm of paper but for the values.</summary>
static class RunningDimensions
{
    /// <summary>Between two numbers, mm of paper.</summary>
    const double Gap = 3.4;

    const double Off = 1;
    const double Straight = 4;
    const double Slant = 3;

    /// <summary>Room that leaders and numbers take beside the view.</summary>
    public const double Room = Off + Straight + Slant + 14;

    /// <summary>Numbers below a view, read from below to above.</summary>
    /// <param name="say">How a value is written.</param>
    /// <param name="places">Values in mm and where they lie across the paper, in any order.</param>
    /// <param name="edge">Lower edge of the view.</param>
    /// <returns>How many did not fit.</returns>
    public static int Below(SvgWriter svg, Func<double, string> say, IEnumerable<(double Value, double At)> places, double edge, double from, double to)
    {
        var (kept, left) = Spread(places, from, to);
        foreach (var (value, at, label) in kept)
        {
            svg.Line(at, edge + Off, at, edge + Straight, LineKind.Thin);
            svg.Line(at, edge + Straight, label, edge + Straight + Slant, LineKind.Thin);
            svg.Text(label + DrawingStyle.SmallText * 0.35, edge + Straight + Slant + 0.6, say(value), anchor: TextAnchor.End, degrees: 90);
        }
        return left;
    }

    /// <summary>Numbers left of a view.</summary>
    /// <inheritdoc cref="Below"/>
    public static int Beside(SvgWriter svg, Func<double, string> say, IEnumerable<(double Value, double At)> places, double edge, double from, double to)
    {
        var (kept, left) = Spread(places, from, to);
        foreach (var (value, at, label) in kept)
        {
            svg.Line(edge - Off, at, edge - Straight, at, LineKind.Thin);
            svg.Line(edge - Straight, at, edge - Straight - Slant, label, LineKind.Thin);
            svg.Text(edge - Straight - Slant - 0.6, label + DrawingStyle.SmallText * 0.35, say(value), anchor: TextAnchor.End);
        }
        return left;
    }

    /// <summary>Labels in the order of their places, no nearer together than the gap, and within from and to.</summary>
    static (List<(double Value, double At, double Label)> Kept, int Left) Spread(IEnumerable<(double Value, double At)> places, double from, double to)
    {
        var sorted = places.DistinctBy(place => Math.Round(place.Value, 3)).OrderBy(place => place.At).ToList();
        var most = Math.Max(1, (int)((to - from) / Gap) + 1);
        var left = Math.Max(0, sorted.Count - most);
        // Both ends are kept: what is left out lies between them.
        while (sorted.Count > most)
            sorted.RemoveAt(sorted.Count / 2);
        var labels = sorted.Select(place => place.At).ToArray();
        for (var i = 1; i < labels.Length; i++)
            labels[i] = Math.Max(labels[i], labels[i - 1] + Gap);
        // What was pushed beyond the end goes back, and pushes others before it.
        for (var i = labels.Length - 1; i >= 0; i--)
            labels[i] = Math.Min(labels[i], i == labels.Length - 1 ? to : labels[i + 1] - Gap);
        return ([.. sorted.Select((place, i) => (place.Value, place.At, labels[i]))], left);
    }
}
