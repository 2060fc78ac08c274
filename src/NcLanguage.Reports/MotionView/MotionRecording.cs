using System.Text;
using NcLanguage.Checks;
using NcLanguage.Checks.Analysis;
using NcLanguage.Checks.Clearance;
using NcLanguage.Control.Moves;
using NcLanguage.Machine.Geometry;
using NcLanguage.Reports.Trace;
using NcLanguage.Syntax.Lexing;
using NcLanguage.Syntax.Text;

namespace NcLanguage.Reports.MotionView;

/// <summary>One executed block.</summary>
/// <param name="Line">From 0.</param>
/// <param name="File">Index in <see cref="MotionRecording.Files"/> of the file it stands in; 0 is the program's own.</param>
/// <param name="FirstMove">Index of its first move; its moves end where those of the next step begin.</param>
/// <param name="State">Index in <see cref="MotionRecording.States"/> of what is in force behind it.</param>
/// <param name="Shift">Index in <see cref="MotionRecording.Shifts"/> of what leads from its work coordinates to the setup's frame.</param>
/// <param name="Position">Where the tool tip stands behind it, in work coordinates, mm.</param>
public readonly record struct RecordedStep(int Line, int File, string Text, int FirstMove, int State, int Shift, Point3 Position);

/// <summary>One move, in work coordinates, with the least distance to the obstacles as the trace tells it.</summary>
/// <param name="Step">Index of its step.</param>
/// <param name="Clearance">Least distance, mm; 0 or less is contact; NaN where not known or nothing is to be kept clear of.</param>
/// <param name="Obstacle">Index in the job's obstacles; −1 for none.</param>
public readonly record struct RecordedMove(Move Move, int Step, double Clearance, int Obstacle);

/// <summary>A place where the tool comes nearest to an obstacle, or meets it, or meets stock that still stands.</summary>
/// <param name="Move">Index of the move; −1 where the run is longer than what is kept, and it is not.</param>
/// <param name="Line">From 0.</param>
/// <param name="File">Index in <see cref="MotionRecording.Files"/> of the file that the line stands in.</param>
/// <param name="Obstacle">Index in the job's obstacles; −1 for the stock.</param>
/// <param name="Tip">Where the tip then is, in the setup's frame, mm.</param>
/// <param name="IsToolKnown">False where the tool's diameter is not known: the distance is then that of its bare axis.</param>
public readonly record struct RecordedApproach(int Move, int Line, int File, int Obstacle, double Distance, Point3 Tip, ToolPart Part, bool IsToolKnown);

/// <summary>The run of a program as a picture needs it: made in one pass, with the numbers of the trace. Bounded, however long the run.</summary>
public sealed class MotionRecording
{
    /// <summary>Moves that are kept; a run goes on behind them, and says so. What the tool meets or comes near to is noted there too.</summary>
    public const int MostMovesByDefault = 250_000;

    /// <summary>Cells that what is left of the stock is drawn with, about.</summary>
    const int StockCells = 40_000;

    /// <summary>Contacts that are kept.</summary>
    public const int MostContacts = 500;

    readonly List<RecordedStep> _steps = [];
    readonly List<RecordedMove> _moves = [];
    readonly List<string> _files = [""];
    readonly List<MotionState> _states = [];
    readonly Dictionary<MotionState, int> _stateIndices = [];
    readonly List<Point3> _shifts = [];
    WorkCoordinates? _coordinates;
    readonly List<RecordedApproach> _contacts = [];
    readonly List<(int Step, int LastMove)> _drilled = [];
    readonly RecordedApproach?[] _closest;
    readonly int _mostMoves;

    MotionRecording(string path, Job job, LengthText lengths, int mostMoves)
    {
        (Path, Job, Lengths, _mostMoves) = (path, job, lengths, mostMoves);
        _closest = new RecordedApproach?[job.Obstacles.Length];
    }

    public string Path { get; }

    public Job Job { get; }

    /// <summary>Lengths in words: in the unit that the program ends in, as in the trace.</summary>
    public LengthText Lengths { get; }

    public IReadOnlyList<RecordedStep> Steps => _steps;

    public IReadOnlyList<RecordedMove> Moves => _moves;

    /// <summary>Names of the files that blocks stand in; the first, empty, is the program itself.</summary>
    public IReadOnlyList<string> Files => _files;

