using NcLanguage.Checks.Analysis;
using NcLanguage.Machine.Geometry;
using NcLanguage.Machine.Profiles;

namespace NcLanguage.Checks.Clearance;

/// <summary>A rapid that meets stock which still stands.</summary>
/// <param name="Line">Its line in the text, from 0.</param>
/// <param name="Tip">Where the tip is when the tool first meets it, in work coordinates, mm.</param>
/// <param name="Depth">The most that anything stands above the tool's end, mm.</param>
/// <param name="StockTop">The top of the stock in work coordinates, mm.</param>
/// <param name="RLevel">Level of a cycle's traverse that runs no higher than R, in the setup's frame, mm; NaN for other rapids.</param>
readonly record struct StockHit(int Line, Point3 Tip, double Depth, double StockTop, int Tool, double RLevel);

/// <summary>Holds the low rapids of a program against what the cuts before them have left of the stock.</summary>
/// <remarks>Only the part of the stock that low rapids go over is looked at. The work is bounded: no more than the first <see cref="MostCuts"/> cuts below
/// the stock's top are followed, rapids behind them are not looked at; and cells are made larger until all cuts together touch no more than
/// <see cref="MostCellVisits"/>. Larger cells never make a false alarm (see <see cref="StockField"/>), they let narrow contacts pass.</remarks>
static class StockReplay
{
    /// <summary>Cells that all cuts of a program together may touch.</summary>
    public const int MostCellVisits = 4_000_000;

    /// <summary>Cuts of a program that are followed; an arc counts one for each 5 degrees.</summary>
    public const int MostCuts = 20_000;

    public static List<StockHit> Hits(ProgramRun run)
    {
        var hits = new List<StockHit>();
        if (run.Job.Setup.Stock is not { } stock)
            return hits;
        var (area, smallest, last) = AreaOfRapids(run, stock);
        if (last < 0)
            return hits;
        var field = new StockField(area, CellSize(run, area, smallest, last));
        for (var part = 0; part <= last && field.IsKnown; part++)
            Replay(run, part, field, stock, hits);
        return hits;
    }

    /// <summary>The part of the stock that low rapids go over, the least diameter of their tools in mm, and the last part with one; −1 where there is none.</summary>
    static (Box3 Area, double Smallest, int Last) AreaOfRapids(ProgramRun run, Box3 stock)
    {
        var (low, high) = (stock.Max, stock.Min);
        var (smallest, last, cuts) = (double.PositiveInfinity, -1, 0);
        for (var part = 0; part < run.Results.Length && cuts <= MostCuts; cuts += run.Results[part].Cuts.Length, part++)
        {
            foreach (ref readonly var rapid in run.Results[part].LowRapids.AsSpan())
            {
                var radius = run.Job.ShapeOf(rapid.Tool).Radius;
                if (radius == 0)
                    continue;
                smallest = Math.Min(smallest, 2 * radius);
                last = part;
                low = new Point3(Math.Min(low.X, Math.Min(rapid.From.X, rapid.To.X) - radius), Math.Min(low.Y, Math.Min(rapid.From.Y, rapid.To.Y) - radius), stock.Min.Z);
                high = new Point3(Math.Max(high.X, Math.Max(rapid.From.X, rapid.To.X) + radius), Math.Max(high.Y, Math.Max(rapid.From.Y, rapid.To.Y) + radius), stock.Max.Z);
            }
        }
        var from = new Point3(Math.Max(low.X, stock.Min.X), Math.Max(low.Y, stock.Min.Y), stock.Min.Z);
        var to = new Point3(Math.Min(high.X, stock.Max.X), Math.Min(high.Y, stock.Max.Y), stock.Max.Z);
        return from.X < to.X && from.Y < to.Y ? (new Box3(from, to), smallest, last) : (default, 0, -1);
    }

    /// <summary>As fine as the smallest tool wants it, but with the bound kept.</summary>
    static double CellSize(ProgramRun run, Box3 area, double smallest, int last)
    {
        var touched = (area.Max.X - area.Min.X) * (area.Max.Y - area.Min.Y);
        for (var part = 0; part <= last; part++)
        {
            foreach (ref readonly var cut in run.Results[part].Cuts.AsSpan())
            {
                var radius = run.Job.ShapeOf(cut.Tool).Radius;
                var width = Math.Min(Math.Max(cut.From.X, cut.To.X) + radius, area.Max.X) - Math.Max(Math.Min(cut.From.X, cut.To.X) - radius, area.Min.X);
                var depth = Math.Min(Math.Max(cut.From.Y, cut.To.Y) + radius, area.Max.Y) - Math.Max(Math.Min(cut.From.Y, cut.To.Y) - radius, area.Min.Y);
                if (width > 0 && depth > 0)
                    touched += width * depth;
            }
        }
        return Math.Max(StockField.CellSizeFor(smallest), Math.Sqrt(touched / MostCellVisits));
    }

    static void Replay(ProgramRun run, int part, StockField field, Box3 stock, List<StockHit> hits)
    {
        var result = run.Results[part];
        var done = 0;
        foreach (ref readonly var rapid in result.LowRapids.AsSpan())
        {
            for (; done < rapid.CutsBefore; done++)
                field.Cut(result, result.Cuts[done], run.Job.EndOf(result.Cuts[done].Tool));
            var line = run.LineOf(part, rapid.Line);
            if (!Meets(run.Job, rapid, field, out var tip, out var depth))
                continue;
            // All traverses at one R level have one cause.
            var level = rapid.AtR ? rapid.From.Z : double.NaN;
            var isNew = hits.Count == 0 || (hits[^1].Line != line && (hits[^1].Tool != rapid.Tool || hits[^1].RLevel != level));
            if (isNew)
                hits.Add(new StockHit(line, tip - rapid.ToFrame, depth, stock.Max.Z - rapid.ToFrame.Z, rapid.Tool, level));
        }
        for (; done < result.Cuts.Length; done++)
            field.Cut(result, result.Cuts[done], run.Job.EndOf(result.Cuts[done].Tool));
    }


    static bool Meets(Job job, in LowRapid rapid, StockField field, out Point3 tip, out double depth)
    {
        (tip, depth) = (Point3.Unknown, 0);
        var end = job.EndOf(rapid.Tool);
        // A tool that stands in the stock already has been reported where it went in.
        if (field.Meets(rapid.From, rapid.From, end, out _, out _))
            return false;
        // Nor a traverse at R to where R lies inside the stock: that is said of R.
        if (rapid.AtR && field.Meets(rapid.To, rapid.To, end, out _, out _))
            return false;
        if (job.Readings.RapidPath == RapidPathReading.Straight)
            return field.Meets(rapid.From, rapid.To, end, out tip, out depth);
        Span<Point3> path = stackalloc Point3[4];
        var points = BentRapid.Points(rapid.From, rapid.To, job.Machine.Rapid, path);
        for (var i = 1; i < points; i++)
            if (field.Meets(path[i - 1], path[i], end, out tip, out depth))
                return true;
        return false;
    }
}
