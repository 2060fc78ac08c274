namespace NcLanguage.Reports.Drawing;

/// <summary>The room that texts have taken on a drawing, so that no two are written over each other.</summary>
/// <param name="paper">Where texts may stand.</param>
public sealed class LabelSpace(Rectangle paper)
{
    /// <summary>Side of a square of the grid that taken places are looked up in, mm of paper.</summary>
    const double Square = 10;

    readonly Dictionary<(int, int), List<Rectangle>> _taken = [];

    /// <summary>Takes a place whether it is free or not. What lies beside the paper takes no room.</summary>
    public void Take(in Rectangle place)
    {
        if (!place.Overlaps(paper))
            return;
        foreach (var square in SquaresOf(place.Common(paper)))
        {
            if (!_taken.TryGetValue(square, out var list))
                _taken[square] = list = [];
            list.Add(place);
        }
    }

    /// <summary>Takes a place if it lies on the paper and nothing is there.</summary>
    public bool TryTake(in Rectangle place)
    {
        if (place.Left < paper.Left || place.Right > paper.Right || place.Top < paper.Top || place.Bottom > paper.Bottom)
            return false;
        foreach (var square in SquaresOf(place))
            if (_taken.TryGetValue(square, out var list))
                foreach (var other in list)
                    if (other.Overlaps(place))
                        return false;
        Take(place);
        return true;
    }

    /// <summary>Finds room for a text beside a place: right above, right below, left above, left below, over it, under it. Null where there is none.</summary>
    /// <param name="off">How far from the place the text stands, across and up, mm of paper.</param>
    /// <returns>Where the text begins, on the line that its letters stand on.</returns>
    public (double X, double Y)? Beside(double x, double y, double off, string text, double height = DrawingStyle.SmallText)
    {
        var width = Dimensions.WidthOf(text, height);
        ReadOnlySpan<(double X, double Y)> corners =
        [
            (x + off, y - off), (x + off, y + off + height), (x - off - width, y - off), (x - off - width, y + off + height),
            (x - width / 2, y - off - height), (x - width / 2, y + off + 2 * height),
        ];
        foreach (var (left, bottom) in corners)
            if (TryTake(new Rectangle(left, bottom - height, width, height)))
                return (left, bottom);
        return null;
    }

    static IEnumerable<(int, int)> SquaresOf(Rectangle place)
    {
        for (var column = (int)Math.Floor(place.Left / Square); column <= (int)Math.Floor(place.Right / Square); column++)
            for (var row = (int)Math.Floor(place.Top / Square); row <= (int)Math.Floor(place.Bottom / Square); row++)
                yield return (column, row);
    }
}
