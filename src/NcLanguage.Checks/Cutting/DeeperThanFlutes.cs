using System.Runtime.CompilerServices;
using NcLanguage.Checks.Analysis;
using NcLanguage.Checks.Clearance;
using NcLanguage.Checks.Cutting;
using NcLanguage.Control.Execution;
using NcLanguage.Control.Moves;
using NcLanguage.Control.State;
using NcLanguage.Machine.Geometry;
using NcLanguage.Machine.Setups;

namespace NcLanguage.Checks.Rules;

/// <summary>A hole or a cut that is deeper than the tool's flutes are long, or than it stands out of its holder.</summary>
public sealed class DeeperThanFlutes : Rule
{
    const double Rounding = 1e-6;

    /// <summary>An arc is looked at in steps of a degree, radians: its lowest place is off by a hundredth of a millimetre on a radius of 250.</summary>
    const double ArcStep = Math.PI / 180;

    public override RuleInfo Info { get; } = new()
    {
        Id = "NC5005",
        Name = "deeper-than-flutes",
        Severity = Severity.Error,
        Title = "A hole or cut deeper than the tool's flutes are long",
        Finds = "A hole whose bottom lies deeper below the stock's top than the tool's flutes reach; without a stock, deeper below its R level. "
            + "A cut that goes as deep below the stock's top within reach of the stock's sides. Where the holder begins below the end of the flutes, that is the length that counts; of a mill, boring bar, reamer or tap whose shank is thinner than it cuts (shankDiameter) it is the only one. "
            + "Then a mill is told, once, where it takes more at once than its flutes are long.",
        AtTheMachine = "The chips cannot leave: the drill jams and breaks, the shank of the cutter rubs along the wall, or the holder runs into the work.",
        Setup = """
            { "stock": { "min": [0, 0, -25], "max": [100, 60, 0] },
              "tools": [ { "number": 3, "kind": "drill", "diameter": 8, "pointAngle": 118, "fluteLength": 18, "length": 80 } ] }
            """,
        Example = """
            G21 G90 G17 G54
            T3 M6
            S1500 M3
            G0 X20 Y30
            G43 H3 Z40 M8
            G99 G81 X20 Y30 R2 Z-20 F150
            ~^^^^^^^^^^^^^^^^^^^^^^^^^^^
            X60
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
            G99 G81 X20 Y30 R2 Z-16 F150
            X60
            G80
            G0 Z60 M9
            M5
            M30
            """,
        NotFound = "A cut that a rapid took down first, into what has been cut. What a slot mill with a thin shank takes at once; what another takes where that is shallower than 0.02 mm too much or narrower than one and a half cells of the "
            + "height field, after a cut with a tool of unknown diameter or whose place is not known, and behind the first 50,000 cuts. In a pocket with its walls out of reach the shank touches nothing, though the rule "
            + "counts from the stock's top. Without a stock the hole's surface is not known: counting from R says a little too much, "
            + "and of a cut it is not known how deep it goes.",
        Source = "Common practice.",
    };

    public override StepEvents Interest => StepEvents.HolesDiffer | PartScan.Deep;

    public override bool ReadsFile => true;

    public override void CheckStep(in StepContext step)
    {
        var tool = step.Job.Setup.FindTool(step.Step.After.Tool);
        if (ToolReach.Of(step.Job, tool) is not { } reach)
            return;
        if (step.Step.Holes.Count > 0)
            CheckHoles(reach, step);
        else
            CheckCuts(reach, tool!, step);
    }

    public override void CheckFile(in FileContext file)
    {
        if (file.Run.Job.Setup.Stock is null)
            return;
        foreach (var (line, met) in ToolContacts.FirstOfEachTool(file, part => part.Necks))
        {
            var say = file.SayAt(line, null);
            file.ReportBlock(this, line, $"Tool {met.Tool} cuts into stock that still stands{StockWords.Depth(met.Depth, say)}; its flutes are {say.Length(file.Run.Job.Setup.FindTool(met.Tool)!.FluteLength!.Value)} long.");
        }
    }

    /// <summary>The lines, from 0, where the rule has spoken in a run.</summary>
    internal static HashSet<int> LinesOf(ProgramRun run)
    {
        var lines = new HashSet<int>();
        if (run.Flow is { } flow)
        {
            foreach (var finding in flow.Findings)
                if (finding.Rule is DeeperThanFlutes)
                    lines.Add(finding.Line);
            return lines;
        }
        for (var part = 0; part < run.Results.Length; part++)
            foreach (var finding in run.Results[part].Findings)
                if (finding.Rule is DeeperThanFlutes)
                    lines.Add(run.LineOf(part, finding.Line));
        return lines;
    }

