using System.Collections.Concurrent;
using NcLanguage.Checks.Clearance;
using NcLanguage.Control.Execution;
using NcLanguage.Control.Flow;
using NcLanguage.Control.Moves;
using NcLanguage.Control.State;
using NcLanguage.Machine.Geometry;
using NcLanguage.Machine.Profiles;
using NcLanguage.Machine.Setups;

namespace NcLanguage.Checks.Analysis;

/// <summary>One machine, one setup and one way of reading, made ready for running blocks: shared by all blocks of a run.</summary>
public sealed class Job
{
    readonly Obstacle[] _obstacles;
    readonly Obstacle[] _supports;
    readonly Solid[] _obstacleSolids;
    readonly Solid[] _supportSolids;
    readonly Dictionary<int, ToolShape> _shapes = [];
    readonly Dictionary<int, ToolShape> _shapesWithin = [];
    readonly Dictionary<int, EndForm> _ends = [];
    readonly ConcurrentDictionary<(Rule[] Rules, StepEvents Events), Rule[]> _interested = new();
    readonly bool _areRapidsKnown;
    readonly Box3 _stock;

    /// <param name="programs">Where called programs are found that a program does not hold; null where nowhere.</param>
    /// <param name="withTwoHands">Whether a large text may be run with two threads.</param>
    /// <param name="mostBlocks">Blocks that a run is followed for at most, where it leaves the order of the text.</param>
    /// <param name="once">Whether no other version of the text will follow.</param>
    public Job(MachineProfile machine, Setup setup, bool skipBlocks = false, ICalledPrograms? programs = null, int mostBlocks = AnalysisOptions.MostBlocksByDefault,
        bool withTwoHands = false, bool once = false)
    {
        Programs = programs;
        MostBlocks = mostBlocks;
        WithTwoHands = withTwoHands;
        Once = once;
        Executor = new BlockExecutor(machine, setup, skipBlocks);
        (HasStock, _stock) = (setup.Stock is not null, setup.Stock.GetValueOrDefault());
        _obstacles = [.. setup.Obstacles];
        _supports = [.. setup.Supports];
        _obstacleSolids = Solid.Of(_obstacles, []).ToArray();
        _supportSolids = Solid.Of(_supports, []).ToArray();
        // Without its rates the path of a rapid on which each axis goes at its own is not known.
        _areRapidsKnown = Readings.RapidPath != RapidPathReading.PerAxis || (machine.Rapid is { X: > 0, Y: > 0, Z: > 0 } rates && double.IsFinite(rates.X + rates.Y + rates.Z));
        foreach (var tool in setup.Tools)
        {
            _shapes[tool.Number] = ToolShape.From(tool);
            _shapesWithin[tool.Number] = ToolShape.Within(tool);
            _ends[tool.Number] = EndForm.Of(tool);
            if (tool.Diameter is { } diameter && !(diameter >= SmallestDiameter))
                SmallestDiameter = diameter;
        }
    }

    public BlockExecutor Executor { get; }

    /// <summary>Where called programs are found that a program does not hold; null where nowhere.</summary>
    public ICalledPrograms? Programs { get; }

    /// <summary>Blocks that a run is followed for at most, where it leaves the order of the text.</summary>
    public int MostBlocks { get; }

    /// <summary>Whether a large text may be run with two threads.</summary>
    public bool WithTwoHands { get; }

    /// <summary>Whether no other version of the text will follow, so that nothing is kept for one.</summary>
    public bool Once { get; }

    /// <summary>Whether it is told where a control that reads otherwise does something else: nobody has chosen a machine, or it is asked for.</summary>
    public bool TellsOtherReadings { get; init; }

    /// <summary>Whether nothing is asked of its run but the holes and the states between blocks: cuts, times and the like are then not gathered, and no rule is run.</summary>
    public bool AsksOnlyHoles { get; init; }

    public MachineProfile Machine => Executor.Machine;

