using NcLanguage.Checks.Analysis;
using NcLanguage.Checks.Clearance;
using NcLanguage.Control.Execution;
using NcLanguage.Control.Moves;
using NcLanguage.Machine.Setups;
using NcLanguage.Syntax.Lexing;

namespace NcLanguage.Checks.Operations;

/// <summary>Cuts a run into operations, step by step: each move belongs to exactly one, so that their totals are those of the program.</summary>
/// <remarks>
/// An operation is the longest stretch with one tool and one kind of work: holes of one cycle, feeds and arcs outside cycles, moves until contact. Where
/// a comment on a line of its own and a rapid both stand between two stretches of the same work, the comment begins a new operation; stretches under the
/// same comment, as a loop makes them, are one until the tool changes. Positioning belongs to the operation it leads to; what is left before a tool
/// change or the end of the run belongs to the operation before. A tool change belongs to the first operation of its tool, and so does what runs before
/// the first one.
/// </remarks>
/// <param name="job">What the run was made with.</param>
/// <param name="stock">What its cuts took; null where no stock is given, or nobody asks for it.</param>
public sealed class OperationScan(Job job, StockLeft? stock = null)
{
    /// <summary>Characters of a comment that is a title.</summary>
    const int LongestTitle = 60;

    readonly List<OperationBuilder> _operations = [];
    readonly Dictionary<(TitleComment Comment, OperationKind Kind, int Cycle), OperationBuilder> _named = [];
    readonly OperationParts _pending = new(job);
    readonly ReturnTally _returns = new(job);
    readonly MoveTotals _totals = new();
    OperationBuilder? _current;
    bool _pendingChanges;
    int _tool = -1;
    TitleComment? _comment;
    bool _movedSinceComment;
    string? _changeComment;
    bool _isBehindHead;
    int _changedAt = Operation.NotChanged;
    int _cuts;

    /// <summary>Adds a step that ran. Blocks that were skipped or lie behind the program's end must be left out.</summary>
    /// <param name="block">Its block.</param>
    /// <param name="step">What came of it.</param>
    /// <param name="line">Line of the block, from 0, in the file named.</param>
    /// <param name="file">The name of the file that the block stands in, where it is another than the program's own.</param>
    public void Add(in Block block, Step step, int line, string? file)
    {
        ArgumentNullException.ThrowIfNull(step);
        NoteComment(block, line, file);
        foreach (ref readonly var move in step.Moves.Items)
        {
            _totals.Add(move, job.LengthOf(move));
            if (move.Kind != MoveKind.ToolChange)
                continue;
            EndTool(block, step.Before.Tool);
            _changedAt = file is null ? line : Operation.ChangedElsewhere;
        }
        var next = 0;
        for (var hole = 0; hole < step.Holes.Count; hole++)
        {
            var end = hole + 1 < step.Holes.Count ? step.Holes[hole + 1].FirstMove : step.Moves.Count;
            AddMoves(step, next, step.Holes[hole].FirstMove, line, file);
            AddHole(step, hole, end, line, file);
            next = end;
        }
        AddMoves(step, next, step.Moves.Count, line, file);
        _tool = step.After.Tool;
    }

    /// <summary>Ends the last operation. Nothing may be added behind it.</summary>
    public OperationList Finish()
    {
        EndStretch(_tool);
        return new OperationList([.. _operations.Select((operation, i) => operation.Build(i + 1, stock is not null))], _totals);
    }

    void NoteComment(in Block block, int line, string? file)
    {
        if (CommentText.StandsAlone(block))
        {
            // What stands above the first words is about the whole program.
            if (_isBehindHead && CommentText.In(block, LongestTitle) is { } text)
                (_comment, _movedSinceComment) = (new TitleComment(text, line, file), false);
            return;
        }
        _isBehindHead |= block.HasWords;
    }

