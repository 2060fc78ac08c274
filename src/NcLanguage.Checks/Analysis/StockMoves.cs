using System.Runtime.CompilerServices;
using NcLanguage.Checks.Clearance;
using NcLanguage.Control.Execution;
using NcLanguage.Control.Moves;
using NcLanguage.Control.State;
using NcLanguage.Machine.Geometry;
using NcLanguage.Machine.Setups;

namespace NcLanguage.Checks.Analysis;

/// <summary>Picks from a step what the question needs what still stands of the stock, and who meets it: the cuts and the low rapids.</summary>
static class StockMoves
{
    const int BackBoring = 87;

    /// <summary>How far the chords of a probe's arc keep within it, mm: less than counts as contact.</summary>
    const double ChordTolerance = 0.01;

    /// <summary>Chords of one arc of a probe: some turns; longer ones are not held against the stock.</summary>
    const int MostChords = 2000;

    public static void Note(Step step, int line, Job job, List<StockCut> cuts, List<StockArc> arcs, List<LowRapid> rapids)
    {
        var tool = step.After.Tool;
        var reach = job.ShapeOf(tool).GreatestRadius;
        var isProbe = IsOfProbe(step, job);
        for (var i = 0; i < step.Moves.Count; i++)
        {
            ref readonly var move = ref step.Moves[i];
            if (!move.IsMotion)
                continue;
            var from = move.From + step.ToFrame;
            var to = move.To + step.ToFrame;
            if (move.IsCut && !isProbe)
            {
                NoteCut(move, from, to, step, tool, line, i, cuts, arcs);
                continue;
            }
            if (!IsOfInterest(move, step))
                continue;
            // A probe must not come against anything at feed either, but by a probe move.
            if (move.Kind == MoveKind.Arc)
            {
                NoteFedArc(new ArcPath(from, to, move.Center + step.ToFrame, move.Clockwise, Job.PlaneNumber(move.Plane), move.FullTurns), step, tool, reach, line, job.Stock, cuts.Count, rapids);
                continue;
            }
            // Whichever way it comes, where it ends is certain: as if straight down.
            if (!from.IsKnown)
                from = to.With(2, job.Stock.Max.Z);
            if ((!IsLift(from, to) || UndercutContact.IsLiftOfUndercutter(job, tool, from, to)) && IsLow(from, to, reach, job.Stock))
                rapids.Add(new LowRapid(from, to, step.ToFrame, tool, line, cuts.Count, move.Role is (MoveRole.Hop or MoveRole.FirstTraverse) && move.From.Z <= step.After.RLevel, move.IsFeed));
        }
    }

    /// <summary>Notes a cut of a block that makes no other move, of a tool that is no probe.</summary>
    /// <param name="step">A step with the same tool and the same frame.</param>
    public static void NoteArc(in Move arc, Step step, int line, List<StockCut> cuts, List<StockArc> arcs) =>
        NoteCut(arc, arc.From + step.ToFrame, arc.To + step.ToFrame, step, step.After.Tool, line, 0, cuts, arcs);

    /// <inheritdoc cref="NoteArc"/>
    /// <param name="seconds">What it takes; NaN where that is not known.</param>
    public static void NoteLine(in Point3 from, in Point3 to, Step step, int line, double seconds, List<StockCut> cuts) =>
        cuts.Next().Become(from + step.ToFrame, to + step.ToFrame, step.After.Tool, line, 0, -1, (float)seconds, isFromBelow: false);

    /// <summary>Notes the next hole of a run.</summary>
    /// <param name="step">A step that has drilled another of them.</param>
    public static void NoteHole(double x, double y, Step step, int line, List<StockCut> cuts)
    {
        var (tool, toFrame) = (step.After.Tool, step.ToFrame);
        for (var i = 0; i < step.Moves.Count; i++)
        {
            ref readonly var move = ref step.Moves[i];
            if (move.IsCut)
                cuts.Next().Become(new Point3(x, y, move.From.Z) + toFrame, new Point3(x, y, move.To.Z) + toFrame, tool, line, i, -1, (float)move.Seconds, isFromBelow: false);
        }
    }

    /// <summary>Whether nothing but cuts is noted of a step's moves, wherever they lead across: its tool is no probe, and it traverses above the stock.</summary>
    public static bool AreCutsAlone(Step step, Job job)
    {
        if (IsOfProbe(step, job))
            return false;
        foreach (ref readonly var move in step.Moves.Items)
            if (!move.IsCut && IsOfInterest(move, step) && Math.Min(move.From.Z, move.To.Z) + step.ToFrame.Z < job.Stock.Max.Z)
                return false;
        return true;
    }

    static bool IsOfProbe(Step step, Job job) => job.Setup.FindTool(step.After.Tool)?.Kind == ToolKind.Probe;

    static void NoteFedArc(in ArcPath arc, Step step, int tool, double reach, int line, in Box3 stock, int cutsBefore, List<LowRapid> rapids)
    {
        if (!arc.IsKnown || arc.ChordsWithin(ChordTolerance) is var chords && chords.Count > MostChords)
            return;
        foreach (var (from, to) in chords)
            if (IsLow(from, to, reach, stock))
                rapids.Add(new LowRapid(from, to, step.ToFrame, tool, line, cutsBefore, AtR: false, IsFed: true));
    }

    /// <summary>A cycle's way down to R is left out: that R lies inside the stock is a finding of its own. In a part of the file that is
    /// called nobody knows what was cut before.</summary>
    static bool IsOfInterest(in Move move, Step step) =>
        !step.After.IsCalled && move.Role is (MoveRole.Plain or MoveRole.Machine or MoveRole.Hop or MoveRole.FirstTraverse);

    /// <summary>Straight up meets nothing that the tool did not stand in already.</summary>
    static bool IsLift(in Point3 from, in Point3 to) => from.X == to.X && from.Y == to.Y && to.Z >= from.Z;

    static bool IsLow(in Point3 from, in Point3 to, double reach, in Box3 stock) =>
        Math.Min(from.Z, to.Z) < stock.Max.Z
        && Math.Min(from.X, to.X) < stock.Max.X + reach && Math.Max(from.X, to.X) > stock.Min.X - reach
        && Math.Min(from.Y, to.Y) < stock.Max.Y + reach && Math.Max(from.Y, to.Y) > stock.Min.Y - reach;

    [MethodImpl(MethodImplOptions.AggressiveInlining)]
    static void NoteCut(in Move move, in Point3 from, in Point3 to, Step step, int tool, int line, int index, List<StockCut> cuts, List<StockArc> arcs)
    {
        var arc = -1;
        if (move.Kind == MoveKind.Arc)
        {
            arc = arcs.Count;
            arcs.Add(new StockArc(move.Center + step.ToFrame, move.FullTurns, (byte)Job.PlaneNumber(move.Plane), move.Clockwise));
        }
        var isFromBelow = move.Role == MoveRole.InHole && step.Holes.Count > 0 && step.Holes[0].Cycle == BackBoring;
        cuts.Next().Become(from, to, tool, line, index, arc, (float)move.Seconds, isFromBelow);
    }
}
