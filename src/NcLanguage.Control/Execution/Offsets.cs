using NcLanguage.Control.State;
using NcLanguage.Machine.Geometry;
using NcLanguage.Machine.Setups;

namespace NcLanguage.Control.Execution;

/// <summary>How work coordinates, machine coordinates and the setup's frame hang together. NaN where neither setup nor program says.</summary>
public static class Offsets
{
    /// <summary>What to add to work coordinates of the tip for machine coordinates of the gauge point, mm.</summary>
    public static Point3 ToMachine(in ControlState state, Setup setup) =>
        Followed(state, Datum(state.WorkOffset, state, setup) + Shift(state) + new Point3(0, 0, LengthValue(state, setup)));

    /// <summary>What to add to work coordinates for coordinates in the setup's frame, mm.</summary>
    public static Point3 ToFrame(in ControlState state, Setup setup)
    {
        if (state.OffsetData is { IsLost: true })
            return Point3.Unknown;
        if (state.WorkOffset == setup.Frame)
            return Followed(state, Shift(state) + Moved(state.WorkOffset, state));
        return Followed(state, Shift(state) + Datum(state.WorkOffset, state, setup) - FrameDatum(state, setup));
    }

    /// <summary>Where a work offset's datum lies in machine coordinates, mm.</summary>
    public static Point3 Datum(int workOffset, in ControlState state, Setup setup)
    {
        if (state.OffsetData is { } data)
        {
            if (data.IsLost)
                return Point3.Unknown;
            if (data.Datum(workOffset) is { } set)
                return set.Origin;
        }
        return setup.WorkOffsets.TryGetValue(workOffset, out var found) ? found : Point3.Unknown;
    }

    /// <summary>By how much the program has moved a datum from where the setup has it, mm.</summary>
    public static Point3 Moved(int workOffset, in ControlState state) => state.OffsetData?.Datum(workOffset)?.Moved ?? default;

    /// <summary>Where the setup's frame lies in machine coordinates: it stays there, whatever the program does to its datum.</summary>
    static Point3 FrameDatum(in ControlState state, Setup setup) =>
        setup.WorkOffsets.TryGetValue(setup.Frame, out var found) ? found
        : Datum(setup.Frame, state, setup) - Moved(setup.Frame, state);

    /// <summary>False where it is not known where the work offset in force lies in the setup's frame. True where no frame could be read: the setup's own
    /// findings tell that.</summary>
    public static bool IsPlaced(in ControlState state, Setup setup) =>
        setup.Frame == Setup.UnknownFrame
        || (state.OffsetData is not { IsLost: true }
            && (state.WorkOffset == setup.Frame || (Datum(state.WorkOffset, state, setup) - FrameDatum(state, setup)) is { IsKnown: true }));

    /// <summary>True when a move along this axis is as long in the machine as in work coordinates.</summary>
    public static bool RunsStraight(in ControlState state, int axis) => !(axis < 2 && IsCompensated(state));

    /// <summary>The tool length that the control adds to Z, mm.</summary>
    public static double LengthValue(in ControlState state, Setup setup) => state.LengthOffset switch
    {
        LengthOffsetMode.Off => 0,
        LengthOffsetMode.Plus => LengthOf(state.H, state, setup),
        LengthOffsetMode.Minus => -LengthOf(state.H, state, setup),
        _ => double.NaN,
    };

