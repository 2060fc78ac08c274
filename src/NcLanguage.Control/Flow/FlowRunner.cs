using NcLanguage.Control.Execution;
using NcLanguage.Control.State;
using NcLanguage.Syntax.Lexing;

namespace NcLanguage.Control.Flow;

/// <summary>How a run has ended.</summary>
public enum FlowEnd : byte
{
    /// <summary>It has not yet.</summary>
    None,

    /// <summary>By M2, M30 or M99.</summary>
    Ended,

    /// <summary>Behind the last block of the program.</summary>
    OffTheEnd,

    /// <summary>The control would stop with an alarm: a jump or call that leads nowhere, or one that the program gives.</summary>
    Stopped,

    /// <summary>In a loop that never ends.</summary>
    Endless,

    /// <summary>More blocks than are followed.</summary>
    TooLong,
}

/// <summary>Runs a program in the order in which the control runs it: jumps, loops and calls followed, block by block.</summary>
/// <remarks>Where a condition is not known both ways are run, the lower line later, with what both have in common where they meet.</remarks>
public sealed partial class FlowRunner : ICallsAhead
{
    /// <summary>Calls that may stand within each other (common practice, from memory).</summary>
    public const int DeepestCall = 10;

    readonly BlockExecutor _executor;
    readonly ICalledPrograms? _programs;
    readonly Dictionary<int, FlowText?> _files = [];
    readonly Stack<CallFrame> _frames = new();
    readonly LoopWatch _watch = new();
    readonly TextAhead _ahead;
    readonly int _mostBlocks;
    ControlState _state;
    bool _isBehindStep;
    bool _readsPlace;
    Place _next;
    Place _at;

    /// <param name="text">The program.</param>
    /// <param name="programs">Where called programs are found that the text does not hold; null where nowhere.</param>
    /// <param name="mostBlocks">Blocks that are followed at most beside each line of the program once.</param>
    public FlowRunner(BlockExecutor executor, FlowText text, ICalledPrograms? programs, int mostBlocks)
        // A long program is no long run: its own lines do not count.
        : this(executor, text, FirstOf(text), programs, mostBlocks + text.Text.LineCount)
    {
        _state = executor.StartOf(text.IsCalled, text.LeaderLines > 0);
    }

    FlowRunner(BlockExecutor executor, FlowText text, Region program, ICalledPrograms? programs, int mostBlocks)
    {
        ArgumentNullException.ThrowIfNull(executor);
        ArgumentNullException.ThrowIfNull(text);
        _executor = executor;
        _programs = programs;
        _mostBlocks = mostBlocks;
        _state = executor.Start();
        var frame = new CallFrame(text, program, -1);
        _frames.Push(frame);
        _next = new Place(text.NextBlock(program.First), false);
        if (_next.Line >= program.End)
            End = FlowEnd.OffTheEnd;
        Text = text;
        _ahead = new TextAhead(text.Text, text, this);
        Step = new Step { Ahead = _ahead };
    }

    /// <summary>Runs one of the programs behind the first of a text, as if it were begun by itself.</summary>
    /// <param name="first">Its first line, see <see cref="FlowText.FurtherPrograms"/>.</param>
    /// <param name="end">The line behind its last.</param>
    /// <param name="before">The run of the program that stands before it: where nothing ended that one, it goes on into this.</param>
    /// <param name="mostBlocks">Blocks that are followed at most beside each of its lines once.</param>
    public static FlowRunner OfFurther(BlockExecutor executor, FlowText text, int first, int end, FlowRunner? before, ICalledPrograms? programs, int mostBlocks)
    {
        ArgumentNullException.ThrowIfNull(text);
        var runner = new FlowRunner(executor, text, new Region(first, end), programs, mostBlocks + end - first);
        if (before is { End: FlowEnd.OffTheEnd })
            runner._state = before._state;
        return runner;
    }

    static Region FirstOf(FlowText text)
    {
        ArgumentNullException.ThrowIfNull(text);
        return text.FirstProgram();
    }

    public Step Step { get; }

    /// <summary>The text of the block that ran last: the program's own, or that of a file beside it.</summary>
    public FlowText Text { get; private set; }

    /// <summary>The line (0-based, in <see cref="Text"/>) of the block that ran last.</summary>
    public int Line { get; private set; }

