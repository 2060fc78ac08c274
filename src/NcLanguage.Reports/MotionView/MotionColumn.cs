using NcLanguage.Checks;
using NcLanguage.Reports.Drawing;

namespace NcLanguage.Reports.MotionView;

/// <summary>The column of words beside the views: title, what the lines mean, contacts, readings, notes, and below it all the caution.</summary>
/// <param name="leftOut">What the drawing had no room for, as sentences.</param>
sealed class MotionColumn(SvgWriter svg, MotionRecording recording, MotionScene scene, ThreeViews views, List<string> leftOut)
{
    const double Left = 308;
    const double Right = 412;
    const double Line = 4;
    const double Paper = 297;
    const int MostRows = 8;

    /// <summary>Where the lowest line may stand: below it the foot of the column has its place.</summary>
    const double Lowest = 262;

    readonly List<Entry> _entries = [];
    double _y = 12;

    /// <summary>A heading, or a row below one.</summary>
    /// <param name="Says">How many rows it stands for; 0 for a heading.</param>
    sealed record Entry(string[] Lines, double Height, int Says, string? CssClass)
    {
        public double Above => Says == 0 ? 2 : 0;

        public double Step => Says == 0 ? Height + 1.2 : Line;
    }

    public void Draw()
    {
        svg.Line(Left - 4, 8, Left - 4, 284, LineKind.Thin);
        Heading(Path.GetFileName(recording.Path), DrawingStyle.LargeText);
        Write(Paper);
        _y += 1;
        Row($"Read for {recording.Job.Machine.Name}");
        // What is not known of some moves comes on top.
        var over = recording.Totals.UnknownMoves > 0 ? "over " : "";
        Row($"{Say.Count(recording.MoveCount, "move")}, {Say.Count(recording.Holes.Count, "hole")}; {over}{Say.Seconds(recording.Totals.Seconds)} in all");
        Row($"{over}{Way(recording.Totals.RapidDistance)} at rapid, {over}{Way(recording.Totals.CutDistance)} cutting");
        Row($"Drawn in {MotionNotes.Frame(recording, scene)}. {MotionNotes.Units(recording.Lengths)}");
        DrawKey();
        DrawContacts();
        DrawNotes();
        DrawReadings();
        Write(Lowest);
        DrawFoot();
    }

    string Way(double mm) => $"{Say.Number(recording.Lengths.Of(mm), 1)} {recording.Lengths.Unit}";

    void DrawKey()
    {
        Heading("What the lines mean");
        Write(Paper);
        Sample(LineKind.Rapid, "rapid");
        Sample(LineKind.Feed, "feed, arc");
        Sample(LineKind.Edge, "stock");
        Key(y => Hatched(y), "clamp or other obstacle");
        Sample(LineKind.Adjacent, "support (dashed in the plan, where it is hidden)");
        Sample(LineKind.Axis, "axis of a hole, R level to bottom");
        Key(y => Marks.Hole(svg, Left + 7, y - 1, 1.3), "hole, with its number where there is room");
        Key(y => Marks.Datum(svg, Left + 7, y - 1, "", 1.3), "datum");
        Key(y => Marks.Contact(svg, Left + 7, y - 1, 1.5), "contact of the tool with an obstacle, or with stock");
    }

    void Hatched(double y)
    {
        var place = new Rectangle(Left, y - 2.4, 14, 2.8);
        Hatching.Box(svg, place, 1.4);
        svg.Rectangle(place, LineKind.Outline);
    }

    void Sample(LineKind kind, string text) => Key(y => svg.Line(Left, y - 1, Left + 14, y - 1, kind), text);

    void Key(Action<double> draw, string text)
    {
        draw(_y);
        svg.Text(Left + 18, _y, text);
        _y += Line;
    }

    void DrawContacts()
    {
        if (recording.Job.Obstacles.IsEmpty && recording.ContactCount == 0)
            return;
        Heading(recording.ContactCount == 0 ? "No contact found in what was looked at" : Say.Count(recording.ContactCount, "contact"));
        foreach (var contact in recording.Contacts.Take(MostRows))
            Row(MotionNotes.Of(recording, contact), cssClass: "d-contact-text");
        if (recording.ContactCount > MostRows)
            Row($"and {recording.ContactCount - MostRows} more", says: recording.ContactCount - MostRows);
        if (recording.Closest.Count == 0)
            return;
        Heading("Nearest without contact");
        foreach (var near in recording.Closest.Take(MostRows))
            Row(MotionNotes.Of(recording, near));
    }

    void DrawNotes()
    {
        var notes = MotionNotes.Of(recording, scene).Concat(leftOut).ToList();
        if (notes.Count == 0)
            return;
        Heading("Not shown, not checked");
        foreach (var note in notes)
            Row(note);
    }

    void DrawReadings()
    {
        Heading("Readings in force");
        Row(string.Join(", ", MotionNotes.Readings(recording.Job.Machine).Select(reading => $"{reading.Name} {reading.Choice}")));
    }

    void DrawFoot()
    {
        Marks.ScaleBar(svg, Left, 268, views.Plan.Scale, 60, recording.Lengths);
        Marks.Projection(svg, Left + 2, 274, views.Plan.Method);
        svg.Text(Left + 24, 278, ViewNames.Of(views.Plan.Method));
        svg.Line(8, 285, Right, 285, LineKind.Thin);
        svg.Text(8, 290, MotionNotes.Caution, 3);
    }

    void Heading(string text, double height = DrawingStyle.Text) => _entries.Add(new Entry([.. Lines(text, height)], height, 0, null));

    void Row(string text, string? cssClass = null, int says = 1) => _entries.Add(RowOf(text, cssClass, says));

    static Entry RowOf(string text, string? cssClass = null, int says = 1) => new([.. Lines(text, DrawingStyle.SmallText)], DrawingStyle.SmallText, says, cssClass);

    /// <summary>Writes what was said since the last time, as far as there is room, and how many rows there was none for.</summary>
    /// <param name="lowest">Where the lowest line may stand.</param>
    void Write(double lowest)
    {
        var fitting = Fitting(lowest);
        if (fitting < _entries.Count)
        {
            fitting = Fitting(lowest - Line);
            while (fitting > 0 && _entries[fitting - 1].Says == 0)
                fitting--;
        }
        foreach (var entry in _entries.Take(fitting))
            Write(entry);
        if (_entries.Skip(fitting).Sum(entry => entry.Says) is > 0 and var left)
            Write(RowOf($"{Say.Count(left, "row is", "rows are")} left out: there is no room. The page (nclanguage view) has them."));
        _entries.Clear();
    }

    /// <summary>How many of the entries stand above a line, those before them too.</summary>
    int Fitting(double lowest)
    {
        var y = _y;
        for (var i = 0; i < _entries.Count; i++)
        {
            y += _entries[i].Above + _entries[i].Lines.Length * _entries[i].Step;
            if (y - _entries[i].Step > lowest)
                return i;
        }
        return _entries.Count;
    }

    void Write(Entry entry)
    {
        _y += entry.Above;
        foreach (var line in entry.Lines)
        {
            svg.Text(Left, _y, line, entry.Height, cssClass: entry.CssClass);
            _y += entry.Step;
        }
    }

    /// <summary>A text broken at blanks so that it fits the column.</summary>
    static IEnumerable<string> Lines(string text, double height)
    {
        var room = (int)((Right - Left) / (height * 0.52));
        while (text.Length > room)
        {
            var end = text.LastIndexOf(' ', room) is > 0 and var blank ? blank : room;
            yield return text[..end];
            text = text[end..].TrimStart();
        }
        yield return text;
    }
}
