using NcLanguage.Checks.Analysis;
using NcLanguage.Checks.Clearance;
using NcLanguage.Machine.Setups;

namespace NcLanguage.Checks.Drawing;

/// <summary>Tells whether mills take away what is drilled at a place, so that the hole was only their way in. It is told from the cuts below the top of the
/// stock; without a stock nothing is known of them.</summary>
/// <remarks>Cuts are gathered when first asked for.</remarks>
/// <param name="run">The program's run.</param>
/// <param name="counts">The kinds of tool whose cuts count; null for all that clear with their side.</param>
sealed class MilledOver(ProgramRun run, Func<ToolKind, bool>? counts = null)
{
    /// <summary>Cuts that are looked at for all places together, arcs counting one for each 5 degrees; behind them a place is taken for milled over.</summary>
    const int MostLooks = 20_000_000;

    /// <summary>A start hole may be this much deeper than what is milled, mm: it is drilled before the floor's allowance is known to the last tenth.</summary>
    const double Deeper = 1;

    List<MilledCut>? _cuts;
    long _looks;

    List<MilledCut> Cuts => _cuts ??= MilledCut.Below(run.Job.Setup.Stock?.Max.Z ?? double.NegativeInfinity, run, counts ?? ShapingMoves.Mills);

    /// <summary>Whether a mill cuts into the hole down to its bottom, or through the stock.</summary>
    public bool TakesAway(WorkedPlace place, in PlaceWork work)
    {
        _looks += Cuts.Count;
        if (_looks > MostLooks)
            return true;
        // A spot is as deep as its tip: the level at which its cone would be as wide as the tool often lies above the part.
        var floor = Math.Max((work.Kind == WorkKind.Spot ? work.Tip : work.Full) + Deeper, run.Job.Setup.Stock?.Min.Z ?? double.NegativeInfinity);
        var reach = double.IsNaN(work.Diameter) ? 0 : work.Diameter / 2;
        foreach (var cut in Cuts)
            if (Math.Min(cut.From.Z, cut.To.Z) <= floor && cut.DistanceTo(place.X, place.Y) < cut.End.Radius + reach)
                return true;
        return false;
    }

    /// <summary>Whether a mill cuts over a place at all, so that it is not known where its surface lies when a drill comes.</summary>
    /// <param name="reach">How far from the middle the surface matters, mm.</param>
    public bool Touches(WorkedPlace place, double reach)
    {
        _looks += Cuts.Count;
        if (_looks > MostLooks)
            return true;
        foreach (var cut in Cuts)
            if (cut.DistanceTo(place.X, place.Y) < cut.End.Radius + reach)
                return true;
        return false;
    }
}
