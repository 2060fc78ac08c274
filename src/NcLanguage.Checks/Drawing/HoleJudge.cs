using NcLanguage.Checks.Analysis;
using NcLanguage.Checks.Cutting;
using NcLanguage.Machine.Setups;

namespace NcLanguage.Checks.Drawing;

/// <summary>Judges what is made at one place: a place may be spotted, drilled, milled, reamed and tapped. The deepest cut at full diameter by a tool
/// of the right size decides.</summary>
sealed class HoleJudge(ProgramRun run)
{
    /// <summary>Diameters and depths that differ by less are equal, mm.</summary>
    const double Equal = 0.01;

    /// <summary>A milled hole is as wide as its circle is written, to rounded numbers, mm.</summary>
    const double EqualMilled = 0.02;

    /// <summary>The most that a reamer or a boring bar has to take off the diameter, for a hole to count as made for it, mm.</summary>
    const double MostToFinish = 1;

    readonly Setup _setup = run.Job.Setup;
    readonly MilledLevels _levels = new(run);
    readonly DepthLimit _limit = new(run.Job.Setup);

    /// <summary>Whether a cut has to do with a hole at all.</summary>
    public static bool Counts(PlaceWork work) => work.Makes || work.Threads || work.Kind == WorkKind.Spot || work.Number > 0;

    /// <param name="hasThread">Whether the drawing has a thread at the place, if only as another hole of the list.</param>
    public DrawingMatch Judge(DrawingHole wanted, List<PlaceWork> works, bool hasThread)
    {
        PlaceWork[] given = [.. HollowWorks.At(_setup, wanted.X, wanted.Y)];
        var match = JudgeAll(wanted, [.. given, .. works], hasThread);
        if (match.Work is not { Kind: WorkKind.Hollow })
            return match;
        // What the stock has already is as it is: the program answers for what it does there.
        if (match.ThreadWork is not null)
            return match with { Status = match.IsOtherThread || match.IsThreadShort || match.IsThreadUndrawn ? match.Status : HoleStatus.Drilled, IsOtherSize = false, IsHoleShallow = false };
        return match.Status == HoleStatus.Drilled ? match : WithoutHole(Match(wanted.X, wanted.Y, works) with { Wanted = wanted, Surface = match.Surface }, works);
    }

    DrawingMatch JudgeAll(DrawingHole wanted, List<PlaceWork> works, bool hasThread)
    {
        var match = Match(wanted.X, wanted.Y, works) with { Wanted = wanted, Surface = SurfaceOf(wanted, works) };
        // What ends above the surface cuts nothing.
        var cuts = works.FindAll(work => work.Makes && !(work.Tip >= match.Surface - Equal));
        if (cuts.Count == 0)
            return WithoutHole(match, works);
        var core = Deepest(cuts.Where(cut => IsRight(cut, wanted.Diameter)));
        if (core is not { } right)
        {
            var other = OfOtherSize(wanted, match, cuts);
            return other.IsOtherSize && other.Unfinished == HoleUnfinished.No ? JudgeThread(wanted, other, works, hasThread) : other;
        }
        match = With(match, right, works);
        var depth = match.Depth;
        // A larger hole that goes as deep has cut the right one away; a counterbore above it has not.
        var larger = cuts.FindAll(cut => wanted.Diameter is not null && cut.Diameter > right.Diameter + EqualMilled
            && match.Surface - cut.Full >= Math.Min(depth, wanted.Depth ?? depth) - Equal && Clears(match, cut, works));
        if (larger.Count > 0)
            return JudgeThread(wanted, With(match, larger.MaxBy(cut => cut.Diameter), works) with { Status = HoleStatus.WrongSize, IsOtherSize = true }, works, hasThread);
        var isShallow = IsShallow(match, right.Full, wanted) || IsPointAlone(match, right, wanted);
        match = JudgeThread(wanted, match with { Status = isShallow ? HoleStatus.Shallow : HoleStatus.Drilled, IsHoleShallow = isShallow }, works, hasThread);
        return _limit.Judge(match, cuts.Where(cut => cut.Kind != WorkKind.Hollow && (IsRight(cut, wanted.Diameter) || wanted.Diameter - cut.Diameter is > 0 and <= MostToFinish)));
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
        var surface = _levels.SurfaceAt(place.X, place.Y, cut.Diameter > 0 ? cut.Diameter / 2 : 0);
        var match = WithThread(With(Match(place.X, place.Y, works) with { Surface = surface }, cut, works), works) with { Status = HoleStatus.Extra };
        return cut.Makes ? match : match with { By = HoleMaking.None, Diameter = double.NaN, Depth = double.NaN, Unfinished = cut.Threads ? HoleUnfinished.No : HoleUnfinished.SpotOnly };
    }

