using NcLanguage.Checks.Analysis;
using NcLanguage.Checks.Clearance;
using NcLanguage.Control.State;
using NcLanguage.Machine.Geometry;
using NcLanguage.Machine.Profiles;
using NcLanguage.Machine.Setups;

namespace NcLanguage.Checks.Rules;

/// <summary>The R level lies inside the stock: the tool goes into it at rapid.</summary>
public sealed class RInsideStock : Rule
{
    /// <summary>R below the stock's top by no more than this counts as at the top, mm.</summary>
    const double Tolerance = 0.01;

    /// <summary>How far a tap may stand in a hole narrower than its thread, in pitches: so long is the short chamfer of a tap for blind holes at least (common practice).</summary>
    const double LeadOfTap = 2;

    /// <summary>Cuts looked at for one file before the rule gives up; some 10 ms.</summary>
    const int MostLooks = 2_000_000;

    public override RuleInfo Info { get; } = new()
    {
        Id = "NC3021",
        Name = "r-inside-stock",
        Severity = Severity.Error,
        Title = "The R level lies inside the stock",
        Finds = "A hole over the setup's stock whose R level is below the stock's top, where no cut before went down to R there, or only a hole too narrow for the tool; of a tap, which is narrower at its end, a hole too narrow two pitches above that. Once for each run of holes and R level.",
        AtTheMachine = "The tool goes to R at rapid: it strikes the top of the part at full speed and breaks.",
        Example = CycleExample.Program("""
            G98 G81 X12 Y20 Z-18 R-3 F120
            ~^^^^^^^^^^^^^^^^^^^^^^^^^^^^
            X40
            """),
        Instead = CycleExample.Program("""
            G98 G81 X12 Y20 Z-18 R2 F120
            X40
            """),
        Setup = CycleExample.Drill,
        FixSafety = FixSafety.Choice,
        Fix = "Puts R to the stock's top plus the clearance, or above the floor that is milled at all holes of the run, where R is written in absolute mode. Where a pocket is there already, R is right as it is: list it among the hollows of the setup's stock.",
        NotFound = "Holes beside the stock or along another axis than Z, and places where an earlier cut, seen from its lowest point, went at least as deep as R. "
            + "Files in which that would take more than two million looks at earlier cuts.",
        Source = "NISTIR 6556 §3.5.16: the tool traverses to R.",
    };

    public override bool ReadsFile => true;

    public override void CheckFile(in FileContext file)
    {
        if (file.Run.Job.Setup.Stock is not { } stock)
            return;
        var reported = double.NaN;
        var (looks, surfaceLooks) = (0, 0);
        for (var part = 0; part < file.Run.Results.Length; part++)
        {
            var result = file.Run.Results[part];
            if (!(result.Holes.LowestR < stock.Max.Z - Tolerance))
            {
                // The run of holes goes on behind a part of it that has none such.
                reported = result.Holes.BeginsRun ? double.NaN : reported;
                continue;
            }
            for (var i = 0; i < result.Holes.Length; i++)
            {
                var hole = result.Holes[i];
                if (!hole.Hole.IsHop)
                    reported = double.NaN;
                var place = hole.PlaceAt(hole.Hole.RLevel);
                if (hole.Plane != WorkPlane.XY || !(place.Z < stock.Max.Z - Tolerance) || place.Z == reported || !IsOver(stock, place))
                    continue;
                // R below the bottom is said by r-below-bottom, and of back boring it is a matter of how the control reads it.
                if (hole.Hole.RLevel < hole.Hole.Bottom)
                    continue;
                if (IsOpen(file.Run.Job.Setup, place, stock.Max.Z, hole.Hole.Tool))
                    continue;
                var isCut = WasCut(file.Run, part, hole.CutsBefore, place, stock.Max.Z - place.Z, hole.Hole.Tool, ref looks);
                if (isCut && !IsTapInCore(file.Run, part, hole.CutsBefore, place, stock.Max.Z, hole.Hole.Tool, ref looks))
                    continue;
                reported = place.Z;
                var surface = SurfaceOfRun(file.Run, part, i, stock, ref surfaceLooks);
                var top = surface - hole.ToFrame.Z;
                var say = file.SayAt(file.Run.LineOf(part, hole.Line), result.CoordinatesAt(hole.Line));
                file.ReportBlock(
                    this, file.Run.LineOf(part, hole.Line),
                    $"The R level {say.Level(hole.Hole.RLevel)} lies {say.Length(surface - place.Z)} inside the stock ({WhereIs(surface, place, file.Run.Job, hole.Hole.Tool, stock)} {say.Level(top)}){(isCut ? ", and the hole there is narrower than the tap" : "")}: the tool goes there at rapid.",
                    value: top + file.Run.Job.Setup.Clearance);
            }
        }
    }

