using System.Runtime.InteropServices;
using NcLanguage.Checks.Analysis;
using NcLanguage.Control.State;
using NcLanguage.Machine.Setups;

namespace NcLanguage.Checks.Drawing;

/// <summary>The places where a program makes holes, and what each tool does there: in cycles, by feeds straight down, by milling full circles.</summary>
sealed class WorkedPlaces
{
    /// <summary>Places nearer than this in X and Y are one, mm: the finest tolerance of ISO 2768-1 for lengths without one of their own (class f, 0.5 to 6 mm, from
    /// memory). Lists and programs in inch are rounded to a thousandth of an inch, 0.0127 mm to each side.</summary>
    public const double SamePlace = 0.05;

    const double Rounding = 1e-9;

    /// <summary>Side of the cells in which places are looked up, mm: so many times what counts as one place that most lie inside one cell.</summary>
    const double CellSize = 8 * SamePlace;

    const double Reach = SamePlace + Rounding;

    readonly Dictionary<(long, long), WorkedPlace> _cells = [];
    readonly List<WorkedPlace> _places = [];
    readonly CircleFinder _circles;
    (Tool? Tool, double Length) _end;
    int _number;

    WorkedPlaces() => _circles = new CircleFinder(work => Add(work.X, work.Y, work.Work));

    /// <summary>In the order in which they were first worked at.</summary>
    public IReadOnlyList<WorkedPlace> All => _places;

    /// <summary>False where the program drills at places that are not known: nothing can be called missing then.</summary>
    public bool AreAllKnown { get; private set; } = true;

    public static WorkedPlaces Of(ProgramRun run)
    {
        var places = new WorkedPlaces();
        for (var part = 0; part < run.Results.Length; part++)
            places.Note(run, part);
        places._circles.End();
        return places;
    }

    /// <summary>The nearest place at these coordinates of the setup's frame, mm; null where nothing is done there.</summary>
    public WorkedPlace? At(double x, double y)
    {
        var (firstColumn, firstRow) = CellOf(x - Reach, y - Reach);
        var (lastColumn, lastRow) = CellOf(x + Reach, y + Reach);
        var (nearest, least) = ((WorkedPlace?)null, double.PositiveInfinity);
        for (var column = firstColumn; column <= lastColumn; column++)
            for (var row = firstRow; row <= lastRow; row++)
                if (_cells.TryGetValue((column, row), out var first))
                    for (var place = first; place is not null; place = place.NextInCell)
                        if (Math.Abs(place.X - x) <= Reach && Math.Abs(place.Y - y) <= Reach && double.Hypot(place.X - x, place.Y - y) is var off && off < least)
                            (nearest, least) = (place, off);
        return nearest;
    }

    /// <summary>Whether a place is that of a hole in the drawing.</summary>
    public static bool IsAt(DrawingHole hole, WorkedPlace place) =>
        Math.Abs(hole.X - place.X) <= Reach && Math.Abs(hole.Y - place.Y) <= Reach;

    /// <summary>What a part did, in the order of its blocks: a block has holes, or a plunge, or arcs.</summary>
    void Note(ProgramRun run, int part)
    {
        var result = run.Results[part];
        var (hole, plunge, round) = (0, 0, 0);
        while (hole < result.Holes.Length || plunge < result.Plunges.Length || round < result.Rounds.Length)
        {
            var atHole = hole < result.Holes.Length ? result.Holes.LineOf(hole) : int.MaxValue;
            var atPlunge = plunge < result.Plunges.Length ? result.Plunges[plunge].Line : int.MaxValue;
            var atRound = round < result.Rounds.Length ? result.Rounds[round].Line : int.MaxValue;
            // What is milled before stands before in the order of the run; no helix goes on behind a hole.
            if (Math.Min(atHole, atPlunge) <= atRound)
                _circles.End();
            if (atHole <= atPlunge && atHole <= atRound)
                NoteHole(result.Holes[hole++], run.LineOf(part, atHole), run.Job, result.CoordinatesAt(atHole));
            else if (atPlunge <= atRound)
                NotePlunge(result.Plunges[plunge++], run.LineOf(part, atPlunge), result.CoordinatesAt(atPlunge));
            else
                _circles.Note(result.Rounds[round++], run.LineOf(part, atRound), result.CoordinatesAt(atRound));
        }
    }