    /// <summary>The block that ran last.</summary>
    public Block Block => _chunk.Blocks[Line - _chunk.FirstLine];

    /// <summary>The line of the program itself that the block belongs to: its own, or that of the call that led to another file.</summary>
    public int OwnLine { get; private set; }

    /// <summary>Number of the program that a block of another file belongs to; −1 in the program itself.</summary>
    public int CalledNumber { get; private set; }

    /// <summary>How many calls the block that ran last stands within; 0 in the program itself.</summary>
    public int CallDepth { get; private set; }

    /// <summary>Whether the state the block met is not just the one that the block before left: behind calls, returns, and where ways come together.</summary>
    public bool HasNewState { get; private set; } = true;

    /// <summary>Whether the state that the next block meets is not just the one that the last has left.</summary>
    // A call that hands nothing over begins as its block has left things.
    public bool IsNewStateNext => _hasNewState && _state != Step.After;

    /// <summary>How the run has ended, once <see cref="MoveNext"/> has run its last block.</summary>
    public FlowEnd End { get; private set; }

    /// <summary>Blocks run so far.</summary>
    public int Blocks { get; private set; }

    /// <summary>The line of the program that went back most often, and how often; −1 where nothing went back.</summary>
    public (int Line, long Count) Busiest => _watch.Busiest;

    /// <summary>The state behind the last block.</summary>
    public ControlState State => _state;

    /// <summary>How many more blocks are followed.</summary>
    public int Room => _mostBlocks - Blocks;

    /// <summary>Whether it was anywhere not known which way the run goes.</summary>
    public bool HasDoubts => _watch.HasDoubts;

    /// <summary>The line (0-based) whose block runs next, where no call is under way and no other way waits, so that what comes hangs on the line and the state alone; −1 anywhere else.</summary>
    public int PlainLine => End == FlowEnd.None && _frames.Count == 1 && _frames.Peek().FirstWaiting is null ? _next.Line : -1;

    /// <summary>Goes on at a line of the program itself, as if blocks in between had run that left this state. No call may be under way, before or there.</summary>
    /// <param name="line">The line (0-based), which holds a block.</param>
    /// <param name="state">What the block there meets.</param>
    /// <param name="blocks">How many blocks lie in between.</param>
    public void GoOnAt(int line, in ControlState state, int blocks)
    {
        SetState(state);
        _next = new Place(line, false);
        Blocks += blocks;
    }

    /// <summary>Whether any block since the last question looked at what follows it.</summary>
    public bool HasLookedAhead()
    {
        var hasLooked = _ahead.Farthest > 0;
        _ahead.Farthest = 0;
        return hasLooked;
    }

    /// <summary>Runs the next block; false when there is none.</summary>
    public bool MoveNext()
    {
        if (End != FlowEnd.None)
            return false;
        if (Blocks >= _mostBlocks)
        {
            End = FlowEnd.TooLong;
            return false;
        }
        HasNewState = IsNewStateNext;
        _hasNewState = false;
        var frame = _frames.Peek();
        (Text, Line, _at) = (frame.Text, _next.Line, _next);
        CallDepth = _frames.Count - 1;
        TellOwnLine();
        (_ahead.Flow, _ahead.Line) = (Text, Line);
        Step.IsInCall = CallDepth > 0;
        Open(Text, Line);
        if (!_isBehindStep)
            Step.Leave(_state);
        _executor.RunNext(Block, Step);
        _state = Step.After;
        _isBehindStep = true;
        Blocks++;
        _readsPlace |= (Step.Events & StepEvents.ReadsPlace) != 0;
        Decide(frame);
        if (Step.Faults.Count > 0)
        {
            Step.Events |= StepEvents.Faults;
            Step.LineOfArguments = LineOfArguments();
        }
        return true;
    }

    bool _hasNewState = true;

    /// <summary>The blocks that the run goes through at present: they need not be looked for one by one, nor read again while it is among them.</summary>
    (FlowText? Text, BlockList Blocks, int FirstLine) _chunk = (null, null!, 0);

    bool IsOpen(FlowText text, int line) => _chunk.Text == text && line >= _chunk.FirstLine && line - _chunk.FirstLine < _chunk.Blocks.Count;

