using NcLanguage.Control.Execution;
using NcLanguage.Control.State;

namespace NcLanguage.Editing;

/// <summary>Says where the program's own place lies while radius compensation keeps the tool's centre off it.</summary>
static class OffPathText
{
    /// <summary>One sentence on a line of its own; empty where the tool's centre stands on the programmed place.</summary>
    public static string Of(Step step)
    {
        ref readonly var after = ref step.After;
        if (after.OffPath == default)
            return "";
        var lengths = Lengths.Of(after);
        var (centre, programmed) = (Place(after.Position, lengths), Place(after.ProgrammedPosition, lengths));
        return after.Compensation switch
        {
            CompensationSide.Left => $"\nThe tool's centre ends at {centre}, {lengths.Length(after.CompensationRadius)} to the left of the path; programmed is {programmed}.\n",
            CompensationSide.Right => $"\nThe tool's centre ends at {centre}, {lengths.Length(after.CompensationRadius)} to the right of the path; programmed is {programmed}.\n",
            _ => $"\nProgrammed is {programmed}: the next move in X or Y takes the tool's centre back onto the path.\n",
        };
    }

    static string Place(Machine.Geometry.Point3 at, Lengths lengths) => $"{lengths.Axis('X', at.X)} {lengths.Axis('Y', at.Y)}";
}