    static bool IsOver(Box3 stock, Point3 place) =>
        place.X >= stock.Min.X && place.X <= stock.Max.X && place.Y >= stock.Min.Y && place.Y <= stock.Max.Y;

    /// <summary>The highest of what stands at a hole and at those that follow it with the same R level, as far as its part goes, mm: the stock's top, or the floor that level cuts of mills have left at all of them.</summary>
    static double SurfaceOfRun(ProgramRun run, int part, int first, in Box3 stock, ref int looks)
    {
        var holes = run.Results[part].Holes;
        var level = holes[first].PlaceAt(holes[first].Hole.RLevel).Z;
        var highest = double.NegativeInfinity;
        for (var i = first; i < holes.Length && highest < stock.Max.Z; i++)
        {
            var hole = holes[i];
            var place = hole.PlaceAt(hole.Hole.RLevel);
            if (i > first && (!hole.Hole.IsHop || place.Z != level))
                break;
            highest = Math.Max(highest, SurfaceAt(run, part, hole.CutsBefore, place, Given(run.Job, place, hole.Hole.Tool, stock), ref looks));
        }
        return highest;
    }

    /// <summary>What stands under a tool at a place before the first cut.</summary>
    static double Given(Job job, Point3 place, int tool, in Box3 stock) => Openings.FloorUnder(job.Setup, place.X, place.Y, job.ShapeOf(tool).Radius, stock.Max.Z);

    static string WhereIs(double surface, Point3 place, Job job, int tool, in Box3 stock) =>
        surface >= stock.Max.Z ? "top at" : surface == Given(job, place, tool, stock) ? "the hollow's floor at" : "milled down to";

    static double SurfaceAt(ProgramRun run, int part, int cutsBefore, Point3 place, double top, ref int looks)
    {
        var surface = top;
        for (var earlier = 0; earlier <= part; earlier++)
        {
            var result = run.Results[earlier];
            var left = earlier == part ? cutsBefore : int.MaxValue;
            foreach (ref readonly var cut in result.Cuts)
            {
                if (left-- == 0)
                    break;
                if (++looks > MostLooks)
                    return top;
                if (!(Math.Abs(cut.From.Z - cut.To.Z) <= Tolerance && cut.From.Z < surface) || !cut.From.IsKnown || !cut.To.IsKnown || run.Job.EndOf(cut.Tool).FlatRadius is not (> 0 and var radius))
                    continue;
                var floor = place with { Z = cut.From.Z };
                if (cut.Arc < 0 ? MayPass(cut.From, cut.To, radius, floor) : result.PathOf(cut) is { IsKnown: true } arc && MayPass(arc, radius, floor, ref looks))
                    surface = cut.From.Z;
            }
        }
        return surface;
    }

    /// <summary>Whether a hollow of the stock lets a tool down to R, a tap with its chamfer.</summary>
    static bool IsOpen(Setup setup, Point3 place, double top, int number)
    {
        var tool = setup.FindTool(number);
        var width = tool is not { Diameter: > 0 and var diameter } ? 0
            : tool is { Kind: ToolKind.Tap, Pitch: > 0 and var pitch } && top - place.Z <= LeadOfTap * pitch + Tolerance ? diameter - 2 * pitch
            : WidthAt(tool, top - place.Z);
        return Openings.FloorUnder(setup, place.X, place.Y, width / 2, top) <= place.Z + Tolerance;
    }

    /// <summary>Whether a tap at R stands with more than its chamfer in a hole that is narrower than its thread.</summary>
    static bool IsTapInCore(ProgramRun run, int part, int cutsBefore, Point3 place, double top, int tool, ref int looks)
    {
        if (run.Job.Setup.FindTool(tool) is not { Kind: ToolKind.Tap, Diameter: > 0, Pitch: > 0 and var pitch })
            return false;
        var thread = place with { Z = place.Z + LeadOfTap * pitch };
        return thread.Z < top - Tolerance && !WasCut(run, part, cutsBefore, thread, top - thread.Z, tool, ref looks, isThread: true);
    }

