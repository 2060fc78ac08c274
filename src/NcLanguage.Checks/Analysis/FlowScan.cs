using System.Collections.Immutable;
using NcLanguage.Control.Execution;
using NcLanguage.Control.Flow;
using NcLanguage.Control.State;
using NcLanguage.Syntax.Lexing;
using NcLanguage.Syntax.Text;

namespace NcLanguage.Checks.Analysis;

/// <summary>Follows a program through its jumps, loops and calls, and gathers the results in stretches of the run.</summary>
sealed class FlowScan
{
    /// <summary>Blocks of one part.</summary>
    const int MostSteps = 128;

    /// <summary>Stretches of blocks that the run has not come to, at most, that are begun for what may change the state amid them: each is kept with all of the state that it begins and ends with.</summary>
    const int MostStretchesOfTheRest = 10_000;

    /// <summary>Blocks between two looks at whether the run is still wanted.</summary>
    const int StepsBetweenLooks = 1024;

    readonly SourceText _text;
    readonly Job _job;
    readonly PartScan _scan;
    readonly FlowFindings _findings;
    readonly List<PartResult> _parts = [];
    readonly List<FlowStretch> _stretches = [];
    readonly List<(int At, Finding Finding)> _told = [];
    readonly List<(int At, Passage Passage)> _led = [];
    readonly int[] _lines = new int[MostSteps];
    readonly FirstRun[] _first;
    readonly int[] _runs;
    readonly Dictionary<int, Passage> _passages = [];
    int _count;
    bool _isOutermost;
    bool _hangsOnOthers;

    /// <summary>Whether anything was taken from the run of the version before.</summary>
    bool _hasTaken;

    /// <summary>Whether a return led elsewhere than behind its call.</summary>
    bool _hasJumped;

    FlowScan(SourceText text, Job job, Rule[] stepRules)
    {
        _text = text;
        _job = job;
        _findings = new FlowFindings(text);
        _scan = new PartScan(job, stepRules) { OnFinding = Note };
        _first = new FirstRun[text.LineCount];
        Array.Fill(_first, FirstRun.None);
        _runs = new int[text.LineCount];
    }

    /// <param name="before">The run of the version before; null where there is none.</param>
    /// <exception cref="OperationCanceledException">The token was cancelled.</exception>
    public static FlowRun Run(SourceText text, ChunkText[] texts, Job job, Rule[] stepRules, FlowRun? before, CancellationToken cancel)
    {
        var flowText = new FlowText(text, [.. texts.Select(chunk => chunk.Marks)]);
        var scan = new FlowScan(text, job, stepRules);
        var runner = new FlowRunner(job.Executor, flowText, job.Programs, job.MostBlocks);
        scan.Follow(runner, FlowBefore.Of(before, flowText), cancel);
        // What was gone over may be what makes it too long, or what a jump leads back to.
        if (scan._hasTaken && (scan._hasJumped || !IsAtEnd(runner)))
            return Run(text, texts, job, stepRules, null, cancel);
        PartResult[] parts = [.. scan._parts];
        FlowStretch[] stretches = [.. scan._stretches];
        scan._parts.Clear();
        scan.LookAtTheRest(flowText, parts, cancel);
        return new FlowRun
        {
            Text = flowText,
            Parts = parts,
            Stretches = stretches,
            MayServe = IsAtEnd(runner) && !runner.HasDoubts && !scan._hasJumped && runner.Files.Count == 0,
            NotReached = [.. scan._parts],
            First = scan._first,
            Runs = scan._runs,
            Passages = scan._passages,
            Files = runner.Files,
            Findings = scan._findings.Collect(scan._runs),
            End = runner.End,
            Busiest = runner.Busiest,
            BlocksFollowed = runner.Blocks,
            Blocks = runner.Blocks + scan._parts.Sum(part => part.Lines!.Length),
            BlocksRun = scan._scan.BlocksRun,
        };
    }

    static bool IsAtEnd(FlowRunner runner) => runner.End is FlowEnd.Ended or FlowEnd.OffTheEnd or FlowEnd.Stopped;

    void Follow(FlowRunner runner, FlowBefore? before, CancellationToken cancel)
    {
        string? file = null;
        var exit = runner.State;
        var (depth, steering) = (0, -1);
        while (true)
        {
            if (before is not null && !runner.HasDoubts && NextOf(runner, before) is var (first, end, blocks) && end > first)
            {
                if (steering >= 0 && depth > 0)
                    NotePassage(steering, new Passage(null, runner.PlainLine));
                if (_count > 0)
                    End(exit, file);
                for (var stretch = first; stretch < end; stretch++)
                    Take(before.At(stretch));
                (var line, exit) = before.BeginningOf(end);
                runner.GoOnAt(line, exit, blocks);
                (file, depth, steering) = (null, 0, -1);
            }
            var isOutermost = runner.PlainLine >= 0;
            if (!runner.MoveNext())
                break;
            if (steering >= 0 && runner.CallDepth != depth)
                NotePassage(steering, new Passage(runner.Text.Name, runner.Line));
            (depth, steering) = (runner.CallDepth, SteeringLine(runner));
            if (runner.Blocks % StepsBetweenLooks == 0)
                cancel.ThrowIfCancellationRequested();
            var isOtherFile = runner.Text.Name != file;
            if (_count > 0 && (runner.HasNewState || isOtherFile || _count == MostSteps))
                End(exit, file);
            if (_count == 0)
            {
                _scan.Begin(runner.Step.Before, MostSteps);
                _isOutermost = isOutermost;
            }
            file = runner.Text.Name;
            if (file is null)
                NoteRun(runner.OwnLine, _count);
            _lines[_count++] = runner.OwnLine;
            _findings.Begin(runner, _runs[runner.OwnLine]);
            _scan.Note(runner.Block, runner.Step);
            exit = runner.Step.After;
            _hangsOnOthers |= runner.HasLookedAhead() || ((runner.Step.Events & StepEvents.Faults) != 0 && runner.Step.LineOfArguments >= 0);
            _hasJumped |= runner.Step.Transfer is { Kind: TransferKind.Return, Value: not 0 };
        }
        if (_count > 0)
            End(exit, file);
    }

