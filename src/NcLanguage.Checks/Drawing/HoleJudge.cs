using NcLanguage.Machine.Setups;

namespace NcLanguage.Checks.Drawing;

/// <summary>Judges what is made at one place: a place may be spotted, drilled, milled, reamed and tapped. The deepest cut at full diameter by a tool
/// of the right size decides.</summary>
sealed class HoleJudge(Setup setup)
{
    /// <summary>Diameters and depths that differ by less are equal, mm.</summary>
    const double Equal = 0.01;

    /// <summary>A milled hole is as wide as its circle is written, to rounded numbers, mm.</summary>
    const double EqualMilled = 0.02;

    /// <summary>The most that a reamer or a boring bar has to take off the diameter, for a hole to count as made for it, mm.</summary>
    const double MostToFinish = 1;

    /// <summary>Where depths count from: the top of the stock, Z0 of the frame where no stock is given.</summary>
    readonly double _top = setup.Stock?.Max.Z ?? 0;

    /// <summary>Whether a cut has to do with a hole at all.</summary>
    public static bool Counts(PlaceWork work) => work.Makes || work.Threads || work.Kind == WorkKind.Spot || work.Number > 0;

    public DrawingMatch Judge(DrawingHole wanted, List<PlaceWork> works)
    {
        var match = Match(wanted.X, wanted.Y, works) with { Wanted = wanted };
        var cuts = works.FindAll(work => work.Makes);
        if (cuts.Count == 0)
            return WithoutHole(match, works);
        var core = Deepest(cuts.Where(cut => IsRight(cut, wanted.Diameter)));
        if (core is not { } right)
            return OfOtherSize(wanted, match, cuts);
        match = With(match, right, works);
        // A larger hole that goes as deep has cut the right one away; a counterbore above it has not.
        var larger = cuts.FindAll(cut => wanted.Diameter is not null && cut.Diameter > right.Diameter + EqualMilled
            && Depth(cut) >= Math.Min(Depth(right), wanted.Depth ?? Depth(right)) - Equal && Clears(cut, works));
        if (larger.Count > 0)
            return With(match, larger.MaxBy(cut => cut.Diameter), works) with { Status = HoleStatus.WrongSize };
        if (Depth(right) < wanted.Depth - Equal)
            return match with { Status = HoleStatus.Shallow };
        return wanted.Thread is null ? match with { Status = HoleStatus.Drilled } : JudgeThread(wanted, match, works);
    }

    /// <summary>A place where the drawing has no hole; null where what is done there makes none for certain: milled circles and plunges may belong to a pocket, a
    /// chamfer to a hole made before.</summary>
    public DrawingMatch? Extra(WorkedPlace place)
    {
        var works = place.Works;
        if (works.Exists(work => work.Kind is WorkKind.Mill or WorkKind.Plunge or WorkKind.MillThread))
            return null;
        var deepest = Deepest(works.Where(work => work.Makes)) ?? Deepest(works.Where(work => work.Threads || (work.Kind == WorkKind.Spot && work.Number > 0)));
        if (deepest is not { } cut)
            return null;
        var match = With(Match(place.X, place.Y, works), cut, works) with { Status = HoleStatus.Extra };
        return cut.Makes ? match : match with { By = HoleMaking.None, Diameter = double.NaN, Depth = double.NaN, Unfinished = cut.Threads ? HoleUnfinished.No : HoleUnfinished.SpotOnly };
    }

    static DrawingMatch Match(double x, double y, List<PlaceWork> works) => new()
    {
        X = x,
        Y = y,
        Status = null,
        Holes = [.. works.Where(work => work.Number > 0).Select(work => work.Number)],
        Lines = [.. works.Select(work => work.Line).Distinct()],
    };

    DrawingMatch With(DrawingMatch match, PlaceWork cut, List<PlaceWork> works) => match with
    {
        Diameter = cut.Diameter,
        Depth = Depth(cut),
        Work = cut,
        MayBeBoss = !Clears(cut, works),
        By = cut.Kind switch
        {
            WorkKind.Ream => HoleMaking.Reamed,
            WorkKind.Bore => HoleMaking.Bored,
            WorkKind.Mill or WorkKind.Plunge => HoleMaking.Milled,
            _ => HoleMaking.Drilled,
        },
    };

