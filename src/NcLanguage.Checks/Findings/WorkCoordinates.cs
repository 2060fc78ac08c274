using NcLanguage.Control.Execution;
using NcLanguage.Control.State;
using NcLanguage.Machine.Geometry;
using NcLanguage.Machine.Setups;

namespace NcLanguage.Checks;

/// <summary>The coordinates that places of a program are meant in: the work offset in force, and by how much the program itself has shifted it. Lengths in mm; NaN where not known.</summary>
/// <param name="WorkOffset">As in <see cref="ControlState.WorkOffset"/>; −1 not known.</param>
/// <param name="Moved">By how much the program has moved its datum from where the setup has it (G10, variables).</param>
/// <param name="LocalShift">By how much G52 shifts it.</param>
/// <param name="Shift">By how much G92 shifts it.</param>
public sealed record WorkCoordinates(int WorkOffset, Point3 Moved, Point3 LocalShift, Point3 Shift)
{
    /// <summary>What a block sets that may lead to other coordinates.</summary>
    internal const Slot Slots = Slot.WorkOffset | Slot.Shift | Slot.LocalShift | Slot.OffsetData;

    /// <summary>The name of coordinates of which the work offset is not known.</summary>
    public const string NotKnown = "work offset not known";

    /// <summary>What is shifted by less is not shifted, mm: sums of decimal fractions leave as much.</summary>
    const double Least = 1e-6;

    // What they were made from.
    OffsetData? _data;
    Point3 _localShift, _shift;

    /// <summary>The work offset that a setup is measured in; null where none could be read.</summary>
    public static WorkCoordinates? OfFrame(Setup setup)
    {
        ArgumentNullException.ThrowIfNull(setup);
        return setup.Frame == Setup.UnknownFrame ? null : new(setup.Frame, default, default, default);
    }

    /// <summary>Those in force. What a program starts with and has not set itself is no shift of its own, known or not.</summary>
    public static WorkCoordinates Of(in ControlState state)
    {
        var (localShift, shift) = (OwnOf(state.LocalShift, Slot.LocalShift, state), OwnOf(state.Shift, Slot.Shift, state));
        return new(state.WorkOffset, Rounded(Offsets.Moved(state.WorkOffset, state)), Rounded(localShift), Rounded(shift))
        {
            _data = state.OffsetData,
            _localShift = localShift,
            _shift = shift,
        };
    }

    /// <summary>Those in force: these where they still are, so that what stays is one object.</summary>
    public WorkCoordinates In(in ControlState state) =>
        WorkOffset == state.WorkOffset && ReferenceEquals(_data, state.OffsetData)
        && _localShift == OwnOf(state.LocalShift, Slot.LocalShift, state) && _shift == OwnOf(state.Shift, Slot.Shift, state)
            ? this : Of(state);

    static Point3 OwnOf(Point3 shift, Slot slot, in ControlState state) => state.HasSet(slot) ? shift : default;

    static Point3 Rounded(Point3 shift) => new(Rounded(shift.X), Rounded(shift.Y), Rounded(shift.Z));

    static double Rounded(double shift) => Math.Abs(shift) < Least ? 0 : shift;

    public bool IsKnown => WorkOffset > 0;

    /// <summary>Whether the program has shifted the work offset.</summary>
    public bool IsShifted => Moved != default || LocalShift != default || Shift != default;

    /// <summary>All that the program has shifted it by, mm.</summary>
    public Point3 ShiftInAll => Moved + LocalShift + Shift;

    /// <summary>Whether places of the same numbers are one place in the machine for two programs. Where a datum lies that the setup does not have, only what a program has written of it tells.</summary>
    /// <param name="tolerance">How far apart datums may be and still be one, mm.</param>
    public bool PlacesAs(WorkCoordinates other, double tolerance)
    {
        ArgumentNullException.ThrowIfNull(other);
        if (ReferenceEquals(this, other))
            return true;
        if (WorkOffset != other.WorkOffset)
            return false;
        for (var axis = 0; axis < 3; axis++)
            if (!Same(ShiftInAll[axis], other.ShiftInAll[axis]) || !Same(PutTo(axis), other.PutTo(axis)))
                return false;
        return true;

        bool Same(double a, double b) => a.Equals(b) || Math.Abs(a - b) <= tolerance;
    }

    /// <summary>Where the program has put its zero in machine coordinates along an axis of which nobody knew before where it lies, mm; NaN where it has not.</summary>
    double PutTo(int axis) =>
        _data?.Datum(WorkOffset) is { } set && (set.PutFirst & (1 << axis)) != 0 ? set.Origin[axis] + LocalShift[axis] + Shift[axis] : double.NaN;

    public bool Equals(WorkCoordinates? other) =>
        other is not null && WorkOffset == other.WorkOffset && Moved.Equals(other.Moved) && LocalShift.Equals(other.LocalShift) && Shift.Equals(other.Shift);

    public override int GetHashCode() => HashCode.Combine(WorkOffset, Moved, LocalShift, Shift);

    /// <summary>"G55", "G54 shifted X100 Y20 by G52"; lengths in mm, or in inches.</summary>
    public string Name(bool inInch = false)
    {
        if (!IsKnown)
            return NotKnown;
        var name = WorkOffsetName.Format(WorkOffset);
        if (!IsShifted)
            return name;
        var say = new LengthText(inInch);
        List<string> shifts = [];
        if (Moved != default)
            shifts.Add($"moved{Amount(Moved, say)} by the program");
        if (LocalShift != default)
            shifts.Add($"shifted{Amount(LocalShift, say)} by G52");
        if (Shift != default)
            shifts.Add($"{(LocalShift != default ? "" : "shifted")}{Amount(Shift, say)} by G92".TrimStart());
        return $"{name} {string.Join(" and ", shifts)}";
    }

    /// <summary>" X100 Y20": the axes that are shifted, each by how much; empty where that is not known of one.</summary>
    static string Amount(Point3 shift, LengthText say)
    {
        if (!shift.IsKnown)
            return "";
        var text = "";
        for (var axis = 0; axis < 3; axis++)
            if (shift[axis] != 0)
                text += $" {(char)('X' + axis)}{say.Number(shift[axis])}";
        return text;
    }
}
