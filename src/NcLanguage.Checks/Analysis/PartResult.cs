using System.Runtime.CompilerServices;
using NcLanguage.Checks.Clearance;
using NcLanguage.Checks.Rules;
using NcLanguage.Control.Execution;
using NcLanguage.Control.Moves;
using NcLanguage.Control.State;
using NcLanguage.Machine.Geometry;
using NcLanguage.Syntax.Text;

namespace NcLanguage.Checks.Analysis;

/// <summary>A hole and the block that drilled it (counted from 0 within its part).</summary>
/// <param name="Traverse">Nearest approach of the traverse that reached it; farther than the setup's clearance counts as infinite.</param>
/// <param name="ToFrame">What to add to work coordinates to stand in the setup's frame, mm.</param>
/// <param name="Plane">The plane the cycle works in; X and Y are the hole's place in XY only.</param>
/// <param name="Return">G98 or G99 as in force in its block.</param>
/// <param name="CutsBefore">How many of its part's cuts were made before its block.</param>
public readonly record struct HoleResult(Hole Hole, int Line, Approach Traverse, Point3 ToFrame, WorkPlane Plane, ReturnLevel Return, int CutsBefore)
{
    /// <summary>The hole's place in the setup's frame at a level of the work coordinates, mm.</summary>
    public Point3 PlaceAt(double level) => new Point3(Hole.X, Hole.Y, level) + ToFrame;
}

/// <summary>A rapid in the setup's frame that goes below the top of the stock and over its footprint, and how many cuts of its part came before it.</summary>
/// <param name="AtR">It is a cycle's traverse that runs no higher than the R level.</param>
/// <param name="IsFed">It is a feed of a probe, or a chord of its arc: straight, whatever way rapids take.</param>
public readonly record struct LowRapid(Point3 From, Point3 To, Point3 ToFrame, int Tool, int Line, int CutsBefore, bool AtR, bool IsFed);

/// <summary>A cut in the setup's frame, for the question what still stands. A place that is not known makes all that stands not known.</summary>
/// <param name="Line">Its block, counted from 0 within its part.</param>
/// <param name="Move">Which of its block's moves it is.</param>
/// <param name="Arc">Its place in its part's arcs; −1 for a straight cut.</param>
/// <param name="Seconds">Time it takes; NaN where not known.</param>
/// <param name="IsFromBelow">It cuts on its way up under what stands above it, as a back boring cycle does.</param>
public record struct StockCut(Point3 From, Point3 To, int Tool, int Line, int Move, int Arc, float Seconds, bool IsFromBelow)
{
    public Point3 From { get; private set; } = From;

    public Point3 To { get; private set; } = To;

    public int Tool { get; private set; } = Tool;

    public int Line { get; private set; } = Line;

    public int Move { get; private set; } = Move;

    public int Arc { get; private set; } = Arc;

    public float Seconds { get; private set; } = Seconds;

    public bool IsFromBelow { get; private set; } = IsFromBelow;

    /// <summary>What stands for the cut before the first.</summary>
    internal static StockCut Before => new(default, default, 0, -1, 0, -1, 0, false);

    /// <summary>Becomes another cut, where it stands.</summary>
    [MethodImpl(MethodImplOptions.AggressiveInlining)]
    internal void Become(in Point3 from, in Point3 to, int tool, int line, int move, int arc, float seconds, bool isFromBelow)
    {
        From = from;
        To = to;
        (Tool, Line, Move, Arc, Seconds, IsFromBelow) = (tool, line, move, arc, seconds, isFromBelow);
    }

    /// <summary>Whether it goes the same way as another.</summary>
    public readonly bool GoesAs(in StockCut other) =>
        From == other.From && To == other.To && Tool == other.Tool && Arc == other.Arc && IsFromBelow == other.IsFromBelow;
}

/// <summary>What makes an arc of a cut: its centre in the setup's frame, and the plane, 17, 18 or 19.</summary>
public readonly record struct StockArc(Point3 Center, int FullTurns, byte Plane, bool Clockwise);