    /// <summary>The stretches of the run before that come next: the first, the one behind the last, and how many blocks they hold. None where the first two are the same.</summary>
    (int First, int End, int Blocks) NextOf(FlowRunner runner, FlowBefore before)
    {
        if (runner.PlainLine is not (>= 0 and var line) || before.From(line, runner.State) is not (>= 0 and var first))
            return default;
        // A short one that can be run together with what was run last is: else typing would cut the run into ever shorter ones.
        if (_count > 0 && !runner.IsNewStateNext && _count + before.BlocksOf(first) <= MostSteps)
            return default;
        var (end, blocks) = before.GoneOver(first);
        return blocks <= runner.Room ? (first, end, blocks) : default;
    }

    /// <summary>Takes a stretch of the run before as if it had been run.</summary>
    void Take((PartResult Part, FlowStretch Stretch) known)
    {
        var (lines, told) = (known.Part.Lines!, 0);
        for (var at = 0; at < lines.Length; at++)
        {
            NoteRun(lines[at], at);
            if (told == known.Stretch.Findings.Length || known.Stretch.Findings[told].At != at)
                continue;
            _findings.Begin(lines[at], _runs[lines[at]]);
            for (; told < known.Stretch.Findings.Length && known.Stretch.Findings[told].At == at; told++)
                _findings.Add(known.Stretch.Findings[told].Finding);
        }
        foreach (var (at, passage) in known.Stretch.Passages)
            _passages.TryAdd(lines[at], passage);
        _parts.Add(known.Part);
        _stretches.Add(known.Stretch);
        _hasTaken = true;
    }

    void Note(Finding finding)
    {
        var placed = _findings.Place(finding);
        _told.Add((_count - 1, placed));
        _findings.Add(placed);
    }

    /// <summary>Notes where the call or return led that ran last.</summary>
    void NotePassage(int line, Passage passage)
    {
        _passages.TryAdd(line, passage);
        _led.Add((_count - 1, passage));
    }

    /// <summary>The line of a block of the program itself that calls or returns; −1 for any other.</summary>
    static int SteeringLine(FlowRunner runner)
    {
        var transfer = runner.Step.Transfer;
        var steers = transfer.Kind is TransferKind.CallProgram or TransferKind.CallWithArguments or TransferKind.Return
            || transfer.Statement is StatementKind.Call or StatementKind.EndSub or StatementKind.Return;
        return steers && runner.Text.Name is null ? runner.Line : -1;
    }

    /// <param name="line">The block's line.</param>
    /// <param name="at">Which block of the part to come it is.</param>
    void NoteRun(int line, int at)
    {
        if (_runs[line]++ == 0)
            _first[line] = new FirstRun(_parts.Count, at, true);
    }

    void End(in ControlState exit, string? file)
    {
        _parts.Add(_scan.End(exit) with { Lines = _lines[.._count], File = file });
        _stretches.Add(new FlowStretch(_isOutermost, _hangsOnOthers, [.. _told], [.. _led]));
        _told.Clear();
        _led.Clear();
        (_count, _hangsOnOthers) = (0, false);
    }

    /// <summary>Blocks that the run has not come to are looked at with nothing known, each stretch for itself.</summary>
    void LookAtTheRest(FlowText text, PartResult[] parts, CancellationToken cancel)
    {
        var state = ControlState.Unknown;
        var ahead = new TextAhead(_text, text);
        _scan.Step.Ahead = ahead;
        var last = -1;
        for (var line = 0; line < _text.LineCount; line++)
        {
            if (line % StepsBetweenLooks == 0)
                cancel.ThrowIfCancellationRequested();
            // Most have run, and need not be read again for that.
            if (_runs[line] > 0)
            {
                EndRest(state);
                last = line;
                continue;
            }
            var block = text.BlockAt(line);
            if (block.Tokens.Length == 0)
                continue;
            if (_count == 0 && last >= 0)
            {
                var behind = StateBehind(parts, last, ahead);
                state = behind.Ended ? behind : ControlState.Unknown;
                last = -1;
            }
            if (_parts.Count < MostStretchesOfTheRest && text.MayBeJumpedTo(block))
            {
                EndRest(state);
                state = ControlState.Unknown;
            }
            if (_count == MostSteps)
                EndRest(state);
            if (_count == 0)
                _scan.Begin(state, MostSteps);
            _first[line] = new FirstRun(_parts.Count, _count, false);
            _lines[_count++] = line;
            ahead.Line = line;
            _job.Executor.Run(block, ref state, _scan.Step);
            _findings.Begin(line);
            _scan.Note(block, _scan.Step);
            if (_parts.Count < MostStretchesOfTheRest && _scan.Step.Transfer.Kind != TransferKind.None)
            {
                EndRest(state);
                state = ControlState.Unknown;
            }
        }
        EndRest(state);
    }

    void EndRest(in ControlState exit)
    {
        if (_count > 0)
            End(exit, null);
    }

    ControlState StateBehind(PartResult[] parts, int line, TextAhead ahead)
    {
        var first = _first[line];
        if (!first.IsReached)
            return ControlState.Unknown;
        var part = parts[first.Part];
        var state = part.Entry;
        part.Replay(ref state, 0, first.At + 1, 0, _job.Executor, _text, _scan.Step, ahead);
        return state;
    }
}