    /// <summary>The states that occur, each once.</summary>
    public IReadOnlyList<MotionState> States => _states;

    /// <summary>What leads from work coordinates to the setup's frame, mm; NaN where that is not known.</summary>
    public IReadOnlyList<Point3> Shifts => _shifts;

    /// <summary>The first contacts of the run, in its order: of each block the deepest with each obstacle.</summary>
    public IReadOnlyList<RecordedApproach> Contacts => _contacts;

    /// <summary>How many contacts there are, those included that are not kept.</summary>
    public int ContactCount { get; private set; }

    /// <summary>The nearest place to each obstacle that is not met, nearest first.</summary>
    public IReadOnlyList<RecordedApproach> Closest { get; private set; } = [];

    /// <summary>All holes of the run, numbered as <c>holes</c> does.</summary>
    public required HoleTable Holes { get; init; }

    /// <summary>The holes of the moves that are kept: the first of them.</summary>
    public IEnumerable<HoleRow> KeptHoles => Holes.Take(_drilled.Count);

    /// <summary>Of each hole that is kept, in the order of <see cref="Holes"/>: its step, and its last move, which is −1 before the first of all where the hole has none.</summary>
    public IReadOnlyList<(int Step, int LastMove)> Drilled => _drilled;

    /// <summary>What is left of the stock at the end of the run; null where the setup gives no stock.</summary>
    public required StockLeft? Left { get; init; }

    /// <summary>What the whole run comes to, the part included that is not kept.</summary>
    public TraceTotals Totals { get; private set; } = new();

    /// <summary>Moves of the whole run.</summary>
    public int MoveCount { get; private set; }

    /// <summary>True where the run is longer than what is kept.</summary>
    public bool IsCut { get; private set; }

    /// <param name="path">The program's path, for titles.</param>
    /// <exception cref="OperationCanceledException">The token was cancelled.</exception>
    public static MotionRecording Create(string path, SourceText text, Job job, CancellationToken cancel, int mostMoves = MostMovesByDefault)
    {
        ArgumentNullException.ThrowIfNull(job);
        var run = ProgramRun.Create(text, job, [], [], cancel);
        var recording = new MotionRecording(path, job, new LengthText(run.Units), mostMoves) { Holes = HoleTable.Of(run), Left = StockLeft.Of(run, StockCells, cancel) };
        recording.Totals = TraceRun.Run(text, job, recording.Add, cancel);
        recording.NoteStock(StockContact.Of(run, cancel));
        recording.Closest =
        [
            .. recording._closest
                .Where(approach => approach is { Distance: var distance } && !(distance <= Sweep.ClearanceTolerance))
                .Select(approach => approach!.Value).OrderBy(approach => approach.Distance),
        ];
        return recording;
    }

    void Add(in Block block, in TracedStep step)
    {
        MoveCount += step.Step.Moves.Count;
        // What comes behind the first step that is left out is left out too.
        if (IsCut || _steps.Count >= _mostMoves || _moves.Count + step.Step.Moves.Count > _mostMoves)
        {
            IsCut = true;
            NoteObstacles(step, -1);
            return;
        }
        var text = Encoding.UTF8.GetString(block.Line).Trim();
        _coordinates = _coordinates?.In(step.Step.After) ?? WorkCoordinates.Of(step.Step.After);
        _steps.Add(new RecordedStep(
            step.Line, FileOf(step.File), text, _moves.Count, StateOf(MotionState.Of(step.Step.After, _coordinates)), ShiftOf(step.Step.ToFrame), step.Step.After.Position));
        var holes = step.Step.Holes;
        for (var i = 0; i < holes.Count; i++)
            _drilled.Add((_steps.Count - 1, _moves.Count - 1 + (i + 1 < holes.Count ? holes[i + 1].FirstMove : step.Step.Moves.Count)));
        var firstMove = _moves.Count;
        for (var i = 0; i < step.Step.Moves.Count; i++)
        {
            var approach = step.ApproachOf(i);
            _moves.Add(new RecordedMove(step.Step.Moves[i], _steps.Count - 1, approach?.Distance ?? double.NaN, approach?.ObstacleIndex ?? -1));
        }
        NoteObstacles(step, firstMove);
    }

