using NcLanguage.Checks.Analysis;
using NcLanguage.Control.Codes;
using NcLanguage.Control.Execution;
using NcLanguage.Control.Moves;
using NcLanguage.Control.State;
using NcLanguage.Machine.Setups;

namespace NcLanguage.Checks.Operations;

/// <summary>A comment of the program on a line of its own.</summary>
/// <param name="Line">From 0, in the file named.</param>
sealed record TitleComment(string Text, int Line, string? File);

/// <summary>An operation while it grows.</summary>
sealed class OperationBuilder(Job job, int tool, OperationKind kind, int cycle, TitleComment? comment, string? changeComment, int changedAt)
{
    /// <summary>Coordinates noted of one operation; a loop may shift them for each of thousands of parts.</summary>
    const int MostCoordinates = 100;

    ValueRange _speed = ValueRange.None;
    ValueRange _feed = ValueRange.None;
    double _deepest = double.NaN;
    WorkCoordinates? _deepestIn;
    WorkCoordinates? _last;
    readonly List<WorkCoordinates> _under = [];
    ReturnCost? _returns;
    int _holes;
    double _removed;
    double _depthOfCut;

    public OperationParts Parts { get; } = new(job);

    /// <summary>The comment that it is called by, or null.</summary>
    public TitleComment? Comment => comment;

    public bool IsOf(int itsTool, OperationKind itsKind, int itsCycle) => tool == itsTool && kind == itsKind && cycle == itsCycle;

    /// <summary>Adds a move of its work.</summary>
    /// <param name="cut">What it takes away, mm³, and how deep it goes into what stands, mm; NaN where not known.</param>
    public void Add(Step step, int index, int line, string? file, (double Removed, double Depth) cut)
    {
        _removed += cut.Removed;
        _depthOfCut = Math.Max(_depthOfCut, cut.Depth);
        Parts.Add(step, index, line, file);
        ref readonly var move = ref step.Moves[index];
        if (!move.IsFeed)
            return;
        _feed = _feed.With(move.Feed);
        NoteCoordinates(step);
        var lowest = LowestPoint.Of(move);
        if (!(lowest >= _deepest) && !double.IsNaN(lowest))
            (_deepest, _deepestIn) = (lowest, _last);
        if (!step.After.SurfaceSpeed && step.After.Spindle is SpindleState.Clockwise or SpindleState.Counterclockwise)
            _speed = _speed.With(job.Machine.SpeedOf(step.After.Speed));
    }

    /// <summary>Most operations work in the same coordinates from their first feed to their last.</summary>
    void NoteCoordinates(Step step)
    {
        var now = _last?.In(step.After) ?? WorkCoordinates.Of(step.After);
        if (!ReferenceEquals(now, _last) && _under.Count < MostCoordinates && !_under.Contains(now))
            _under.Add(now);
        _last = now;
    }

    public void AddHole(in Hole hole, SpindleState spindle, ReturnCost? returns)
    {
        _holes++;
        if (spindle != SpindleState.Off)
            _speed = _speed.With(job.Machine.SpeedOf(hole.Speed));
        if (returns is { } cost)
            _returns = cost.With(_returns ?? default);
    }

    /// <param name="hasStock">Whether there is a stock that something can be taken from.</param>
    public Operation Build(int number, bool hasStock) => new()
    {
        Number = number,
        Tool = tool,
        ChangedAt = changedAt,
        Kind = kind,
        Cycle = cycle,
        Title = comment?.Text ?? changeComment ?? OwnWords(),
        IsTitled = comment is not null || changeComment is not null,
        FirstLine = Parts.FirstLine,
        LastLine = Parts.LastLine,
        File = Parts.File,
        Holes = _holes,
        Totals = Parts.Totals,
        Stops = Parts.Stops,
        Speed = _speed,
        Feed = _feed,
        Deepest = _deepest,
        DeepestIn = _deepestIn,
        Under = [.. _under],
        Passes = Parts.Passes.Collect(),
        PassesUnknown = Parts.Passes.Unknown,
        Returns = _returns,
        Removed = hasStock && !double.IsNaN(_removed) ? _removed : null,
        DepthOfCut = hasStock && !double.IsNaN(_depthOfCut) ? _depthOfCut : null,
    };

    string OwnWords() => kind switch
    {
        OperationKind.Cycle => CodeTable.Find('G', cycle * 10) is { } code ? $"{code.Text} {code.Name}" : $"G{cycle}",
        OperationKind.Probing => "Probing",
        OperationKind.None => "Moves without a cut",
        _ => job.Setup.FindTool(tool) is { IsMill: true } ? "Milling" : "Cuts at feed",
    };
}
