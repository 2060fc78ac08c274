using NcLanguage.Checks;
using NcLanguage.Control.Moves;
using NcLanguage.Machine.Geometry;
using NcLanguage.Machine.Setups;
using NcLanguage.Reports.Drawing;

namespace NcLanguage.Reports.MotionView;

/// <summary>The motion of a program as one drawing: plan, front and side, all moves, holes with their numbers, contacts; a sheet of A3, landscape.</summary>
public sealed class MotionDrawing
{
    const double Width = 420;
    const double Height = 297;
    const double Gap = 14;

    /// <summary>Contacts that are marked with words; all are marked with a ring.</summary>
    const int MostContactWords = 12;

    static readonly Rectangle Paper = new(8, 20, 292, 262);

    readonly MotionRecording _recording;
    readonly MotionScene _scene;
    readonly ThreeViews _views;
    readonly SvgWriter _svg;
    readonly LabelSpace _labels = new(new Rectangle(3, 3, 300, 281));
    readonly List<HolePlace> _holes;
    readonly List<Point3> _points = [];
    readonly HashSet<Obstacle> _named = [];
    int _numbersLeftOut;

    MotionDrawing(MotionRecording recording, ProjectionMethod method)
    {
        _recording = recording;
        _scene = MotionScene.Of(recording);
        _holes = HolePlace.Of(recording, _scene);
        _views = ThreeViews.Fit(_scene.World, method, Paper, Gap);
        var name = Path.GetFileName(recording.Path);
        _svg = new SvgWriter(Width, Height, $"Motion of {name}", Describe(), isFile: true);
    }

    /// <summary>A file of its own, fit for a browser and for printing.</summary>
    public static string Of(MotionRecording recording, ProjectionMethod method = ProjectionMethod.FirstAngle)
    {
        ArgumentNullException.ThrowIfNull(recording);
        return new MotionDrawing(recording, method).Draw();
    }

    string Describe() =>
        $"Plan, front and side view; {Say.Count(_recording.MoveCount, "move")}, {Say.Count(_recording.Holes.Count, "hole")}, "
        + $"{Say.Count(_recording.ContactCount, "contact")}, {Say.Seconds(_recording.Totals.Seconds)}";

    string Draw()
    {
        foreach (var view in new[] { _views.Front, _views.Side, _views.Plan })
        {
            _svg.Open(view.View.ToString().ToLowerInvariant());
            DrawSetup(view);
            DrawHoleAxes(view);
            DrawMoves(view);
            _svg.Close();
        }
        foreach (var view in new[] { _views.Front, _views.Side, _views.Plan })
            DrawTitle(view);
        DrawDimensions();
        DrawHoles();
        foreach (var view in new[] { _views.Front, _views.Side, _views.Plan })
        {
            DrawDatum(view);
            DrawContacts(view);
        }
        // Contacts have the first choice of room, names the next.
        foreach (var view in new[] { _views.Front, _views.Side, _views.Plan })
            DrawNames(view);
        DrawHoleNumbers();
        new MotionColumn(_svg, _recording, _scene, _views, LeftOut()).Draw();
        return _svg.End();
    }

    /// <summary>What there was no room for, as sentences.</summary>
    List<string> LeftOut()
    {
        var said = new List<string>();
        var names = _recording.Job.Setup.Obstacles.Concat(_recording.Job.Setup.Supports).Count(solid => !_named.Contains(solid));
        if (names > 0)
            said.Add($"{Say.Count(names, "name of a clamp or support is", "names of clamps or supports are")} left out: there is no room.");
        if (_numbersLeftOut > 0)
            said.Add($"{Say.Count(_numbersLeftOut, "hole's number is", "holes' numbers are")} left out: there is no room.");
        return said;
    }

    void DrawSetup(in ViewFrame view)
    {
        var setup = _recording.Job.Setup;
        if (setup.Stock is { } stock)
            Solids.Stock(_svg, view, stock, setup.Hollows);
        // Behind the stock, whose filling would hide what lies under it.
        foreach (var support in setup.Supports)
            Solids.Support(_svg, view, support);
        foreach (var obstacle in setup.Obstacles)
            Solids.Obstacle(_svg, view, obstacle);
    }