    /// <summary>Notes the nearest obstacle of each move of a step, and of the others those that it meets too or comes nearer to than any move before.</summary>
    /// <param name="firstMove">Index of the step's first move; −1 where its moves are not kept.</param>
    void NoteObstacles(in TracedStep step, int firstMove)
    {
        var (firstContact, line, file) = (_contacts.Count, step.Line, FileOf(step.File));
        for (var move = 0; move < step.Step.Moves.Count; move++)
        {
            if (step.ApproachOf(move) is not { ObstacleIndex: >= 0 } nearest)
                continue;
            for (var i = 0; i < _closest.Length; i++)
            {
                var approach = i == nearest.ObstacleIndex ? nearest : step.ApproachOf(move, i, Math.Max(_closest[i]?.Distance ?? double.PositiveInfinity, Sweep.ClearanceTolerance));
                if (approach.ObstacleIndex == i)
                    Note(new RecordedApproach(firstMove < 0 ? -1 : firstMove + move, line, file, i, approach.Distance, approach.Tip, approach.Part, step.IsToolKnown), approach.IsContact, firstContact);
            }
        }
    }

    /// <summary>Notes what meets stock, at the moves that do.</summary>
    void NoteStock(IReadOnlyList<StockContact> contacts)
    {
        ContactCount += contacts.Count;
        var moves = contacts.Select(contact => contact.Line).Distinct().ToDictionary(line => line, _ => new Queue<int>());
        if (moves.Count == 0)
            return;
        for (var i = 0; i < _moves.Count; i++)
            if (moves.TryGetValue(_steps[_moves[i].Step].Line, out var ofLine))
                ofLine.Enqueue(i);
        foreach (var contact in contacts)
        {
            // Those of a line are in the order of the run, as the contacts are; the move of a contact may not be kept.
            var ofLine = moves[contact.Line];
            while (ofLine.TryPeek(out var move) && !IsOf(contact, _moves[move]))
                ofLine.Dequeue();
            if (_contacts.Count < MostContacts)
                _contacts.Add(new RecordedApproach(
                    ofLine.TryPeek(out var met) ? met : -1, contact.Line, ofLine.Count > 0 ? _steps[_moves[met].Step].File : 0, -1, -contact.Depth, contact.Tip, contact.Part, true));
        }
        // Behind those of moves that are kept come the others.
        _contacts.Sort((a, b) => (a.Move < 0 ? int.MaxValue : a.Move).CompareTo(b.Move < 0 ? int.MaxValue : b.Move));
    }

    bool IsOf(in StockContact contact, in RecordedMove move)
    {
        var step = _steps[move.Step];
        var shift = _shifts[step.Shift];
        return move.Move.IsMotion && move.Move.From + shift == contact.From && move.Move.To + shift == contact.To;
    }

    void Note(in RecordedApproach approach, bool isContact, int firstContact)
    {
        ref var closest = ref _closest[approach.Obstacle];
        if (closest is not { } before || approach.Distance < before.Distance)
            closest = approach;
        if (!isContact)
            return;
        for (var i = firstContact; i < _contacts.Count; i++)
        {
            if (_contacts[i].Obstacle != approach.Obstacle)
                continue;
            if (approach.Distance < _contacts[i].Distance)
                _contacts[i] = approach;
            return;
        }
        ContactCount++;
        if (_contacts.Count < MostContacts)
            _contacts.Add(approach);
    }

    int FileOf(string? file)
    {
        if (file is null)
            return 0;
        var index = _files.IndexOf(file);
        if (index < 0)
            _files.Add(file);
        return index < 0 ? _files.Count - 1 : index;
    }

    int StateOf(in MotionState state)
    {
        if (_stateIndices.TryGetValue(state, out var index))
            return index;
        _states.Add(state);
        _stateIndices.Add(state, _states.Count - 1);
        return _states.Count - 1;
    }

    // Shifts change seldom; a program that goes to and fro between a few finds them near the end.
    int ShiftOf(Point3 shift)
    {
        for (var i = _shifts.Count - 1; i >= Math.Max(0, _shifts.Count - 16); i--)
            if (_shifts[i].Equals(shift))
                return i;
        _shifts.Add(shift);
        return _shifts.Count - 1;
    }
}