    public Setup Setup => Executor.Setup;

    public Readings Readings => Executor.Machine.Readings;

    /// <summary>Whether the setup gives a stock.</summary>
    public bool HasStock { get; }

    /// <summary>The stock, mm, where the setup gives one; what is asked at each block need not copy it.</summary>
    public ref readonly Box3 Stock => ref _stock;

    /// <summary>Whether a work offset is another than the one in which the setup is meant.</summary>
    internal bool IsOutsideFrame(int workOffset) => workOffset > 0 && Setup.IsPresent && Setup.Frame != Setup.UnknownFrame && workOffset != Setup.Frame;

    public ReadOnlySpan<Obstacle> Obstacles => _obstacles;

    public ReadOnlySpan<Obstacle> Supports => _supports;

    /// <summary>Those of some rules that want to see a step with these events. Asked of each rule once for each combination that occurs, not anew at each key.</summary>
    internal Rule[] RulesFor(Rule[] rules, StepEvents events) => _interested.GetOrAdd((rules, events), RulesThatSee, this);

    static Rule[] RulesThatSee((Rule[] Rules, StepEvents Events) asked, Job job) =>
        [.. asked.Rules.Where(rule => rule.Concerns(job) && (rule.InterestIn(job) & (asked.Events | StepEvents.Words)) != 0)];

    /// <summary>The shape of a tool; the bare axis where the setup does not describe it, so that a contact it shows is certain.</summary>
    public ToolShape ShapeOf(int tool) => _shapes.GetValueOrDefault(tool, ToolShape.AxisOnly);

    /// <summary>What a tool certainly fills: for what it may come close to on purpose.</summary>
    public ToolShape ShapeWithin(int tool) => _shapesWithin.GetValueOrDefault(tool, ToolShape.AxisOnly);

    /// <summary>The least diameter of the setup's tools, mm; NaN where none is given.</summary>
    public double SmallestDiameter { get; } = double.NaN;

    /// <summary>The lower end of a tool; of no radius where the setup does not give its diameter.</summary>
    public EndForm EndOf(int tool) => _ends.GetValueOrDefault(tool);

    /// <summary>The nearest approach of a move to the obstacles. Distances beyond <paramref name="within"/> mm may come back as
    /// infinite; NaN where the move's place is not known.</summary>
    public Approach ApproachOf(in Move move, in Point3 toFrame, int tool, double within) => ApproachOf(move, toFrame, ShapeOf(tool), within, _obstacleSolids);

    /// <summary>Whether the straight moves of a step stay all together in a room where their tool was found to keep clear.</summary>
    internal bool AreFree(ReadOnlySpan<Move> moves, in Point3 toFrame, in FreeRoom room) =>
        _areRapidsKnown && FreeRoom.TryBound(moves, toFrame, out var low, out var high) && room.Holds(low, high);

    /// <summary>Whether a move stays where nothing stands within the setup's clearance, as far as that is plain without a search.</summary>
    /// <param name="room">Where this tool was found to keep clear; where the move is clear and left it, the room about the move.</param>
    internal bool IsFree(in Move move, in Point3 toFrame, int tool, ref FreeRoom room)
    {
        if (!move.IsMotion || (move.Kind == MoveKind.Rapid && !_areRapidsKnown))
            return false;
        if (room.Holds(move, toFrame))
            return true;
        var end = move.To + toFrame;
        if (!double.IsFinite(end.X + end.Y + end.Z) || !FreeRoom.TryBound(move, toFrame, out var low, out var high))
            return false;
        var found = FreeRoom.About(low, high, ShapeOf(tool).GreatestRadius, Setup.Clearance, _obstacleSolids);
        if (!found.Holds(low, high))
            return false;
        room = found;
        return true;
    }

    /// <summary>The nearest approach of a move to one of the obstacles, by its place in <see cref="Obstacles"/>, which the approach names too.</summary>
    public Approach ApproachOf(in Move move, in Point3 toFrame, int tool, double within, int obstacle) =>
        ApproachToOne(_obstacleSolids, obstacle, move, toFrame, ShapeOf(tool), within);