/// <summary>A tool change: the tool now in the spindle (0 none, −1 not known) and the block, counted from 0 within its part.</summary>
public readonly record struct ToolTaken(int Tool, int Line);

/// <summary>What running some blocks one after the other from one entry state gave: those of a chunk, where the run keeps to the order of the text, else a
/// stretch of the run. Immutable; blocks are counted from 0 within the part.</summary>
public sealed record PartResult
{
    /// <summary>How many lines behind a chunk were looked at, by a block whose move depends on what follows; the end of the text counts as one.</summary>
    public int LinesAhead { get; init; }

    public required ControlState Entry { get; init; }

    public required ControlState Exit { get; init; }

    /// <summary>The lines of its blocks in the whole text; null for those of a chunk.</summary>
    public int[]? Lines { get; init; }

    /// <summary>The name of the other file that its blocks stand in: its lines are then those of the call. Null in the program itself.</summary>
    public string? File { get; init; }

    /// <summary>Whether its blocks stand in another file.</summary>
    public bool IsElsewhere => File is not null;

    public required Finding[] Findings { get; init; }

    /// <summary>Its findings with the lines of the whole text.</summary>
    /// <param name="plain">The coordinates that go without saying.</param>
    internal Finding[] FindingsAt(int firstLine, string? plain) => PlacedFindings.Of(Findings, firstLine, plain, ref _placed);

    public required HoleLog Holes { get; init; }

    /// <summary>How many blocks ran; lines without one are not counted.</summary>
    public required int Blocks { get; init; }

    /// <summary>What each block set.</summary>
    public required Slot[] Sets { get; init; }

    /// <summary>All that the part set.</summary>
    public required Slot AllSets { get; init; }

    /// <summary>The coordinates that places of its blocks are meant in: those it begins with, and those of each block that changes them.</summary>
    internal CoordinatesFrom[] Coordinates { get; init; } = [];

    /// <summary>The work offset that it works under, unshifted; <see cref="CoordinatesLog.None"/>, <see cref="CoordinatesLog.Several"/>.</summary>
    internal int CoordinatesUsed { get; init; }

    /// <summary>The coordinates that places of a block (counted from 0 within the part) are meant in.</summary>
    public WorkCoordinates CoordinatesAt(int block)
    {
        var at = Coordinates.Length - 1;
        while (at > 0 && Coordinates[at].Block > block)
            at--;
        return Coordinates[at].Coordinates;
    }

    public required CutLog Cuts { get; init; }

    public required StockArc[] Arcs { get; init; }

    public required LowRapid[] LowRapids { get; init; }

    /// <summary>Arcs and helices that mills cut in the XY plane, those left out that lie between others and can be no piece of a turn.</summary>
    public required RoundCut[] Rounds { get; init; }

    /// <summary>Arcs of contours that seem to turn the wrong way or to have a wrong radius, as far as the part alone tells.</summary>
    public required TurnedArc[] TurnedArcs { get; init; }

    /// <summary>What is known of the contours that it begins and ends amid; null where it moves nothing.</summary>
    internal ContourEnds? Contours { get; init; }

    /// <summary>Feeds straight down that no cycle makes.</summary>
    public required Plunge[] Plunges { get; init; }

    /// <summary>Known seconds of its moves; moves whose time is not known are left out and counted.</summary>
    public required double Seconds { get; init; }

    public required int UntimedMoves { get; init; }

    /// <summary>Known seconds of each block's moves.</summary>
    public required float[] StepSeconds { get; init; }

    /// <summary>The blocks with moves whose time is not known, in order.</summary>
    public required int[] UntimedSteps { get; init; }

    /// <summary>The tools its blocks change to.</summary>
    public required ToolTaken[] Tools { get; init; }

