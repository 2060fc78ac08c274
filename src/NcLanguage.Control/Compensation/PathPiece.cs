namespace NcLanguage.Control.Compensation;

/// <summary>Which way a piece of a path bends.</summary>
public enum Bend : sbyte { Clockwise = -1, Straight = 0, Counterclockwise = 1 }

/// <summary>One piece of a path in the XY plane: a straight way, or an arc about its centre. An arc that ends where it starts is a full
/// circle. Lengths in mm.</summary>
/// <param name="Centre">Centre of an arc; without meaning on a straight way.</param>
public readonly record struct PathPiece(Point2 From, Point2 To, Point2 Centre, Bend Bend)
{
    /// <summary>Places nearer than this are one, mm: what sums in double precision may be off by, and more than a control resolves.</summary>
    public const double Same = 1e-6;

    public static PathPiece Line(Point2 from, Point2 to) => new(from, to, default, Bend.Straight);

    public static PathPiece Arc(Point2 from, Point2 to, Point2 centre, bool clockwise) => new(from, to, centre, clockwise ? Bend.Clockwise : Bend.Counterclockwise);

    public bool IsArc => Bend != Bend.Straight;

    public bool IsKnown => From.IsKnown && To.IsKnown && (!IsArc || Centre.IsKnown);

    /// <summary>Radius of an arc at its start.</summary>
    public double StartRadius => (From - Centre).Length;

    /// <summary>Radius of an arc at its end, which numbers rounded in the program keep a little apart from the other.</summary>
    public double EndRadius => (To - Centre).Length;

    /// <summary>Direction of travel at the start, 1 long.</summary>
    public Point2 StartDirection => IsArc ? (From - Centre).Left.Unit * (int)Bend : (To - From).Unit;

    /// <summary>Direction of travel at the end, 1 long.</summary>
    public Point2 EndDirection => IsArc ? (To - Centre).Left.Unit * (int)Bend : (To - From).Unit;

    public double Length => IsArc ? Turned(From, To) * MeanRadius : (To - From).Length;

    // One radius for all lengths along an arc, so that a place just before its end is one whatever the two radii are.
    double MeanRadius => (StartRadius + EndRadius) / 2;

    /// <summary>The piece to the left of this one by a distance, to the right for one below 0; null for an arc too small to have one.</summary>
    public PathPiece? Offset(double toLeft)
    {
        if (!IsArc)
        {
            var aside = StartDirection.Left * toLeft;
            return this with { From = From + aside, To = To + aside };
        }
        // To the left of a counterclockwise arc is its centre.
        var nearer = (int)Bend * toLeft;
        if (Math.Min(StartRadius, EndRadius) - nearer <= Same)
            return null;
        return this with { From = From + StartDirection.Left * toLeft, To = To + EndDirection.Left * toLeft };
    }

    /// <summary>How far along the piece from its start a place on it lies, mm. On an arc a place before the start comes as one behind the end,
    /// but for what is off by rounding alone.</summary>
    public double Along(Point2 place)
    {
        if (!IsArc)
            return Point2.Dot(place - From, StartDirection);
        var radius = MeanRadius;
        var turned = Turned(From, place, full: false);
        return (2 * Math.PI - turned) * radius < Same ? 0 : turned * radius;
    }

    /// <summary>True for a place that lies on the piece.</summary>
    public bool Holds(Point2 place)
    {
        if (!IsArc)
        {
            return Math.Abs(Point2.Cross(place - From, StartDirection)) < Same
                && Point2.Dot(place - From, StartDirection) is var along && along > -Same && along < Length + Same;
        }
        return Math.Abs((place - Centre).Length - StartRadius) < Same && Along(place) < Length + Same;
    }

    // Angle turned through from one place to another, radians: 0 to a full turn.
    double Turned(Point2 from, Point2 to, bool full = true)
    {
        var (a, b) = (from - Centre, to - Centre);
        var angle = Math.Atan2(Point2.Cross(a, b), Point2.Dot(a, b)) * (int)Bend;
        if (angle < 0)
            angle += 2 * Math.PI;
        // Equal within rounding is a full circle, not a piece of nothing.
        const double Rounding = 1e-9;
        if (full && (angle <= Rounding || angle >= 2 * Math.PI - Rounding))
            return 2 * Math.PI;
        return angle;
    }
}
