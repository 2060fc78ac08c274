using NcLanguage.Checks;
using NcLanguage.Checks.Analysis;
using NcLanguage.Control.State;

namespace NcLanguage.Editing;

/// <summary>The name of the coordinates that places are meant in, where the program works under more than one work offset or shifts one.</summary>
static class CoordinatesText
{
    /// <summary>" (G55)", to stand behind a place; empty where the place needs none.</summary>
    public static string Behind(ProgramRun run, in ControlState state) =>
        run.NamesCoordinates ? Behind(WorkCoordinates.Of(state), state) : "";

    /// <summary>The same for a hole of the table.</summary>
    public static string Behind(HoleTable table, in HoleRow row, in ControlState state) =>
        table.NamesCoordinates ? Behind(row.Coordinates, state) : "";

    static string Behind(WorkCoordinates coordinates, in ControlState state) => $" ({coordinates.Name(state.Units == LengthUnit.Inch)})";
}