    static DrawingMatch Match(double x, double y, List<PlaceWork> works) => new()
    {
        X = x,
        Y = y,
        Status = null,
        Holes = [.. works.Where(work => work.Number > 0).Select(work => work.Number)],
        Lines = [.. works.Where(work => work.Kind != WorkKind.Hollow).Select(work => work.Line).Distinct()],
    };

    DrawingMatch With(DrawingMatch match, PlaceWork cut, List<PlaceWork> works) => match with
    {
        Diameter = cut.Diameter,
        Depth = match.Surface - cut.Full,
        Work = cut,
        MayBeBoss = !Clears(match, cut, works),
        By = cut.Kind switch
        {
            WorkKind.Hollow => HoleMaking.None,
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
        var begun = tapped >= 0 ? tapped : spotted >= 0 ? spotted : works.FindIndex(work => work.Makes);
        return WithThread(match, works) with
        {
            Status = HoleStatus.Missing,
            Unfinished = tapped >= 0 ? HoleUnfinished.NotDrilled : spotted >= 0 ? HoleUnfinished.SpotOnly : HoleUnfinished.No,
            Work = begun >= 0 ? works[begun] : null,
        };
    }

    DrawingMatch OfOtherSize(DrawingHole wanted, DrawingMatch match, List<PlaceWork> cuts)
    {
        // A counterbore goes into a hole that is there: alone it makes none.
        if (cuts.TrueForAll(cut => cut.Tool?.Kind == ToolKind.Counterbore && cut.Diameter > wanted.Diameter + Equal))
            return match with { Status = HoleStatus.Missing };
        var whole = cuts.FindAll(cut => Clears(match, cut, cuts));
        // A circle round what stands as wide as the hole is a boss, or a ring, and the hole is not in it yet.
        if (whole.Count == 0 && cuts.TrueForAll(cut => StandsInside(cut) >= wanted.Diameter - EqualMilled))
            return match with { Status = HoleStatus.Missing };
        // Where a mill only goes down, what it does from there makes the hole.
        var made = whole.FindAll(cut => cut.Kind != WorkKind.Plunge || cut.Diameter > wanted.Diameter);
        if (made.Count == 0 && whole.Count > 0)
            return match;
        // A circle that leaves its middle may be a boss: it says nothing against a hole that is drilled.
        var other = Widest(made.Count > 0 ? made : cuts, match.Surface - wanted.Depth ?? double.NegativeInfinity);
        var missing = wanted.Diameter - other.Diameter;
        var isForFinishing = missing is > 0 and <= MostToFinish
            && _setup.Tools.Any(tool => tool.Kind is ToolKind.Reamer or ToolKind.BoringBar && Math.Abs((tool.Diameter ?? double.NaN) - wanted.Diameter!.Value) <= Equal);
        return With(match, other, cuts) with { Status = HoleStatus.WrongSize, IsOtherSize = true, Unfinished = isForFinishing ? HoleUnfinished.NotReamed : HoleUnfinished.No };
    }

    /// <summary>The widest cut that goes down to a level; the deepest where none does.</summary>
    static PlaceWork Widest(List<PlaceWork> cuts, double level)
    {
        var deep = cuts.FindAll(cut => cut.Full <= level + Equal);
        return deep.Count > 0 ? deep.MaxBy(cut => cut.Diameter) : Deepest(cuts)!.Value;
    }

    /// <summary>Adds the deepest thread, whatever the drawing asks for.</summary>
    static DrawingMatch WithThread(DrawingMatch match, List<PlaceWork> works)
    {
        var threads = works.FindAll(work => work.Threads);
        if (threads.Count == 0)
            return match;
        var deepest = threads.MinBy(work => work.Tip);
        return match with { ThreadDepth = match.Surface - deepest.Tip, ThreadWork = deepest };
    }

    /// <summary>Adds what is to be said of the thread to what is said of the hole. A hole of another size that is not tapped wants another drill first.</summary>
    DrawingMatch JudgeThread(DrawingHole wanted, DrawingMatch match, List<PlaceWork> works, bool hasThread)
    {
        if (wanted.Thread is null)
        {
            var made = WithThread(match, works);
            // A list of places alone leaves open what the holes are.
            return made.ThreadWork is null || hasThread || wanted.Diameter is null ? made : made with { Status = HoleStatus.WrongSize, IsThreadUndrawn = true };
        }
        if (!works.Exists(work => work.Threads))
            return match.IsOtherSize ? match : match with { Status = HoleStatus.Shallow, Unfinished = HoleUnfinished.NotTapped };
        var name = ThreadName.Read(wanted.Thread!);
        var fitting = works.FindAll(work => work.Threads && (name is not { } thread || ThreadFit.Fits(thread, work)));
        match = WithThread(match, fitting.Count > 0 ? fitting : works);
        if (fitting.Count == 0)
            return match with { Status = HoleStatus.WrongSize, IsOtherThread = true };
        match = match with { IsThreadUnread = name is not { } read || !ThreadFit.IsSizeKnown(read, match.ThreadWork!.Value) };
        return IsShallow(match, match.ThreadWork!.Value.Tip, wanted)
            ? match with { Status = match.Status == HoleStatus.Drilled ? HoleStatus.Shallow : match.Status, IsThreadShort = true }
            : match;
    }

    /// <summary>Where the depth of a hole counts from: the surface about its mouth, but the stock's top where mills have taken all of the hole away.</summary>
    double SurfaceOf(DrawingHole wanted, List<PlaceWork> works)
    {
        var top = _setup.Stock?.Max.Z ?? 0;
        var (width, lowest) = (wanted.Diameter ?? 0, double.PositiveInfinity);
        foreach (var work in works)
        {
            if (!work.Makes)
                continue;
            width = wanted.Diameter is null && work.Diameter > width ? work.Diameter : width;
            lowest = Math.Min(lowest, work.Full);
        }
        var surface = _levels.SurfaceAt(wanted.X, wanted.Y, width / 2);
        return surface > lowest + Equal ? surface : top;
    }

    /// <summary>Whether a hole that ends at a level is less deep than wanted. One that is through is not, if only the stock was thick enough before it was milled.</summary>
    bool IsShallow(DrawingMatch match, double end, DrawingHole wanted) =>
        match.Surface - end < wanted.Depth - Equal && !(_setup.Stock is { } stock && end <= stock.Min.Z + Equal && stock.Max.Z - end >= wanted.Depth - Equal);

    /// <summary>Whether no more than the point of a drill goes in, where the drawing gives a width and leaves the depth open: nowhere is the hole that wide.</summary>
    static bool IsPointAlone(DrawingMatch match, PlaceWork cut, DrawingHole wanted) =>
        wanted is { Depth: null, Diameter: not null } && cut.Kind == WorkKind.Drill && cut.Full > cut.Tip && cut.Full >= match.Surface - Equal;

    // What is not known counts as right: a claim needs knowledge.
    static bool IsRight(PlaceWork cut, double? wanted) =>
        wanted is null || double.IsNaN(cut.Diameter) || Math.Abs(cut.Diameter - wanted.Value) <= (cut.Kind == WorkKind.Mill ? EqualMilled : Equal);

    /// <summary>Width of what a circle leaves standing in its middle, mm; 0 where it leaves nothing.</summary>
    static double StandsInside(PlaceWork cut) => cut.Kind == WorkKind.Mill ? Math.Max(0, cut.Diameter - 2 * cut.Tool!.Diameter!.Value) : 0;

    /// <summary>Whether a cut leaves nothing inside: a circle wider than its tool needs a hole inside it that is as deep, or other cuts that clear its middle.</summary>
    bool Clears(DrawingMatch match, PlaceWork cut, List<PlaceWork> works)
    {
        var inside = StandsInside(cut);
        if (inside <= 0)
            return true;
        // Narrower and narrower, so that it ends.
        return works.Exists(work => work.Makes && work.Full <= cut.Full + Equal && work.Diameter >= inside - EqualMilled && work.Diameter < cut.Diameter - Equal && Clears(match, work, works))
            || _levels.IsCleared(match.X, match.Y, inside / 2, cut.Full + Equal);
    }

    /// <summary>The deepest; one whose depth is not known only where there is no other.</summary>
    static PlaceWork? Deepest(IEnumerable<PlaceWork> cuts)
    {
        PlaceWork? deepest = null;
        foreach (var cut in cuts)
            if (deepest is not { } best || double.IsNaN(best.Full) || cut.Full < best.Full)
                deepest = cut;
        return deepest;
    }
}