    void CheckHoles(in ToolReach reach, in StepContext step)
    {
        ref readonly var hole = ref step.Step.Holes[0];
        // Further holes of the run to the same depth suffer from the same words.
        if (step.Step.After.Plane != WorkPlane.XY || (hole.IsHop && (step.Step.Sets & (Slot.CycleBottom | Slot.CycleR | Slot.Cycle)) == 0))
            return;
        var top = step.Job.Setup.Stock?.Max.Z - step.Step.ToFrame.Z;
        var surface = top < hole.RLevel ? top.Value : hole.RLevel;
        if (surface - hole.Bottom > reach.Depth + Rounding)
            Report(surface - hole.Bottom, surface, surface == top ? "the top of the stock" : "R", reach, "The hole goes", step);
    }

    void CheckCuts(in ToolReach reach, Tool tool, in StepContext step)
    {
        ref readonly var stock = ref step.Job.Stock;
        var radius = (tool.Diameter ?? 0) / 2;
        var limit = stock.Max.Z - reach.Depth - Rounding;
        foreach (ref readonly var move in step.Step.Moves.Items)
        {
            if (!move.IsCut)
                continue;
            var from = move.From + step.Step.ToFrame;
            var to = move.To + step.Step.ToFrame;
            if (IsDeep(from, from, stock, radius, limit))
                continue;
            var lowest = move.Kind == MoveKind.Arc && move.Plane != WorkPlane.XY
                ? LowestDeep(new ArcPath(from, to, move.Center + step.Step.ToFrame, move.Clockwise, Job.PlaneNumber(move.Plane), move.FullTurns), stock, radius, limit)
                : IsDeep(move.Kind == MoveKind.Arc ? to : from, to, stock, radius, limit) ? Math.Min(from.Z, to.Z) : double.NaN;
            if (double.IsNaN(lowest))
                continue;
            Report(stock.Max.Z - lowest, stock.Max.Z - step.Step.ToFrame.Z, "the top of the stock", reach, "The cut goes", step);
            return;
        }
    }

    void Report(double depth, double surface, string where, in ToolReach reach, string what, in StepContext step) =>
        step.ReportBlock(this, $"{what} {step.Say.Length(depth)} deep, counted from {where} at {step.Say.Level(surface)}; "
            + (depth > reach.Holder + Rounding
                ? $"the holder of tool {step.Step.After.Tool} begins {step.Say.Length(reach.Holder)} above its tip."
                : $"the flutes of tool {step.Step.After.Tool} are {step.Say.Length(reach.Flutes)} long."),
            Slot.Tool, "This block brings the tool.", depth);

    /// <summary>Whether a straight move gets below <paramref name="limit"/> within <paramref name="reach"/> of the stock as seen from above; false where its place is not known.</summary>
    [MethodImpl(MethodImplOptions.AggressiveInlining)]
    static bool IsDeep(in Point3 from, in Point3 to, in Box3 stock, double reach, double limit)
    {
        if (!(Math.Min(from.Z, to.Z) < limit) || !from.IsKnown || !to.IsKnown)
            return false;
        var (start, end) = (0.0, 1.0);
        return Within(from.X, to.X, stock.Min.X - reach, stock.Max.X + reach, ref start, ref end)
            && Within(from.Y, to.Y, stock.Min.Y - reach, stock.Max.Y + reach, ref start, ref end)
            && Within(from.Z, to.Z, double.NegativeInfinity, limit, ref start, ref end)
            && start < end;
    }

    /// <summary>The lowest level, mm, that an arc across the XY plane comes to where it is deep: it may begin and end high up. NaN where it is not deep anywhere, or its place is not known.</summary>
    static double LowestDeep(in ArcPath arc, in Box3 stock, double reach, double limit)
    {
        var lowest = double.NaN;
        if (arc.IsKnown && arc.Low.Z < limit)
            foreach (var (from, to) in arc.ChordsOver(ArcStep))
                if (IsDeep(from, to, stock, reach, limit))
                    lowest = Math.Min(double.IsNaN(lowest) ? to.Z : lowest, Math.Min(from.Z, to.Z));
        return lowest;
    }

    /// <summary>Narrows the part of the way, from 0 to 1, on which a coordinate is strictly between two bounds.</summary>
    static bool Within(double from, double to, double low, double high, ref double start, ref double end)
    {
        var travel = to - from;
        if (travel == 0)
            return from > low && from < high;
        var (enter, leave) = travel > 0 ? ((low - from) / travel, (high - from) / travel) : ((high - from) / travel, (low - from) / travel);
        start = Math.Max(start, enter);
        end = Math.Min(end, leave);
        return start < end;
    }
}
