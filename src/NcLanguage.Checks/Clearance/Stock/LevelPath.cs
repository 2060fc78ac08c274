namespace NcLanguage.Checks.Clearance;

/// <summary>A path at one level with all places, seen from above, within some distance of it.</summary>
internal interface ILevelPath
{
    /// <summary>Where in X it reaches at a Y, mm.</summary>
    RowSpan Span(double y);

    /// <summary>Square of a place's distance from the path, mm².</summary>
    double SquareTo(double x, double y);
}

/// <summary>From where to where a row reaches, mm, and the gap inside it; empty where the low end is not below the high one.</summary>
internal readonly record struct RowSpan(double Low, double High, double GapLow, double GapHigh);

/// <summary>What a cut takes from the cells of a field: heights added up, and the largest of them, mm.</summary>
internal struct CutSum
{
    public double Height;
    public float Deepest;

    /// <summary>Lowers a height to at most <paramref name="level"/>.</summary>
    public void Lower(ref float height, float level)
    {
        var taken = height - level;
        if (!(taken > 0))
            return;
        height = level;
        Height += taken;
        Deepest = Math.Max(Deepest, taken);
    }
}
