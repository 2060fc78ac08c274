using NcLanguage.Control.Moves;
using NcLanguage.Control.State;
using NcLanguage.Machine.Geometry;

namespace NcLanguage.Checks.Comparison;

/// <summary>One thing the machine does, with all that makes a difference to the part: where, how fast, with what. Lengths in mm, feeds in mm/min, speeds in
/// 1/min; NaN where not known.</summary>
/// <param name="Line">Line of the block that does it, from 0.</param>
/// <param name="Coordinates">Those that the places are meant in.</param>
/// <param name="Tool">The tool in the spindle; −1 not known.</param>
/// <param name="Speed">0 where the spindle stands.</param>
/// <param name="Dwell">Seconds of a dwell; 0 for other moves.</param>
public readonly record struct Motion(
    int Line, MoveKind Kind, MoveRole Role, Point3 From, Point3 To, Point3 Center, bool Clockwise, int FullTurns,
    double Feed, double Speed, SpindleState Spindle, CoolantState Coolant, int Tool, WorkCoordinates Coordinates, double Dwell)
{
    /// <summary>What it is done under.</summary>
    public MotionModes Modes { get; init; }

    /// <summary>Whether the place it leads to is known, and the centre of an arc; where it comes from is the end of the one before.</summary>
    public bool IsKnown => To.IsKnown && Modes.Side == CompensationSide.Off && (Kind != MoveKind.Arc || Center.IsKnown);

    // What stands still does so where the way before it has led.
    bool Travels => Kind <= MoveKind.Arc;

    /// <summary>Whether both go the same way, whatever the feed and the speed.</summary>
    /// <param name="tolerance">How far apart places may be and still be one, mm.</param>
    public bool GoesAs(in Motion other, double tolerance) =>
        Kind == other.Kind && Tool == other.Tool && (!Travels || Coordinates.PlacesAs(other.Coordinates, tolerance))
        && Same(To, other.To, tolerance) && Same(From, other.From, tolerance)
        && (Kind != MoveKind.Arc || (Clockwise == other.Clockwise && FullTurns == other.FullTurns && Same(Center, other.Center, tolerance)));

    /// <summary>Whether both are done alike: feed, speed, spindle, coolant, dwell and what they are done under.</summary>
    /// <param name="share">How far apart numbers may be as a share of the greater.</param>
    public bool IsDoneAs(in Motion other, double share) =>
        Near(Feed, other.Feed, share) && Near(Speed, other.Speed, share) && Near(Dwell, other.Dwell, share) && Spindle == other.Spindle && Coolant == other.Coolant && Modes.IsAs(other.Modes, share);

    static bool Same(Point3 a, Point3 b, double tolerance) => Same(a.X, b.X, tolerance) && Same(a.Y, b.Y, tolerance) && Same(a.Z, b.Z, tolerance);

    internal static bool Same(double a, double b, double tolerance) => a.Equals(b) || Math.Abs(a - b) <= tolerance;

    internal static bool Near(double a, double b, double share) => a.Equals(b) || Math.Abs(a - b) <= share * Math.Max(Math.Abs(a), Math.Abs(b));
}