    static DrawingMatch WithoutHole(DrawingMatch match, List<PlaceWork> works)
    {
        var tapped = works.FindIndex(work => work.Threads);
        var spotted = works.FindIndex(work => work.Kind == WorkKind.Spot);
        return match with
        {
            Status = HoleStatus.Missing,
            Unfinished = tapped >= 0 ? HoleUnfinished.NotDrilled : spotted >= 0 ? HoleUnfinished.SpotOnly : HoleUnfinished.No,
            Work = tapped >= 0 ? works[tapped] : spotted >= 0 ? works[spotted] : null,
        };
    }

    DrawingMatch OfOtherSize(DrawingHole wanted, DrawingMatch match, List<PlaceWork> cuts)
    {
        // A circle that leaves its middle may be a boss: it says nothing against a hole that is drilled.
        var other = (Deepest(cuts.Where(cut => Clears(cut, cuts))) ?? Deepest(cuts))!.Value;
        // Where a mill only goes down, what it does from there may well make the hole.
        if (other.Kind == WorkKind.Plunge && other.Diameter < wanted.Diameter)
            return match;
        var missing = wanted.Diameter - other.Diameter;
        var isForFinishing = missing is > 0 and <= MostToFinish
            && setup.Tools.Any(tool => tool.Kind is ToolKind.Reamer or ToolKind.BoringBar && Math.Abs((tool.Diameter ?? double.NaN) - wanted.Diameter!.Value) <= Equal);
        return With(match, other, cuts) with { Status = HoleStatus.WrongSize, Unfinished = isForFinishing ? HoleUnfinished.NotReamed : HoleUnfinished.No };
    }

    DrawingMatch JudgeThread(DrawingHole wanted, DrawingMatch match, List<PlaceWork> works)
    {
        var threads = works.FindAll(work => work.Threads);
        if (threads.Count == 0)
            return match with { Status = HoleStatus.Shallow, Unfinished = HoleUnfinished.NotTapped };
        var thread = ThreadSize.Parse(wanted.Thread!);
        var fitting = threads.FindAll(work => thread is not { } size || size.Fits(work));
        var deepest = (fitting.Count > 0 ? fitting : threads).MaxBy(work => _top - work.Tip);
        match = match with { ThreadDepth = _top - deepest.Tip };
        if (fitting.Count == 0)
            return match with { Status = HoleStatus.WrongSize, IsOtherThread = true, Work = deepest };
        return match.ThreadDepth < wanted.Depth - Equal ? match with { Status = HoleStatus.Shallow, Work = deepest } : match with { Status = HoleStatus.Drilled };
    }

    double Depth(PlaceWork work) => _top - work.Full;

    // What is not known counts as right: a claim needs knowledge.
    static bool IsRight(PlaceWork cut, double? wanted) =>
        wanted is null || double.IsNaN(cut.Diameter) || Math.Abs(cut.Diameter - wanted.Value) <= (cut.Kind == WorkKind.Mill ? EqualMilled : Equal);

    /// <summary>Whether a cut leaves nothing inside: a circle wider than its tool needs a hole inside it that is as deep.</summary>
    static bool Clears(PlaceWork cut, List<PlaceWork> works)
    {
        if (cut.Kind != WorkKind.Mill)
            return true;
        var inside = cut.Diameter - 2 * cut.Tool!.Diameter!.Value;
        if (inside <= 0)
            return true;
        // Narrower and narrower, so that it ends.
        return works.Exists(work => work.Makes && work.Full <= cut.Full + Equal && work.Diameter >= inside - EqualMilled && work.Diameter < cut.Diameter - Equal && Clears(work, works));
    }

    /// <summary>The deepest; one whose depth is not known only where there is no other.</summary>
    PlaceWork? Deepest(IEnumerable<PlaceWork> cuts)
    {
        PlaceWork? deepest = null;
        foreach (var cut in cuts)
            if (deepest is not { } best || double.IsNaN(best.Full) || Depth(cut) > Depth(best))
                deepest = cut;
        return deepest;
    }
}
