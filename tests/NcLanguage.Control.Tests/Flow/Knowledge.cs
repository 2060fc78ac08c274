using NcLanguage.Control.State;
using NcLanguage.Machine.Geometry;
using NcLanguage.Syntax.Expressions;

namespace NcLanguage.Control.Tests.Flow;

/// <summary>Compares what is said to be known of a state with the state as it is.</summary>
static class Knowledge
{
    static readonly int[] Numbers = [1, 2, 3, 4, 100, 101, 102];

    /// <summary>The first part that is said to be known and is another; null where there is none.</summary>
    public static string? Contradiction(in ControlState known, in ControlState actual)
    {
        (string Name, object Known, object Actual, bool Agrees)[] parts =
        [
            Part(nameof(known.Position), known.Position, actual.Position, Agree(known.Position, actual.Position)),
            Part(nameof(known.MachinePosition), known.MachinePosition, actual.MachinePosition, Agree(known.MachinePosition, actual.MachinePosition)),
            Part(nameof(known.Shift), known.Shift, actual.Shift, Agree(known.Shift, actual.Shift)),
            Part(nameof(known.StoredShift), known.StoredShift, actual.StoredShift, Agree(known.StoredShift, actual.StoredShift)),
            Part(nameof(known.Motion), known.Motion, actual.Motion, Agree(known.Motion, actual.Motion)),
            Part(nameof(known.Plane), known.Plane, actual.Plane, Agree(known.Plane, actual.Plane)),
            Part(nameof(known.Distance), known.Distance, actual.Distance, Agree(known.Distance, actual.Distance)),
            Part(nameof(known.Units), known.Units, actual.Units, Agree(known.Units, actual.Units)),
            Part(nameof(known.FeedMode), known.FeedMode, actual.FeedMode, Agree(known.FeedMode, actual.FeedMode)),
            Part(nameof(known.Spindle), known.Spindle, actual.Spindle, Agree(known.Spindle, actual.Spindle)),
            Part(nameof(known.Coolant), known.Coolant, actual.Coolant, Agree(known.Coolant, actual.Coolant)),
            Part(nameof(known.LengthOffset), known.LengthOffset, actual.LengthOffset, Agree(known.LengthOffset, actual.LengthOffset)),
            Part(nameof(known.ReturnLevel), known.ReturnLevel, actual.ReturnLevel, Agree(known.ReturnLevel, actual.ReturnLevel)),
            Part(nameof(known.Cycle), known.Cycle, actual.Cycle, Agree(known.Cycle, actual.Cycle)),
            Part(nameof(known.WorkOffset), known.WorkOffset, actual.WorkOffset, Agree(known.WorkOffset, actual.WorkOffset)),
            Part(nameof(known.H), known.H, actual.H, Agree(known.H, actual.H)),
            Part(nameof(known.Tool), known.Tool, actual.Tool, Agree(known.Tool, actual.Tool)),
            Part(nameof(known.SelectedTool), known.SelectedTool, actual.SelectedTool, Agree(known.SelectedTool, actual.SelectedTool)),
            Part(nameof(known.Feed), known.Feed, actual.Feed, Agree(known.Feed, actual.Feed)),
            Part(nameof(known.Speed), known.Speed, actual.Speed, Agree(known.Speed, actual.Speed)),
            Part(nameof(known.InitialLevel), known.InitialLevel, actual.InitialLevel, Agree(known.InitialLevel, actual.InitialLevel)),
            Part(nameof(known.RLevel), known.RLevel, actual.RLevel, Agree(known.RLevel, actual.RLevel)),
            Part(nameof(known.Bottom), known.Bottom, actual.Bottom, Agree(known.Bottom, actual.Bottom)),
            Part(nameof(known.DwellNumber), known.DwellNumber, actual.DwellNumber, Agree(known.DwellNumber, actual.DwellNumber)),
            Part(nameof(known.Peck), known.Peck, actual.Peck, Agree(known.Peck, actual.Peck)),
        ];
        foreach (var (name, said, there, agrees) in parts)
            if (!agrees)
                return $"{name}: {said}, not {there}";
        var (variables, actualVariables) = (known.Variables ?? Variables.None, actual.Variables ?? Variables.None);
        foreach (var number in Numbers)
            if (!AgreeAsVariables(variables.Get(number), actualVariables.Get(number)))
                return $"#{number}: {variables.Get(number)}, not {actualVariables.Get(number)}";
        return null;
    }

    static (string, object, object, bool) Part(string name, object known, object actual, bool agrees) => (name, known, actual, agrees);

    static bool AgreeAsVariables(double known, double actual) =>
        Expression.IsVacant(known) ? Expression.IsVacant(actual) : double.IsNaN(known) || known.Equals(actual);

    static bool Agree(double known, double actual) => double.IsNaN(known) || known.Equals(actual) || Math.Abs(known - actual) <= 1e-9 * (1 + Math.Abs(actual));

    static bool Agree(Point3 known, Point3 actual) => Agree(known.X, actual.X) && Agree(known.Y, actual.Y) && Agree(known.Z, actual.Z);

    static bool Agree(int known, int actual) => known == -1 || known == actual;

    /// <summary>The first of each row of modes is the one not known.</summary>
    static bool Agree<T>(T known, T actual) where T : struct, Enum => known.Equals(default(T)) || known.Equals(actual);
}
