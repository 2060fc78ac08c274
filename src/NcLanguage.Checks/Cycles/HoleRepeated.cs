using NcLanguage.Checks.Analysis;
using NcLanguage.Control.Moves;
using NcLanguage.Control.State;

namespace NcLanguage.Checks.Rules;

/// <summary>The same hole is drilled twice by the same cycle and tool.</summary>
public sealed class HoleRepeated : Rule
{
    /// <summary>Places of one run that are remembered; a longer run is looked at as far as this.</summary>
    const int MostHoles = 5_000;

    public override RuleInfo Info { get; } = new()
    {
        Id = "NC3025",
        Name = "hole-repeated",
        Severity = Severity.Warning,
        Title = "The same hole is drilled twice",
        Finds = "A place that the same cycle and tool drill a second time to the same depth within one uninterrupted run of holes; repeats that do not step on included.",
        AtTheMachine = "The tool goes into the finished hole again: time is lost, a drill may chatter, a tap or a reamer may spoil the hole. Often another place was meant.",
        Example = CycleExample.Program("""
            G98 G81 X12 Y20 Z-8 R2 F120
            X40
            X12
            ~^^
            """),
        Instead = CycleExample.Program("""
            G98 G81 X12 Y20 Z-8 R2 F120
            X40
            X60
            """),
        NotFound = "A hole drilled deeper the second time, and one that another cycle or tool works on: spotted, drilled, tapped. Holes behind the "
            + "first 5000 places of one run are compared with those only.",
        Source = "NISTIR 6556 §3.5.16: in absolute mode repeats act in place. That it is not meant is common practice.",
    };

    public override bool ReadsFile => true;

    public override void CheckFile(in FileContext file)
    {
        var seen = new PlaceSet();
        var (lastLine, previous) = (-1, default(HolePlace));
        for (var part = 0; part < file.Run.Results.Length; part++)
        {
            var holes = file.Run.Results[part].Holes;
            for (var i = 0; i < holes.Length; i++)
            {
                var place = holes.PlaceOf(i);
                if (!place.IsHop || place.Cycle != previous.Cycle || place.Tool != previous.Tool)
                    seen.Clear();
                var line = file.Run.LineOf(part, place.Line);
                var earlier = place.IsPlaced ? seen.Add(place, line) : -1;
                if (earlier >= 0 && line != lastLine)
                {
                    Report(file, line, earlier, holes[i].Hole);
                    lastLine = line;
                }
                previous = place;
            }
        }
    }

    void Report(in FileContext file, int line, int earlier, in Hole hole)
    {
        // A block of the cycle without a place is refused: cycle-word-missing.
        var words = file.Run.StepAt(line).Words;
        if (!words.Has('X') && !words.Has('Y') && !words.Has('Z'))
            return;
        var say = file.SayAt(line);
        var what = $"G{hole.Cycle} drills {say.Place(hole.X, hole.Y)} to {say.Level(hole.Bottom)}";
        if (earlier == line)
        {
            file.ReportBlock(this, line, what + " more than once: repeats step on only under G91.");
            return;
        }
        var (start, end) = StepContext.WordsOf(file.Run.BlockAt(earlier));
        var own = StepContext.WordsOf(file.Run.BlockAt(line));
        file.Report(this, line, own.Start, own.End, what + " a second time.", related: new RelatedPlace(earlier, start, end, "The first time was here."));
    }

    /// <summary>Places of holes with the lines they were drilled at; clearing costs nothing.</summary>
    sealed class PlaceSet
    {
        readonly record struct Entry(long X, long Y, long Z, int Line, int Run);

        Entry[] _entries = new Entry[64];
        int _count;
        int _run = 1;

        public void Clear() => (_run, _count) = (_run + 1, 0);

        /// <summary>The line that drilled this place and depth before, or −1 where none did.</summary>
        public int Add(in HolePlace place, int line)
        {
            if (_count == MostHoles)
                return -1;
            if (2 * _count >= _entries.Length)
                Grow();
            return Add(new Entry(place.X, place.Y, place.Bottom, line, _run));
        }

        int Add(in Entry entry)
        {
            var at = HashCode.Combine(entry.X, entry.Y) & (_entries.Length - 1);
            for (; _entries[at].Run == _run; at = (at + 1) & (_entries.Length - 1))
            {
                var (x, y, z) = (_entries[at].X, _entries[at].Y, _entries[at].Z);
                if (x == entry.X && y == entry.Y && z == entry.Z)
                    return _entries[at].Line;
            }
            _entries[at] = entry;
            _count++;
            return -1;
        }

        void Grow()
        {
            var old = _entries;
            _entries = new Entry[old.Length * 2];
            _count = 0;
            foreach (ref readonly var entry in old.AsSpan())
                if (entry.Run == _run)
                    Add(entry);
        }

    }
}