    /// <summary>True when a cut before went at this place down to the level, or may have: a cut whose place or tool is not known may have gone anywhere.</summary>
    static bool WasCut(ProgramRun run, int part, int cutsBefore, Point3 place, double depth, int tool, ref int looks, bool isThread = false)
    {
        for (; part >= 0; part--)
        {
            var result = run.Results[part];
            var left = cutsBefore;
            foreach (ref readonly var cut in result.Cuts)
            {
                if (left-- == 0)
                    break;
                if (++looks > MostLooks)
                    return true;
                if (cut.Arc >= 0)
                {
                    if (MayPass(result.PathOf(cut), run.Job.ShapeOf(cut.Tool).Radius, place, ref looks))
                        return true;
                    continue;
                }
                if (!MayPass(cut.From, cut.To, run.Job.ShapeOf(cut.Tool).Radius, place))
                    continue;
                if (!cut.From.IsKnown || !cut.To.IsKnown)
                    return true;
                var isHole = Upright.Is(cut.From, cut.To);
                if (!isHole || Fits(run.Job.Setup, tool, cut.Tool, place.Z - Math.Min(cut.From.Z, cut.To.Z), depth, isThread))
                    return true;
            }
            cutsBefore = int.MaxValue;
        }
        return false;
    }

    /// <summary>True when a straight cut goes over a place at its level or deeper, or may do so.</summary>
    static bool MayPass(Point3 from, Point3 to, double radius, Point3 place) =>
        !(Math.Min(from.Z, to.Z) > place.Z + Tolerance) && !(radius > 0 && Footprint.Distance(from, to, place.X, place.Y) > radius);

    /// <summary>The same for an arc.</summary>
    static bool MayPass(ArcPath arc, double radius, Point3 place, ref int looks)
    {
        if (arc.Low.Z > place.Z + Tolerance)
            return false;
        if (!arc.IsKnown)
            return true;
        var chords = arc.ChordsWithin(Tolerance);
        looks += chords.Count;
        foreach (var (from, to) in chords)
            if (MayPass(from, to, radius, place))
                return true;
        return false;
    }

    /// <summary>True when a tool whose tip is <paramref name="above"/> mm above the bottom of a hole, and <paramref name="depth"/> mm below the stock's top, is nowhere
    /// wider than the tool that made the hole; true too where either is not known.</summary>
    static bool Fits(Setup setup, int tool, int earlier, double above, double depth, bool isThread)
    {
        if (setup.FindTool(tool) is not { Diameter: > 0 } mine || setup.FindTool(earlier) is not { Diameter: > 0 } other
            || (mine.PointAngle is null && !ToolEnd.IsFlat(mine) && !isThread))
            return true;
        // Both widths grow in straight lines up to the diameter: they are compared at the corners.
        return Fits(0) && Fits(depth) && Fits(Math.Min(depth, HeightOfFullWidth(mine))) && Fits(Math.Clamp(HeightOfFullWidth(other) - above, 0, depth));

        bool Fits(double height) => WidthAt(mine, height) <= WidthAt(other, height + above) + Tolerance;
    }

    static double WidthAt(Tool tool, double height) =>
        tool.PointAngle is > 0 and < 180 and var angle ? Math.Min(tool.Diameter!.Value, 2 * Math.Max(0, height) * Math.Tan(angle * Math.PI / 360)) : tool.Diameter!.Value;

    static double HeightOfFullWidth(Tool tool) =>
        tool.PointAngle is > 0 and < 180 and var angle ? tool.Diameter!.Value / 2 / Math.Tan(angle * Math.PI / 360) : 0;

    public override IEnumerable<Fix> Fixes(Finding finding, ProgramAnalysis analysis)
    {
        ArgumentNullException.ThrowIfNull(finding);
        ArgumentNullException.ThrowIfNull(analysis);
        var line = analysis.Main.LastSetter(Slot.CycleR, finding.Line);
        if (line < 0)
            yield break;
        var state = analysis.Main.StepAt(line).After;
        var block = analysis.Main.BlockAt(line);
        var token = block.IndexOf('R');
        // The R that a later run of the block met may have been set behind it, in a loop.
        if (token < 0 || state.Distance != DistanceMode.Absolute || state.Units == LengthUnit.Unknown || !(state.RLevel < finding.Value))
            yield break;
        var word = "R" + WordEdits.Length(finding.Value, state.Units, analysis.Machine.Readings);
        yield return new Fix($"Put R above the stock ({word})", FixSafety.Choice, [WordEdits.Replace(line, block, token, word)]);
    }
}