    /// <summary>Puts the work position right after an offset has changed: the machine has not moved. What has not changed cancels out,
    /// known or not.</summary>
    /// <param name="before">The state before the change.</param>
    /// <param name="what">Which offsets the block has set.</param>
    /// <param name="axes">The axes along which they may have changed, as bits.</param>
    /// <param name="datumMoved">By how much the datum of the work offset in force has moved, mm; NaN where not known.</param>
    public static void Changed(ref ControlState state, in ControlState before, Setup setup, Slot what, int axes = 7, Point3 datumMoved = default)
    {
        var changed = default(Point3) - datumMoved;
        if ((what & (Slot.Shift | Slot.LocalShift)) != 0)
            changed += Shift(before) - Shift(state);
        if ((what & Slot.WorkOffset) != 0 && (before.WorkOffset != state.WorkOffset || state.WorkOffset < 0))
            changed += Datum(before.WorkOffset, before, setup) - Datum(state.WorkOffset, state, setup);
        if ((what & Slot.LengthOffset) != 0 && !IsSameLength(before, state))
            changed += new Point3(0, 0, LengthValue(before, setup) - LengthValue(state, setup));
        var fromMachine = state.MachinePosition - ToMachine(state, setup);
        var position = state.Position;
        for (var axis = 0; axis < 3; axis++)
        {
            if ((axes & 1 << axis) == 0)
                continue;
            position = position.With(axis, Known(position[axis] + changed[axis], fromMachine[axis]));
            if (!double.IsNaN(state.Position[axis]) && double.IsNaN(position[axis]))
                state.LostAxes |= 1 << axis;
        }
        var depth = Moves.Arcs.Axes(state.Plane).Third;
        Renumber(ref state, position, (axes & 1 << depth) == 0 ? 0 : Known(changed[depth], position[depth] - state.Position[depth]));
        var machine = position + ToMachine(state, setup);
        state.MachinePosition = new Point3(
            Known(machine.X, state.MachinePosition.X), Known(machine.Y, state.MachinePosition.Y), Known(machine.Z, state.MachinePosition.Z));
    }

    // An H that is not known may be another each time.
    static bool IsSameLength(in ControlState before, in ControlState state) =>
        before.LengthOffset == state.LengthOffset && before.H == state.H && state is { LengthOffset: not LengthOffsetMode.Unknown, H: >= 0 };

    /// <summary>Gives the place where the tool stands other numbers. A cycle's initial level is a place the tool has stood at, so it
    /// is renumbered too; R and bottom are words of the program and keep their numbers.</summary>
    /// <param name="alongDepth">By how much numbers along the cycle's axis have grown, mm.</param>
    public static void Renumber(ref ControlState state, Point3 position, double alongDepth)
    {
        state.InitialLevel += alongDepth;
        if (position != state.Position)
            state.StandsAtHole = false;
        // What the program said of a place not known here no longer holds either.
        var isOther = position != state.Position || !position.IsKnown;
        state.Position = position;
        if (isOther && state.ProgramFrame is { } frame)
            state.Programmed = frame.ToProgram(state.ProgrammedPosition);
    }

    /// <summary>What the program's own shifts (G92, G52) add to the datum, mm.</summary>
    public static Point3 Shift(in ControlState state) => state.Shift + state.LocalShift;

    static Point3 Followed(in ControlState state, Point3 offset) =>
        IsCompensated(state) ? new Point3(double.NaN, double.NaN, offset.Z) : offset;

    // Radius compensation takes the tool off the programmed path in X and Y (NISTIR 6556 §3.5.10: only in the XY plane).
    static bool IsCompensated(in ControlState state) =>
        (state.NotFollowed & NotFollowed.Compensation) != 0 || state.Compensation == CompensationSide.Unknown;

    /// <summary>The length that an H number stands for, mm; NaN where not known.</summary>
    public static double LengthOf(int h, in ControlState state, Setup setup)
    {
        if (h == 0)
            return 0;
        if (state.OffsetData is { } data)
        {
            if (data.IsLost)
                return double.NaN;
            if (data.Length(h) is { } set)
                return set.Sum;
        }
        return setup.FindLengthOffset(h)?.Length ?? double.NaN;
    }

    /// <summary>The radius of a D number other than 0, mm; NaN where neither setup nor program gives it.</summary>
    public static double RadiusOf(int d, in ControlState state, Setup setup) =>
        state.OffsetData is { IsLost: true } ? double.NaN
        : state.OffsetData?.Radius(d)?.Sum ?? setup.FindRadiusOffset(d)?.Diameter / 2 ?? double.NaN;

    /// <summary>The first value where it is known, else the second.</summary>
    public static double Known(double first, double second) => double.IsNaN(first) ? second : first;
}