    void DrawMoves(in ViewFrame view)
    {
        var window = view.Window.Grown(Gap / 3);
        var (rapids, feeds) = (new SvgPath(window), new SvgPath(window));
        foreach (var recorded in _recording.Moves)
        {
            if (!recorded.Move.IsMotion)
                continue;
            MoveWay.Points(recorded.Move, _scene.ShiftOf(recorded.Step), _recording.Job, _points);
            var path = recorded.Move.IsFeed ? feeds : rapids;
            for (var i = 1; i < _points.Count; i++)
                path.Line(view.At(_points[i - 1]), view.At(_points[i]));
        }
        _svg.Path(rapids, LineKind.Rapid);
        _svg.Path(feeds, LineKind.Feed);
    }

    /// <summary>Length, width and height of the stock, each once.</summary>
    void DrawDimensions()
    {
        if (_recording.Job.Setup.Stock is not { } stock)
            return;
        var size = stock.Max - stock.Min;
        var say = _recording.Lengths;
        var plan = _views.Plan.Of(stock);
        var front = _views.Front.Of(stock);
        var (below, left) = (_views.Plan.Window.Bottom + 5, _views.Plan.Window.Left - 5);
        // Names stand neither upon the lines nor upon those that lead to them.
        _labels.Take(Rectangle.Between((left - 3.5, plan.Top), (left + 0.5, plan.Bottom)));
        _labels.Take(Rectangle.Between((plan.Left, below - 3.5), (plan.Right, below + 0.5)));
        _labels.Take(Rectangle.Between((_views.Front.Window.Left - 8.5, front.Top), (_views.Front.Window.Left - 4.5, front.Bottom)));
        foreach (var x in new[] { plan.Left, plan.Right })
            _labels.Take(Rectangle.Between((x - 0.3, plan.Bottom), (x + 0.3, below + 1.5)));
        foreach (var (view, box) in new[] { (_views.Plan, plan), (_views.Front, front) })
            foreach (var y in new[] { box.Top, box.Bottom })
                _labels.Take(Rectangle.Between((view.Window.Left - 6.5, y - 0.3), (box.Left, y + 0.3)));
        Dimensions.Across(_svg, plan.Left, plan.Right, plan.Bottom, plan.Bottom, below, say.Length(size.X));
        Dimensions.Upward(_svg, plan.Top, plan.Bottom, plan.Left, plan.Left, left, say.Length(size.Y));
        Dimensions.Upward(_svg, front.Top, front.Bottom, front.Left, front.Left, _views.Front.Window.Left - 5, say.Length(size.Z));
    }

    /// <summary>In front and side view a hole is its axis; holes behind one another have one.</summary>
    void DrawHoleAxes(in ViewFrame view)
    {
        if (view.View == View.Plan)
            return;
        var seen = new HashSet<int>();
        foreach (var place in _holes)
        {
            var (x, top) = view.At(new Point3(place.X, place.Y, place.Top));
            var bottom = view.At(new Point3(place.X, place.Y, place.Bottom)).Y;
            if (!double.IsNaN(top + bottom) && view.Window.Grown(1).Contains(x, view.Window.MiddleY) && seen.Add((int)Math.Round(x * 5)))
                Marks.HoleAxis(_svg, x, top, bottom);
        }
    }

    void DrawHoles()
    {
        var window = _views.Plan.Window.Grown(1);
        foreach (var place in _holes)
        {
            var (x, y) = _views.Plan.At(new Point3(place.X, place.Y, 0));
            if (!window.Contains(x, y))
                continue;
            Marks.Hole(_svg, x, y, RadiusOf(place));
            // Letters may stand in the corners that a circle leaves.
            var reach = Math.Max(RadiusOf(place), 1) * 0.7;
            _labels.Take(new Rectangle(x - reach, y - reach, 2 * reach, 2 * reach));
        }
    }

    void DrawHoleNumbers()
    {
        var window = _views.Plan.Window.Grown(1);
        foreach (var place in _holes)
        {
            var (x, y) = _views.Plan.At(new Point3(place.X, place.Y, 0));
            if (!window.Contains(x, y))
                continue;
            if (_labels.Beside(x, y, Math.Max(RadiusOf(place), 1) * 0.75 + 0.3, place.Label) is { } at)
                _svg.Text(at.X, at.Y, place.Label);
            else
                _numbersLeftOut += place.Numbers.Count;
        }
    }

    double RadiusOf(HolePlace place) => double.IsNaN(place.Diameter) ? 0 : place.Diameter / 2 * _views.Plan.Scale;