    /// <summary>The nearest approach of a move to what the stock rests on, of what the tool certainly fills (<see cref="ShapeWithin"/>).</summary>
    public Approach SupportApproachOf(in Move move, in Point3 toFrame, int tool, double within) => ApproachOf(move, toFrame, ShapeWithin(tool), within, _supportSolids);

    /// <summary>The same to one of the supports, by its place in <see cref="Supports"/>.</summary>
    public Approach SupportApproachOf(in Move move, in Point3 toFrame, int tool, double within, int support) =>
        ApproachToOne(_supportSolids, support, move, toFrame, ShapeWithin(tool), within);

    Approach ApproachToOne(Solid[] all, int index, in Move move, in Point3 toFrame, ToolShape shape, double within)
    {
        var approach = ApproachOf(move, toFrame, shape, within, all.AsSpan(index, 1));
        return approach.ObstacleIndex < 0 ? approach : approach with { ObstacleIndex = index };
    }

    Approach ApproachOf(in Move move, in Point3 toFrame, ToolShape shape, double within, ReadOnlySpan<Solid> solids)
    {
        if (solids.Length == 0 || !move.IsMotion)
            return Approach.None;
        var from = move.From + toFrame;
        var to = move.To + toFrame;
        if (move.Kind == MoveKind.Arc)
        {
            var searched = 0;
            return Sweep.ArcAmong(from, to, move.Center + toFrame, move.Clockwise, PlaneNumber(move.Plane), move.FullTurns, shape, solids, within, ref searched);
        }
        return move.Kind == MoveKind.Rapid ? Rapid(from, to, shape, solids, within) : Line(from, to, shape, solids, within);
    }

    /// <summary>Length of a move's path, mm: the bent one where each axis goes at its own rate. 0 for what does not travel.</summary>
    public double LengthOf(in Move move) =>
        !move.IsMotion ? 0
        : move.Kind == MoveKind.Rapid && Readings.RapidPath == RapidPathReading.PerAxis ? BentRapid.Length(move.From, move.To, Machine.Rapid)
        : move.Length;

    /// <summary>The nearest approach to the obstacles of a rapid that is not in the program; places in the setup's frame, mm.</summary>
    public Approach ApproachOfRapid(in Point3 from, in Point3 to, int tool, double within) => Rapid(from, to, ShapeOf(tool), _obstacleSolids, within);

    Approach Rapid(in Point3 from, in Point3 to, ToolShape shape, ReadOnlySpan<Solid> solids, double within) =>
        Readings.RapidPath == RapidPathReading.PerAxis ? Bent(from, to, shape, solids, within) : Line(from, to, shape, solids, within);

    static Approach Line(in Point3 from, in Point3 to, ToolShape shape, ReadOnlySpan<Solid> solids, double within)
    {
        var searched = 0;
        return Sweep.LineAmong(from, to, shape, solids, within, ref searched);
    }

    Approach Bent(in Point3 from, in Point3 to, ToolShape shape, ReadOnlySpan<Solid> solids, double within)
    {
        Span<Point3> path = stackalloc Point3[4];
        var points = BentRapid.Points(from, to, Machine.Rapid, path);
        if (points == 0)
            return Approach.Unknown;
        var nearest = Approach.None;
        for (var i = 1; i < points; i++)
        {
            var approach = Line(path[i - 1], path[i], shape, solids, within);
            if (double.IsNaN(approach.Distance) || approach.Distance < nearest.Distance)
                nearest = approach;
        }
        return nearest;
    }

    /// <summary>The code of a plane: 17, 18 or 19.</summary>
    internal static int PlaneNumber(WorkPlane plane) => plane switch { WorkPlane.ZX => 18, WorkPlane.YZ => 19, _ => 17 };
}