    void EndTool(in Block block, int tool)
    {
        if (_current is not null || _pendingChanges)
            EndStretch(tool);
        // A comment that the tool has moved behind was about those moves.
        if (_movedSinceComment)
            _comment = null;
        _changeComment = CommentText.In(block, LongestTitle);
        _named.Clear();
        _pendingChanges = true;
    }

    /// <summary>What is left over belongs to the operation before; where there is none it is one of its own.</summary>
    void EndStretch(int tool)
    {
        if (_current is null && !_pending.IsEmpty)
            Begin(tool, OperationKind.None, 0);
        _current?.Parts.Take(_pending);
        _current = null;
    }

    void AddMoves(Step step, int from, int end, int line, string? file)
    {
        for (var i = from; i < end; i++)
            AddMove(step, i, line, file);
    }

    void AddMove(Step step, int index, int line, string? file)
    {
        ref readonly var move = ref step.Moves[index];
        if (move.IsFeed)
        {
            var isProbe = move.Role == MoveRole.Probe;
            WorkOf(step, isProbe ? OperationKind.Probing : OperationKind.Feed, 0).Add(step, index, line, file, CutOf(step, index));
            return;
        }
        _pending.Add(step, index, line, file);
        if (move.Kind != MoveKind.Rapid)
            return;
        _pending.Travels |= move.Role is MoveRole.Plain or MoveRole.Machine or MoveRole.FirstTraverse;
        _movedSinceComment = true;
    }

    void AddHole(Step step, int hole, int end, int line, string? file)
    {
        ref readonly var drilled = ref step.Holes[hole];
        OperationBuilder? operation = null;
        for (var i = drilled.FirstMove; i < end; i++)
        {
            if (step.Moves[i].Role is MoveRole.InHole or MoveRole.Return)
                (operation ??= WorkOf(step, OperationKind.Cycle, drilled.Cycle)).Add(step, i, line, file, CutOf(step, i));
            else
                AddMove(step, i, line, file);
        }
        (operation ?? WorkOf(step, OperationKind.Cycle, drilled.Cycle)).AddHole(drilled, step.After.Spindle, _returns.Add(step, hole, end));
    }

    /// <summary>The volume that a move takes away, mm³, and how deep it goes into what stands, mm; NaN where not known. The moves that cut are those of the
    /// stock, in the same order.</summary>
    (double Removed, double Depth) CutOf(Step step, int index)
    {
        if (!step.Moves[index].IsCut || job.Setup.FindTool(step.After.Tool)?.Kind == ToolKind.Probe)
            return (0, 0);
        if (stock is null || _cuts >= stock.Cuts.Length)
            return (double.NaN, double.NaN);
        ref readonly var cut = ref stock.Cuts[_cuts++];
        return cut.Move == index && cut.Tool == step.After.Tool ? (cut.Removed, cut.Deepest) : (double.NaN, double.NaN);
    }

    /// <summary>The operation that a piece of work belongs to, with all that has led to it.</summary>
    OperationBuilder WorkOf(Step step, OperationKind kind, int cycle)
    {
        var tool = step.After.Tool;
        var isNamedAnew = _comment is not null && _pending.Travels && _comment != _current?.Comment;
        if (_current is null || isNamedAnew || !_current.IsOf(tool, kind, cycle))
            Begin(tool, kind, cycle);
        _current!.Parts.Take(_pending);
        _comment = null;
        return _current;
    }

    void Begin(int tool, OperationKind kind, int cycle)
    {
        if (_comment is not null && _named.TryGetValue((_comment, kind, cycle), out var named) && named.IsOf(tool, kind, cycle))
        {
            _current = named;
            return;
        }
        _current = new OperationBuilder(job, tool, kind, cycle, _comment, _changeComment, _changedAt);
        _operations.Add(_current);
        if (_comment is not null)
            _named[(_comment, kind, cycle)] = _current;
        (_pendingChanges, _changeComment) = (false, null);
    }
}
