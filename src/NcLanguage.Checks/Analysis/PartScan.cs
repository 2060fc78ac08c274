using System.Runtime.CompilerServices;
using System.Runtime.InteropServices;
using NcLanguage.Checks.Clearance;
using NcLanguage.Control.Execution;
using NcLanguage.Control.Moves;
using NcLanguage.Control.State;
using NcLanguage.Syntax.Lexing;

namespace NcLanguage.Checks.Analysis;

/// <summary>Runs the rules on blocks as they are carried out and gathers the results part by part. One object serves a whole run and keeps its storage; it is not
/// shared between threads.</summary>
/// <remarks>A part is begun, its steps are noted one by one, and it is ended; the blocks are numbered from 0 within it.</remarks>
public sealed partial class PartScan(Job job, Rule[] stepRules)
{
    /// <summary>The block moves, and it is not plain that it passes all obstacles far off: what the setup makes of a step's moves, which the control does not know.</summary>
    internal const StepEvents Near = (StepEvents)(1 << 30);

    /// <summary>The block goes on to a hole of its run above the R level.</summary>
    internal const StepEvents HopsAboveR = (StepEvents)(1 << 29);

    /// <summary>The block takes an axis to the end of the machine's travel, or it is not plain that it does not.</summary>
    internal const StepEvents NearTravel = (StepEvents)(1 << 28);

    /// <summary>The block cuts deeper below the top of the stock than the tool's flutes reach, wherever that is, or it is not plain that it does not.</summary>
    internal const StepEvents Deep = (StepEvents)(1 << 27);

    /// <summary>The block drills a hole that may reach out of the stock at its side.</summary>
    internal const StepEvents AtEdge = (StepEvents)(1 << 26);

    const uint RulesKept = 64;

    /// <summary>2³² by the golden ratio: numbers that lie close together are spread by it (Fibonacci hashing).</summary>
    const uint GoldenSpread = 2654435769;

    Step _step = null!;
    readonly List<Finding> _findings = [];
    readonly List<StockCut> _cuts = [];
    readonly List<StockArc> _arcs = [];
    readonly List<LowRapid> _lowRapids = [];
    readonly List<RoundCut> _rounds = [];
    readonly List<Plunge> _plunges = [];
    readonly ArcJoints _joints = new();
    readonly List<ToolTaken> _tools = [];
    readonly List<int> _untimed = [];
    readonly (StepEvents Events, Rule[]? Rules)[] _rulesBefore = new (StepEvents, Rule[]?)[RulesKept];
    HashSet<Rule>? _failed;
    ControlState _entry;
    readonly RowKept<Slot> _setsKept = new();
    readonly RowKept<float> _secondsKept = new();
    readonly RowKept<int> _untimedKept = new();
    Slot[] _sets = [];
    float[] _seconds = [];
    int _count;
    int _blocks;
    double _total;
    int _told;
    int _untimedMoves;
    readonly CoordinatesLog _coordinates = new();
    readonly TipBounds _bounds = new(job);

    public Job Job { get; } = job;

    /// <summary>A step to run blocks with.</summary>
    internal Step Step { get; } = new();

    /// <summary>Blocks run so far, for tests that count work.</summary>
    public int BlocksRun { get; private set; }

    /// <summary>One that does the same on another thread.</summary>
    internal PartScan ForAnotherHand() => new(Job, stepRules) { OnFinding = OnFinding };

    /// <summary>Counts what another hand has looked at.</summary>
    internal void Count(PartScan other) => BlocksRun += other.BlocksRun;

    /// <summary>What is done with a finding of a step.</summary>
    internal Action<Finding>? OnFinding { get; init; }

    /// <summary>Begins a part.</summary>
    /// <param name="mostSteps">The most blocks that it will hold.</param>
    internal void Begin(in ControlState entry, int mostSteps)
    {
        _entry = entry;
        if (_sets.Length < mostSteps)
            (_sets, _seconds) = (new Slot[mostSteps], new float[mostSteps]);
        _count = 0;
        _blocks = 0;
        _total = 0;
        _untimedMoves = 0;
        _failed = null;
        _coordinates.Begin(entry);
        _joints.Begin();
        _lastInRoom = -1;
        (_quiet, _feedShown) = (Nearness.NotAsked, double.NaN);
    }

    /// <summary>Notes a block that was carried out, and runs the rules on it.</summary>
    internal void Note(in Block block, Step step)
    {
        _step = step;
        BlocksRun++;
        _blocks++;
        ForgetNearness();
        var at = _count++;
        _sets[at] = step.Sets;
        _coordinates.Note(step, at);
        var events = step.Events;
        if ((events & StepEvents.Holes) != 0)
            events |= NoteHoles(at);
        if (Job.AsksOnlyHoles)
        {
            _seconds[at] = 0;
            return;
        }
        ShapingMoves.Note(step, at, Job.Setup, _cuts.Count, _rounds, _plunges);
        _joints.Note(step, at);
        if ((step.Events & StepEvents.Moves) != 0 && Job.HasStock)
            StockMoves.Note(step, at, Job, _cuts, _arcs, _lowRapids);
        NoteTime(at);
        if ((step.Events & StepEvents.ToolChange) != 0)
            _tools.Add(new ToolTaken(step.After.Tool, at));
        var mayBeNear = (step.Events & StepEvents.Moves) != 0 && (Job.Obstacles.IsEmpty || Nearness is not (Nearness.Free or Nearness.Lost));
        if (mayBeNear)
            events |= Near;
        if (!_bounds.AreNone && (step.Events & StepEvents.Moves) != 0)
            events |= _bounds.Take(step);
        var (rules, told) = (RulesFor(events), _told);
        if (rules.Length > 0)
            RunRules(rules, block, step, at);
        NoteQuiet(events, rules.Length, isSilent: told == _told);
    }

