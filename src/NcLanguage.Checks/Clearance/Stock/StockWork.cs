using System.Runtime.CompilerServices;
using NcLanguage.Checks.Analysis;
using NcLanguage.Machine.Geometry;

namespace NcLanguage.Checks.Clearance;

/// <summary>How much work it is to follow the cuts of a run, and how large cells must be for it to keep within a bound.</summary>
static class StockWork
{
    /// <summary>Cells of a level pass of a flat end that take as long as one of any other: whole rows are lowered at a time.</summary>
    const double LevelCells = 10;

    /// <summary>Cells of another end that take as long as one of a round corner with a flat middle on a slope: its lowest place is searched for.</summary>
    const double CornerCells = 10;

    /// <summary>How near to an arc its chords keep, mm, as far as their number goes: about what cells of 0.25 mm want.</summary>
    const double NearChords = 0.03;

    /// <summary>The cell size, mm, at which the cuts of some parts together touch no more than so many cells; cells that are quick to lower count as a part of one.</summary>
    public static double CellSize(ReadOnlySpan<PartResult> parts, Job job, Box3 area, double mostVisits)
    {
        var touched = (area.Max.X - area.Min.X) * (area.Max.Y - area.Min.Y) / LevelCells;
        foreach (var part in parts)
            touched += part.WorkOver(job, area);
        return Math.Sqrt(touched / mostVisits);
    }

    /// <summary>The area that the cuts of a part go over, mm², by how long its cells take.</summary>
    public static double Of(PartResult part, Job job, Box3 area)
    {
        var touched = 0.0;
        var (tool, end) = (int.MinValue, default(EndForm));
        foreach (ref readonly var cut in part.Cuts)
        {
            if (cut.Tool != tool)
                (tool, end) = (cut.Tool, job.EndOf(cut.Tool));
            touched += Touched(part, cut, end, area);
        }
        return touched;
    }

    /// <summary>The area that a cut goes over, mm², by how long its cells take.</summary>
    [MethodImpl(MethodImplOptions.AggressiveInlining)]
    static double Touched(PartResult part, in StockCut cut, in EndForm end, Box3 area)
    {
        if (!(Math.Min(cut.From.Z, cut.To.Z) < area.Max.Z) && cut.Arc < 0)
            return 0;
        var isLevel = cut.From.Z == cut.To.Z || (cut.From.X == cut.To.X && cut.From.Y == cut.To.Y);
        var (round, across) = (Math.PI * end.Radius * end.Radius, 2 * end.Radius);
        if (cut.Arc >= 0)
        {
            var path = part.PathOf(cut);
            if (!path.IsKnown || path.Low.Z >= area.Max.Z)
                return 0;
            return path.IsLevel ? round + across * path.Length
                : (round * path.Chords(NearChords) + across * path.Length) * Weight(end, false);
        }
        var width = Overlapping(cut.From.X, cut.To.X, end.Radius, area.Min.X, area.Max.X);
        var depth = Overlapping(cut.From.Y, cut.To.Y, end.Radius, area.Min.Y, area.Max.Y);
        var swept = round + across * double.Hypot(cut.To.X - cut.From.X, cut.To.Y - cut.From.Y);
        return width > 0 && depth > 0 ? Math.Min(width * depth, swept) * Weight(end, isLevel) : 0;
    }

    static double Weight(in EndForm end, bool isLevel) =>
        isLevel ? (end.IsFlat ? 1 / LevelCells : 1)
        : end.CornerRadius > 0 && end.FlatRadius > 0 ? CornerCells : 1;

    static double Overlapping(double from, double to, double reach, double low, double high) =>
        Math.Min(Math.Max(from, to) + reach, high) - Math.Max(Math.Min(from, to) - reach, low);
}
