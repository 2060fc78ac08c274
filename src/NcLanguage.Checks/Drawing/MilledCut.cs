using NcLanguage.Checks.Analysis;
using NcLanguage.Checks.Clearance;
using NcLanguage.Machine.Geometry;
using NcLanguage.Machine.Setups;

namespace NcLanguage.Checks.Drawing;

/// <summary>A straight cut of a tool in the setup's frame, or a chord of its arc.</summary>
/// <param name="From">Where it starts, mm; of one straight up or down its lower end.</param>
/// <param name="To">Where it ends, or the same lower end, mm.</param>
/// <param name="CentreX">X of what it turns about, or goes straight down at; NaN for other cuts.</param>
/// <param name="CentreY">Y of the same.</param>
readonly record struct MilledCut(Point3 From, Point3 To, EndForm End, double CentreX, double CentreY)
{
    /// <summary>Angle of one chord of an arc, radians: 5 degrees.</summary>
    const double ChordAngle = Math.PI / 36;

    /// <summary>The cuts of a run that go below a level, of the tools of some kinds whose diameter is known.</summary>
    public static List<MilledCut> Below(double level, ProgramRun run, Func<ToolKind, bool> counts)
    {
        var cuts = new List<MilledCut>();
        foreach (var part in run.Results)
            foreach (ref readonly var cut in part.Cuts)
                if (Math.Min(cut.From.Z, cut.To.Z) < level && cut.From.IsKnown && cut.To.IsKnown && run.Job.Setup.FindTool(cut.Tool) is { Kind: { } kind, Diameter: > 0 } && counts(kind))
                    Add(part, cut, run.Job.EndOf(cut.Tool), cuts);
        return cuts;
    }

    static void Add(PartResult part, in StockCut cut, in EndForm end, List<MilledCut> cuts)
    {
        if (cut.Arc < 0)
        {
            var lowest = cut.From.Z < cut.To.Z ? cut.From : cut.To;
            cuts.Add(Upright.Is(cut.From, cut.To) ? new(lowest, lowest, end, lowest.X, lowest.Y) : new(cut.From, cut.To, end, double.NaN, double.NaN));
            return;
        }
        var arc = part.PathOf(cut);
        if (!arc.IsKnown)
            return;
        var center = part.Arcs[cut.Arc].Center;
        foreach (var (from, to) in arc.ChordsOver(ChordAngle))
            cuts.Add(new(from, to, end, center.X, center.Y));
    }

    /// <summary>How far its path lies from a place as seen from above, mm.</summary>
    public double DistanceTo(double x, double y) => Footprint.Distance(From, To, x, y);
}
