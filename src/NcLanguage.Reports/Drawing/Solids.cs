using System.Collections.Immutable;
using NcLanguage.Machine.Geometry;
using NcLanguage.Machine.Setups;

namespace NcLanguage.Reports.Drawing;

/// <summary>Draws what stands on the table into a view: the stock with wide edges, clamps hatched, supports by long dash and two dots.</summary>
public static class Solids
{
    /// <summary>Between two lines of hatching, mm of paper.</summary>
    const double HatchGap = 2;

    /// <summary>Chords of an outline with round corners; a multiple of 4, so that each corner is one of their ends.</summary>
    const int ChordsAround = 144;

    /// <summary>The blank with its hollows: seen from above their outlines, from the front and the side hidden edges.</summary>
    public static void Stock(SvgWriter svg, in ViewFrame view, Box3 stock, ImmutableArray<Hollow> hollows)
    {
        ArgumentNullException.ThrowIfNull(svg);
        var place = view.Of(stock);
        svg.Rectangle(place, LineKind.Edge, "d-stock");
        foreach (var hollow in hollows)
        {
            var path = new SvgPath(place);
            if (view.View == View.Plan)
                Outline(path, view, hollow);
            else
                Sides(path, view.Of(hollow.Within(stock)), hollow.Bottom > stock.Min.Z);
            svg.Path(path, view.View == View.Plan ? LineKind.Outline : LineKind.Hidden);
        }
    }

    static void Sides(SvgPath path, Rectangle hollow, bool hasFloor)
    {
        path.Line((hollow.Left, hollow.Top), (hollow.Left, hollow.Bottom));
        if (hasFloor)
            path.Line((hollow.Left, hollow.Bottom), (hollow.Right, hollow.Bottom));
        path.Line((hollow.Right, hollow.Bottom), (hollow.Right, hollow.Top));
    }

    static void Outline(SvgPath path, in ViewFrame view, Hollow hollow)
    {
        var last = view.At(hollow.OutlineAt(0));
        for (var i = 1; i <= ChordsAround; i++)
        {
            var next = view.At(hollow.OutlineAt((double)i / ChordsAround));
            path.Line(last, next);
            last = next;
        }
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
