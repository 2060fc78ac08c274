using NcLanguage.Checks.Analysis;
using NcLanguage.Checks.Clearance;
using NcLanguage.Machine.Setups;

namespace NcLanguage.Checks.Rules;

/// <summary>An end mill that does not cut to its middle goes straight down into full material.</summary>
public sealed class PlungeWithEndMill : Rule
{
    public override RuleInfo Info { get; } = new()
    {
        Id = "NC5011",
        Name = "plunge-with-end-mill",
        Severity = Severity.Warning,
        Title = "An end mill goes straight down into full material",
        Finds = "A feed straight down, or a drilling cycle, of an end mill or bull-nose mill with three flutes or more into stock that no earlier cut or hole has taken away down to there. A mill is taken to cut to its middle where the setup says "
            + "\"centreCutting\": true, where it has two flutes, and where it is a slot mill.",
        AtTheMachine = "The middle of the end has no edge: the core that is left standing presses against it, the mill is pushed aside, overheats or breaks.",
        Setup = """
            { "stock": { "min": [0, 0, -30], "max": [100, 60, 0] },
              "tools": [ { "number": 5, "kind": "end-mill", "diameter": 10, "flutes": 4, "fluteLength": 30, "length": 100 } ] }
            """,
        Example = """
            G21 G90 G17 G54
            G0 G53 Z0
            T5 M6
            S2500 M3
            G0 X40 Y30
            G43 H5 Z40 M8
            Z2
            G1 Z-4 F80
            ~^^^^^^^^^
            X60 F300
            G0 Z40
            G0 G53 Z0 M9
            M5
            M30
            """,
        Instead = """
            G21 G90 G17 G54
            G0 G53 Z0
            T5 M6
            S2500 M3
            G0 X40 Y30
            G43 H5 Z40 M8
            Z2
            G1 Z0 F300
            X60 Z-4 F150
            X40
            G0 Z40
            G0 G53 Z0 M9
            M5
            M30
            """,
        NotFound = "Without a stock nothing is known of what stands. Mills whose flutes the setup does not tell; plunges of less than 0.5 mm, over the stock's edge, where a cut or hole before touches the place and went as deep (of an arc all that it goes round counts as touched); ramps and helices. The first "
            + "plunge of a tool is told, with the number of all. Many mills of three flutes and more do cut to their middle: say so in the setup.",
        Source = "Common practice.",
    };

    /// <summary>A mill's end bears so little, mm.</summary>
    const double LeastDepth = 0.5;

    /// <summary>Cuts that are looked at for all plunges together; plunges behind them are not judged.</summary>
    const int MostLooks = 5_000_000;

    public override bool ReadsFile => true;

    public override void CheckFile(in FileContext file)
    {
        var run = file.Run;
        var setup = run.Job.Setup;
        if (setup.Stock is null || run.Results[0].Entry.IsCalled || !setup.Tools.Any(IsWithoutMiddle))
            return;
        var found = new List<(Tool Tool, int Line, double Depth)>();
        var looks = 0;
        for (var part = 0; part < run.Results.Length; part++)
        {
            var result = run.Results[part];
            foreach (ref readonly var plunge in result.Plunges.AsSpan())
                Look(run, part, plunge, ref looks, found);
            foreach (var hole in result.Holes)
                if (hole.Plane == Control.State.WorkPlane.XY && setup.FindTool(hole.Hole.Tool) is { } tool)
                    Look(run, part, new Plunge(hole.PlaceAt(hole.Hole.RLevel), hole.PlaceAt(hole.Hole.Bottom), tool, hole.ToFrame, hole.Line, hole.CutsBefore), ref looks, found);
        }
        foreach (var group in found.GroupBy(plunge => plunge.Tool.Number))
        {
            var (tool, line, depth) = group.MinBy(plunge => run.OrderOf(plunge.Line));
            var count = group.Count();
            var say = file.SayAt(line, null);
            file.ReportBlock(this, line, $"T{tool.Number}, a mill with {tool.Flutes} flutes, goes straight down {say.Length(depth)} into full material{(count > 1 ? $", the first of {count} times" : "")}: "
                + $"its end {(tool.CentreCutting == false ? "does" : "may")} not cut in the middle. Drill first, or go down on a ramp or a helix.");
        }
    }

    static bool IsWithoutMiddle(Tool tool) =>
        tool is { Kind: ToolKind.EndMill or ToolKind.BullMill, Flutes: >= 3, Diameter: not null } && tool.CentreCutting != true;

    static void Look(ProgramRun run, int part, in Plunge plunge, ref int looks, List<(Tool, int, double)> found)
    {
        var stock = run.Job.Setup.Stock!.Value;
        if (!IsWithoutMiddle(plunge.Tool) || !plunge.To.IsKnown)
            return;
        var radius = plunge.Tool.Diameter!.Value / 2;
        var depth = Math.Min(plunge.From.Z, stock.Max.Z) - Math.Max(plunge.To.Z, stock.Min.Z);
        var stands = stock.Max.Z;
        if (!(depth >= LeastDepth) || Footprint.Distance(stock, plunge.To.X, plunge.To.Y) > -radius)
            return;
        for (var earlier = 0; earlier <= part; earlier++)
        {
            var cuts = run.Results[earlier].Cuts;
            var left = earlier == part ? plunge.CutsBefore : cuts.Length;
            looks += left;
            if (looks > MostLooks)
                return;
            foreach (ref readonly var cut in cuts)
            {
                if (left-- == 0)
                    break;
                if (!cut.From.IsKnown || !cut.To.IsKnown)
                    return;
                if (Math.Min(cut.From.Z, cut.To.Z) < stands && Touches(run.Results[earlier], cut, plunge, radius + run.Job.ShapeOf(cut.Tool).Radius))
                    stands = Math.Min(cut.From.Z, cut.To.Z);
            }
        }
        depth = Math.Min(depth, stands - Math.Max(plunge.To.Z, stock.Min.Z));
        if (depth >= LeastDepth)
            found.Add((plunge.Tool, run.LineOf(part, plunge.Line), depth));
    }

    /// <summary>Whether a cut comes nearer to a plunge than so much; all that an arc goes round is taken for touched.</summary>
    static bool Touches(PartResult part, in StockCut cut, in Plunge plunge, double within)
    {
        if (cut.Arc < 0)
            return Footprint.Distance(cut.From, cut.To, plunge.To.X, plunge.To.Y) < within;
        var center = part.Arcs[cut.Arc].Center;
        return double.Hypot(plunge.To.X - center.X, plunge.To.Y - center.Y) < (cut.From - center).Length + within;
    }
}