    /// <summary>Runs some of its blocks again.</summary>
    /// <param name="state">The state before the first of them; then that behind the last.</param>
    /// <param name="from">The first of them.</param>
    /// <param name="to">The one behind the last.</param>
    /// <param name="firstLine">The line (0-based) of the part's first block, where its blocks stand one below the other.</param>
    /// <param name="ahead">What <paramref name="step"/> sees ahead.</param>
    internal void Replay(ref ControlState state, int from, int to, int firstLine, BlockExecutor executor, SourceText text, Step step, TextAhead ahead)
    {
        for (var at = from; at < to; at++)
        {
            ahead.Line = Lines is { } lines ? lines[at] : firstLine + at;
            executor.Run(text.BlockAmong(ahead.Line), ref state, step);
        }
    }

    /// <summary>The path of a cut that is an arc; an empty one of a straight cut.</summary>
    internal ArcPath PathOf(in StockCut cut)
    {
        if (cut.Arc < 0)
            return default;
        ref readonly var arc = ref Arcs[cut.Arc];
        return new ArcPath(cut.From, cut.To, arc.Center, arc.Clockwise, arc.Plane, arc.FullTurns);
    }

    /// <summary>The same blocks at other lines of the whole text: what was looked up for those lines is not known of these.</summary>
    internal PartResult AtLines(int[] lines)
    {
        var moved = this with { Lines = lines, Repeats = null, ContoursLookedAt = [] };
        (moved._placed, moved._comparison, moved.TimesCompared, moved.TimesContoursLookedAt) = (null, null, 0, 0);
        return moved;
    }

    /// <summary>Which of its holes its run has drilled before, as it was looked up last.</summary>
    internal PartRepeats? Repeats
    {
        get;
        set
        {
            field = value;
            TimesCompared++;
        }
    }

    /// <summary>Its blocks that drill without a place, counted from 0 within it; null where nobody has looked.</summary>
    internal int[]? HolesWithoutPlace { get; set; }

    /// <summary>The compensated contours that begin in it, as they were looked at last.</summary>
    internal ContourLook[] ContoursLookedAt
    {
        get;
        set
        {
            field = value;
            TimesContoursLookedAt++;
        }
    } = [];

    /// <summary>How often one of them was looked at, for tests that count work.</summary>
    public int TimesContoursLookedAt { get; private set; }

    /// <summary>How often its holes were compared with those before them, for tests that count work.</summary>
    public int TimesCompared { get; private set; }

    /// <summary>What its moves ask of the stock.</summary>
    internal StockQuestions Questions { get; init; } = StockQuestions.None;

    PlacedFindings? _placed;
    HoleComparison? _comparison;
    double _work = double.NaN;
    ContourEnds? _turnsRightBehind;

    /// <summary>Whether an arc in it, or where it goes on from the part before it, may seem to turn the wrong way or to have a wrong radius. Asked of every part behind each key, so that it remembers the contours
    /// behind which none does: theirs and not the part, for a part that remembers the one before it would keep all those before it, of a version long past.</summary>
    /// <param name="before">The part that ran before it; null for the first.</param>
    internal bool MayTurnWrong(PartResult? before)
    {
        var behind = before?.Contours;
        if (behind is not null && ReferenceEquals(behind, _turnsRightBehind))
            return false;
        var may = Analysis.TurnedArcs.MayBeIn(this, before);
        _turnsRightBehind = may ? null : behind;
        return may;
    }

    /// <summary>How much work its cuts are in a height field over the stock, for what is asked at every keystroke. Worked out once.</summary>
    internal double WorkOver(Job job, Box3 stock) => double.IsNaN(_work) ? _work = StockWork.Of(this, job, stock) : _work;

    /// <summary>How its holes compare with those of the same part under another reading. The last comparison is kept.</summary>
    internal HoleComparison CompareTo(PartResult other)
    {
        if (_comparison is not { } known || !ReferenceEquals(known.Other, other))
            _comparison = known = HoleComparison.Of(this, other);
        return known;
    }
}
