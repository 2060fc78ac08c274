using NcLanguage.Control.Moves;
using NcLanguage.Machine.Setups;

namespace NcLanguage.Checks.Drawing;

/// <summary>A hole that the program drills, by its number from 1; the bottom is in the setup's frame, mm.</summary>
readonly record struct DrilledHole(int Number, Hole Hole, double Bottom);

/// <summary>Judges what is drilled at one place: a place may be spotted, drilled, reamed and tapped. The deepest cut at full diameter by a tool
/// of the right size decides.</summary>
sealed class HoleJudge(Setup setup)
{
    /// <summary>Diameters and depths that differ by less are equal, mm.</summary>
    const double Equal = 0.01;

    /// <summary>Where depths count from: the top of the stock, Z0 of the frame where no stock is given.</summary>
    readonly double _top = setup.Stock?.Max.Z ?? 0;

    readonly record struct Cut(double Diameter, double Depth);

    public DrawingMatch Judge(DrawingHole wanted, List<DrilledHole> holes)
    {
        var match = Match(wanted.X, wanted.Y, holes) with { Wanted = wanted };
        var cuts = CutsOf(holes);
        if (cuts.Count == 0)
            return match with { Status = HoleStatus.Missing, IsSpotOnly = holes.Exists(hole => IsSpot(ToolOf(hole))) };
        var core = Deepest(cuts.Where(cut => IsRight(cut.Diameter, wanted.Diameter)));
        if (core is not { } right)
        {
            var other = Deepest(cuts)!.Value;
            return match with { Status = HoleStatus.WrongSize, Diameter = other.Diameter, Depth = other.Depth };
        }
        match = match with { Diameter = right.Diameter, Depth = right.Depth };
        // A larger hole that goes as deep has cut the right one away; a counterbore above it has not.
        if (cuts.Find(cut => cut.Diameter > right.Diameter + Equal && cut.Depth >= Math.Min(right.Depth, wanted.Depth ?? right.Depth) - Equal) is { Diameter: > 0 } larger)
            return match with { Status = HoleStatus.WrongSize, Diameter = larger.Diameter, Depth = larger.Depth };
        if (right.Depth < wanted.Depth - Equal)
            return match with { Status = HoleStatus.Shallow };
        return wanted.Thread is null ? match with { Status = HoleStatus.Drilled } : JudgeThread(wanted, match, holes);
    }

    public DrawingMatch Extra(double x, double y, List<DrilledHole> holes)
    {
        var deepest = Deepest(CutsOf(holes));
        return Match(x, y, holes) with
        {
            Status = HoleStatus.Extra,
            Diameter = deepest?.Diameter ?? double.NaN,
            Depth = deepest?.Depth ?? double.NaN,
            IsSpotOnly = deepest is null && holes.Exists(hole => IsSpot(ToolOf(hole))),
        };
    }

    static DrawingMatch Match(double x, double y, List<DrilledHole> holes) =>
        new() { X = x, Y = y, Status = null, Holes = [.. holes.Select(hole => hole.Number)] };

    DrawingMatch JudgeThread(DrawingHole wanted, DrawingMatch match, List<DrilledHole> holes)
    {
        var taps = holes.Where(IsTapped).ToList();
        if (taps.Count == 0)
            return match with { Status = HoleStatus.Shallow, IsThreadMissing = true };
        var thread = ThreadSize.Parse(wanted.Thread!);
        var fitting = taps.Where(hole => thread is not { } size || size.Fits(ToolOf(hole))).ToList();
        var depth = (fitting.Count > 0 ? fitting : taps).Max(BottomDepth);
        match = match with { ThreadDepth = depth };
        if (fitting.Count == 0)
            return match with { Status = HoleStatus.WrongSize };
        return match with { Status = depth < wanted.Depth - Equal ? HoleStatus.Shallow : HoleStatus.Drilled };
    }

    Tool? ToolOf(DrilledHole hole) => setup.FindTool(hole.Hole.Tool);

    static bool IsSpot(Tool? tool) => tool?.Kind is ToolKind.SpotDrill or ToolKind.CentreDrill;

    bool IsTapped(DrilledHole hole) => hole.Hole.Cycle is 74 or 84 || ToolOf(hole)?.Kind is ToolKind.Tap or ToolKind.ThreadMill;

    /// <summary>The cuts that make a hole of a size: not spots, chamfers, taps.</summary>
    List<Cut> CutsOf(List<DrilledHole> holes)
    {
        var cuts = new List<Cut>();
        foreach (var hole in holes)
        {
            var tool = ToolOf(hole);
            if (IsTapped(hole) || IsSpot(tool) || tool?.Kind is ToolKind.Countersink or ToolKind.ChamferMill or ToolKind.FaceMill or ToolKind.Probe)
                continue;
            cuts.Add(new Cut(tool?.Diameter ?? double.NaN, BottomDepth(hole) - PointLength(tool)));
        }
        return cuts;
    }

    double BottomDepth(DrilledHole hole) => _top - hole.Bottom;

    /// <summary>Length of a drill's point; 0 where the angle or the diameter is not known, or the end is flat.</summary>
    static double PointLength(Tool? tool) =>
        tool is { PointAngle: > 0 and < 180 and var angle, Diameter: { } diameter } ? diameter / 2 / Math.Tan(angle * Math.PI / 360) : 0;

    // What is not known counts as right: a claim needs knowledge.
    static bool IsRight(double diameter, double? wanted) => wanted is null || double.IsNaN(diameter) || Math.Abs(diameter - wanted.Value) <= Equal;

    /// <summary>The deepest; one whose depth is not known only where there is no other.</summary>
    static Cut? Deepest(IEnumerable<Cut> cuts)
    {
        Cut? deepest = null;
        foreach (var cut in cuts)
            if (deepest is not { } best || double.IsNaN(best.Depth) || cut.Depth > best.Depth)
                deepest = cut;
        return deepest;
    }
}