    void NoteHole(in HoleResult result, int line, Job job, WorkCoordinates coordinates)
    {
        _number++;
        var (x, y) = (result.Hole.X + result.ToFrame.X, result.Hole.Y + result.ToFrame.Y);
        if (result.Plane != WorkPlane.XY || double.IsNaN(x + y))
        {
            AreAllKnown = false;
            return;
        }
        var hole = result.Hole;
        var tool = job.Setup.FindTool(hole.Tool);
        var tip = hole.Bottom + result.ToFrame.Z;
        Add(x, y, new PlaceWork(
            PlaceWork.KindOf(tool, hole.Cycle), tool, hole.Tool, tool?.Diameter ?? double.NaN, tip, tip + EndLengthOf(tool), result.ToFrame,
            line, _number, hole.Cycle, hole.RLevel + result.ToFrame.Z, double.NaN)
        {
            Coordinates = coordinates,
            // NISTIR 6556 §3.5.16.5: the spindle turns clockwise on the way into a hole of G84. G74 as its mirror image is common practice.
            IsLeftHand = hole.Cycle switch { 84 => false, 74 => true, _ => null },
            // NISTIR 6556 §3.5.16.5: speed = feed · threads per length.
            FeedPerTurn = hole.Cycle is 84 or 74 && tool?.Kind is null or ToolKind.Tap && hole.Speed > 0 ? hole.ProgrammedFeed / hole.Speed : double.NaN,
        });
    }

    /// <summary>Most holes in a row have one tool.</summary>
    double EndLengthOf(Tool? tool)
    {
        if (!ReferenceEquals(tool, _end.Tool))
            _end = (tool, PlaceWork.EndLength(tool));
        return _end.Length;
    }

    void NotePlunge(in Plunge plunge, int line, WorkCoordinates coordinates)
    {
        var tool = plunge.Tool;
        var kind = PlaceWork.KindOf(tool, 0);
        if (kind == WorkKind.Other || tool.Kind == ToolKindOfThreads)
            return;
        if (double.IsNaN(plunge.To.X + plunge.To.Y))
        {
            AreAllKnown &= kind == WorkKind.Plunge;
            return;
        }
        Add(plunge.To.X, plunge.To.Y, new PlaceWork(
            kind, tool, tool.Number, tool.Diameter ?? double.NaN, plunge.To.Z, plunge.To.Z + EndLengthOf(tool), plunge.ToFrame, line, 0, 0, double.NaN, double.NaN)
        {
            Coordinates = coordinates,
        });
    }

    /// <summary>A thread mill that goes straight down only takes its place.</summary>
    const ToolKind ToolKindOfThreads = ToolKind.ThreadMill;

    void Add(double x, double y, in PlaceWork work)
    {
        var place = At(x, y);
        if (place is null)
        {
            place = new WorkedPlace(x, y);
            _places.Add(place);
            Put(place);
        }
        place.Works.Add(work);
    }

    /// <summary>Behind those of its cell: of two that are as near as each other the one that was worked at first is found.</summary>
    void Put(WorkedPlace place)
    {
        ref var first = ref CollectionsMarshal.GetValueRefOrAddDefault(_cells, CellOf(place.X, place.Y), out _);
        if (first is null)
        {
            first = place;
            return;
        }
        var last = first;
        while (last.NextInCell is { } next)
            last = next;
        last.NextInCell = place;
    }

    /// <summary>The farthest cell: what lies beyond shares it. Farther ones could not be counted up to, a loop over them would not end.</summary>
    const double Farthest = 1e15;

    static (long, long) CellOf(double x, double y) => (CellOf(x), CellOf(y));

    static long CellOf(double at) => (long)Math.Floor(Math.Clamp(at / CellSize, -Farthest, Farthest));
}
