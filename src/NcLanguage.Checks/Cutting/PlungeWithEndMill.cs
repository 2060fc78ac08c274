using NcLanguage.Checks.Analysis;
using NcLanguage.Checks.Clearance;
using NcLanguage.Machine.Setups;

namespace NcLanguage.Checks.Rules;

/// <summary>A mill that does not cut to its middle goes straight down into full material.</summary>
public sealed class PlungeWithEndMill : Rule
{
    public override RuleInfo Info { get; } = new()
    {
        Id = "NC5011",
        Name = "plunge-with-end-mill",
        Severity = Severity.Warning,
        Title = "A mill goes straight down into full material",
        Finds = "A feed straight down, or a drilling cycle, of a mill whose middle does not cut, where no earlier cut or hole has taken the stock away at its middle down to there: of a face mill, an end mill or bull-nose mill with three flutes or more, a slot mill "
            + "with a shank of three quarters of its diameter or less, any mill of which the setup says \"centreCutting\": false; and of a thread mill, in a program that drills holes, or in a hole of the program that is not as wide as itself down to there. "
            + "A mill of which it says \"centreCutting\": true is none of them.",
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
        NotFound = "Without a stock nothing is known of what stands. End mills whose flutes the setup does not tell; thread mills in a program that drills no hole, which others have drilled, where the setup is nc.setup.json, which others share, "
            + "and where it lists the drawing's holes, which then are missed themselves; plunges of less than 0.5 mm, over the stock's edge, where a cut or hole before takes the middle of the place away and went as deep (of an arc all that it goes round counts, and of a thread mill the same where a mill has cut); ramps and helices. The first "
            + "plunge of a tool is told, with the number of all. Many end mills of three flutes and more do cut to their middle: say so in the setup.",
        Source = "Common practice.",
    };

    /// <summary>A mill's end bears so little, mm.</summary>
    const double LeastDepth = 0.5;

    /// <summary>Places that differ by less are one, mm.</summary>
    const double SamePlace = 0.05;

    /// <summary>Cuts that are looked at for all plunges together; plunges behind them are not judged.</summary>
    const int MostLooks = 5_000_000;

    public override bool ReadsFile => true;

    public override void CheckFile(in FileContext file)
    {
        var run = file.Run;
        var setup = run.Job.Setup;
        if (setup.Stock is null || run.Results[0].Entry.IsCalled || !setup.Tools.Any(IsWithoutMiddle))
            return;
        var found = new List<Deep>();
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
        if (found.Exists(IsOfThreadMillInFull) && !IsHoleOfThreadMillKnown(run))
            found.RemoveAll(IsOfThreadMillInFull);
        foreach (var group in found.GroupBy(plunge => plunge.Tool.Number))
        {
            var (tool, line, depth, isTouched) = group.MinBy(plunge => run.OrderOf(plunge.Line));
            var count = group.Count();
            var say = file.SayAt(line, null);
            file.ReportBlock(this, line, $"T{tool.Number}, {NameOf(tool)}, goes straight down {say.Length(depth)} {Where(tool, isTouched)}{(count > 1 ? $", the first of {count} times" : "")}: {Advice(tool, isTouched)}");
        }
    }

    /// <summary>A plunge into what stands.</summary>
    /// <param name="Depth">How deep it goes in, mm.</param>
    /// <param name="IsTouched">Whether an earlier cut has taken away a part of what the tool needs.</param>
    readonly record struct Deep(Tool Tool, int Line, double Depth, bool IsTouched);

    static bool IsOfThreadMillInFull(Deep plunge) => plunge.Tool.Kind == ToolKind.ThreadMill && !plunge.IsTouched;

    static string Where(Tool tool, bool isTouched) => (isTouched, tool.Kind) switch
    {
        (false, _) => "into full material",
        (_, ToolKind.ThreadMill) => "where the hole before it leaves no room for it",
        _ => "beside an earlier cut, its middle in full material",
    };

    static bool IsWithoutMiddle(Tool tool) => tool is { IsMill: true, Diameter: not null } && (tool.CentreCutting, tool.Kind) switch
    {
        (true, _) => false,
        (false, _) or (_, ToolKind.FaceMill or ToolKind.ThreadMill) => true,
        (_, ToolKind.EndMill or ToolKind.BullMill) => tool.Flutes >= 3,
        (_, ToolKind.SlotMill) => HasThinShank(tool),
        _ => false,
    };

    /// <summary>Whether it is a mill for slots behind an edge, which only cuts with its side: the necks of those are about half as thick as their heads, a relieved shank is hardly thinner than its mill.</summary>
    static bool HasThinShank(Tool tool) => tool.ShankDiameter <= 0.75 * tool.Diameter;

    /// <summary>Whether a thread mill that comes where nothing was cut comes to the wrong place. A program that drills nothing finishes what was drilled before; the holes of a drawing are held against it elsewhere.</summary>
    static bool IsHoleOfThreadMillKnown(ProgramRun run)
    {
        var setup = run.Job.Setup;
        if (!setup.Holes.IsEmpty || setup.IsShared)
            return false;
        foreach (var part in run.Results)
            if (part.Holes.IsDrilledBy(setup, [ToolKind.Drill]))
                return true;
        return false;
    }

