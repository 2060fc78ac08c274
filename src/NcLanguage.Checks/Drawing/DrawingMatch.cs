using System.Collections.Immutable;
using NcLanguage.Machine.Setups;

namespace NcLanguage.Checks.Drawing;

/// <summary>What became of a hole that the drawing asks for.</summary>
public enum HoleStatus
{
    /// <summary>Made, as far as size and depth are given and known.</summary>
    Drilled,

    /// <summary>No hole of any size is made there; at most it is spotted.</summary>
    Missing,

    /// <summary>Of the right size, but not deep enough, or its thread is not, or is not cut at all.</summary>
    Shallow,

    /// <summary>Made, but in another size, with another thread, or with a thread where the drawing has a plain hole.</summary>
    WrongSize,

    /// <summary>Made where the drawing has none.</summary>
    Extra,
}

/// <summary>What a hole still wants.</summary>
public enum HoleUnfinished
{
    No,

    /// <summary>A spot is there, and nothing drills it.</summary>
    SpotOnly,

    /// <summary>A thread is cut, and nothing drills its core hole.</summary>
    NotDrilled,

    /// <summary>The drawing asks for a thread, the hole is there, and nothing taps it.</summary>
    NotTapped,

    /// <summary>A little smaller than the drawing asks for, and the setup's reamer or boring bar of the right size does not come there.</summary>
    NotReamed,
}

/// <summary>What made a hole.</summary>
public enum HoleMaking { None, Drilled, Reamed, Bored, Milled }

/// <summary>What cut a thread.</summary>
public enum ThreadMaking { None, Tapped, Milled }

/// <summary>One place where the drawing asks for a hole, or the program makes one. Lengths in mm, in the setup's frame.</summary>
public sealed record DrawingMatch
{
    /// <summary>What the drawing asks for; null for an extra hole.</summary>
    public DrawingHole? Wanted { get; init; }

    public required double X { get; init; }

    public required double Y { get; init; }

    /// <summary>Null where the program drills at places that are not known, and this may be one of them.</summary>
    public required HoleStatus? Status { get; init; }

    public HoleUnfinished Unfinished { get; init; }

    /// <summary>Diameter that the cut leaves which decides; NaN where not known.</summary>
    public double Diameter { get; init; } = double.NaN;

    /// <summary>Level that depths count from: the surface about the hole's mouth when all is milled, Z0 without a stock.</summary>
    public double Surface { get; init; }

    /// <summary>How deep that cut is at its full diameter, from <see cref="Surface"/>; NaN where not known.</summary>
    public double Depth { get; init; } = double.NaN;

    /// <summary>How deep the tip of the tap or thread mill goes, from <see cref="Surface"/>: the lead of a tap is not taken off; NaN where there is no thread or it is not known.</summary>
    public double ThreadDepth { get; init; } = double.NaN;

    /// <summary>Whether the hole has another diameter than the drawing's.</summary>
    public bool IsOtherSize { get; init; }

    /// <summary>Whether the hole is not as deep as the drawing asks, whatever its thread is.</summary>
    public bool IsHoleShallow { get; init; }

    /// <summary>Whether the hole is deeper than the drawing asks, by more than any general tolerance.</summary>
    public bool IsTooDeep { get; init; }

    /// <summary>Whether the hole comes out of the stock's bottom where the drawing's ends in it.</summary>
    public bool GoesThrough => ThroughWork is not null;

    /// <summary>Whether the thread is not as deep as the drawing asks, whatever the hole is.</summary>
    public bool IsThreadShort { get; init; }

    /// <summary>Whether the thread that is cut is another than the drawing's.</summary>
    public bool IsOtherThread { get; init; }

    /// <summary>Whether a thread is cut where the drawing has a plain hole.</summary>
    public bool IsThreadUndrawn { get; init; }

    /// <summary>Whether a thread is cut that could not be compared with the drawing's, because its name cannot be read, or its diameter or pitch is not known.</summary>
    public bool IsThreadUnread { get; init; }

    /// <summary>Whether nothing is made because the tool that comes there stays above the surface.</summary>
    public bool StaysAbove => Status == HoleStatus.Missing && Unfinished == HoleUnfinished.No && Work is not null;

    /// <summary>How the hole is made.</summary>
    public HoleMaking By { get; init; }

    /// <summary>How its thread is cut.</summary>
    public ThreadMaking ThreadBy => ThreadWork?.Kind switch { null => ThreadMaking.None, WorkKind.MillThread => ThreadMaking.Milled, _ => ThreadMaking.Tapped };

    /// <summary>A full circle that leaves its middle standing, as far as is known: it may be a hole, a ring or a boss.</summary>
    public bool MayBeBoss { get; init; }

    /// <summary>Numbers (from 1) of the program's holes at this place, in the order drilled.</summary>
    public ImmutableArray<int> Holes { get; init; } = [];

    /// <summary>The lines (from 0) of all blocks that work at this place, in the order of the run.</summary>
    public ImmutableArray<int> Lines { get; init; } = [];

    /// <summary>The line (from 0) of the block whose cut decides; null where there is none.</summary>
    public int? DecidingLine => (IsThreadAlone ? ThreadWork : Work) is { Line: >= 0 and var line } ? line : null;

    /// <summary>Whether the thread is wrong and the hole is not.</summary>
    bool IsThreadAlone => (IsOtherThread || IsThreadUndrawn || IsThreadShort) && !IsOtherSize && !IsHoleShallow;

    /// <summary>The work that decides on the hole; null where there is none.</summary>
    internal PlaceWork? Work { get; init; }

    /// <summary>The work that comes out of the stock's bottom where the drawing's hole ends in the stock; null where none does.</summary>
    internal PlaceWork? ThroughWork { get; init; }

    /// <summary>The work that decides on the thread; null where there is none.</summary>
    internal PlaceWork? ThreadWork { get; init; }
}
