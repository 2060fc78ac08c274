using System.Runtime.CompilerServices;

namespace NcLanguage.Checks.Analysis;

/// <summary>An arc that meets both its neighbours at corners and would run smoothly into them the other way round.</summary>
/// <param name="Part">The part of the run that <see cref="TurnedArc.Line"/> counts in.</param>
/// <param name="Radius">mm.</param>
readonly record struct OddCorner(int Part, TurnedArc Arc, double Radius);

/// <summary>Moves of one contour within a part that does not begin, or does not end, with it.</summary>
/// <param name="Second">Not there where it has one move only.</param>
/// <param name="Before">The last but one; not there where it has one move only.</param>
/// <param name="Joints">What is known of the arcs between others; null where that is nothing.</param>
sealed record ContourStretch(ContourMove First, ContourMove Second, ContourMove Before, ContourMove Last, ContourJoints? Joints);

/// <summary>The contours that a part begins and ends amid.</summary>
/// <param name="Head">The moves before anything ended a contour; null where there are none.</param>
/// <param name="IsEnded">Whether something in the part ends it; otherwise all of the part belongs to it.</param>
/// <param name="Tail">The moves of the contour that its last move belongs to; null where that is the head, and where there are none.</param>
sealed record ContourEnds(ContourStretch? Head, bool IsEnded, ContourStretch? Tail);

/// <summary>How the arcs of one contour meet their neighbours.</summary>
sealed class ContourJoints
{
    /// <summary>A corner that is meant is no smaller, tangent of 30°.</summary>
    const double Corner = 0.5774;

    /// <summary>So near to its reverse a move goes back where the one before came from, tangent of 15°.</summary>
    const double Back = 0.2679;

    /// <summary>How many arcs of the same radius have to run smoothly in the same contour, for one that does not to be a slip: a corner may well be cut out round.</summary>
    const int LeastSmooth = 2;

    /// <summary>Radii that are remembered: more that are all different tell nothing.</summary>
    const int MostRadii = 64;

    readonly List<OddCorner> _corners = [];
    readonly List<double> _smooth = [];

    /// <summary>Whether there is an arc that runs smoothly the other way round alone.</summary>
    public bool HasCorner => _corners.Count > 0;

    public void Clear()
    {
        _corners.Clear();
        _smooth.Clear();
    }

    /// <summary>A copy that stays as it is; null where nothing is known.</summary>
    public ContourJoints? Taken()
    {
        if (_corners.Count == 0 && _smooth.Count == 0)
            return null;
        var taken = new ContourJoints();
        taken._corners.AddRange(_corners);
        taken._smooth.AddRange(_smooth);
        return taken;
    }

    /// <summary>Adds what is known of another stretch of the same contour.</summary>
    /// <param name="part">The part that it belongs to.</param>
    public void Add(ContourJoints? other, int part)
    {
        if (other is null)
            return;
        foreach (var corner in other._corners)
            NoteCorner(corner with { Part = part });
        foreach (var radius in other._smooth)
            NoteSmooth(radius);
    }

    /// <summary>At the end of a contour: its one corner, where arcs of the same radius run smoothly; null where there is none, or more than one.</summary>
    public OddCorner? Judge() =>
        _corners.Count == 1 && CountOf(_corners[0].Radius) >= LeastSmooth ? _corners[0] : null;

    /// <summary>Looks at an arc between its neighbours; what it is for certain, or null. Whether a corner is odd is known when the contour ends.</summary>
    /// <param name="part">The part that the arc belongs to.</param>
    public TurnedArc? Look(in ContourMove before, in ContourMove arc, in ContourMove behind, int part)
    {
        var (into, start, end, onward) = (before.DirectionAtEnd, arc.DirectionAtStart, arc.DirectionAtEnd, behind.DirectionAtStart);
        var (first, last) = (new Joint(into, start), new Joint(end, onward));
        if (AreSmooth(first, last))
        {
            NoteSmooth(arc.Radius);
            return null;
        }
        if (arc.Tenfold(into, onward) is > 0 and var tenfold)
            return new TurnedArc(arc.Line, arc.IsG2, IsWholeTurn: false, TurnsBack: false, tenfold);
        if (first.IsWithin(Corner) || last.IsWithin(Corner) || arc.IsOn(before) || arc.IsOn(behind))
            return null;
        // With the other code by R the centre lies on the other side: there the arc begins in the direction in which it ends here, and ends as it begins. By I and J the centre stays.
        var (firstAcross, lastAcross) = (new Joint(into, end), new Joint(start, onward));
        var hasOneCentre = !arc.IsByRadius || arc.IsWholeTurn;
        if (!(hasOneCentre ? AreSmooth(first.Reversed, last.Reversed) : AreSmooth(firstAcross, lastAcross)))
        {
            // The other centre is that of another slip: of R's sign, or of I and J swapped, which still fit where the ends lie as far apart along X as along Y.
            if (!arc.IsWholeTurn && AreSmooth(firstAcross.Reversed, lastAcross.Reversed))
                NoteCorner(new OddCorner(part, new TurnedArc(arc.Line, arc.IsG2, IsWholeTurn: false, TurnsBack: false) { IsAboutOtherCentre = true, IsByRadius = arc.IsByRadius }, arc.Radius));
            return null;
        }
        var turnsBack = first.Reversed.IsWithin(Back) && last.Reversed.IsWithin(Back);
        // A row of scallops: each comes back where the one before has ended.
        if (turnsBack && !arc.IsWholeTurn && (before.TurnsAs(arc) || behind.TurnsAs(arc)))
            return null;
        var found = new TurnedArc(arc.Line, arc.IsG2, arc.IsWholeTurn, turnsBack);
        if (turnsBack)
            return found;
        NoteCorner(new OddCorner(part, found, arc.Radius));
        return null;
    }

    [MethodImpl(MethodImplOptions.AggressiveInlining)]
    static bool AreSmooth(in Joint first, in Joint last) => first.IsWithin(ContourMove.Smooth) && last.IsWithin(ContourMove.Smooth);

    void NoteCorner(in OddCorner corner)
    {
        // The second tells already that hollows are meant.
        if (_corners.Count < 2)
            _corners.Add(corner);
    }

    void NoteSmooth(double radius)
    {
        if (_smooth.Count < MostRadii && CountOf(radius) < LeastSmooth)
            _smooth.Add(radius);
    }

    int CountOf(double radius)
    {
        var count = 0;
        foreach (var other in _smooth)
            if (Math.Abs(other - radius) <= ContourMove.Same)
                count++;
        return count;
    }
}
