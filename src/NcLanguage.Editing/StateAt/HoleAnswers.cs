using System.Collections.Immutable;
using NcLanguage.Checks;
using NcLanguage.Checks.Analysis;
using NcLanguage.Control.State;
using NcLanguage.Machine.Setups;

namespace NcLanguage.Editing;

/// <summary>One hole of the program. Lengths in mm, work coordinates; null where not known or where the hole has none.</summary>
/// <param name="Number">From 1, in the order drilled.</param>
/// <param name="Line">The line of its block, from 0.</param>
/// <param name="Cycle">Such as G82.</param>
/// <param name="Tool">The tool in the spindle.</param>
/// <param name="X">The hole's place along X; null, like <paramref name="Y"/>, for cycles in other planes than XY.</param>
/// <param name="Y">The hole's place along Y.</param>
/// <param name="ReturnTo">The level at which it is left.</param>
/// <param name="ArriveAt">The level of the traverse that reached it.</param>
/// <param name="Feed">What the machine does within its limits, mm/min.</param>
/// <param name="Speed">Likewise, 1/min.</param>
/// <param name="LeastReturn">The lowest level, not below its R level, at which the traverse to the next hole keeps the setup's clearance.</param>
/// <param name="WorkOffset">The work offset that its place and levels are meant in, such as G55; null, like <paramref name="Shift"/>, where all holes of the program stand under one that is not shifted.</param>
/// <param name="Shift">By how much the program has shifted that in all, in X, Y and Z; null where it has not.</param>
/// <param name="ProgrammedFeed">What the program says, where the machine's limits make another feed of it.</param>
/// <param name="ProgrammedSpeed">Likewise the speed.</param>
/// <param name="File">The name of the file that its block stands in, where that is another: the line is then that of the call.</param>
public sealed record HoleAnswer(
    int Number, int Line, string Cycle, int? Tool, double? X, double? Y, double? RLevel, double? Bottom, double? ReturnTo, double? ArriveAt,
    double? DwellSeconds, double? Feed, double? Speed, double? LeastReturn, string? WorkOffset = null, PlaceAnswer? Shift = null,
    double? ProgrammedFeed = null, double? ProgrammedSpeed = null, string? File = null);

/// <summary>The table of holes.</summary>
/// <remarks>
/// JSON of the request <c>nclanguage/holes</c> (params: <c>{"textDocument": {"uri": "…"}}</c>), the same members as <c>holes --format json</c>
/// but with lines from 0, as everywhere in the protocol:
/// <code>
/// {"holes": [{"number": 1, "line": 11, "cycle": "G82", "tool": 4, "x": 20, "y": 12, "rLevel": 2, "bottom": -3, "returnTo": 2,
///             "arriveAt": 50, "dwellSeconds": 0.5, "feed": 120, "speed": 1500, "leastReturn": 27}, …]}
/// </code>
/// </remarks>
public sealed record HolesAnswer(ImmutableArray<HoleAnswer> Holes);

/// <summary>Lists the holes of a program.</summary>
public static class HoleAnswers
{
    /// <summary>All holes in the order drilled. Nothing runs again.</summary>
    /// <exception cref="OperationCanceledException">The token was cancelled.</exception>
    public static HolesAnswer Of(ProgramAnalysis analysis, CancellationToken cancel = default)
    {
        ArgumentNullException.ThrowIfNull(analysis);
        var table = HoleTable.Of(analysis.Main);
        var names = table.NamesCoordinates;
        var answers = ImmutableArray.CreateBuilder<HoleAnswer>(table.Count);
        foreach (var row in table)
        {
            cancel.ThrowIfCancellationRequested();
            answers.Add(Answer(row, names));
        }
        return new HolesAnswer(answers.MoveToImmutable());
    }

    static HoleAnswer Answer(HoleRow row, bool namesCoordinates)
    {
        var hole = row.Hole;
        var isXY = row.Plane == WorkPlane.XY;
        return new HoleAnswer(row.Number, row.Line, $"G{hole.Cycle}", hole.Tool >= 0 ? hole.Tool : null,
            isXY ? StateAt.Known(hole.X) : null, isXY ? StateAt.Known(hole.Y) : null,
            StateAt.Known(hole.RLevel), StateAt.Known(hole.Bottom), StateAt.Known(hole.ReturnTo), StateAt.Known(hole.ArriveAt),
            StateAt.Known(hole.DwellSeconds), StateAt.Known(row.Feed.Machine), StateAt.Known(row.Speed.Machine), StateAt.Known(row.LeastReturn),
            namesCoordinates && row.Coordinates.IsKnown ? WorkOffsetName.Format(row.Coordinates.WorkOffset) : null, ShiftOf(row.Coordinates),
            row.Feed.IsLimited ? row.Feed.Programmed : null, row.Speed.IsLimited ? row.Speed.Programmed : null, row.File);
    }

    static PlaceAnswer? ShiftOf(WorkCoordinates coordinates)
    {
        var shift = coordinates.ShiftInAll;
        return coordinates.IsShifted ? new PlaceAnswer(StateAt.Known(shift.X), StateAt.Known(shift.Y), StateAt.Known(shift.Z)) : null;
    }
}
