using System.Runtime.CompilerServices;
using NcLanguage.Control.State;
using NcLanguage.Machine.Geometry;

namespace NcLanguage.Control.Moves;

/// <summary>The primitive motions and actions that a step is made of.</summary>
public enum MoveKind : byte { Rapid, Feed, Arc, Dwell, Spindle, Coolant, ToolChange, Stop }

/// <summary>What a move is for.</summary>
public enum MoveRole : byte
{
    /// <summary>Programmed as such.</summary>
    Plain,

    /// <summary>A cycle's lift at the old place before its traverse.</summary>
    Lift,

    /// <summary>A cycle's traverse to the first hole of a run.</summary>
    FirstTraverse,

    /// <summary>A cycle's traverse from one hole to the next.</summary>
    Hop,

    /// <summary>A cycle's rapid from the traverse to the R level.</summary>
    Approach,

    /// <summary>Cutting, pecking and backing off inside the hole.</summary>
    InHole,

    /// <summary>A cycle's way out of the hole.</summary>
    Return,

    /// <summary>To the reference point or in machine coordinates.</summary>
    Machine,

    /// <summary>Towards the end point of a probe move, which contact ends somewhere on the way.</summary>
    Probe,
}

/// <summary>One primitive motion: from and to are the tool tip in work coordinates, mm; NaN where not known.</summary>
/// <param name="Center">Centre of an arc, mm.</param>
/// <param name="FullTurns">Whole turns of an arc beyond the way from start to end.</param>
/// <param name="Feed">Feed along the path, mm/min; NaN where none or not known.</param>
/// <param name="Seconds">Time it takes; NaN where not known.</param>
public record struct Move(
    MoveKind Kind, MoveRole Role, Point3 From, Point3 To, Point3 Center, bool Clockwise, WorkPlane Plane, int FullTurns,
    double Feed, double Seconds)
{
    public MoveKind Kind { get; private set; } = Kind;

    public MoveRole Role { get; private set; } = Role;

    public Point3 From { get; private set; } = From;

    public Point3 To { get; private set; } = To;

    public Point3 Center { get; private set; } = Center;

    public bool Clockwise { get; private set; } = Clockwise;

    public WorkPlane Plane { get; private set; } = Plane;

    public int FullTurns { get; private set; } = FullTurns;

    public double Feed { get; private set; } = Feed;

    public double Seconds { get; private set; } = Seconds;

    // Worked out for the length of the path by whoever has added the arc to a step; NaN where nobody has.
    double _sweep = double.NaN;

    /// <summary>Swept angle of an arc in radians, positive, full turns included.</summary>
    public readonly double Sweep => double.IsNaN(_sweep) ? Arcs.Sweep(this) : _sweep;

    /// <summary>True for a feed or an arc, whether the tool cuts along it or not.</summary>
    public readonly bool IsFeed => Kind is MoveKind.Feed or MoveKind.Arc;

    /// <summary>True when the tool cuts along it: a feed or an arc of a tool that is no probe.</summary>
    public readonly bool IsCut => IsFeed && Role != MoveRole.Probe;

    /// <summary>True when the tool changes place.</summary>
    public readonly bool IsMotion => Kind <= MoveKind.Arc;

    /// <summary>Length of the path, mm.</summary>
    public readonly double Length => Kind == MoveKind.Arc ? Arcs.Length(this) : Point3.Distance(From, To);

    /// <summary>Takes up how an arc is gone along.</summary>
    /// <param name="sweep">Its swept angle, radians.</param>
    [MethodImpl(MethodImplOptions.AggressiveInlining)]
    internal void Take(double feed, double seconds, double sweep) => (Feed, Seconds, _sweep) = (feed, seconds, sweep);

    /// <summary>Becomes another move, where it stands: to copy what has just been written the processor waits until it has settled.</summary>
    [MethodImpl(MethodImplOptions.AggressiveInlining)]
    internal void Become(
        MoveKind kind, MoveRole role, in Point3 from, in Point3 to, in Point3 center, bool clockwise, WorkPlane plane, int fullTurns, double feed, double seconds)
    {
        (Kind, Role, Clockwise, Plane, FullTurns) = (kind, role, clockwise, plane, fullTurns);
        From = from;
        To = to;
        Center = center;
        Take(feed, seconds, double.NaN);
    }
}