    void Open(FlowText text, int line)
    {
        if (IsOpen(text, line))
            return;
        var chunk = text.Text.ChunkOfLine(line);
        _chunk = (text, text.Text.Chunks[chunk].Blocks, text.Text.FirstLineOf(chunk));
    }

    /// <inheritdoc cref="FlowText.NextBlock"/>
    int NextBlock(FlowText text, int line)
    {
        for (; IsOpen(text, line); line++)
            if (_chunk.Blocks[line - _chunk.FirstLine].Tokens.Length > 0)
                return line;
        return text.NextBlock(line);
    }

    void TellOwnLine()
    {
        (OwnLine, CalledNumber) = (Line, -1);
        foreach (var frame in _frames)
        {
            if (frame.Text.Name is null)
                return;
            (OwnLine, CalledNumber) = (frame.CallLine, frame.Number);
        }
    }

    void Decide(CallFrame frame)
    {
        var transfer = Step.Transfer;
        switch (transfer.Kind)
        {
            case TransferKind.Jump:
                Jump(frame, transfer);
                return;
            case TransferKind.CallProgram or TransferKind.CallWithArguments:
                Call(frame, transfer);
                return;
            case TransferKind.Return when _frames.Count > 1 || transfer.Value != 0:
                Return(frame, transfer);
                return;
            case TransferKind.Structure:
                FollowStructure(frame, transfer);
                return;
        }
        if ((Step.Events & StepEvents.Alarm) != 0)
        {
            // Where it is not known which way the run goes, the alarm is what the program keeps in store.
            if (!_watch.HasDoubts)
                Fault(FaultKind.AlarmReached, LastToken(), SystemVariables.Alarm);
            StopWay(FlowEnd.Stopped);
            return;
        }
        if (!_state.Ended)
        {
            GoOn(frame, Line + 1);
            return;
        }
        if (_frames.Count > 1 && Block.Tokens[0].Kind == TokenKind.Percent)
        {
            // The closing % of a called file is the end of its blocks, and not of the run.
            _state.Ended = _isBehindStep = false;
            RunOff(frame);
            return;
        }
        if (_frames.Count > 1)
            Fault(FaultKind.ReturnMissing, LastToken(), frame.Number, 1);
        StopWay(FlowEnd.Ended);
    }

    int LastToken() => Math.Max(0, Block.Tokens.Length - 1);

    void Fault(FaultKind kind, int token, double a, double b = double.NaN) => Step.Faults.Add(new Fault(kind, token, '\0', 0, a, b));

    /// <summary>Goes on at a line with the present state, unless an earlier line waits to be run first.</summary>
    /// <param name="asBranch">The line is the next branch of a condition that did not hold.</param>
    void GoOn(CallFrame frame, int line, bool asBranch = false)
    {
        var place = new Place(NextBlock(frame.Text, line), asBranch);
        if (frame.FirstWaiting is { } waiting && place.CompareTo(waiting) >= 0)
        {
            frame.Wait(place, _state);
            Resume(frame, waiting);
            return;
        }
        Enter(frame, place);
    }

    void Resume(CallFrame frame, Place place)
    {
        SetState(frame.Take(place));
        Enter(frame, place);
    }

    void Enter(CallFrame frame, Place place)
    {
        if (frame.Region.Holds(place.Line))
            _next = place;
        else
            RunOff(frame);
    }

    void SetState(in ControlState state)
    {
        _state = state;
        _hasNewState = true;
        _isBehindStep = false;
    }

    /// <summary>The run has come to the end of a program that nothing has ended.</summary>
    void RunOff(CallFrame frame)
    {
        if (_frames.Count == 1)
        {
            End = FlowEnd.OffTheEnd;
            return;
        }
        Fault(FaultKind.ReturnMissing, LastToken(), frame.Number, 0);
        frame.PassesLeft = 0;
        LeaveFrame(frame, frame.CallLine + 1);
    }

    /// <summary>This way of the run is at its end; another may wait.</summary>
    void StopWay(FlowEnd end)
    {
        while (true)
        {
            var frame = _frames.Peek();
            if (frame.FirstWaiting is { } waiting)
            {
                Resume(frame, waiting);
                return;
            }
            if (_frames.Count == 1)
            {
                End = end;
                return;
            }
            if (frame.Returned is not null)
            {
                LeaveFrame(frame, frame.CallLine + 1, isReturn: false);
                return;
            }
            _frames.Pop();
        }
    }
}
