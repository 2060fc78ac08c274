using System.Runtime.CompilerServices;
using NcLanguage.Control.Codes;
using NcLanguage.Control.Moves;
using NcLanguage.Control.State;
using NcLanguage.Machine.Geometry;
using NcLanguage.Machine.Profiles;

namespace NcLanguage.Control.Execution;

// Arcs: their centre by words or by radius, and what polar words, scaling and rotation make of them.
ref partial struct BlockRun
{
    readonly double ArcTolerance => Arcs.Tolerance(_state.Units);

    readonly void Arc()
    {
        var clockwise = _state.Motion == MotionMode.ArcClockwise;
        var (first, second, _) = Arcs.Axes(_state.Plane);
        var aim = TakeAim();
        // The programmed arc; its start is not where the tool stands while compensation keeps it off the path.
        var (from, to) = (Programmed, aim.Programmed);
        var token = _words.Find(ModalGroup.Motion)?.Token ?? FirstAxisOrCentreToken();
        var centre = _state.Plane == WorkPlane.Unknown ? CentreNotKnown()
            : _words.Has('R') ? CentreByRadius(from, to, clockwise, first, second, token) : CentreByWords(from, to, first, second, token);
        if (aim.Frame is { } frame)
        {
            centre = ToWork(centre, frame, token);
            clockwise ^= frame.Mirrors(_state.Plane);
            (from, to) = (_state.ProgrammedPosition, aim.Work);
            for (var axis = 0; axis < 3; axis++)
                if ((aim.Axes & Bit(axis)) == 0)
                    to = to.With(axis, from[axis]);
        }
        // What stands behind the block and may be looked at goes on from where its words lead.
        Arrive(aim);
        if (!OffsetArc(from, to, centre, clockwise, aim.Axes, token))
            AddArc(new Move(MoveKind.Arc, MoveRole.Plain, from, to, centre, clockwise, _state.Plane, 0, double.NaN, double.NaN), aim.Axes);
        Arrive(aim);
    }

    /// <summary>Cuts along an arc whose feed and time are still to be found.</summary>
    /// <param name="wayAtFeed">Length of the way that the block's feed is for, mm; the arc's own where NaN.</param>
    [MethodImpl(MethodImplOptions.AggressiveInlining)]
    readonly void AddArc(in Move arc, int axes, double wayAtFeed = double.NaN)
    {
        ref var added = ref _step.Moves.Next();
        added = arc;
        TellArc(ref added, axes, wayAtFeed);
        Cut();
        Stand(arc.To, axes);
    }

    /// <summary>Finds the feed and the time of an arc where it stands.</summary>
    [MethodImpl(MethodImplOptions.AggressiveInlining)]
    readonly void TellArc(ref Move arc, int axes, double wayAtFeed = double.NaN)
    {
        var sweep = Arcs.Sweep(arc);
        var length = LengthOf(arc, axes, sweep);
        var feed = PathFeed(double.IsNaN(wayAtFeed) ? length : wayAtFeed);
        arc.Take(feed, SecondsOfPath(length, feed), sweep);
        if (arc.Plane != WorkPlane.XY || _words.Has('K') || Arcs.IsTooLarge(arc))
            _step.Events |= StepEvents.OddArc;
    }

    /// <summary>Length of an arc's path, mm. An axis across the plane that stands still adds nothing, even where it is not known where it stands.</summary>
    /// <param name="sweep">Its swept angle, radians.</param>
    [MethodImpl(MethodImplOptions.AggressiveInlining)]
    static double LengthOf(in Move arc, int axes, double sweep)
    {
        var third = Arcs.Axes(arc.Plane).Third;
        return Arcs.Length(arc, (axes & Bit(third)) != 0 ? arc.To[third] - arc.From[third] : 0, sweep);
    }

    /// <summary>The centre in work coordinates; not known where scaling or rotation leaves no arc (common practice: refused).</summary>
    readonly Point3 ToWork(in Point3 centre, ProgramFrame frame, int token)
    {
        if (frame.KeepsArcs(_state.Plane))
            return frame.ToWork(centre).With(Arcs.Axes(_state.Plane).Third, _state.Position[Arcs.Axes(_state.Plane).Third]);
        AddFault(FaultKind.NotAllowedHere, token, 'G', _state.Motion == MotionMode.ArcClockwise ? 2 : 3);
        return Point3.Unknown;
    }

    readonly Point3 CentreNotKnown()
    {
        foreach (var letter in "IJKR")
            _words.Use(letter);
        return Point3.Unknown;
    }

    readonly int FirstAxisOrCentreToken()
    {
        if (HasAxisWords)
            return FirstAxisToken();
        foreach (var letter in "IJK")
            if (_words.Has(letter))
                return _words.TokenOf(letter);
        return 0;
    }

    [MethodImpl(MethodImplOptions.AggressiveInlining)]
    readonly Point3 CentreByRadius(in Point3 from, in Point3 to, bool clockwise, int first, int second, int token)
    {
        _words.Use('R');
        var radius = Length('R');
        if (double.IsNaN(from[first] + from[second] + to[first] + to[second] + radius))
            return Point3.Unknown;
        if (Arcs.CentreFromRadius(from[first], from[second], to[first], to[second], radius, clockwise, ArcTolerance) is { } centre)
            return from.With(first, centre.A).With(second, centre.B);
        var chord = Arcs.Radius(to, from, first, second);
        AddFault(FaultKind.ArcImpossible, token, 'R', chord, radius);
        return Point3.Unknown;
    }

    [MethodImpl(MethodImplOptions.AggressiveInlining)]
    readonly Point3 CentreByWords(in Point3 from, in Point3 to, int first, int second, int token)
    {
        var (firstLetter, secondLetter) = ((char)('I' + first), (char)('I' + second));
        if (!_words.Has(firstLetter) && !_words.Has(secondLetter))
        {
            AddFault(FaultKind.WordMissing, token, firstLetter);
            return Point3.Unknown;
        }
        _words.Use(firstLetter);
        _words.Use(secondLetter);
        if (Readings.ArcCentre == ArcCentreReading.Absolute && !(_words.Has(firstLetter) && _words.Has(secondLetter)))
        {
            // A distance left out is 0; a coordinate left out is nowhere.
            AddFault(FaultKind.WordMissing, token, _words.Has(firstLetter) ? secondLetter : firstLetter);
            return Point3.Unknown;
        }
        var centre = from.With(first, Centre(firstLetter, from[first])).With(second, Centre(secondLetter, from[second]));
        var start = Arcs.Square(from, centre, first, second);
        var end = Arcs.Square(to, centre, first, second);
        if (AreUnlike(start, end))
            AddFault(FaultKind.ArcRadiusMismatch, token, 'I', Math.Sqrt(start), Math.Sqrt(end));
        else if (start == 0)
            AddFault(FaultKind.ArcImpossible, token, 'I', 0, 0);
        return centre;
    }

    /// <summary>Whether an arc begins and ends at distances from its centre, of which the squares are given in mm², that are none of one circle.</summary>
    [MethodImpl(MethodImplOptions.AggressiveInlining)]
    readonly bool AreUnlike(double start, double end) => Arcs.Differ(start, end, ArcTolerance + Rounding);

    readonly double Centre(char letter, double from)
    {
        if (Readings.ArcCentre == ArcCentreReading.Absolute)
            return Length(letter);
        return _words.Has(letter) ? from + Length(letter) : from;
    }
}
