using System.Runtime.InteropServices;
using NcLanguage.Checks.Clearance;
using NcLanguage.Control.Execution;
using NcLanguage.Control.Moves;
using NcLanguage.Control.State;
using NcLanguage.Syntax.Lexing;
using NcLanguage.Syntax.Text;

namespace NcLanguage.Checks.Analysis;

/// <summary>Runs chunks and gathers their results. One object serves a whole run and keeps its storage; it is not shared between threads.</summary>
public sealed class ChunkScan(Job job, Rule[] stepRules, Rule[] textRules)
{
    readonly Step _step = new();
    readonly List<Finding> _findings = [];
    readonly List<HoleResult> _holes = [];
    readonly List<BlockNumber> _numbers = [];
    readonly List<StockCut> _cuts = [];
    readonly List<LowRapid> _lowRapids = [];
    readonly List<ToolTaken> _tools = [];
    readonly List<int> _untimedLines = [];
    readonly Dictionary<StepEvents, Rule[]> _interested = [];
    Approach[] _approaches = new Approach[16];
    int _approachesKnown;

    public Job Job { get; } = job;

    /// <summary>Blocks run so far, for tests that count work.</summary>
    public int BlocksRun { get; private set; }

    public ChunkResult Run(Chunk chunk, in ControlState entry)
    {
        var blocks = chunk.Blocks;
        var state = entry;
        var sets = new Slot[blocks.Count];
        var lineSeconds = new float[blocks.Count];
        var (allSets, seconds, untimed, hasSkip) = (Slot.None, 0.0, 0, false);
        for (var line = 0; line < blocks.Count; line++)
        {
            var block = blocks[line];
            hasSkip |= block.Tokens.Length > 0 && block.Tokens[0].Kind == TokenKind.Skip;
            foreach (var rule in textRules)
                rule.CheckText(new BlockContext(this, block, line));
            if (block.Tokens.Length == 0)
                continue;
            Job.Executor.Run(block, ref state, _step);
            BlocksRun++;
            _approachesKnown = 0;
            sets[line] = _step.Sets;
            allSets |= _step.Sets;
            NoteNumber(block, line);
            NoteHoles(line);
            NoteStock(line);
            var (before, untimedBefore) = (seconds, untimed);
            foreach (ref readonly var move in _step.Moves.Items)
            {
                if (double.IsNaN(move.Seconds))
                    untimed++;
                else
                    seconds += move.Seconds;
            }
            lineSeconds[line] = (float)(seconds - before);
            if (untimed > untimedBefore)
                _untimedLines.Add(line);
            if ((_step.Events & StepEvents.ToolChange) != 0)
                _tools.Add(new ToolTaken(_step.After.Tool, line));
            var context = new StepContext(this, block, _step, line);
            foreach (var rule in RulesFor(_step.Events))
                rule.CheckStep(context);
        }
        var result = new ChunkResult
        {
            Chunk = chunk,
            Entry = entry,
            Exit = state,
            Findings = [.. _findings],
            Holes = [.. _holes],
            Sets = sets,
            AllSets = allSets,
            Numbers = [.. _numbers],
            NumberRange = NumberRange.Of(CollectionsMarshal.AsSpan(_numbers)),
            Cuts = [.. _cuts],
            LowRapids = [.. _lowRapids],
            HasAllow = AllowComments.MayStandIn(chunk.Bytes),
            HasSkip = hasSkip,
            Seconds = seconds,
            UntimedMoves = untimed,
            LineSeconds = lineSeconds,
            UntimedLines = [.. _untimedLines],
            Tools = [.. _tools],
        };
        _findings.Clear();
        _holes.Clear();
        _numbers.Clear();
        _cuts.Clear();
        _lowRapids.Clear();
        _tools.Clear();
        _untimedLines.Clear();
        return result;
    }

    /// <summary>The rules that want to see a step with these events, worked out once for each combination that occurs.</summary>
    Rule[] RulesFor(StepEvents events)
    {
        if (!_interested.TryGetValue(events, out var rules))
        {
            rules = [.. stepRules.Where(rule => (rule.Interest & (events | StepEvents.Words)) != 0)];
            _interested.Add(events, rules);
        }
        return rules;
    }

    internal void Add(Finding finding) => _findings.Add(finding);

    /// <summary>The nearest approach of a move of the present step, found once and kept for all rules.</summary>
    internal Approach ApproachOf(int move)
    {
        if (_approachesKnown < _step.Moves.Count)
        {
            if (_approaches.Length < _step.Moves.Count)
                _approaches = new Approach[_step.Moves.Count * 2];
            for (var i = 0; i < _step.Moves.Count; i++)
                _approaches[i] = Job.ApproachOf(_step.Moves[i], _step.ToFrame, _step.After.Tool, Job.Setup.Clearance);
            _approachesKnown = _step.Moves.Count;
        }
        return _approaches[move];
    }

    void NoteNumber(in Block block, int line)
    {
        if ((_step.Events & StepEvents.NotRun) != 0)
            return;
        foreach (ref readonly var token in block.Tokens)
        {
            if (token.IsWord('O') || token.IsWord(':'))
                _numbers.Add(new BlockNumber(-1, line));
            else if (token.IsWord('N') && token.Value is >= 0 and < 1e9)
                _numbers.Add(new BlockNumber((int)token.Value, line));
            else
                continue;
            return;
        }
    }

    void NoteHoles(int line)
    {
        for (var i = 0; i < _step.Holes.Count; i++)
        {
            ref readonly var hole = ref _step.Holes[i];
            _holes.Add(new HoleResult(hole, line, TraverseTo(hole), _step.ToFrame, _step.After.Plane, _step.After.ReturnLevel, _cuts.Count));
        }
    }

    Approach TraverseTo(in Hole hole)
    {
        var nearest = Approach.None;
        if (Job.Obstacles.IsEmpty)
            return nearest;
        for (var i = hole.FirstMove; i < _step.Moves.Count; i++)
        {
            // The lift goes up where the tool came down: how near that is, is the hole's own matter and not the traverse's.
            if (_step.Moves[i].Role == MoveRole.Lift)
                continue;
            if (_step.Moves[i].Role is not (MoveRole.Hop or MoveRole.FirstTraverse))
                break;
            var approach = ApproachOf(i);
            if (double.IsNaN(approach.Distance) || approach.Distance < nearest.Distance)
                nearest = approach;
        }
        return nearest;
    }

    void NoteStock(int line)
    {
        if (Job.Setup.Stock is { } stock)
            StockMoves.Note(_step, line, stock, Job, _cuts, _lowRapids);
    }
}
