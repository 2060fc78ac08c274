using NcLanguage.Control.State;
using NcLanguage.Machine.Geometry;
using NcLanguage.Machine.Setups;

namespace NcLanguage.Control.Execution;

/// <summary>How work coordinates, machine coordinates and the setup's frame hang together. NaN where the setup does not say.</summary>
static class Offsets
{
    /// <summary>Codes not followed that move or turn the work coordinates themselves.</summary>
    const NotFollowed Displacing = NotFollowed.Rotation | NotFollowed.Scaling | NotFollowed.OffsetData;

    /// <summary>What to add to work coordinates of the tip for machine coordinates of the gauge point, mm.</summary>
    public static Point3 ToMachine(in ControlState state, Setup setup)
    {
        var datum = setup.WorkOffsets.TryGetValue(state.WorkOffset, out var found) ? found : Point3.Unknown;
        return Followed(state, datum + state.Shift + new Point3(0, 0, LengthValue(state, setup)));
    }

    /// <summary>What to add to work coordinates for coordinates in the setup's frame, mm.</summary>
    public static Point3 ToFrame(in ControlState state, Setup setup)
    {
        if (state.WorkOffset == setup.Frame)
            return Followed(state, state.Shift);
        return setup.WorkOffsets.TryGetValue(state.WorkOffset, out var here) && setup.WorkOffsets.TryGetValue(setup.Frame, out var frame)
            ? Followed(state, state.Shift + here - frame)
            : Point3.Unknown;
    }

    /// <summary>False when the setup leaves out where a work offset lies in the setup's frame. True where no frame could be read: the setup's own
    /// findings tell that.</summary>
    public static bool IsPlaced(int workOffset, Setup setup) =>
        workOffset == setup.Frame || setup.Frame == Setup.UnknownFrame
        || (setup.WorkOffsets.ContainsKey(workOffset) && setup.WorkOffsets.ContainsKey(setup.Frame));

    /// <summary>True when a move along this axis is as long in the machine as it is programmed.</summary>
    public static bool RunsStraight(in ControlState state, int axis) =>
        (state.NotFollowed & Displacing) == 0 && !(axis < 2 && IsCompensated(state));

    /// <summary>The tool length that the control adds to Z, mm.</summary>
    public static double LengthValue(in ControlState state, Setup setup) => state.LengthOffset switch
    {
        LengthOffsetMode.Off => 0,
        LengthOffsetMode.Plus => LengthOf(state.H, setup),
        LengthOffsetMode.Minus => -LengthOf(state.H, setup),
        _ => double.NaN,
    };

    /// <summary>Puts the work position right after an offset has changed: the machine has not moved.</summary>
    /// <param name="before">The state before the change.</param>
    /// <param name="sameDatum">False where the datum may have changed although the work offset has kept its number.</param>
    public static void Changed(ref ControlState state, in ControlState before, Setup setup, bool sameDatum = true)
    {
        var old = ToMachine(before, setup);
        var now = ToMachine(state, setup);
        // Two datums not known cancel out where only the length or the shift has changed.
        if (sameDatum && before.WorkOffset == state.WorkOffset)
        {
            old = before.Shift + new Point3(0, 0, LengthValue(before, setup));
            now = state.Shift + new Point3(0, 0, LengthValue(state, setup));
        }
        var moved = state.Position + old - now;
        var fromMachine = state.MachinePosition - ToMachine(state, setup);
        var position = new Point3(Known(moved.X, fromMachine.X), Known(moved.Y, fromMachine.Y), Known(moved.Z, fromMachine.Z));
        var depth = Moves.Arcs.Axes(state.Plane).Third;
        Renumber(ref state, position, Known(old[depth] - now[depth], position[depth] - state.Position[depth]));
        var machine = position + ToMachine(state, setup);
        state.MachinePosition = new Point3(
            Known(machine.X, state.MachinePosition.X), Known(machine.Y, state.MachinePosition.Y), Known(machine.Z, state.MachinePosition.Z));
    }

    /// <summary>Gives the place where the tool stands other numbers. A cycle's initial level is a place the tool has stood at, so it
    /// is renumbered too; R and bottom are words of the program and keep their numbers.</summary>
    /// <param name="alongDepth">By how much numbers along the cycle's axis have grown, mm.</param>
    public static void Renumber(ref ControlState state, Point3 position, double alongDepth)
    {
        state.InitialLevel += alongDepth;
        if (position != state.Position)
            state.StandsAtHole = false;
        state.Position = position;
    }

    static Point3 Followed(in ControlState state, Point3 offset)
    {
        if ((state.NotFollowed & Displacing) != 0)
            return Point3.Unknown;
        return IsCompensated(state) ? new Point3(double.NaN, double.NaN, offset.Z) : offset;
    }

    // Radius compensation takes the tool off the programmed path in X and Y (NISTIR 6556 §3.5.10: only in the XY plane).
    static bool IsCompensated(in ControlState state) =>
        (state.NotFollowed & NotFollowed.Compensation) != 0 || state.Compensation == CompensationSide.Unknown;

    static double LengthOf(int h, Setup setup) => h == 0 ? 0 : setup.FindLengthOffset(h)?.Length ?? double.NaN;

    static double Known(double first, double second) => double.IsNaN(first) ? second : first;
}
