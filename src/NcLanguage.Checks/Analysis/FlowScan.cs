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

    /// <summary>Blocks between two looks at whether the run is still wanted.</summary>
    const int StepsBetweenLooks = 1024;

    readonly SourceText _text;
    readonly Job _job;
    readonly PartScan _scan;
    readonly FlowFindings _findings;
    readonly List<PartResult> _parts = [];
    readonly int[] _lines = new int[MostSteps];
    readonly FirstRun[] _first;
    readonly int[] _runs;
    readonly Dictionary<int, Passage> _passages = [];
    int _count;

    FlowScan(SourceText text, Job job, Rule[] stepRules)
    {
        _text = text;
        _job = job;
        _findings = new FlowFindings(text);
        _scan = new PartScan(job, stepRules) { OnFinding = _findings.Add };
        _first = new FirstRun[text.LineCount];
        Array.Fill(_first, FirstRun.None);
        _runs = new int[text.LineCount];
    }

    public static FlowRun Run(SourceText text, ChunkText[] texts, Job job, Rule[] stepRules, CancellationToken cancel)
    {
        var flowText = new FlowText(text, [.. texts.Select(chunk => chunk.Marks)]);
        var scan = new FlowScan(text, job, stepRules);
        var runner = new FlowRunner(job.Executor, flowText, job.Programs, job.MostBlocks);
        scan.Follow(runner, cancel);
        PartResult[] parts = [.. scan._parts];
        scan._parts.Clear();
        scan.LookAtTheRest(flowText, parts);
        return new FlowRun
        {
            Text = flowText,
            Parts = parts,
            NotReached = [.. scan._parts],
            First = scan._first,
            Runs = scan._runs,
            Passages = scan._passages,
            Files = runner.Files,
            Findings = scan._findings.Collect(scan._runs),
            End = runner.End,
            Busiest = runner.Busiest,
            BlocksFollowed = runner.Blocks,
            BlocksRun = scan._scan.BlocksRun,
        };
    }

    void Follow(FlowRunner runner, CancellationToken cancel)
    {
        string? file = null;
        var exit = runner.State;
        var (depth, steering) = (0, -1);
        while (runner.MoveNext())
        {
            if (steering >= 0 && runner.CallDepth != depth)
                _passages.TryAdd(steering, new Passage(runner.Text.Name, runner.Line));
            (depth, steering) = (runner.CallDepth, SteeringLine(runner));
            if (runner.Blocks % StepsBetweenLooks == 0)
                cancel.ThrowIfCancellationRequested();
            var isOtherFile = runner.Text.Name != file;
            if (_count > 0 && (runner.HasNewState || isOtherFile || _count == MostSteps))
                End(exit, file);
            if (_count == 0)
                _scan.Begin(runner.Step.Before, MostSteps);
            file = runner.Text.Name;
            if (file is null)
                NoteRun(runner.OwnLine);
            _lines[_count++] = runner.OwnLine;
            _findings.Begin(runner, _runs[runner.OwnLine]);
            _scan.Note(runner.Block, runner.Step);
            exit = runner.Step.After;
        }
        if (_count > 0)
            End(exit, file);
    }

    /// <summary>The line of a block of the program itself that calls or returns; −1 for any other.</summary>
    static int SteeringLine(FlowRunner runner)
    {
        var transfer = runner.Step.Transfer;
        var steers = transfer.Kind is TransferKind.CallProgram or TransferKind.CallWithArguments or TransferKind.Return
            || transfer.Statement is StatementKind.Call or StatementKind.EndSub or StatementKind.Return;
        return steers && runner.Text.Name is null ? runner.Line : -1;
    }

    void NoteRun(int line)
    {
        if (_runs[line]++ == 0)
            _first[line] = new FirstRun(_parts.Count, _count, true);
    }

    void End(in ControlState exit, string? file)
    {
        _parts.Add(_scan.End(exit) with { Lines = _lines[.._count], File = file });
        _count = 0;
    }

    /// <summary>Blocks that the run has not come to are looked at with nothing known, each stretch for itself.</summary>
    void LookAtTheRest(FlowText text, PartResult[] parts)
    {
        var jumps = text.HasJumps;
        var state = ControlState.Unknown;
        var ahead = new TextAhead(_text, text);
        _scan.Step.Ahead = ahead;
        var last = -1;
        for (var line = 0; line < _text.LineCount; line++)
        {
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
            // A jump may lead to any numbered block.
            if (jumps && block.NumberIndex >= 0)
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
            if (_scan.Step.Transfer.Kind != TransferKind.None)
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
