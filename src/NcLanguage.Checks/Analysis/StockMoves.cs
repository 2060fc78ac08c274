using NcLanguage.Control.Execution;
using NcLanguage.Control.Moves;
using NcLanguage.Control.State;
using NcLanguage.Machine.Geometry;

namespace NcLanguage.Checks.Analysis;

/// <summary>Picks from a step what the question needs whether a rapid goes into stock that still stands: the cuts and the low rapids.</summary>
static class StockMoves
{
    /// <summary>Angle of one chord of an arc, radians: 5 degrees.</summary>
    const double ChordAngle = Math.PI / 36;

    public static void Note(Step step, int line, Box3 stock, Job job, List<StockCut> cuts, List<LowRapid> rapids)
    {
        if ((step.Events & StepEvents.Moves) == 0)
            return;
        var tool = step.After.Tool;
        var reach = job.ShapeOf(tool).Radius;
        for (var i = 0; i < step.Moves.Count; i++)
        {
            ref readonly var move = ref step.Moves[i];
            if (!move.IsMotion)
                continue;
            var from = move.From + step.ToFrame;
            var to = move.To + step.ToFrame;
            if (move.IsCut)
                NoteCut(move, from, to, step.ToFrame, tool, stock, cuts);
            else if (IsOfInterest(move, step) && !IsLift(from, to) && IsLow(from, to, reach, stock))
                rapids.Add(new LowRapid(from, to, step.ToFrame, tool, line, cuts.Count, move.Role is (MoveRole.Hop or MoveRole.FirstTraverse) && move.From.Z <= step.After.RLevel));
        }
    }

    /// <summary>A cycle's way down to R is left out: that R lies inside the stock is a finding of its own. In a part of the file that is
    /// called nobody knows what was cut before.</summary>
    static bool IsOfInterest(in Move move, Step step) =>
        !step.After.IsCalled && move.Role is (MoveRole.Plain or MoveRole.Machine or MoveRole.Hop or MoveRole.FirstTraverse);

    /// <summary>Straight up meets nothing that the tool did not stand in already.</summary>
    static bool IsLift(Point3 from, Point3 to) => from.X == to.X && from.Y == to.Y && to.Z >= from.Z;

    static bool IsLow(Point3 from, Point3 to, double reach, Box3 stock) =>
        Math.Min(from.Z, to.Z) < stock.Max.Z
        && Math.Min(from.X, to.X) < stock.Max.X + reach && Math.Max(from.X, to.X) > stock.Min.X - reach
        && Math.Min(from.Y, to.Y) < stock.Max.Y + reach && Math.Max(from.Y, to.Y) > stock.Min.Y - reach;

    static void NoteCut(in Move move, Point3 from, Point3 to, Point3 toFrame, int tool, Box3 stock, List<StockCut> cuts)
    {
        // Only an arc across another plane than XY can go lower than both its ends.
        var level = move.Kind == MoveKind.Arc && move.Plane != WorkPlane.XY ? double.NaN : Math.Min(from.Z, to.Z);
        if (level >= stock.Max.Z)
            return;
        if (move.Kind == MoveKind.Arc && from.IsKnown && to.IsKnown && move.Center.IsKnown)
            AddChords(move, toFrame, tool, cuts);
        else
            cuts.Add(new StockCut(from, move.Kind == MoveKind.Arc ? Point3.Unknown : to, tool));
    }

    static void AddChords(in Move arc, Point3 toFrame, int tool, List<StockCut> cuts)
    {
        var sweep = Arcs.Sweep(arc);
        var chords = Math.Clamp((int)Math.Ceiling(sweep / ChordAngle), 1, 1000);
        var (first, second, third) = Arcs.Axes(arc.Plane);
        var (dx, dy) = (arc.From[first] - arc.Center[first], arc.From[second] - arc.Center[second]);
        var last = arc.From;
        for (var i = 1; i <= chords; i++)
        {
            var t = (double)i / chords;
            var (sin, cos) = Math.SinCos((arc.Clockwise ? -sweep : sweep) * t);
            var next = i == chords
                ? arc.To
                : arc.From.With(first, arc.Center[first] + dx * cos - dy * sin)
                    .With(second, arc.Center[second] + dx * sin + dy * cos)
                    .With(third, arc.From[third] + (arc.To[third] - arc.From[third]) * t);
            cuts.Add(new StockCut(last + toFrame, next + toFrame, tool));
            last = next;
        }
    }
}
