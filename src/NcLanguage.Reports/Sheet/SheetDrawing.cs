using NcLanguage.Checks;
using NcLanguage.Checks.Analysis;
using NcLanguage.Control.State;
using NcLanguage.Machine.Geometry;
using NcLanguage.Machine.Setups;
using NcLanguage.Reports.Drawing;

namespace NcLanguage.Reports.Sheet;

/// <summary>Stock, clamps and supports from the front and from above, with dimensions from the datum. Narrow enough for both common papers.</summary>
sealed class SheetDrawing
{
    const double Width = 180;

    /// <summary>With heading and words it takes half a page and a little more.</summary>
    const double MostHeight = 130;

    const double Margin = 6;
    const double Between = 12;

    /// <summary>More places with holes than this are not drawn into the plan.</summary>
    const int MostPlaces = 300;

    readonly Setup _setup;
    readonly SheetSay _say;
    readonly Box3[] _boxes;
    readonly ViewFrame _front;
    readonly ViewFrame _plan;
    readonly SvgWriter _svg;
    readonly List<(double X, double Y, double Radius)> _holes = [];

    SheetDrawing(Setup setup, Box3[] boxes, SheetSay say)
    {
        (_setup, _boxes, _say) = (setup, boxes, say);
        var world = boxes.Aggregate(default(Box3), Union);
        var size = world.Max - world.Min;
        var (left, roomAcross) = (RunningDimensions.Room, Width - RunningDimensions.Room - Margin);
        var roomUp = MostHeight - RunningDimensions.Room - Between - 2 * Margin;
        var scale = Math.Min(roomAcross / Math.Max(size.X, 1), roomUp / Math.Max(size.Y + size.Z, 1));
        left += (roomAcross - scale * size.X) / 2;
        var (frontTop, frontHeight) = (2 * Margin, scale * size.Z);
        var planTop = frontTop + frontHeight + Between;
        var height = planTop + scale * size.Y + RunningDimensions.Room + Margin;
        var originX = left - scale * world.Min.X;
        _front = new ViewFrame(View.Front, ProjectionMethod.FirstAngle, scale, new Rectangle(left, frontTop, scale * size.X, frontHeight), originX, frontTop + scale * world.Max.Z);
        _plan = new ViewFrame(View.Plan, ProjectionMethod.FirstAngle, scale, new Rectangle(left, planTop, scale * size.X, scale * size.Y), originX, planTop + scale * world.Max.Y);
        _svg = new SvgWriter(Width, height, "Stock and clamps from the front and from above", $"Dimensions in {say.Lengths.UnitWord} from the datum {Frame}; the table below has the same numbers.");
    }

    string Frame => WorkOffsetName.Format(_setup.Frame);

    /// <summary>The drawing as SVG, and what it shows of the holes as a sentence; null where the setup gives nothing to draw.</summary>
    /// <param name="holes">What the program drills.</param>
    /// <param name="say">The unit of dimensions.</param>
    public static (string Svg, string Holes)? Of(Setup setup, HoleTable holes, SheetSay say)
    {
        Box3[] boxes = [.. setup.Stock is { } stock ? [stock] : Array.Empty<Box3>(), .. setup.Obstacles.Select(obstacle => obstacle.Bounds), .. setup.Supports.Select(support => support.Bounds)];
        if (boxes.Length == 0)
            return null;
        var drawing = new SheetDrawing(setup, boxes, say);
        var said = drawing.FindHoles(holes);
        return (drawing.Draw(), said);
    }

