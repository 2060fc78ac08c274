using NcLanguage.Machine.Geometry;
using NcLanguage.Machine.Setups;

namespace NcLanguage.Reports.Drawing;

/// <summary>Draws what stands on the table into a view: the stock with wide edges, clamps hatched, supports by long dash and two dots.</summary>
public static class Solids
{
    /// <summary>Between two lines of hatching, mm of paper.</summary>
    const double HatchGap = 2;

    public static void Stock(SvgWriter svg, in ViewFrame view, Box3 stock)
    {
        ArgumentNullException.ThrowIfNull(svg);
        svg.Rectangle(view.Of(stock), LineKind.Edge, "d-stock");
    }

    /// <summary>A clamp or whatever else must be kept clear of.</summary>
    public static void Obstacle(SvgWriter svg, in ViewFrame view, Obstacle obstacle)
    {
        ArgumentNullException.ThrowIfNull(svg);
        ArgumentNullException.ThrowIfNull(obstacle);
        if (obstacle is CylinderObstacle cylinder && view.View == View.Plan)
        {
            var (x, y) = view.At(new Point3(cylinder.CenterX, cylinder.CenterY, 0));
            var radius = cylinder.Diameter / 2 * view.Scale;
            Hatching.Disc(svg, x, y, radius, HatchGap);
            svg.Circle(x, y, radius, LineKind.Outline);
            return;
        }
        var place = view.Of(obstacle.Bounds);
        Hatching.Box(svg, place, HatchGap);
        svg.Rectangle(place, LineKind.Outline);
        if (obstacle is CylinderObstacle)
            svg.Line(place.MiddleX, place.Top - 2, place.MiddleX, place.Bottom + 2, LineKind.Axis);
    }

    /// <summary>What the stock rests on: in the plan it lies under it, and its edges are hidden.</summary>
    public static void Support(SvgWriter svg, in ViewFrame view, Obstacle support)
    {
        ArgumentNullException.ThrowIfNull(svg);
        ArgumentNullException.ThrowIfNull(support);
        var kind = view.View == View.Plan ? LineKind.Hidden : LineKind.Adjacent;
        if (support is CylinderObstacle cylinder && view.View == View.Plan)
        {
            var (x, y) = view.At(new Point3(cylinder.CenterX, cylinder.CenterY, 0));
            svg.Circle(x, y, cylinder.Diameter / 2 * view.Scale, kind);
        }
        else
        {
            svg.Rectangle(view.Of(support.Bounds), kind);
        }
    }
}
