using NcLanguage.Control.Moves;
using NcLanguage.Control.State;
using NcLanguage.Machine.Geometry;
using NcLanguage.Machine.Profiles;

namespace NcLanguage.Editing.Refactorings;

/// <summary>A hole that plain moves drill; lengths in mm.</summary>
/// <param name="From">Where the tool stood before it.</param>
/// <param name="Return">The word of the cycle that leads the tool as these moves do.</param>
readonly record struct DrilledHole(
    Point3 From, Point3 Place, double R, double Bottom, double Feed, double Dwell, bool FeedsOut, double LeftAt, ReturnLevel Return, string NumberWord, string FeedWord, string DwellWord)
{
    public bool IsLike(in DrilledHole other) =>
        R == other.R && Bottom == other.Bottom && Feed.Equals(other.Feed) && Dwell == other.Dwell && FeedsOut == other.FeedsOut && DwellWord == other.DwellWord;
}

/// <summary>Holes alike that plain moves drill one after the other.</summary>
sealed record DrilledGroup(int FirstLine, int LastLine, IReadOnlyList<DrilledHole> Holes, double Unit)
{
    public bool FeedsOut => Holes[0].FeedsOut;

    /// <summary>The number of the cycle that drills so.</summary>
    public int Cycle => (Holes[0].FeedsOut, Holes[0].DwellWord.Length > 0) switch { (false, false) => 81, (false, true) => 82, (true, false) => 85, (true, true) => 89 };

    /// <summary>All groups of two holes or more, in the order of the text.</summary>
    /// <param name="returns">Where the control goes up: behind the hole, or before the next traverse.</param>
    public static IEnumerable<DrilledGroup> All(IReadOnlyList<PlainMove> moves, ReturnLevelReading returns)
    {
        for (var start = 0; start < moves.Count;)
        {
            if (Read(moves, start, returns) is not var (group, end))
            {
                start++;
                continue;
            }
            yield return group;
            start = end;
        }
    }

    static (DrilledGroup Group, int End)? Read(IReadOnlyList<PlainMove> moves, int start, ReturnLevelReading returns)
    {
        var holes = new List<DrilledHole>();
        var initial = moves[start].From.Z;
        var at = start;
        while (at < moves.Count && ReadHole(moves, at, initial, holes, returns) is var (hole, next))
        {
            holes.Add(hole);
            at = next;
        }
        return holes.Count < 2 ? null : (new DrilledGroup(moves[start].Line, moves[at - 1].Line, holes, moves[start].Unit), at);
    }

    /// <summary>The hole that the moves from one on drill, if it is like those before, and the move behind it.</summary>
    static (DrilledHole Hole, int Next)? ReadHole(IReadOnlyList<PlainMove> moves, int at, double initial, List<DrilledHole> before, ReturnLevelReading returns)
    {
        var (first, from) = (at, moves[at].From);
        PlainMove? Next(MoveKind kind) => at < moves.Count && (at == first || moves[at].Line == moves[at - 1].Line + 1) && moves[at].Kind == kind ? moves[at] : null;

        if (before.Count > 0 && moves[at].Line != moves[at - 1].Line + 1)
            return null;
        var lifts = returns == ReturnLevelReading.BeforeMove && before.Count > 0 && Next(MoveKind.Rapid) is { IsUp: true } lift && lift.To.Z == initial;
        if (lifts)
            at++;
        if (Next(MoveKind.Rapid) is { IsAcross: true })
            at++;
        else if (before.Count > 0)
            return null;
        var r = at < moves.Count ? moves[at].From.Z : double.NaN;
        if (Next(MoveKind.Rapid) is { IsDown: true } approach)
            (r, at) = (approach.To.Z, at + 1);
        if (Next(MoveKind.Feed) is not { IsDown: true } down)
            return null;
        at++;
        var dwell = Next(MoveKind.Dwell);
        if (dwell is not null)
            at++;
        if ((Next(MoveKind.Rapid) ?? Next(MoveKind.Feed)) is not { IsUp: true } up)
            return null;
        at++;
        var feedsOut = up.Kind == MoveKind.Feed;
        if (feedsOut && (!up.Feed.Equals(down.Feed) || up.FeedWord.Length > 0))
            return null;
        var level = LevelOf(returns, up.To.Z, r, initial, lifts);
        var hole = new DrilledHole(
            from, down.To, r, down.To.Z, down.Feed, dwell?.Dwell ?? 0, feedsOut, up.To.Z, level, moves[first].NumberWord, down.FeedWord, dwell?.DwellWord ?? "");
        if (level == ReturnLevel.Unknown || (before.Count > 0 && !hole.IsLike(before[0])))
            return null;
        return (hole, at);
    }

    /// <summary>The word that leads to the level a hole is left at; unknown where none does.</summary>
    static ReturnLevel LevelOf(ReturnLevelReading returns, double leftAt, double r, double initial, bool lifts)
    {
        if (returns == ReturnLevelReading.BeforeMove)
            return leftAt != r ? ReturnLevel.Unknown : lifts ? ReturnLevel.Initial : ReturnLevel.RLevel;
        return leftAt == r ? ReturnLevel.RLevel : leftAt == initial ? ReturnLevel.Initial : ReturnLevel.Unknown;
    }
}
