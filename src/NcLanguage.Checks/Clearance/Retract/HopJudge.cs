using NcLanguage.Checks.Analysis;
using NcLanguage.Control.State;
using NcLanguage.Machine.Geometry;

namespace NcLanguage.Checks.Clearance;

/// <summary>The level that a traverse between two holes asks for.</summary>
enum HopNeed
{
    /// <summary>It is not judged: its holes do not lie in the XY plane.</summary>
    NotJudged,

    /// <summary>R does, as far as the plan is concerned.</summary>
    RLevel,

    /// <summary>The initial level: R does not do.</summary>
    InitialLevel,
}

/// <summary>Judges the traverses of a plan. In a loop the same traverse comes again and again: the last between two blocks is remembered.</summary>
sealed class HopJudge(Job job, HopAim aim)
{
    readonly record struct Way(Point3 From, Point3 To, double Low, double High, int Tool);

    readonly Dictionary<(int From, int To), (Way Way, HopNeed Need)> _last = [];

    /// <param name="fromLine">The block of the hole that it leaves.</param>
    /// <param name="toLine">The block of the hole that it leads to.</param>
    public HopNeed Of(in HoleResult from, in HoleResult to, double initialLevel, int fromLine, int toLine)
    {
        if (from.Plane != WorkPlane.XY || to.Plane != WorkPlane.XY)
            return HopNeed.NotJudged;
        var low = Math.Max(from.Hole.RLevel + from.ToFrame.Z, to.Hole.RLevel + to.ToFrame.Z);
        var way = new Way(from.PlaceAt(0), to.PlaceAt(0), low, Math.Max(initialLevel + to.ToFrame.Z, low), to.Hole.Tool);
        if (_last.TryGetValue((fromLine, toLine), out var last) && last.Way == way)
            return last.Need;
        var need = Asks(way) ? HopNeed.InitialLevel : HopNeed.RLevel;
        _last[(fromLine, toLine)] = (way, need);
        return need;
    }

    /// <summary>To be quicker it must be possible to call R clear of all that the setup lists, the stock included. To be mended it must be known not to clear at R, and to clear at the initial level.</summary>
    bool Asks(in Way way) => aim == HopAim.Fast
        ? !HopClearance.CanGoAt(job, way.From, way.To, way.Low, way.Tool)
        : OutcomeAt(way, way.Low) is HopOutcome.Contact or HopOutcome.Close && job.Setup.ObstaclesAreKnown && OutcomeAt(way, way.High) == HopOutcome.Clear;

    HopOutcome OutcomeAt(in Way way, double level) => HopClearance.Of(job, HopClearance.DistanceAt(job, way.From, way.To, level, way.Tool));
}
