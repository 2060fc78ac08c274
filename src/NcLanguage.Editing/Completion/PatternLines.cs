using System.Globalization;
using NcLanguage.Control.State;
using NcLanguage.Machine.Profiles;
using NcLanguage.Syntax.Expressions;

namespace NcLanguage.Editing;

/// <summary>Patterns of holes: as a loop whose numbers are filled in, and the drawing's holes written out. They hold for the cycle in force.</summary>
static class PatternLines
{
    /// <summary>Holes left out that are told.</summary>
    const int MostLeftOut = 20;

    public static void Add(Spot spot, CompletionItems items, int rank)
    {
        // Without a cycle in force nothing would be drilled: its line comes first.
        if (spot.Cycle == 0)
            return;
        AddDrawing(spot, items, rank);
        // The loops name places: where a control reads distances they would run away.
        if (spot.After.Distance != DistanceMode.Absolute || spot.Readings.HolePositions != HolePositionReading.DistanceMode || spot.After.Plane != WorkPlane.XY)
            return;
        rank++;
        items.Add(rank, Circle(spot, isArc: false));
        items.Add(rank, Circle(spot, isArc: true));
        items.Add(rank, Grid(spot));
    }

    static void AddDrawing(Spot spot, CompletionItems items, int rank)
    {
        if (spot.HolesAreDistances is not { } areDistances || double.IsNaN(spot.Before.ProgrammedPosition.X + spot.Before.ProgrammedPosition.Y))
            return;
        var holes = spot.HolesLeft.Where(hole => hole.Fit.Rank == HoleFitRank.Fits).ToList();
        if (holes.Count < 2)
            return;
        var writer = new LineWriter(spot);
        var at = (spot.Before.ProgrammedPosition.X, spot.Before.ProgrammedPosition.Y);
        for (var i = 0; i < holes.Count; i++)
        {
            if (i > 0)
                writer.NewLine();
            var (x, y) = areDistances ? (holes[i].X - at.X, holes[i].Y - at.Y) : (holes[i].X, holes[i].Y);
            writer.Text($"{spot.Style.Length('X', x)} {spot.Style.Length('Y', y)}");
            at = (holes[i].X, holes[i].Y);
        }
        var others = spot.HolesLeft.Count - holes.Count;
        items.Add(rank, writer.Entry(
            "holes of the drawing", others == 0 ? $"the {holes.Count} that this tool has not drilled yet, one a block" : $"{holes.Count} that this tool has not drilled yet, one a block; {others} left out",
            others == 0 ? null : "Left out:\n\n" + string.Join("\n", spot.HolesLeft.Where(hole => hole.Fit.Why is not null).Take(MostLeftOut).Select(hole => $"- hole {hole.Number}: {hole.Fit.Why}")) + (others > MostLeftOut ? "\n- …" : "")));
    }

    /// <summary>Evenly around a circle, or with an angle between: X = Xc + R·cos, Y = Yc + R·sin, as in the figures.</summary>
    static CompletionEntry Circle(Spot spot, bool isArc)
    {
        var names = FreeVariables(spot, 7);
        var writer = new LineWriter(spot);
        Set(writer, names[0], "0", "centre X");
        Set(writer, names[1], "0", "centre Y");
        Set(writer, names[2], "40", "diameter");
        Set(writer, names[3], "6", "holes");
        Set(writer, names[4], "0", "first angle");
        if (isArc)
            Set(writer, names[5], "30", "angle between");
        else
            writer.Text($"{names[5]}=360/{names[3]}").NewLine();
        writer.Text($"{names[6]}=0").NewLine();
        writer.Text($"WHILE [{names[6]} LT {names[3]}] DO 1").NewLine();
        var angle = $"[{names[4]}+{names[6]}*{names[5]}]";
        writer.Text($"X[{names[0]}+{names[2]}/2*COS{angle}] Y[{names[1]}+{names[2]}/2*SIN{angle}]").NewLine();
        EndLoop(writer, names[6], 1);
        return isArc
            ? writer.Entry("hole arc", "holes on an arc, as a loop", "Angles in degrees from X, counterclockwise. Lengths in the unit in force.")
            : writer.Entry("bolt circle", "holes spread over a circle, as a loop", "Angles in degrees from X, counterclockwise. Lengths in the unit in force.");
    }

    static CompletionEntry Grid(Spot spot)
    {
        var names = FreeVariables(spot, 8);
        var writer = new LineWriter(spot);
        Set(writer, names[0], "0", "first X");
        Set(writer, names[1], "0", "first Y");
        Set(writer, names[2], "20", "step X");
        Set(writer, names[3], "20", "step Y");
        Set(writer, names[4], "4", "columns");
        Set(writer, names[5], "3", "rows");
        writer.Text($"{names[6]}=0").NewLine();
        writer.Text($"WHILE [{names[6]} LT {names[5]}] DO 1").NewLine();
        writer.Text($"{names[7]}=0").NewLine();
        writer.Text($"WHILE [{names[7]} LT {names[4]}] DO 2").NewLine();
        writer.Text($"X[{names[0]}+{names[7]}*{names[2]}] Y[{names[1]}+{names[6]}*{names[3]}]").NewLine();
        EndLoop(writer, names[7], 2);
        writer.NewLine();
        EndLoop(writer, names[6], 1);
        return writer.Entry("hole grid", "holes in rows and columns, as a loop", "Lengths in the unit in force.");
    }

    static void Set(LineWriter writer, string name, string value, string comment) => writer.Text(name + "=").Hole(value).Text($"({comment})").NewLine();

    static void EndLoop(LineWriter writer, string counter, int number) =>
        writer.Text($"{counter}={counter}+1").NewLine().Text($"END {number.ToString(CultureInfo.InvariantCulture)}");

    /// <summary>Local variables that hold nothing yet; the last ones where none is known to be free.</summary>
    static string[] FreeVariables(Spot spot, int count)
    {
        var variables = spot.Before.Variables ?? Variables.None;
        var free = Enumerable.Range(1, Variables.LastLocal).Where(number => Expression.IsVacant(variables.Get(number))).ToList();
        if (free.Count < count)
            free = [.. Enumerable.Range(Variables.LastLocal - count + 1, count)];
        return [.. free.Take(count).Select(number => "#" + number.ToString(CultureInfo.InvariantCulture))];
    }
}
