using NcLanguage.Checks;
using NcLanguage.Checks.Analysis;
using NcLanguage.Machine.Geometry;
using NcLanguage.Machine.Setups;
using NcLanguage.Reports.Drawing;

namespace NcLanguage.Reports.Sheet;

/// <summary>Stock, clamps and supports from the front and from above, with dimensions from the datum. Narrow enough for both common papers.</summary>
static class SheetDrawing
{
    const double Width = 180;
    const double MostHeight = 170;
    const double Margin = 6;
    const double Between = 12;

    /// <summary>More holes than this are not drawn into the plan.</summary>
    const int MostHoles = 300;

    /// <summary>The drawing as SVG; null where the setup gives nothing to draw.</summary>
    /// <param name="holes">What the program drills.</param>
    public static string? Of(Setup setup, HoleTable holes)
    {
        Box3[] boxes = [.. setup.Stock is { } stock ? [stock] : Array.Empty<Box3>(), .. setup.Obstacles.Select(obstacle => obstacle.Bounds), .. setup.Supports.Select(support => support.Bounds)];
        if (boxes.Length == 0)
            return null;
        var world = boxes.Aggregate(default(Box3), Union);
        var size = world.Max - world.Min;
        var (left, roomAcross) = (RunningDimensions.Room, Width - RunningDimensions.Room - Margin);
        var roomUp = MostHeight - RunningDimensions.Room - Between - 2 * Margin;
        var scale = Math.Min(roomAcross / Math.Max(size.X, 1), roomUp / Math.Max(size.Y + size.Z, 1));
        left += (roomAcross - scale * size.X) / 2;
        var (frontTop, frontHeight) = (2 * Margin, scale * size.Z);
        var planTop = frontTop + frontHeight + Between;
        var height = planTop + scale * size.Y + RunningDimensions.Room + Margin;
        var frame = WorkOffsetName.Format(setup.Frame);
        var svg = new SvgWriter(Width, height, "Stock and clamps from the front and from above", $"Dimensions in mm from the datum {frame}; the table below has the same numbers.");
        var originX = left - scale * world.Min.X;
        var front = new ViewFrame(View.Front, ProjectionMethod.FirstAngle, scale, new Rectangle(left, frontTop, scale * size.X, frontHeight), originX, frontTop + scale * world.Max.Z);
        var plan = new ViewFrame(View.Plan, ProjectionMethod.FirstAngle, scale, new Rectangle(left, planTop, scale * size.X, scale * size.Y), originX, planTop + scale * world.Max.Y);
        Draw(svg, front, setup);
        Draw(svg, plan, setup);
        DrawHoles(svg, plan, setup, holes);
        Name(svg, front, setup.Supports);
        Name(svg, plan, setup.Obstacles);
        foreach (var view in new[] { front, plan })
        {
            var (x, y) = view.At(default);
            Marks.Datum(svg, x, y, frame);
            svg.Text(left, view.Window.Top - 1.5, $"{ViewNames.Of(view.View, view.Method)}, {(view.View == View.Plan ? "X to the right, Y up" : "X to the right, Z up")}");
        }
        var bottom = planTop + plan.Window.Height;
        var left1 = RunningDimensions.Below(svg, Places(boxes, plan, 0), bottom, left, Math.Max(left + plan.Window.Width, left + 10));
        var left2 = RunningDimensions.Beside(svg, Places(boxes, plan, 1), left, planTop, bottom);
        var left3 = RunningDimensions.Beside(svg, Places(boxes, front, 2), left, frontTop - Margin / 2, frontTop + frontHeight + Between / 2);
        if (left1 + left2 + left3 > 0)
            svg.Text(Width - Margin, height - 1, "Not all dimensions fit: the table below has them.", anchor: TextAnchor.End);
        Marks.Projection(svg, Width - 24, height - 12, ProjectionMethod.FirstAngle);
        return svg.End();
    }

    static void Draw(SvgWriter svg, in ViewFrame view, Setup setup)
    {
        if (setup.Stock is { } stock)
            Solids.Stock(svg, view, stock);
        // Behind the stock, whose filling would hide what lies under it.
        foreach (var support in setup.Supports)
            Solids.Support(svg, view, support);
        foreach (var obstacle in setup.Obstacles)
            Solids.Obstacle(svg, view, obstacle);
    }

    static void DrawHoles(SvgWriter svg, in ViewFrame plan, Setup setup, HoleTable holes)
    {
        if (holes.Count > MostHoles)
            return;
        foreach (var place in holes.GroupBy(row => (X: Math.Round(row.Hole.X + row.ToFrame.X, 3), Y: Math.Round(row.Hole.Y + row.ToFrame.Y, 3))))
        {
            if (!double.IsFinite(place.Key.X + place.Key.Y))
                continue;
            var (x, y) = plan.At(new Point3(place.Key.X, place.Key.Y, 0));
            var widest = place.Max(row => setup.FindTool(row.Hole.Tool)?.Diameter ?? 0);
            if (plan.Window.Grown(Margin).Contains(x, y))
                Marks.Hole(svg, x, y, widest / 2 * plan.Scale);
        }
    }

    /// <summary>Names in small frames, on their solid or as near to it as there is room.</summary>
    static void Name(SvgWriter svg, ViewFrame view, IEnumerable<Obstacle> solids)
    {
        var space = new LabelSpace(new Rectangle(0, 0, svg.Width, svg.Height));
        foreach (var solid in solids)
        {
            var place = view.Of(solid.Bounds);
            var (width, height) = (Dimensions.WidthOf(solid.Name) + 1.5, DrawingStyle.SmallText + 1.2);
            var x = Math.Clamp(place.MiddleX - width / 2, 0.5, Math.Max(0.5, Width - width - 0.5));
            // A name must not hide what it names.
            var isBelow = width > place.Width || height > place.Height;
            for (var (y, tries) = (isBelow ? place.Bottom + 1 : place.MiddleY - height / 2, 0); tries < 20; tries++, y += height)
            {
                var label = new Rectangle(x, y, width, height);
                if (!space.TryTake(label))
                    continue;
                svg.Rectangle(label, LineKind.Thin, "d-paper");
                svg.Text(x + width / 2, y + height - 1, solid.Name, anchor: TextAnchor.Middle);
                break;
            }
        }
    }

    static IEnumerable<(double Value, double At)> Places(Box3[] boxes, ViewFrame view, int axis) => boxes
        .SelectMany(box => new[] { box.Min[axis], box.Max[axis] }).Append(0)
        .Select(value => (value, axis == view.Across ? view.At(default(Point3).With(axis, value)).X : view.At(default(Point3).With(axis, value)).Y));

    static Box3 Union(Box3 one, Box3 other) => new(
        new Point3(Math.Min(one.Min.X, other.Min.X), Math.Min(one.Min.Y, other.Min.Y), Math.Min(one.Min.Z, other.Min.Z)),
        new Point3(Math.Max(one.Max.X, other.Max.X), Math.Max(one.Max.Y, other.Max.Y), Math.Max(one.Max.Z, other.Max.Z)));
}
