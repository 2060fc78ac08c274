namespace NcLanguage.Reports.Drawing;

/// <summary>A rectangle on the paper, mm, y down.</summary>
public readonly record struct Rectangle(double Left, double Top, double Width, double Height)
{
    public double Right => Left + Width;

    public double Bottom => Top + Height;

    public double MiddleX => Left + Width / 2;

    public double MiddleY => Top + Height / 2;

    /// <summary>The rectangle with these opposite corners.</summary>
    public static Rectangle Between((double X, double Y) one, (double X, double Y) other) =>
        new(Math.Min(one.X, other.X), Math.Min(one.Y, other.Y), Math.Abs(one.X - other.X), Math.Abs(one.Y - other.Y));

    public bool Contains(double x, double y) => x >= Left && x <= Right && y >= Top && y <= Bottom;

    public bool Overlaps(in Rectangle other) => Left < other.Right && other.Left < Right && Top < other.Bottom && other.Top < Bottom;

    /// <summary>Grown by that much on every side; it may be negative.</summary>
    public Rectangle Grown(double by) => new(Left - by, Top - by, Width + 2 * by, Height + 2 * by);

    /// <summary>What both have in common; of no width or height where they do not meet.</summary>
    public Rectangle Common(in Rectangle other)
    {
        var (left, top) = (Math.Max(Left, other.Left), Math.Max(Top, other.Top));
        return new Rectangle(left, top, Math.Max(0, Math.Min(Right, other.Right) - left), Math.Max(0, Math.Min(Bottom, other.Bottom) - top));
    }

    /// <summary>The part of a line that lies inside (Liang and Barsky, 1984); false where none does, or an end is not known.</summary>
    public bool Clip(ref double x1, ref double y1, ref double x2, ref double y2)
    {
        var (dx, dy) = (x2 - x1, y2 - y1);
        var (from, to) = (0.0, 1.0);
        if (!double.IsFinite(dx + dy)
            || !Cut(-dx, x1 - Left, ref from, ref to) || !Cut(dx, Right - x1, ref from, ref to)
            || !Cut(-dy, y1 - Top, ref from, ref to) || !Cut(dy, Bottom - y1, ref from, ref to))
            return false;
        (x2, y2) = to < 1 ? (x1 + to * dx, y1 + to * dy) : (x2, y2);
        (x1, y1) = from > 0 ? (x1 + from * dx, y1 + from * dy) : (x1, y1);
        return true;
    }

    static bool Cut(double way, double room, ref double from, ref double to)
    {
        if (way == 0)
            return room >= 0;
        var at = room / way;
        if (way < 0)
            from = Math.Max(from, at);
        else
            to = Math.Min(to, at);
        return from <= to;
    }
}
