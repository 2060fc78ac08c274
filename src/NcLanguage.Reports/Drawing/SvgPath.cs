using System.Text;

namespace NcLanguage.Reports.Drawing;

/// <summary>The data of a path of many short lines, mm of paper. What is too short to be seen is left out, so that a long program does not make a long
/// file; so is a line that was drawn already.</summary>
/// <param name="window">What is outside is cut off.</param>
public sealed class SvgPath(Rectangle window)
{
    /// <summary>Places nearer together than this, mm of paper, are one place.</summary>
    const double Grain = 0.05;

    readonly StringBuilder _data = new();
    readonly HashSet<(int, int, int, int)> _drawn = [];
    (int X, int Y)? _pen;

    public bool IsEmpty => _data.Length == 0;

    public StringBuilder Data => _data;

    /// <summary>A line between two places; nothing where an end is not known.</summary>
    public void Line((double X, double Y) from, (double X, double Y) to)
    {
        var (x1, y1, x2, y2) = (from.X, from.Y, to.X, to.Y);
        if (!window.Clip(ref x1, ref y1, ref x2, ref y2))
            return;
        var (start, end) = (Grains(x1, y1), Grains(x2, y2));
        if (start == end || !_drawn.Add(start.CompareTo(end) < 0 ? (start.X, start.Y, end.X, end.Y) : (end.X, end.Y, start.X, start.Y)))
            return;
        if (_pen != start)
            Append('M', start);
        Append('L', end);
        _pen = end;
    }

    static (int X, int Y) Grains(double x, double y) => ((int)Math.Round(x / Grain), (int)Math.Round(y / Grain));

    void Append(char what, (int X, int Y) place) =>
        _data.Append(what).Append(SvgWriter.Number(place.X * Grain)).Append(' ').Append(SvgWriter.Number(place.Y * Grain));
}
