using NcLanguage.Control.State;
using NcLanguage.Machine.Geometry;
using NcLanguage.Machine.Setups;

namespace NcLanguage.Control.Execution;

/// <summary>How work coordinates, machine coordinates and the setup's frame hang together. NaN where the setup does not say.</summary>
static class Offsets
{
    /// <summary>What to add to work coordinates of the tip for machine coordinates of the gauge point, mm.</summary>
    public static Point3 ToMachine(in ControlState state, Setup setup)
    {
        var datum = setup.WorkOffsets.TryGetValue(state.WorkOffset, out var found) ? found : Point3.Unknown;
        return datum + state.Shift + new Point3(0, 0, LengthValue(state, setup));
    }

    /// <summary>What to add to work coordinates for coordinates in the setup's frame, mm.</summary>
    public static Point3 ToFrame(in ControlState state, Setup setup)
    {
        if (state.NotFollowed != NotFollowed.None)
            return Point3.Unknown;
        if (state.WorkOffset == setup.Frame)
            return state.Shift;
        return setup.WorkOffsets.TryGetValue(state.WorkOffset, out var here) && setup.WorkOffsets.TryGetValue(setup.Frame, out var frame)
            ? state.Shift + here - frame
            : Point3.Unknown;
    }

    /// <summary>The tool length that the control adds to Z, mm.</summary>
    public static double LengthValue(in ControlState state, Setup setup) => state.LengthOffset switch
    {
        LengthOffsetMode.Off => 0,
        LengthOffsetMode.Plus => LengthOf(state.H, setup),
        LengthOffsetMode.Minus => -LengthOf(state.H, setup),
        _ => double.NaN,
    };

    /// <summary>Puts the work position right after an offset has changed: the machine has not moved.</summary>
    public static void Changed(ref ControlState state, in ControlState before, Setup setup)
    {
        var old = ToMachine(before, setup);
        var now = ToMachine(state, setup);
        // Two datums not known cancel out where only the length or the shift has changed.
        if (before.WorkOffset == state.WorkOffset)
        {
            old = before.Shift + new Point3(0, 0, LengthValue(before, setup));
            now = state.Shift + new Point3(0, 0, LengthValue(state, setup));
        }
        var moved = state.Position + old - now;
        var fromMachine = state.MachinePosition - ToMachine(state, setup);
        state.Position = new Point3(Known(moved.X, fromMachine.X), Known(moved.Y, fromMachine.Y), Known(moved.Z, fromMachine.Z));
        CompleteMachine(ref state, setup);
    }

    /// <summary>Derives the machine position after a move in work coordinates.</summary>
    public static void CompleteMachine(ref ControlState state, Setup setup)
    {
        var machine = state.Position + ToMachine(state, setup);
        state.MachinePosition = new Point3(
            Known(machine.X, state.MachinePosition.X), Known(machine.Y, state.MachinePosition.Y), Known(machine.Z, state.MachinePosition.Z));
    }

    static double LengthOf(int h, Setup setup) => h == 0 ? 0 : setup.FindLengthOffset(h)?.Length ?? double.NaN;

    static double Known(double first, double second) => double.IsNaN(first) ? second : first;
}
