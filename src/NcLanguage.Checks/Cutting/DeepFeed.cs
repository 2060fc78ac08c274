using NcLanguage.Checks.Analysis;
using NcLanguage.Checks.Clearance;
using NcLanguage.Checks.Drawing;
using NcLanguage.Machine.Setups;

namespace NcLanguage.Checks.Rules;

/// <summary>Strokes of a drill that is fed straight down without a cycle, and goes too deep at once for its chips.</summary>
static class DeepFeed
{
    /// <summary>One such stroke, and how many more go as deep.</summary>
    /// <param name="Line">Of its block, from 0.</param>
    public readonly record struct Stroke(int Line, Tool Tool, double Depth, int Others);

    /// <summary>The first of each tool and depth, in the order of the run. What was drilled at a place before, as wide or wider, is no chip of this stroke; nor is what mills take away there, before or behind it.</summary>
    /// <param name="deepInDiameters">How deep a stroke may go into full material, in diameters.</param>
    public static IEnumerable<Stroke> Of(FileContext file, double deepInDiameters)
    {
        if (!file.HasFewHoles || file.Run.Job.Setup.Stock is not { } stock)
            return [];
        var reached = new Dictionary<(int Tool, long X, long Y), double>();
        var found = new List<Stroke>();
        var levels = new MilledLevels(file.Run);
        for (var part = 0; part < file.Run.Results.Length; part++)
            foreach (ref readonly var plunge in file.Run.Results[part].Plunges.AsSpan())
            {
                if (plunge.Tool is not { Kind: ToolKind.Drill, Diameter: { } diameter, ThroughCoolant: not true } || !plunge.To.IsKnown || !(Footprint.Distance(stock, plunge.To.X, plunge.To.Y) <= 0))
                    continue;
                var line = file.Run.LineOf(part, plunge.Line);
                var key = (plunge.Tool.Number, Steps(plunge.To.X), Steps(plunge.To.Y));
                // Where the drill fed before it need not come out: what counts is how deep the hole is by then.
                var top = reached.TryGetValue(key, out var before) ? before : Openings.FloorUnder(file.Run.Job.Setup, plunge.To.X, plunge.To.Y, diameter / 2, stock.Max.Z);
                top = Math.Min(Math.Min(top, plunge.From.Z), Made(file, plunge, diameter, line));
                reached[key] = Math.Min(top, plunge.To.Z);
                var depth = top - Math.Max(plunge.To.Z, stock.Min.Z);
                var deep = deepInDiameters * diameter + Rounding;
                // Only where it would be told is it worth while to ask what mills take away there.
                if (depth > deep && depth - Math.Max(0, top - levels.SurfaceAt(plunge.To.X, plunge.To.Y, diameter / 2)) > deep)
                    Add(found, new Stroke(line, plunge.Tool, depth, 0));
            }
        return found;
    }

    /// <summary>How far down a hole that is wide enough was made before a block, by whatever tool; infinity where there is none.</summary>
    static double Made(FileContext file, in Plunge plunge, double diameter, int line)
    {
        var lowest = double.PositiveInfinity;
        var order = file.Run.OrderOf(line);
        foreach (var work in file.Places.At(plunge.To.X, plunge.To.Y)?.Works ?? [])
            if (work.Makes && work.Diameter >= diameter - Rounding && work.Line >= 0 && file.Run.OrderOf(work.Line) < order && work.Tip < lowest)
                lowest = work.Tip;
        return lowest;
    }

    static void Add(List<Stroke> found, in Stroke stroke)
    {
        for (var i = 0; i < found.Count; i++)
            if (found[i].Tool == stroke.Tool && Math.Abs(found[i].Depth - stroke.Depth) <= Alike)
            {
                found[i] = found[i] with { Others = found[i].Others + 1 };
                return;
            }
        found.Add(stroke);
    }

    const double Rounding = 0.001;

    /// <summary>Depths that differ by less are told together, mm.</summary>
    const double Alike = 1;

    static long Steps(double mm) => (long)Math.Round(mm / 0.01);
}
