using NcLanguage.Control.Execution;
using NcLanguage.Machine.Geometry;
using NcLanguage.Machine.Profiles;
using NcLanguage.Machine.Setups;

namespace NcLanguage.Control.State;

/// <summary>Variables that the control fills itself: the reserved numbers of NISTIR 6556 table 2, and the places in trade use (common practice).</summary>
/// <remarks>Places come in the unit of the program, X Y Z; the other axes of the tables are 0 on a three-axis machine.</remarks>
public static class SystemVariables
{
    /// <summary>First number behind which a program's own variables do not lie.</summary>
    const int First = 1000;

    /// <summary>Setting this variable stops the control with an alarm (common practice).</summary>
    public const int Alarm = 3000;

    /// <summary>The datum of the first coordinate system along X; those of each further system stand so many numbers behind (NISTIR 6556 table 2).</summary>
    const int FirstDatum = 5221;
    const int ToNextDatum = 20;
    const int Systems = 9;

    /// <summary>True for a variable that holds where a datum lies along X, Y or Z (NISTIR 6556 table 2).</summary>
    public static bool IsDatum(int number) => number is >= FirstDatum and < FirstDatum + ToNextDatum * Systems && DatumOf(number).Axis < 3;

    /// <summary>Whose datum such a variable holds, a coordinate system from 1 to 9, and along which axis: 0, 1 or 2.</summary>
    public static (int System, int Axis) DatumOf(int number) => ((number - FirstDatum) / ToNextDatum + 1, (number - FirstDatum) % ToNextDatum);

    /// <summary>True for a number behind those of a program's own variables.</summary>
    public static bool IsOne(int number) => number >= First;

    /// <summary>The value, or NaN where it is not known here or the number has no published meaning.</summary>
    public static double Get(int number, in ControlState state, Setup setup, MachineProfile machine)
    {
        if (number is >= ModeVariables.First and <= ModeVariables.Last)
            return ModeVariables.Get(number, state);
        if (number == 5220)
            return SystemOf(state.WorkOffset);
        var (place, axis) = number switch
        {
            // Where the last block ended and where the tool stands, in work coordinates; where it stands in machine coordinates.
            >= 5001 and <= 5003 => (state.Position, number - 5001),
            >= 5041 and <= 5043 => (state.Position, number - 5041),
            >= 5021 and <= 5023 => (state.MachinePosition, number - 5021),
            >= 5161 and <= 5163 => (machine.Home, number - 5161),
            >= 5211 and <= 5213 => (state.Shift, number - 5211),
            _ when IsDatum(number) => (Origin(DatumOf(number).System, state, setup), DatumOf(number).Axis),
            _ => (Point3.Unknown, 0),
        };
        return place[axis] / UnitLength.Of(state.Units);
    }

    static Point3 Origin(int system, in ControlState state, Setup setup) => Offsets.Datum(OfSystem(system), state, setup);

    /// <summary>The work offset of a coordinate system from 1 to 9 (NISTIR 6556 §3.5.13): 54 to 59, then 591 to 593.</summary>
    public static int OfSystem(int system) => system <= 6 ? 53 + system : 584 + system;

    static double SystemOf(int workOffset) => workOffset switch
    {
        >= 54 and <= 59 => workOffset - 53,
        >= 591 and <= 593 => workOffset - 584,
        _ => double.NaN,
    };
}
