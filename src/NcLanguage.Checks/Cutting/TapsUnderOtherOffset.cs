using NcLanguage.Checks.Analysis;
using NcLanguage.Checks.Drawing;
using NcLanguage.Control.State;
using NcLanguage.Machine.Setups;

namespace NcLanguage.Checks.Rules;

/// <summary>A hole that is tapped under one work offset and drilled under another.</summary>
/// <param name="Line">The block of the tap, from 0.</param>
/// <param name="Coordinates">Those that the tap's places are meant in.</param>
/// <param name="DrillTool">What makes a hole at the same X and Y in <paramref name="DrillCoordinates"/>.</param>
readonly record struct TapElsewhere(int Line, int Tool, WorkCoordinates Coordinates, double X, double Y, double Bottom, int DrillTool, WorkCoordinates DrillCoordinates);

/// <summary>Taps under a work offset of which nobody knows where it lies, so that its places cannot be held against those of another: there it is a sign that nothing at all is drilled under it,
/// and a hole at the same X and Y under another is drilled and left without its thread.</summary>
static class TapsUnderOtherOffset
{
    /// <summary>Places that differ by less are one, mm.</summary>
    const double Step = 0.001;

    /// <summary>A place in the coordinates of its block.</summary>
    readonly record struct Spot(WorkCoordinates Coordinates, long X, long Y);

    public static List<TapElsewhere> Of(ProgramRun run)
    {
        // All places are gathered only for those that ask: it is looked for at each key.
        if (!HasTapOfUnknownPlace(run))
            return [];
        var (tapped, made) = (new HashSet<Spot>(), new Dictionary<(long X, long Y), List<(WorkCoordinates Coordinates, int Tool)>>());
        var makers = new HashSet<WorkCoordinates>();
        var taps = new List<TapElsewhere>();
        for (var part = 0; part < run.Results.Length; part++)
        {
            var result = run.Results[part];
            foreach (ref readonly var plunge in result.Plunges.AsSpan())
                makers.Add(result.CoordinatesAt(plunge.Line));
            foreach (ref readonly var round in result.Rounds.AsSpan())
                makers.Add(result.CoordinatesAt(round.Line));
            for (var i = 0; i < result.Holes.Length; i++)
            {
                var hole = result.Holes[i];
                if (hole.Plane != WorkPlane.XY || double.IsNaN(hole.Hole.X + hole.Hole.Y))
                    continue;
                var (coordinates, x, y) = (result.CoordinatesAt(hole.Line), (long)Math.Round(hole.Hole.X / Step), (long)Math.Round(hole.Hole.Y / Step));
                switch (PlaceWork.KindOf(run.Job.Setup.FindTool(hole.Hole.Tool), hole.Hole.Cycle))
                {
                    case WorkKind.Tap:
                        tapped.Add(new Spot(coordinates, x, y));
                        if (IsOfUnknownPlace(hole) && coordinates.IsKnown)
                            taps.Add(new TapElsewhere(run.LineOf(part, hole.Line), hole.Hole.Tool, coordinates, hole.Hole.X, hole.Hole.Y, hole.Hole.Bottom, 0, coordinates));
                        break;
                    case WorkKind.Drill or WorkKind.Ream or WorkKind.Bore:
                        makers.Add(coordinates);
                        if (!made.TryGetValue((x, y), out var there))
                            made.Add((x, y), there = []);
                        there.Add((coordinates, hole.Hole.Tool));
                        break;
                }
            }
        }
        var found = new List<TapElsewhere>();
        foreach (var tap in taps)
        {
            var (x, y) = ((long)Math.Round(tap.X / Step), (long)Math.Round(tap.Y / Step));
            if (!makers.Contains(tap.Coordinates) && made.TryGetValue((x, y), out var there) && there.FindIndex(hole => hole.Coordinates.IsKnown && !tapped.Contains(new Spot(hole.Coordinates, x, y))) is >= 0 and var at)
                found.Add(tap with { DrillTool = there[at].Tool, DrillCoordinates = there[at].Coordinates });
        }
        return found;
    }

    static bool HasTapOfUnknownPlace(ProgramRun run)
    {
        foreach (var part in run.Results)
            foreach (var hole in part.Holes)
                if (IsOfUnknownPlace(hole) && PlaceWork.KindOf(run.Job.Setup.FindTool(hole.Hole.Tool), hole.Hole.Cycle) == WorkKind.Tap)
                    return true;
        return false;
    }

    static bool IsOfUnknownPlace(in HoleResult hole) => double.IsNaN(hole.ToFrame.X + hole.ToFrame.Y);
}