    /// <summary>Shows a step to the rules. One that throws is not shown the rest of the part; the others are.</summary>
    /// <remarks>Apart from <see cref="Note"/>, which would make room for what is shown at each block: most have nothing to show.</remarks>
    [MethodImpl(MethodImplOptions.NoInlining)]
    void RunRules(Rule[] rules, in Block block, Step step, int at)
    {
        var context = new StepContext(this, block, step, at);
        var next = 0;
        while (next < rules.Length)
        {
            try
            {
                for (; next < rules.Length; next++)
                    if (_failed is null || !_failed.Contains(rules[next]))
                        rules[next].CheckStep(context);
            }
            catch (Exception e) when (RuleFault.IsFault(e))
            {
                var rule = rules[next++];
                (_failed ??= []).Add(rule);
                Add(RuleFault.AtBlock(rule, at, StepContext.WordsOf(context.Block), e));
            }
        }
    }

    /// <summary>Passes over a line without a block.</summary>
    internal void NoteBlank()
    {
        (_sets[_count], _seconds[_count]) = (Slot.None, 0);
        _count++;
    }

    /// <summary>Ends the part.</summary>
    /// <param name="exit">The state behind it.</param>
    /// <param name="linesAhead">How many lines behind it its blocks looked at.</param>
    /// <param name="before">What came of the same blocks in the version before, where they were run: an edit far above leaves much of it as it was, and what is the same is kept once.</param>
    internal PartResult End(in ControlState exit, int linesAhead = 0, PartResult? before = null)
    {
        var all = Slot.None;
        ReadOnlySpan<Slot> sets = _sets.AsSpan(0, _count);
        ReadOnlySpan<float> seconds = _seconds.AsSpan(0, _count);
        foreach (var set in sets)
            all |= set;
        var cuts = CollectionsMarshal.AsSpan(_cuts);
        var result = new PartResult
        {
            Entry = _entry,
            Exit = exit,
            LinesAhead = linesAhead,
            Findings = Taken(_findings),
            Holes = _holes.Take(),
            Blocks = _blocks,
            Sets = before is not null && sets.SequenceEqual(before.Sets) ? before.Sets : _setsKept.Of(sets),
            AllSets = all,
            Coordinates = _coordinates.Take(out var used),
            CoordinatesUsed = used,
            Cuts = CutLog.Of(cuts),
            Questions = StockQuestions.Of(cuts, _lowRapids.Count > 0, Job),
            Arcs = Taken(_arcs),
            LowRapids = Taken(_lowRapids),
            Rounds = Taken(_rounds),
            Plunges = Taken(_plunges),
            TurnedArcs = Taken(_joints.Take(out var contours)),
            Contours = contours,
            Seconds = _total,
            UntimedMoves = _untimedMoves,
            StepSeconds = before is not null && seconds.SequenceEqual(before.StepSeconds) ? before.StepSeconds : _secondsKept.Of(seconds),
            UntimedSteps = _untimedKept.Of(CollectionsMarshal.AsSpan(_untimed)),
            Tools = Taken(_tools),
        };
        _cuts.Clear();
        _untimed.Clear();
        return result;
    }

    static T[] Taken<T>(List<T> list)
    {
        if (list.Count == 0)
            return [];
        T[] taken = [.. list];
        list.Clear();
        return taken;
    }

    [MethodImpl(MethodImplOptions.AggressiveInlining)]
    void NoteTime(int at)
    {
        // Summed by itself: beside a total of many years what a block takes would be lost.
        var (seconds, untimed) = (0.0, 0);
        foreach (ref readonly var move in _step.Moves.Items)
        {
            if (double.IsNaN(move.Seconds))
                untimed++;
            else
                seconds += move.Seconds;
        }
        NoteTime(at, seconds, untimed);
    }

    /// <param name="untimed">Moves of which it is not known how long they take.</param>
    void NoteTime(int at, double seconds, int untimed)
    {
        _total += seconds;
        _seconds[at] = (float)seconds;
        if (untimed == 0)
            return;
        _untimedMoves += untimed;
        _untimed.Add(at);
    }

    /// <summary>The rules that want to see a step with these events.</summary>
    Rule[] RulesFor(StepEvents events)
    {
        // Blocks of a few kinds follow each other: each finds its rules where those of its kind were found last.
        ref var before = ref _rulesBefore[(uint)events * GoldenSpread / (uint.MaxValue / RulesKept + 1)];
        if (before.Rules is null || before.Events != events)
            before = (events, Job.RulesFor(stepRules, events));
        return before.Rules!;
    }

    /// <summary>The coordinates that the places of the present step are meant in.</summary>
    internal WorkCoordinates Coordinates => _coordinates.Now;

    internal void Add(Finding finding)
    {
        _told++;
        if (OnFinding is null)
            _findings.Add(finding);
        else
            OnFinding(finding);
    }
}