    string FindHoles(HoleTable holes)
    {
        if (holes.Count == 0)
            return "The program drills no hole in a cycle.";
        var alongZ = holes.Where(row => row.Plane == WorkPlane.XY);
        var count = alongZ.Select(Place).Distinct().Count();
        if (count > MostPlaces)
            return $"Holes are not drawn: there are {count} places, and no more than {MostPlaces} can be told apart.";
        var places = alongZ.GroupBy(Place).ToList();
        var window = _plan.Window.Grown(Margin);
        foreach (var place in places)
        {
            var (x, y) = _plan.At(new Point3(place.Key.X, place.Key.Y, 0));
            if (window.Contains(x, y))
                _holes.Add((x, y, place.Max(row => _setup.FindTool(row.Hole.Tool)?.Diameter ?? 0) / 2 * _plan.Scale));
        }
        var notDrawn = holes.Count - places.Where(place => _plan.At(new Point3(place.Key.X, place.Key.Y, 0)) is var at && window.Contains(at.X, at.Y)).Sum(place => place.Count());
        var missing = notDrawn == 0 ? "" : $"{Say.Count(notDrawn, "hole is", "holes are")} not drawn: off the drawing, at a place that is not known, or not along Z.";
        if (_holes.Count == 0)
            return missing;
        var size = _holes.TrueForAll(hole => hole.Radius > 0) ? "at the size of the widest tool" : "at the size of the widest tool, as axes alone where no diameter is known";
        return $"Holes where the program drills them, {size}. {missing}".TrimEnd();

        static (double X, double Y) Place(HoleRow row) => (Math.Round(row.Hole.X + row.ToFrame.X, 3), Math.Round(row.Hole.Y + row.ToFrame.Y, 3));
    }

    string Draw()
    {
        foreach (var view in new[] { _front, _plan })
            DrawSetup(view);
        foreach (var (x, y, radius) in _holes)
            Marks.Hole(_svg, x, y, radius);
        var captions = new[] { _front, _plan }.Select(Caption).ToArray();
        var (free, onClamps) = (Room(captions), Room(captions));
        foreach (var view in new[] { _front, _plan })
            foreach (var obstacle in _setup.Obstacles)
                free.Take(view.Of(obstacle.Bounds));
        foreach (var view in new[] { _front, _plan })
        {
            var (x, y) = view.At(default);
            Marks.Datum(_svg, x, y, "");
            if (free.Beside(x, y, 3, Frame) is not { } at)
                continue;
            // Where there is no other room it stands over an edge or a hatching.
            _svg.Text(at.X, at.Y, Frame, cssClass: "d-rimmed");
            onClamps.Take(new Rectangle(at.X, at.Y - DrawingStyle.SmallText, Dimensions.WidthOf(Frame), DrawingStyle.SmallText));
        }
        var unnamed = _setup.Supports.Count(support => !Name(onClamps, _front, support)) + _setup.Obstacles.Count(obstacle => !Name(onClamps, _plan, obstacle));
        foreach (var (place, text) in captions)
            _svg.Text(place.Left, place.Bottom, text);
        WriteDimensions(unnamed);
        Marks.Projection(_svg, Width - 24, _svg.Height - 12, ProjectionMethod.FirstAngle);
        return _svg.End();
    }

    void WriteDimensions(int unnamed)
    {
        var (left, top, bottom) = (_plan.Window.Left, _plan.Window.Top, _plan.Window.Bottom);
        var notFit = RunningDimensions.Below(_svg, _say.Length, Places(_plan, 0), bottom, left, Math.Max(_plan.Window.Right, left + 10))
            + RunningDimensions.Beside(_svg, _say.Length, Places(_plan, 1), left, top, bottom)
            + RunningDimensions.Beside(_svg, _say.Length, Places(_front, 2), left, _front.Window.Top - Margin / 2, _front.Window.Bottom + Between / 2);
        var what = (notFit > 0, unnamed > 0) switch { (true, true) => "dimensions and names", (true, false) => "dimensions", (false, true) => "names", _ => null };
        if (what is not null)
            _svg.Text(Width - Margin, _svg.Height - 1, $"Not all {what} fit: the table below has them.", anchor: TextAnchor.End);
    }

    void DrawSetup(in ViewFrame view)
    {
        if (_setup.Stock is { } stock)
            Solids.Stock(_svg, view, stock, _setup.Hollows);
        // Behind the stock, whose filling would hide what lies under it.
        foreach (var support in _setup.Supports)
            Solids.Support(_svg, view, support);
        foreach (var obstacle in _setup.Obstacles)
            Solids.Obstacle(_svg, view, obstacle);
    }

    /// <summary>The words above a view, clear of the mark of the datum.</summary>
    (Rectangle Place, string Text) Caption(ViewFrame view)
    {
        var text = $"{ViewNames.Of(view.View, view.Method)}, {(view.View == View.Plan ? "X to the right, Y up" : "X to the right, Z up")}";
        var place = new Rectangle(view.Window.Left, view.Window.Top - 1.5 - DrawingStyle.SmallText, Dimensions.WidthOf(text), DrawingStyle.SmallText);
        var datum = DatumOf(view);
        return (datum.Overlaps(place) ? place with { Top = datum.Top - 0.5 - DrawingStyle.SmallText } : place, text);
    }

