using NcLanguage.Control.Moves;
using NcLanguage.Control.State;
using NcLanguage.Machine.Geometry;

namespace NcLanguage.Control.Execution;

/// <summary>What a block does that goes on as the one before it did, for who need not see each of its moves: the next hole of a run, or one more cut.</summary>
public readonly struct Continuation
{
    readonly BlockExecutor _executor;
    readonly Step _step;
    readonly HolePattern? _pattern;

    /// <param name="step">The step of the block before, which has been told, and stays as it is as long as this is asked.</param>
    internal Continuation(BlockExecutor executor, Step step) => (_executor, _step, _pattern) = (executor, step, step.RepeatsHole ? step.HoleBefore : null);

    /// <summary>Whether the step was the next hole of a run.</summary>
    public bool IsHole => _pattern is not null;

    /// <summary>False where a block behind the step cannot go on as that did.</summary>
    public bool IsKnown => IsHole || (_step.IsPlainMove && _step.After.Motion != MotionMode.Rapid);

    /// <summary>Whether a block that went on does no more than the step did: a cut behind a cut, and nothing is set that had not been set by then.</summary>
    public bool DoesNoMore(in PlainTrace trace) =>
        (trace.Sets & ~_step.After.Set) == 0 && (IsHole || trace.Motion != MotionMode.Rapid);

    /// <summary>Whether a block that does no more cuts along an arc.</summary>
    public bool IsArc(in PlainTrace trace) => !IsHole && trace.Motion != MotionMode.Linear;

    /// <summary>What the block sets.</summary>
    public Slot SetsOf(in PlainTrace trace) => IsHole ? trace.Sets | _pattern!.Sets : trace.Sets;

    /// <summary>Seconds that the block takes, without the moves of which that is not known.</summary>
    /// <param name="from">Where the tool comes from.</param>
    /// <param name="untimed">How many those are.</param>
    public double SecondsOf(in Point3 from, in PlainTrace trace, out int untimed) =>
        new BlockRun(_executor, default, ref _step.AfterTold, _step).SecondsOfAnother(_pattern, from, trace, out untimed);

    /// <summary>Tells the arc that a block cuts along; false where something is amiss with it or out of the ordinary, so that the block itself has to be told.</summary>
    /// <param name="from">Where the tool comes from.</param>
    /// <param name="arc">Becomes the arc.</param>
    public bool TryTellArc(in PlainWords words, in Point3 from, in PlainTrace trace, ref Move arc) => TryTellArc(words.SayCentre(), from, trace, ref arc);

    /// <inheritdoc cref="TryTellArc(in PlainWords, in Point3, in PlainTrace, ref Move)"/>
    public bool TryTellArc(BlockWords words, in Point3 from, in PlainTrace trace, ref Move arc) => TryTellArc(words.SayCentre(), from, trace, ref arc);

    bool TryTellArc(in PlainCentre says, in Point3 from, in PlainTrace trace, ref Move arc) =>
        new BlockRun(_executor, default, ref _step.AfterTold, _step).TryTellArc(says, from, trace, ref arc);
}
