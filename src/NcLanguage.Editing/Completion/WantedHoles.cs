using NcLanguage.Checks.Analysis;
using NcLanguage.Checks.Cutting;
using NcLanguage.Control.State;
using NcLanguage.Machine.Setups;

namespace NcLanguage.Editing;

/// <summary>A hole of the drawing in the work coordinates in force, mm.</summary>
/// <param name="Number">From 1, in the setup's order.</param>
readonly record struct WantedHole(int Number, DrawingHole Hole, double X, double Y)
{
    /// <summary>How well the block at the cursor goes with it, where that was asked.</summary>
    public HoleFit Fit { get; init; }

    /// <summary>hole 3 of the drawing, 6.8 mm, 12 mm deep, M8; before that what speaks against it.</summary>
    public string Describe(Checks.LengthText say)
    {
        var text = $"hole {Number} of the drawing";
        if (Hole.Diameter is { } diameter)
            text += $", {say.Length(diameter)}";
        if (Hole.Depth is { } depth)
            text += $", {say.Length(depth)} deep";
        if (Hole.Thread is { } thread)
            text += $", {thread}";
        return Fit.Why is { } why ? $"{why}: {text}" : text;
    }
}

/// <summary>The holes of the drawing that fit the tool.</summary>
static class WantedHoles
{
    /// <summary>Holes of the program that are looked at to each side.</summary>
    const int MostLookedAt = 2000;

    /// <summary>Places nearer than this in X and Y are one, mm: as in the comparison with the drawing, the finest tolerance of ISO 2768-1 for lengths without one of their own (class f, from memory).</summary>
    const double SamePlace = 0.05;

    /// <summary>Those that the tool has not drilled yet, those first that go with the cycle and have no obstacle near, then nearest first; empty where places are not known.</summary>
    /// <remarks>Asked through <see cref="Spot.HolesLeft"/>, which keeps the answer.</remarks>
    public static List<WantedHole> Left(Spot spot)
    {
        var drilled = Drilled(spot);
        var holes = Fitting(spot).Where(hole => !drilled.Holds(hole.Hole.X, hole.Hole.Y)).Select(hole => hole with { Fit = HoleFit.Of(spot, hole) }).OrderBy(hole => hole.Fit.Rank);
        var at = spot.Before.ProgrammedPosition;
        return double.IsNaN(at.X + at.Y) ? [.. holes] : [.. holes.ThenBy(hole => Math.Round(Math.Pow(hole.X - at.X, 2) + Math.Pow(hole.Y - at.Y, 2), 6))];
    }

    /// <summary>Those that the tool is the right one for, in the setup's order.</summary>
    public static List<WantedHole> Fitting(Spot spot)
    {
        var all = new List<WantedHole>();
        if (!spot.IsPlain)
            return all;
        for (var i = 0; i < spot.Setup.Holes.Length; i++)
        {
            var hole = spot.Setup.Holes[i];
            all.Add(new WantedHole(i + 1, hole, hole.X - spot.ToFrame.X, hole.Y - spot.ToFrame.Y));
        }
        return spot.Tool is { } tool ? Fitting(all, tool) : all;
    }

    public static bool IsNear((double X, double Y) a, (double X, double Y) b) =>
        Math.Abs(a.X - b.X) <= SamePlace && Math.Abs(a.Y - b.Y) <= SamePlace;

    static List<WantedHole> Fitting(List<WantedHole> all, Tool tool)
    {
        const double Equal = 0.01;
        switch (tool.Kind)
        {
            case ToolKind.Tap:
                return all.FindAll(hole => hole.Hole.Thread is { } name && ThreadName.Read(name)?.IsOther(tool.Diameter, tool.Pitch) != true);
            case ToolKind.Drill or ToolKind.Reamer when tool.Diameter is { } diameter:
                var exact = all.FindAll(hole => SizeOf(hole.Hole) is not { } wanted || Math.Abs(wanted - diameter) <= Equal);
                // A drill that fits none opens the larger ones.
                return exact.Count > 0 || tool.Kind == ToolKind.Reamer ? exact : all.FindAll(hole => SizeOf(hole.Hole) > diameter);
            case ToolKind.ThreadMill:
                return all.FindAll(hole => hole.Hole.Thread is not null && !(SizeOf(hole.Hole) <= tool.Diameter));
            // What goes down into a hole is no wider than it; a bar may be set to more than its own size.
            case ToolKind.BoringBar or ToolKind.EndMill or ToolKind.BallMill or ToolKind.BullMill or ToolKind.SlotMill or ToolKind.FaceMill:
                return all.FindAll(hole => !(SizeOf(hole.Hole) < tool.Diameter - Equal));
            default:
                return all;
        }
    }

    /// <summary>The diameter that is drilled, mm: of a thread without one that of its tap drill; null where it is not known.</summary>
    static double? SizeOf(DrawingHole hole) =>
        hole.Diameter ?? (hole.Thread is { } name && Threads.Find(name) is { } thread ? thread.TapDrill ?? thread.Major - thread.Pitch : null);

    /// <summary>The places in the setup's frame that the tool drills above and below the block, for as long as it stays in the spindle.</summary>
    static PlaceSet Drilled(Spot spot)
    {
        var places = new PlaceSet();
        if (spot.Setup.Holes.IsEmpty)
            return places;
        var table = HoleTable.Of(spot.Analysis.Main);
        var (first, count) = table.At(spot.Line);
        for (var i = first - 1; i >= Math.Max(0, first - MostLookedAt) && Note(table, i, spot, places); i--)
        {
        }
        for (var i = first + count; i < Math.Min(table.Count, first + count + MostLookedAt) && Note(table, i, spot, places); i++)
        {
        }
        return places;
    }

    static bool Note(HoleTable table, int index, Spot spot, PlaceSet places)
    {
        var hole = table.ResultAt(index);
        if (hole.Hole.Tool != spot.ToolNumber)
            return false;
        var place = hole.PlaceAt(hole.Hole.Bottom);
        if (hole.Plane == WorkPlane.XY && !double.IsNaN(place.X + place.Y))
            places.Add(place.X, place.Y);
        return true;
    }

    /// <summary>Places in cells as wide as two places may differ.</summary>
    sealed class PlaceSet
    {
        readonly Dictionary<(long, long), (double X, double Y)> _cells = [];

        public void Add(double x, double y) => _cells.TryAdd(CellOf(x, y), (x, y));

        public bool Holds(double x, double y)
        {
            var (column, row) = CellOf(x, y);
            for (var i = -1; i <= 1; i++)
                for (var j = -1; j <= 1; j++)
                    if (_cells.TryGetValue((column + i, row + j), out var place) && IsNear(place, (x, y)))
                        return true;
            return false;
        }

        static (long, long) CellOf(double x, double y) => ((long)Math.Floor(x / SamePlace), (long)Math.Floor(y / SamePlace));
    }
}