    void DrawDatum(in ViewFrame view)
    {
        var (x, y) = view.At(default);
        if (!view.Window.Grown(2).Contains(x, y))
            return;
        Marks.Datum(_svg, x, y, "");
        _labels.Take(new Rectangle(x - 3, y - 3, 6, 6));
    }

    void DrawContacts(in ViewFrame view)
    {
        var words = 0;
        var marked = new HashSet<(int, int)>();
        foreach (var contact in _recording.Contacts)
        {
            var (x, y) = view.At(contact.Tip);
            // One ring is enough where many would lie on one another.
            if (!view.Window.Grown(2).Contains(x, y) || !marked.Add(((int)Math.Round(x / 2), (int)Math.Round(y / 2))))
                continue;
            Marks.Contact(_svg, x, y);
            _labels.Take(new Rectangle(x - 2.5, y - 2.5, 5, 5));
            if (view.View != View.Plan || words >= MostContactWords)
                continue;
            var text = "contact: " + MotionNotes.Of(_recording, contact);
            if (_labels.Beside(x, y, 3, text) is { } at)
            {
                _svg.Rectangle(new Rectangle(at.X - 0.5, at.Y - DrawingStyle.SmallText, Dimensions.WidthOf(text) + 1, DrawingStyle.SmallText + 0.8), LineKind.Thin, "d-paper");
                _svg.Text(at.X, at.Y, text, cssClass: "d-contact-text");
                words++;
            }
        }
    }

    void DrawNames(in ViewFrame view)
    {
        foreach (var obstacle in _recording.Job.Setup.Obstacles)
            if (Name(view, obstacle.Bounds, obstacle.Name, isHatched: true))
                _named.Add(obstacle);
        foreach (var support in _recording.Job.Setup.Supports)
            if (Name(view, support.Bounds, support.Name, isHatched: false))
                _named.Add(support);
        Marks.Axes(_svg, view.Sign > 0 ? view.Window.Left - 10 : view.Window.Right + 10, view.Window.Bottom + 9, view.Across == 0 ? 'X' : 'Y', view.Up == 1 ? 'Y' : 'Z', view.Sign);
    }

    /// <summary>The title of a view, above its middle, or above an end where the datum stands there.</summary>
    void DrawTitle(in ViewFrame view)
    {
        var title = ViewNames.Of(view.View, view.Method);
        var (x, y) = view.At(default);
        var datum = new Rectangle(x - 5, y - 5, 10, 10);
        var (width, top) = (Dimensions.WidthOf(title, DrawingStyle.Text), view.Window.Top - 3.5 - DrawingStyle.Text);
        var place = new Rectangle(view.Window.MiddleX - width / 2, top, width, DrawingStyle.Text);
        if (datum.Overlaps(place))
            place = place with { Left = x < view.Window.MiddleX ? x + 6 : x - 6 - width };
        _labels.Take(place);
        _svg.Text(place.Left, place.Bottom, title, DrawingStyle.Text);
    }

    /// <summary>Writes a name upon or beside what bears it, where there is room: inside, then above, below, right, left; false where there is none.</summary>
    bool Name(in ViewFrame view, Box3 solid, string name, bool isHatched)
    {
        var place = view.Of(solid);
        const double Letters = DrawingStyle.SmallText;
        var width = Dimensions.WidthOf(name);
        var middle = place.MiddleX - width / 2;
        ReadOnlySpan<(double X, double Y)> corners =
        [
            (middle, place.MiddleY + 1), (middle, place.Top - 1), (middle, place.Bottom + Letters + 1), (place.Right + 1, place.MiddleY + 1), (place.Left - 1 - width, place.MiddleY + 1),
        ];
        for (var i = 0; i < corners.Length; i++)
        {
            var (x, y) = corners[i];
            var room = new Rectangle(x - 0.5, y - Letters - 0.2, width + 1, Letters + 1);
            var isInside = i == 0;
            // Beside a support there is the stock, or the next support.
            if (!isHatched && !isInside && (i != 2 || view.View == View.Plan))
                continue;
            if (isInside && (place.Width < room.Width || place.Height < room.Height))
                continue;
            if (!_labels.TryTake(room))
                continue;
            if (isInside && isHatched)
                _svg.Rectangle(room, LineKind.Thin, "d-paper");
            _svg.Text(x, y, name);
            return true;
        }
        return false;
    }
}
