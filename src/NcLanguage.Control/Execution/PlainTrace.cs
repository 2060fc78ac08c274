using NcLanguage.Control.State;
using NcLanguage.Machine.Geometry;

namespace NcLanguage.Control.Execution;

/// <summary>What is left of a block that went on like the one before it until it is told: of many such steps in the work at once the whole states would not stay near the processor.</summary>
public readonly struct PlainTrace
{
    readonly Point3 _machinePosition;
    readonly Slot _set;

    internal PlainTrace(in ControlState after, Slot sets)
    {
        (Position, _machinePosition) = (after.Position, after.MachinePosition);
        (Motion, Feed, _set) = (after.Motion, after.Feed, after.Set);
        Sets = sets;
    }

    /// <summary>Where the tool stands behind the block, in work coordinates, mm.</summary>
    public Point3 Position { get; }

    /// <summary>The motion in force.</summary>
    public MotionMode Motion { get; }

    /// <summary>The feed in force, mm/min.</summary>
    public double Feed { get; }

    /// <summary>What the block's words set.</summary>
    public Slot Sets { get; }

    /// <summary>Makes of the state before the block that behind it: what <see cref="ControlState.GoOnFrom"/> takes over.</summary>
    internal void GoOn(ref ControlState state)
    {
        (state.Position, state.MachinePosition) = (Position, _machinePosition);
        (state.Motion, state.Feed, state.Set) = (Motion, Feed, _set);
    }
}
