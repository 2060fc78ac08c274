using NcLanguage.Machine.Geometry;

namespace NcLanguage.Reports.Drawing;

/// <summary>One view's place on the paper: turns places in the setup's frame (mm) into places on the paper (mm).</summary>
/// <param name="Scale">Mm of paper for 1 mm.</param>
/// <param name="Window">What the view may fill.</param>
/// <param name="OriginX">Where on the paper the frame's zero lies.</param>
/// <param name="OriginY">Where on the paper the frame's zero lies.</param>
public readonly record struct ViewFrame(View View, ProjectionMethod Method, double Scale, Rectangle Window, double OriginX, double OriginY)
{
    /// <summary>The axis (0 X, 1 Y) that runs across the view.</summary>
    public int Across => View == View.Side ? 1 : 0;

    /// <summary>The axis (1 Y, 2 Z) that runs up in the view.</summary>
    public int Up => View == View.Plan ? 1 : 2;

    /// <summary>The axis that the view looks along.</summary>
    public int Along => 3 - Across - Up;

    /// <summary>−1 where the axis across grows to the left.</summary>
    public int Sign => SignOf(View, Method);

    /// <summary>The place on the paper; NaN where a coordinate that the view shows is not known.</summary>
    public (double X, double Y) At(Point3 place) => (OriginX + Sign * Scale * place[Across], OriginY - Scale * place[Up]);

    /// <summary>The rectangle that a box covers.</summary>
    public Rectangle Of(Box3 box) => Rectangle.Between(At(box.Min), At(box.Max));

    /// <summary>One view of a box, as large as a place on the paper allows and in its middle.</summary>
    public static ViewFrame Fit(View view, ProjectionMethod method, Box3 world, Rectangle paper)
    {
        var frame = new ViewFrame(view, method, 1, paper, 0, 0);
        var size = world.Max - world.Min;
        frame = frame with { Scale = Math.Min(paper.Width / Extent(size[frame.Across]), paper.Height / Extent(size[frame.Up])) };
        return frame.Centred(world, paper);
    }

    /// <summary>The same with a box in the middle of a place on the paper.</summary>
    internal ViewFrame Centred(Box3 world, Rectangle paper)
    {
        var drawn = (this with { OriginX = 0, OriginY = 0 }).Of(world);
        return this with { Window = paper, OriginX = paper.MiddleX - drawn.MiddleX, OriginY = paper.MiddleY - drawn.MiddleY };
    }

    /// <summary>What has no extent is drawn as if it had some.</summary>
    internal static double Extent(double size) => double.IsFinite(size) ? Math.Max(size, 1) : 1;

    static int SignOf(View view, ProjectionMethod method) => view == View.Side && method == ProjectionMethod.FirstAngle ? -1 : 1;
}

/// <summary>Plan, front and side of a box at one scale, each in line with its neighbours.</summary>
/// <param name="Free">The corner of the paper that no view takes.</param>
public sealed record ThreeViews(ViewFrame Plan, ViewFrame Front, ViewFrame Side, Rectangle Free)
{
    /// <summary>As large as the paper allows, centred.</summary>
    /// <param name="world">What is to be seen, mm.</param>
    /// <param name="paper">Where.</param>
    /// <param name="gap">Between the views and around them, mm of paper: room for names and dimensions.</param>
    public static ThreeViews Fit(Box3 world, ProjectionMethod method, Rectangle paper, double gap)
    {
        var size = world.Max - world.Min;
        var (x, y, z) = (ViewFrame.Extent(size.X), ViewFrame.Extent(size.Y), ViewFrame.Extent(size.Z));
        var scale = Math.Max(double.Epsilon, Math.Min((paper.Width - 3 * gap) / (x + y), (paper.Height - 3 * gap) / (y + z)));
        var isFirst = method == ProjectionMethod.FirstAngle;
        var left = paper.MiddleX - (scale * (x + y) + gap) / 2;
        var top = paper.MiddleY - (scale * (y + z) + gap) / 2;
        var (upper, lower) = isFirst ? (z, y) : (y, z);
        var second = top + scale * upper + gap;
        var beside = left + scale * x + gap;
        var plan = new Rectangle(left, isFirst ? second : top, scale * x, scale * y);
        var front = new Rectangle(left, isFirst ? top : second, scale * x, scale * z);
        var side = new Rectangle(beside, front.Top, scale * y, scale * z);
        return new ThreeViews(
            Frame(View.Plan, plan), Frame(View.Front, front), Frame(View.Side, side),
            new Rectangle(beside, isFirst ? second : top, scale * y, scale * (isFirst ? lower : upper)));

        ViewFrame Frame(View view, Rectangle place) => new ViewFrame(view, method, scale, place, 0, 0).Centred(world, place);
    }
}
