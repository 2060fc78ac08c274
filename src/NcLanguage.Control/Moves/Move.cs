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
public readonly record struct Move(
    MoveKind Kind, MoveRole Role, Point3 From, Point3 To, Point3 Center, bool Clockwise, WorkPlane Plane, int FullTurns,
    double Feed, double Seconds)
{
    /// <summary>True for a feed or an arc, whether the tool cuts along it or not.</summary>
    public bool IsFeed => Kind is MoveKind.Feed or MoveKind.Arc;

    /// <summary>True when the tool cuts along it: a feed or an arc of a tool that is no probe.</summary>
    public bool IsCut => IsFeed && Role != MoveRole.Probe;

    /// <summary>True when the tool changes place.</summary>
    public bool IsMotion => Kind <= MoveKind.Arc;

    /// <summary>Length of the path, mm.</summary>
    public double Length => Kind == MoveKind.Arc ? Arcs.Length(this) : Point3.Distance(From, To);
}
