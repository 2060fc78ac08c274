using System.Collections.Immutable;
using NcLanguage.Checks.Analysis;
using NcLanguage.Checks.Clearance;
using NcLanguage.Machine.Geometry;

namespace NcLanguage.Checks.Drawing;

/// <summary>Holds the holes that a program makes against those that the drawing asks for: holes of cycles, of drills that are fed straight down, and those
/// milled as full circles. Other pockets are not seen as holes.</summary>
public sealed class DrawingComparison
{
    /// <summary>Places nearer than this in X and Y are one, mm.</summary>
    public const double SamePlace = WorkedPlaces.SamePlace;

    DrawingComparison()
    {
    }

    /// <summary>False where the program drills at places that are not known: nothing can be called missing then.</summary>
    public bool AreAllPlacesKnown { get; private set; } = true;

    /// <summary>The drawing's holes in the setup's order, then the extra ones in the order drilled.</summary>
    public ImmutableArray<DrawingMatch> Matches { get; private set; } = [];

    /// <summary>Empty where the setup lists no holes: then there is nothing to compare with. Holes of another part, which lies under an offset of its own and
    /// beside the stock, are no extra ones; without a stock that is what all holes under another offset are taken for.</summary>
    public static DrawingComparison Of(ProgramRun run)
    {
        ArgumentNullException.ThrowIfNull(run);
        if (run.Job.Setup.Holes.IsEmpty)
            return new DrawingComparison();
        var comparison = Of(run, WorkedPlaces.Of(run));
        comparison.Matches = [.. comparison.Matches.Where(match => match.Status != HoleStatus.Extra || !IsOfAnotherPart(match, run.Job))];
        return comparison;
    }

    /// <summary>Whether a hole that is made is that of another part, which lies under an offset of its own.</summary>
    internal static bool IsOfAnotherPart(DrawingMatch match, Job job) => IsShifted(match) && !(job.Setup.Stock is { } stock && IsOver(stock, match));

    /// <summary>Whether a hole that is made lies in the stock as seen from above.</summary>
    internal static bool IsOver(Box3 stock, DrawingMatch match) => Footprint.Distance(stock, match.X, match.Y) <= Sweep.ClearanceTolerance;

    /// <summary>Whether a hole is made under another work offset than the setup's frame, or under a shift.</summary>
    internal static bool IsShifted(DrawingMatch match) => match.Work!.Value.ToFrame is not { X: 0, Y: 0 };

    internal static DrawingComparison Of(ProgramRun run, WorkedPlaces places)
    {
        var comparison = new DrawingComparison { AreAllPlacesKnown = places.AreAllKnown };
        comparison.Matches = [.. Compare(run, places)];
        return comparison;
    }

    static IEnumerable<DrawingMatch> Compare(ProgramRun run, WorkedPlaces places)
    {
        var setup = run.Job.Setup;
        var judge = new HoleJudge(run);
        var wantedPlaces = new HashSet<WorkedPlace>();
        // A counterbore and the thread under it are two holes of the list at one place.
        var threaded = setup.Holes.Where(hole => hole.Thread is not null).Select(hole => places.At(hole.X, hole.Y)).ToHashSet();
        foreach (var wanted in setup.Holes)
        {
            var place = places.At(wanted.X, wanted.Y);
            if (place is not null)
                wantedPlaces.Add(place);
            var works = place?.Works.Exists(HoleJudge.Counts) == true ? place.Works : [];
            if (works.Count == 0 && !HollowWorks.At(setup, wanted.X, wanted.Y).Any())
                yield return new DrawingMatch { Wanted = wanted, X = wanted.X, Y = wanted.Y, Status = places.AreAllKnown ? HoleStatus.Missing : null };
            else
                yield return judge.Judge(wanted, works, threaded.Contains(place));
        }
        var milled = new MilledOver(run);
        foreach (var place in places.All)
            if (!wantedPlaces.Contains(place) && judge.Extra(place) is { } extra && !milled.TakesAway(place, extra.Work!.Value))
                yield return extra;
    }
}
