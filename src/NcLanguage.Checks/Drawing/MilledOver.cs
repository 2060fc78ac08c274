using NcLanguage.Checks.Analysis;
using NcLanguage.Checks.Clearance;
using NcLanguage.Machine.Geometry;
using NcLanguage.Machine.Setups;

namespace NcLanguage.Checks.Drawing;

/// <summary>Tells whether mills take away what is drilled at a place, so that the hole was only their way in. It is told from the cuts below the top of the
/// stock; without a stock nothing is known of them.</summary>
/// <remarks>Cuts are gathered when first asked for.</remarks>
/// <param name="run">The program's run.</param>
/// <param name="counts">The kinds of tool whose cuts count; null for all that clear with their side.</param>
sealed class MilledOver(ProgramRun run, Func<ToolKind, bool>? counts = null)
{
    readonly Func<ToolKind, bool> _counts = counts ?? ShapingMoves.Mills;

    /// <summary>Cuts that are looked at for all places together, arcs counting one for each 5 degrees; behind them a place is taken for milled over.</summary>
    const int MostLooks = 20_000_000;

    /// <summary>Angle of one chord of an arc, radians: 5 degrees.</summary>
    const double ChordAngle = Math.PI / 36;

    /// <summary>A start hole may be this much deeper than what is milled, mm: it is drilled before the floor's allowance is known to the last tenth.</summary>
    const double Deeper = 1;

    List<(Point3 From, Point3 To, double Radius)>? _cuts;
    long _looks;

    /// <summary>Whether a mill cuts into the hole down to its bottom, or through the stock.</summary>
    public bool TakesAway(WorkedPlace place, in PlaceWork work)
    {
        _cuts ??= Gather();
        _looks += _cuts.Count;
        if (_looks > MostLooks)
            return true;
        var floor = Math.Max(work.Full + Deeper, run.Job.Setup.Stock?.Min.Z ?? double.NegativeInfinity);
        var reach = double.IsNaN(work.Diameter) ? 0 : work.Diameter / 2;
        foreach (var (from, to, radius) in _cuts)
            if (Math.Min(from.Z, to.Z) <= floor && Footprint.Distance(from, to, place.X, place.Y) < radius + reach)
                return true;
        return false;
    }

    /// <summary>Whether a mill cuts over a place at all, so that it is not known where its surface lies when a drill comes.</summary>
    /// <param name="reach">How far from the middle the surface matters, mm.</param>
    public bool Touches(WorkedPlace place, double reach)
    {
        _cuts ??= Gather();
        _looks += _cuts.Count;
        if (_looks > MostLooks)
            return true;
        foreach (var (from, to, radius) in _cuts)
            if (Footprint.Distance(from, to, place.X, place.Y) < radius + reach)
                return true;
        return false;
    }

    List<(Point3 From, Point3 To, double Radius)> Gather()
    {
        var cuts = new List<(Point3, Point3, double)>();
        var top = run.Job.Setup.Stock?.Max.Z ?? double.NegativeInfinity;
        foreach (var part in run.Results)
            foreach (ref readonly var cut in part.Cuts)
                if (Math.Min(cut.From.Z, cut.To.Z) < top && cut.From.IsKnown && cut.To.IsKnown && run.Job.Setup.FindTool(cut.Tool) is { Kind: { } kind, Diameter: { } diameter } && _counts(kind))
                    Add(part, cut, diameter / 2, cuts);
        return cuts;
    }

    /// <summary>Adds a straight cut, or an arc by its chords.</summary>
    static void Add(PartResult part, in StockCut cut, double radius, List<(Point3, Point3, double)> cuts)
    {
        if (cut.Arc < 0)
        {
            cuts.Add((cut.From, cut.To, radius));
            return;
        }
        var arc = part.PathOf(cut);
        if (!arc.IsKnown)
            return;
        foreach (var (from, to) in arc.ChordsOver(ChordAngle))
            cuts.Add((from, to, radius));
    }
}