    static string NameOf(Tool tool) => tool switch
    {
        { Kind: ToolKind.FaceMill } => "a face mill",
        { Kind: ToolKind.ThreadMill } => "a thread mill",
        { Kind: ToolKind.SlotMill, CentreCutting: null } => "a slot mill with a thin shank",
        { Flutes: > 1 and var flutes } => $"a mill with {flutes} flutes",
        _ => "a mill",
    };

    /// <summary>What it lacks, and what to do instead.</summary>
    static string Advice(Tool tool, bool isTouched) => tool.Kind switch
    {
        ToolKind.FaceMill => "its middle does not cut. Come in from beside the stock, or go down on a ramp.",
        ToolKind.ThreadMill when isTouched => "its end does not cut. The hole has to be as wide as the mill down to there.",
        ToolKind.ThreadMill => "its end does not cut. The hole has to be there before.",
        ToolKind.SlotMill when HasThinShank(tool) => "its end does not cut. Come in from beside the stock.",
        _ => $"its end {(tool.CentreCutting == false ? "does" : "may")} not cut in the middle. Drill first, or go down on a ramp or a helix.",
    };

    static void Look(ProgramRun run, int part, in Plunge plunge, ref int looks, List<Deep> found)
    {
        var stock = run.Job.Setup.Stock!.Value;
        if (!IsWithoutMiddle(plunge.Tool) || !plunge.To.IsKnown)
            return;
        var radius = plunge.Tool.Diameter!.Value / 2;
        var depth = Math.Min(plunge.From.Z, stock.Max.Z) - Math.Max(plunge.To.Z, stock.Min.Z);
        var setup = run.Job.Setup;
        var (stands, touched) = (
            Openings.FloorUnder(setup, plunge.To.X, plunge.To.Y, plunge.Tool.Kind == ToolKind.ThreadMill ? radius : 0, stock.Max.Z),
            Openings.LowestTouched(setup, plunge.To.X, plunge.To.Y, plunge.Tool.Kind == ToolKind.ThreadMill ? 0 : radius, stock.Max.Z));
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
                if (!(Math.Min(cut.From.Z, cut.To.Z) < stands))
                    continue;
                var off = Off(run.Results[earlier], cut, plunge);
                stands = Math.Min(stands, LevelLeft(run.Job, cut, plunge.Tool, off));
                touched = Math.Min(touched, LevelTouched(run.Job, cut, plunge.Tool, off));
            }
        }
        var bottom = Math.Max(plunge.To.Z, stock.Min.Z);
        depth = Math.Min(depth, stands - bottom);
        if (depth >= LeastDepth)
            found.Add(new Deep(plunge.Tool, run.LineOf(part, plunge.Line), depth, touched - bottom < LeastDepth));
    }

    /// <summary>How far from a cut's path the middle of a plunge lies, mm; below 0 inside what an arc goes round.</summary>
    static double Off(PartResult part, in StockCut cut, in Plunge plunge)
    {
        if (cut.Arc < 0)
            return Footprint.Distance(cut.From, cut.To, plunge.To.X, plunge.To.Y);
        var center = part.Arcs[cut.Arc].Center;
        return double.Hypot(plunge.To.X - center.X, plunge.To.Y - center.Y) - (cut.From - center).Length;
    }

    /// <summary>Down to where a cut makes room for a tool: for what of its end does not cut, the middle, or for a thread mill in a hole all of it. What is not known of the earlier tool is taken for room enough.</summary>
    static double LevelLeft(Job job, in StockCut cut, Tool tool, double off)
    {
        var end = job.EndOf(cut.Tool);
        if (!(end.Radius > 0))
            return LevelTouched(job, cut, tool, off);
        var isHole = cut.Arc < 0 && Upright.Is(cut.From, cut.To);
        // A ramp has a point of its own at each place, and is taken for as low as it goes.
        var within = tool.Kind == ToolKind.ThreadMill && isHole ? off + tool.Diameter!.Value / 2 : off;
        if (within > end.Radius + SamePlace)
            return double.PositiveInfinity;
        return Math.Min(cut.From.Z, cut.To.Z) + (isHole ? end.HeightAt(Math.Clamp(within - SamePlace, 0, end.Radius)) : 0);
    }

    /// <summary>Down to where a cut takes away anything that the tool meets, or its middle where it is a thread mill's.</summary>
    static double LevelTouched(Job job, in StockCut cut, Tool tool, double off)
    {
        var within = job.ShapeOf(cut.Tool).Radius;
        var reach = tool.Kind == ToolKind.ThreadMill && within > 0 ? within : within + tool.Diameter!.Value / 2;
        return off < reach ? Math.Min(cut.From.Z, cut.To.Z) : double.PositiveInfinity;
    }
}
