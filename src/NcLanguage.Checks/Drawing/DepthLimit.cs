using NcLanguage.Checks.Cutting;
using NcLanguage.Machine.Geometry;
using NcLanguage.Machine.Setups;

namespace NcLanguage.Checks.Drawing;

/// <summary>Tells holes that go deeper than the drawing's: by more than any general tolerance, or out of the stock's bottom where the drawing's hole ends in it. Without a stock it is not
/// known which holes go through, and nothing is told.</summary>
sealed class DepthLimit(Setup setup)
{
    /// <summary>Levels that differ by less are one, mm.</summary>
    const double Equal = 0.01;

    /// <summary>A drill whose point is not given is taken for a usual one where that is the careful way, degrees.</summary>
    const double UsualPoint = 118;

    /// <summary>Pitches of a tap's lead: a plug tap's is 2 to 3 threads long (common practice).</summary>
    const double LeadThreads = 3;

    /// <summary>Adds to a hole of the right size what is too deep about it.</summary>
    /// <param name="cuts">Those at the place that are as wide as the hole, or are made for its finishing.</param>
    public DrawingMatch Judge(DrawingMatch match, IEnumerable<PlaceWork> cuts)
    {
        if (setup.Stock is not { } stock || match.Wanted is not { Depth: { } depth } wanted || match.Work is not { } work)
            return match;
        var bottom = From(match, stock) - depth;
        PlaceWork? through = null;
        foreach (var cut in cuts)
            if (Lowest(cut) < stock.Min.Z - Equal && (through is not { } lower || Lowest(cut) < Lowest(lower)))
                through = cut;
        if (through is { } opening && bottom - EndsBelow(wanted, opening) - stock.Min.Z > GeneralTolerance.Coarsest(depth) && IsBlind(wanted, depth, stock, match))
            return match with { ThroughWork = through };
        var isTooDeep = wanted.Thread is null && IsEndKnown(work) && bottom - stock.Min.Z > Equal
            && (work.Full < bottom - GeneralTolerance.Coarsest(depth) || (OpensBottom(work, bottom, stock) && IsBlind(wanted, depth, stock, match)));
        return match with { IsTooDeep = isTooDeep };
    }

    /// <summary>Whether the tip comes out of the stock, but would not at the drawing's depth.</summary>
    static bool OpensBottom(in PlaceWork work, double bottom, Box3 stock) =>
        work.Tip < stock.Min.Z - Equal && work.Full < bottom - Equal && bottom - PlaceWork.EndLength(work.Tool) >= stock.Min.Z - Equal;

    /// <summary>Level that a depth counts from: the surface about the mouth. What stands above a datum inside the stock may be faced off by somebody else.</summary>
    static double From(DrawingMatch match, Box3 stock) => stock.Min.Z < -Equal ? Math.Min(match.Surface, 0) : match.Surface;

    static double Lowest(in PlaceWork cut) => Math.Min(cut.Tip, cut.End);

    /// <summary>How far below the drawing's depth the tool has to go at least, mm: its point, and where a thread follows the lead of the tap.</summary>
    static double EndsBelow(DrawingHole wanted, in PlaceWork cut)
    {
        var tool = cut.Tool is { Kind: ToolKind.Drill, PointAngle: null } drill ? drill with { PointAngle = UsualPoint } : cut.Tool;
        var lead = wanted.Thread is { } name ? LeadThreads * (ThreadName.Read(name)?.Pitch ?? double.NaN) : 0;
        return PlaceWork.EndLength(tool) + lead;
    }

    /// <summary>Whether the drawing's hole ends in the stock, so that nothing wants to come through. Of a thread only as far as its core hole does not reach the bottom on purpose.</summary>
    /// <param name="surface">Level of the surface about its mouth, mm.</param>
    /// <param name="drill">What drills it.</param>
    public static bool EndsInside(DrawingHole wanted, double surface, in PlaceWork drill, Box3 stock)
    {
        if (wanted.Depth is not { } depth)
            return false;
        var bottom = (stock.Min.Z < -Equal ? Math.Min(surface, 0) : surface) - depth;
        return wanted.Thread is null
            ? bottom - stock.Min.Z > Equal
            : bottom - EndsBelow(wanted, drill) - stock.Min.Z > GeneralTolerance.Coarsest(depth);
    }

    /// <summary>Whether no hole of the drawing at this place goes through: a counterbore and the hole under it are two.</summary>
    bool IsBlind(DrawingHole wanted, double depth, Box3 stock, DrawingMatch match) => !setup.Holes.Any(other =>
        !ReferenceEquals(other, wanted) && Math.Abs(other.X - wanted.X) <= WorkedPlaces.SamePlace && Math.Abs(other.Y - wanted.Y) <= WorkedPlaces.SamePlace
        && !(other.Depth <= depth || From(match, stock) - other.Depth - stock.Min.Z > GeneralTolerance.Coarsest(other.Depth ?? 0)));

    /// <summary>Whether it is known how much of the tool's end is narrower than the hole. A reamer's lead never is.</summary>
    static bool IsEndKnown(in PlaceWork work) =>
        work.Kind is WorkKind.Drill or WorkKind.Bore or WorkKind.Mill or WorkKind.Plunge && work.Tool is { Kind: { } kind } tool && (kind != ToolKind.Drill || tool.PointAngle is not null);
}