    static Rectangle DatumOf(in ViewFrame view)
    {
        var (x, y) = view.At(default);
        return new Rectangle(x - 5, y - 5, 10, 10);
    }

    /// <summary>Where names may stand: not upon dimensions, captions, holes or the datum.</summary>
    LabelSpace Room(ReadOnlySpan<(Rectangle Place, string Text)> captions)
    {
        var space = new LabelSpace(new Rectangle(0, 0, _svg.Width, _svg.Height));
        const double Letters = DrawingStyle.SmallText / 2;
        foreach (var view in new[] { _front, _plan })
        {
            var (left, top, bottom) = (view.Window.Left, view.Window.Top - Margin / 2 - Letters, view.Window.Bottom + Between / 2 + Letters);
            space.Take(new Rectangle(left - RunningDimensions.Room, top, RunningDimensions.Room, bottom - top));
            var (x, y) = view.At(default);
            space.Take(new Rectangle(x - 2.5, y - 2.5, 5, 5));
        }
        space.Take(new Rectangle(_plan.Window.Left - Letters, _plan.Window.Bottom + 0.5, Math.Max(_plan.Window.Width, 10) + 2 * Letters, RunningDimensions.Room));
        space.Take(new Rectangle(Width - 26, _svg.Height - 14, 26, 14));
        foreach (var (place, _) in captions)
            space.Take(place);
        foreach (var (x, y, radius) in _holes)
            space.Take(new Rectangle(x - radius, y - radius, 2 * radius, 2 * radius));
        return space;
    }

    /// <summary>A name in a small frame, on its solid or as near to it as there is room; false where there is none.</summary>
    bool Name(LabelSpace space, in ViewFrame view, Obstacle solid)
    {
        var place = view.Of(solid.Bounds);
        var (width, height) = (Dimensions.WidthOf(solid.Name) + 1.5, DrawingStyle.SmallText + 1.2);
        var (middle, level) = (Math.Clamp(place.MiddleX - width / 2, 0.5, Math.Max(0.5, Width - width - 0.5)), place.MiddleY - height / 2);
        // A name must not hide what it names.
        var fits = width <= place.Width && height <= place.Height;
        ReadOnlySpan<(double X, double Y)> inside = [(middle, level), (middle, level + height), (middle, level - height), (place.Left + 1, level), (place.Right - 1 - width, level)];
        ReadOnlySpan<(double X, double Y)> beside =
        [
            (middle, place.Bottom + 1), (middle, place.Top - 1 - height), (place.Right + 1, level), (place.Left - 1 - width, level),
            (middle, place.Bottom + 1 + height), (middle, place.Top - 1 - 2 * height),
        ];
        return (fits && TryName(space, inside, width, height, solid.Name)) || TryName(space, beside, width, height, solid.Name);
    }

    bool TryName(LabelSpace space, ReadOnlySpan<(double X, double Y)> places, double width, double height, string name)
    {
        foreach (var (x, y) in places)
        {
            var label = new Rectangle(x, y, width, height);
            if (!space.TryTake(label))
                continue;
            _svg.Rectangle(label, LineKind.Thin, "d-paper");
            _svg.Text(x + width / 2, y + height - 1, name, anchor: TextAnchor.Middle);
            return true;
        }
        return false;
    }

    IEnumerable<(double Value, double At)> Places(ViewFrame view, int axis) => _boxes
        .SelectMany(box => new[] { box.Min[axis], box.Max[axis] }).Append(0)
        .Select(value => (value, axis == view.Across ? view.At(default(Point3).With(axis, value)).X : view.At(default(Point3).With(axis, value)).Y));

    static Box3 Union(Box3 one, Box3 other) => new(
        new Point3(Math.Min(one.Min.X, other.Min.X), Math.Min(one.Min.Y, other.Min.Y), Math.Min(one.Min.Z, other.Min.Z)),
        new Point3(Math.Max(one.Max.X, other.Max.X), Math.Max(one.Max.Y, other.Max.Y), Math.Max(one.Max.Z, other.Max.Z)));
}
