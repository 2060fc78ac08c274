using NcLanguage.Checks.Analysis;
using NcLanguage.Checks.Clearance;
using NcLanguage.Control.Execution;
using NcLanguage.Control.Moves;
using NcLanguage.Control.State;
using NcLanguage.Machine.Geometry;
using NcLanguage.Machine.Profiles;
using NcLanguage.Machine.Setups;

namespace NcLanguage.Checks.Rules;

/// <summary>A hole that lies beside the stock, or breaks out through its edge.</summary>
public sealed class HoleOutsideStock : Rule
{
    public override RuleInfo Info { get; } = new()
    {
        Id = "NC4007",
        Name = "hole-outside-stock",
        Severity = Severity.Warning,
        Title = "A hole lies beside the stock or breaks through its edge",
        Finds = "A hole whose centre, or part of whose circle at the stock's top, lies outside the stock as seen from above. Those of one run of holes that lie beside it, and those that break through its edge, are told once each, at the first.",
        AtTheMachine = "The tool drills air, or wanders off where it breaks through the edge; most often a digit or a sign of the place is wrong.",
        Setup = """
            { "stock": { "min": [0, 0, -15], "max": [100, 60, 0] },
              "tools": [ { "number": 3, "kind": "drill", "diameter": 8, "pointAngle": 118, "fluteLength": 60, "length": 140 } ] }
            """,
        Example = """
            G21 G90 G17 G54
            T3 M6
            S1500 M3
            G0 X20 Y30
            G43 H3 Z40 M8
            G99 G81 X20 Y30 R2 Z-10 F150
            X98
            ~^^
            G80
            G0 Z60 M9
            M5
            M30
            """,
        Instead = """
            G21 G90 G17 G54
            T3 M6
            S1500 M3
            G0 X20 Y30
            G43 H3 Z40 M8
            G99 G81 X20 Y30 R2 Z-10 F150
            X89
            G80
            G0 Z60 M9
            M5
            M30
            """,
        NotFound = "Holes under another work offset than the setup's whose datum, or which themselves, lie farther away than the stock is long or wide: they are another part's. Strokes of a mill that goes down over an edge. Holes that break out below the stock's top, at a side that is not upright. Without the tool's diameter, or the point angle of a pointed tool, "
            + "only the centre counts.",
        Source = "Common practice.",
    };

    public override StepEvents Interest => PartScan.AtEdge;

    public override bool Concerns(Job job) => job.HasStock;

    public override void CheckStep(in StepContext step)
    {
        ref readonly var stock = ref step.Job.Stock;
        if (!step.Job.HasStock || step.Step.After.Plane != WorkPlane.XY || IsWithoutPoint(step, 'X') || IsWithoutPoint(step, 'Y'))
            return;
        var isElsewhere = step.Step.After.WorkOffset != step.Job.Setup.Frame;
        var (first, count) = (default(Found), 0);
        foreach (ref readonly var hole in step.Step.Holes.Items)
        {
            if ((isElsewhere && IsOfAnotherPart(hole, stock, step.Step.ToFrame)) || Look(hole, stock, step) is not { Way: not Way.Inside } found)
                continue;
            if (count == 0)
                first = found;
            if (found.Way == first.Way)
                count++;
        }
        if (count > 0)
            step.ReportBlock(this, first.Message, value: count, text: first.Way == Way.Outside ? OutsideMark : OverTheEdgeMark);
    }

    static readonly string OutsideMark = HoleFindings.MarkOf(nameof(Way.Outside)), OverTheEdgeMark = HoleFindings.MarkOf(nameof(Way.OverTheEdge));

    enum Way { Inside, Outside, OverTheEdge }

    /// <summary>How a hole lies, and what is said of it.</summary>
    readonly record struct Found(Way Way, string Message);

    // Such a place is a thousandth of what was meant: number-without-point.
    static bool IsWithoutPoint(in StepContext step, char letter)
    {
        if (step.Job.Readings.Integers != IntegerReading.Increments || !step.Step.Words.Has(letter))
            return false;
        var token = step.Block.Tokens[step.Step.Words.TokenOf(letter)];
        return !token.HasPoint && !token.IsExpression && Math.Abs(token.Value) is > 0 and < NumberWithoutPoint.MostIncrements;
    }

    // Under another work offset a datum so far away that the same part has room beside the stock is another part's, and so is a hole
    // farther away than the stock is long, or wide.
    static bool IsOfAnotherPart(in Hole hole, in Box3 stock, in Point3 toFrame)
    {
        var (length, width) = (stock.Max.X - stock.Min.X, stock.Max.Y - stock.Min.Y);
        var (x, y) = (hole.X + toFrame.X, hole.Y + toFrame.Y);
        if (Math.Abs(toFrame.X) >= length || Math.Abs(toFrame.Y) >= width)
            return true;
        return x < stock.Min.X - length || x > stock.Max.X + length || y < stock.Min.Y - width || y > stock.Max.Y + width;
    }

    static Found Look(in Hole hole, in Box3 stock, in StepContext step)
    {
        ref readonly var toFrame = ref step.Step.ToFrame;
        var depth = stock.Max.Z - (hole.Bottom + toFrame.Z);
        var outside = Footprint.Distance(stock, hole.X + toFrame.X, hole.Y + toFrame.Y);
        if (!(depth > 0) || outside + step.Job.ShapeOf(hole.Tool).Radius <= Sweep.ClearanceTolerance)
            return default;
        var tool = step.Job.Setup.FindTool(hole.Tool);
        var radius = ToolEnd.RadiusAt(tool, depth);
        // A mill is plunged over an edge on purpose, stroke beside stroke.
        if (tool?.Kind is ToolKind.EndMill or ToolKind.BullMill or ToolKind.BallMill && outside < radius)
            return default;
        if (outside > Sweep.ClearanceTolerance)
            return new(Way.Outside, $"{Place(hole, step)} lies {step.Say.Length(outside)} outside the stock: the tool drills {Air(outside, radius)}.");
        return outside + radius > Sweep.ClearanceTolerance
            ? new(Way.OverTheEdge, $"{Place(hole, step)} breaks {step.Say.Length(outside + radius)} out through the edge of the stock: its centre is {step.Say.Length(-outside)} from the edge, "
                + $"the hole {step.Say.Length(2 * radius)} wide.")
            : default;
    }

    static string Place(in Hole hole, in StepContext step) => $"The hole at {ContactWords.Place(hole.X, hole.Y, step)}";

    // A centre outside a flat edge leaves more than half of the hole outside: 0.6 of it at 0.15 of the radius (circle segment).
    static string Air(double outside, double radius) =>
        !(outside < radius) ? "air" : outside < 0.15 * radius ? "about half in air" : "mostly in air";
}
