using NcLanguage.Control.Moves;
using NcLanguage.Control.State;
using NcLanguage.Machine.Geometry;
using NcLanguage.Machine.Profiles;

namespace NcLanguage.Control.Execution;

/// <summary>What a block does that drills the next hole of a run as the one before it did, for who need not see each of its moves.</summary>
public readonly struct NextHole
{
    readonly HolePattern? _pattern;
    readonly MachineProfile _machine;

    internal NextHole(HolePattern? pattern, MachineProfile machine) => (_pattern, _machine) = (pattern, machine);

    /// <summary>False where no run is known that a hole could be the next of.</summary>
    public bool IsKnown => _pattern is not null;

    /// <summary>What the block sets.</summary>
    public Slot SetsOf(in PlainTrace trace) => trace.Sets | _pattern!.Sets;

    /// <summary>Whether a block behind a step sets what nothing had set up to there: then more happens in it than in that.</summary>
    public bool SetsMoreThan(Step step, in PlainTrace trace)
    {
        ArgumentNullException.ThrowIfNull(step);
        return (trace.Sets & ~step.After.Set) != 0;
    }

    /// <summary>Seconds that it takes, without the moves of which that is not known.</summary>
    /// <param name="from">Where the tool comes from.</param>
    /// <param name="untimed">How many those are.</param>
    public double SecondsOf(in Point3 from, in PlainTrace trace, out int untimed) =>
        _pattern!.SecondsWith(MoveTime.Rapid(BlockRun.Way(from, trace.Position, BlockRun.AxesOf(trace.Sets)), _machine), out untimed);
}
