using NcLanguage.Control.Codes;
using NcLanguage.Control.Compensation;
using NcLanguage.Control.Moves;
using NcLanguage.Control.State;
using NcLanguage.Machine.Geometry;

namespace NcLanguage.Control.Execution;

// Radius compensation: G40, G41, G42, and the moves that lead the tool's centre along the offset path (NISTIR 6556 §3.5.10 and appendix B).
ref partial struct BlockRun
{
    const int PlaneAxes = 3;

    readonly void SetCompensation()
    {
        RefusePlane();
        if (_words.Find(ModalGroup.RadiusCompensation) is not { } word)
            return;
        _state.Happened &= ~Happened.CompensationLeftOn;
        var side = word.Code.Tenths switch { 410 => CompensationSide.Left, 420 => CompensationSide.Right, _ => CompensationSide.Off };
        var wasNotFollowed = (_state.NotFollowed & NotFollowed.Compensation) != 0;
        if (side == CompensationSide.Off)
            EndCompensation(wasNotFollowed);
        else
            StartCompensation(side, word);
        _step.Sets |= Slot.Compensation;
    }

    /// <summary>With G40 alone the tool still stands off the path, until a move in X or Y takes it back.</summary>
    readonly void EndCompensation(bool wasNotFollowed)
    {
        _state.Compensation = CompensationSide.Off;
        _state.NotFollowed &= ~NotFollowed.Compensation;
        _state.IsOnOffsetPath = false;
        _state.CompensationRadius = 0;
        _state.D = -1;
        if (wasNotFollowed)
            Forget(PlaneAxes);
    }

    readonly void StartCompensation(CompensationSide side, CodeWord word)
    {
        if (_state.IsCompensationOn)
            AddFault(FaultKind.NotAllowedHere, word.Token, 'G', word.Code.Tenths / 10.0);
        if (_state.Compensation != side)
            _state.IsOnOffsetPath = false;
        _state.Compensation = side;
        _state.CompensationRadius = RadiusInForce(out _state.D);
        if (!_words.Has('D'))
            _state.Happened |= Happened.CompensatedWithoutD;
        if (_state.Plane is WorkPlane.ZX or WorkPlane.YZ)
        {
            AddFault(FaultKind.NotAllowedHere, word.Token, 'G', word.Code.Tenths / 10.0, PlaneCode);
            LeaveOffsetPath();
        }
        else if (double.IsNaN(_state.CompensationRadius) || _state.Plane == WorkPlane.Unknown)
        {
            AddFault(FaultKind.NotFollowed, word.Token);
            LeaveOffsetPath();
        }
    }

    /// <summary>Notes compensation that a tool change or the end of the program meets while it is on. A G40 in the same block counts as said in time.</summary>
    readonly void NoteCompensationLeftOn()
    {
        if (_step.Before.IsCompensationOn && (_step.Events & LeavesOn) != 0 && !_words.HasCode('G', 400))
            _state.Happened |= Happened.CompensationLeftOn;
    }

    readonly double PlaneCode => _state.Plane switch { WorkPlane.ZX => 18, WorkPlane.YZ => 19, _ => 17 };

    /// <summary>NISTIR 6556 §3.5.10: radius compensation works in the XY plane only.</summary>
    readonly void RefusePlane()
    {
        if (!_state.IsCompensationOn || _words.Find(ModalGroup.Plane) is not { Code.Tenths: 180 or 190 } plane || _words.HasCode('G', 400))
            return;
        AddFault(FaultKind.NotAllowedHere, plane.Token, 'G', plane.Code.Tenths / 10.0);
        LeaveOffsetPath();
    }

    /// <summary>The radius that D names, mm; without D that of the tool in the spindle (NISTIR 6556 §3.5.10). NaN where the setup does not give it.</summary>
    readonly double RadiusInForce(out int number)
    {
        number = -1;
        if (!_words.Has('D'))
            return _state.Tool > 0 && Setup.FindTool(_state.Tool)?.Diameter is { } own ? own / 2 : double.NaN;
        if (!TakeWhole('D', out var d))
            return double.NaN;
        number = d;
        return d == 0 ? 0 : Offsets.RadiusOf(d, _state, Setup);
    }

    /// <summary>From here on, until G40, it is not known how far the tool is off the programmed path: places are the programmed ones, and
    /// where they lie in the machine and on the table is not known.</summary>
    readonly void LeaveOffsetPath()
    {
        _state.Position = _state.ProgrammedPosition;
        _state.OffPath = default;
        _state.IsOnOffsetPath = false;
        _state.NotFollowed |= NotFollowed.Compensation;
        _state.StandsAtHole = false;
        TellFrames();
    }

    /// <summary>Where the tool stands along an axis in work coordinates, mm; NaN where compensation keeps it off the path by an amount not known.</summary>
    readonly double StandsAt(int axis) =>
        axis < 2 && (_state.NotFollowed & NotFollowed.Compensation) != 0 ? double.NaN : _state.Position[axis];

    /// <summary>How far to the left of the programmed path the tool's centre is kept, mm; below 0 to the right. A path that is mirrored has the
    /// tool on its other side (common practice).</summary>
    readonly double ToLeft =>
        (_state.Compensation == CompensationSide.Left) != (_state.ProgramFrame?.Mirrors(WorkPlane.XY) ?? false)
            ? _state.CompensationRadius : -_state.CompensationRadius;

    static Point2 InPlane(in Point3 place) => new(place.X, place.Y);

    /// <summary>Leads a straight move along the offset path. False where compensation has no part in it; then the move is to be made as the changed
    /// arguments say.</summary>
    /// <param name="to">Where the axes named go.</param>
    readonly bool OffsetStraight(MoveKind kind, ref Point3 to, ref int axes)
    {
        if (!_state.IsCompensated || (axes & PlaneAxes) == 0)
            return false;
        var here = InPlane(_state.ProgrammedPosition);
        var piece = PathPiece.Line(here, new((axes & 1) != 0 ? to.X : here.X, (axes & 2) != 0 ? to.Y : here.Y));
        if (piece.Length <= Rounding)
        {
            // Named where it stands already: the tool's centre stays where it is.
            axes &= ~PlaneAxes;
            to = to with { X = _state.Position.X, Y = _state.Position.Y };
            return false;
        }
        if (Offset(piece, kind, to.Z, axes, FirstAxisToken()))
            return true;
        to = to with { X = piece.To.X, Y = piece.To.Y };
        return false;
    }

    /// <summary>Leads an arc along the offset path; false where compensation has no part in it, or where the path is not known.</summary>
    readonly bool OffsetArc(in Point3 from, in Point3 to, in Point3 centre, bool clockwise, int axes, int token)
    {
        if (_state.Compensation == CompensationSide.Off && _state.OffPath != default)
            AddFault(FaultKind.CompensationEntry, token, 'I', _state.OffPath.Length);
        return _state.IsCompensated && Offset(PathPiece.Arc(InPlane(from), InPlane(to), InPlane(centre), clockwise), MoveKind.Arc, to.Z, axes, token);
    }

    /// <summary>The axes that move for these: behind G40 the first word of X or Y takes both back onto the programmed path.</summary>
    readonly int BackOnPath(int axes)
    {
        if ((axes & PlaneAxes) == 0 || _state.IsCompensationOn)
            return axes;
        return axes | (_state.OffPath.X != 0 ? 1 : 0) | (_state.OffPath.Y != 0 ? 2 : 0);
    }

    /// <summary>The axes named have moved to where they were told, whatever compensation kept them off before.</summary>
    readonly void LeavePath(int axes)
    {
        _state.StandsAtHole = false;
        if ((axes & PlaneAxes) == 0)
            return;
        _state.OffPath = new((axes & 1) != 0 ? 0 : _state.OffPath.X, (axes & 2) != 0 ? 0 : _state.OffPath.Y);
        _state.IsOnOffsetPath = false;
        // A word of one axis moves both where the tool is off the path by an amount that is not known.
        if ((_state.NotFollowed & NotFollowed.Compensation) != 0)
            _state.MachinePosition = _state.MachinePosition with { X = double.NaN, Y = double.NaN };
    }

    /// <summary>Leads a piece of path at its offset; false where that is not known, and the programmed path is to be taken instead.</summary>
    readonly bool Offset(in PathPiece piece, MoveKind kind, double z, int axes, int token)
    {
        var next = LookAhead(piece.To, z, out var following);
        if (!piece.IsKnown || !InPlane(_state.Position).IsKnown || next == PieceAhead.NotKnown)
        {
            if (!HasFault(FaultKind.ArcImpossible) && !HasFault(FaultKind.WordMissing))
                AddFault(FaultKind.NotFollowed, token);
            LeaveOffsetPath();
            return false;
        }
        if (_state.IsOnOffsetPath)
            FollowOffset(piece, kind, z, axes, token, next == PieceAhead.Known ? following : null);
        else
            EnterOffset(piece, kind, z, axes, token, next == PieceAhead.Known ? following : null);
        _state.OffPath = InPlane(_state.Position) - piece.To;
        _state.IsOnOffsetPath = true;
        return true;
    }

    readonly void EnterOffset(in PathPiece piece, MoveKind kind, double z, int axes, int token, PathPiece? next)
    {
        var from = InPlane(_state.Position);
        var end = next is { } following ? OffsetPath.Entry(from, piece.To, ToLeft, following) : OffsetPath.Entry(from, piece.To, ToLeft);
        if (piece.IsArc)
            AddFault(FaultKind.CompensationEntry, token, 'I', _state.CompensationRadius, piece.Length);
        else if (end is null)
            AddFault(FaultKind.CompensationEntry, token, 'G', _state.CompensationRadius, (piece.To - from).Length);
        Straight(kind, !piece.IsArc && end is { } at ? at : piece.To + piece.EndDirection.Left * ToLeft, z, axes);
    }

    readonly void FollowOffset(in PathPiece piece, MoveKind kind, double z, int axes, int token, PathPiece? next)
    {
        if (piece.Offset(ToLeft) is not { } offset)
        {
            AddFault(FaultKind.CompensationCorner, token, 'R', _state.CompensationRadius, Math.Min(piece.StartRadius, piece.EndRadius));
            Straight(MoveKind.Feed, piece.To + piece.EndDirection.Left * ToLeft, z, axes);
            return;
        }
        var start = OffsetPath.Start(InPlane(_state.Position), piece.From, offset, ToLeft, out var from);
        var end = next is { } following ? OffsetPath.End(piece, offset, from, following, ToLeft) : new PieceEnd(offset.To, true);
        // A tool that comes from elsewhere found no room at the corner before; that is told there.
        if (!end.Fits && start != PieceStart.Aside)
            AddFault(FaultKind.CompensationCorner, token, 'G', _state.CompensationRadius);
        if (kind == MoveKind.Rapid)
        {
            // A rapid cuts no corner's outline: it goes straight to the end of its offset line.
            Straight(kind, end.At, z, axes);
            return;
        }
        // Under inverse time the number says how long the block takes, with the way round its corner.
        var way = _state.FeedMode == FeedMode.InverseTime ? WayOf(piece, offset, start, from, end.At, z, axes) : double.NaN;
        if (start == PieceStart.Round)
            Round(offset.From, piece.From, ToLeft > 0, 0, way);
        else if (start == PieceStart.Aside)
            Straight(MoveKind.Feed, offset.From, _state.Position.Z, 0, way);
        if (kind == MoveKind.Feed)
            Straight(kind, end.At, z, axes, way);
        else
            Round(end.At, piece.Centre, piece.Bend == Bend.Clockwise, axes & ~PlaneAxes, way, z);
    }

    /// <summary>Length of the way that a block makes along its offset path, mm.</summary>
    readonly double WayOf(in PathPiece piece, in PathPiece offset, PieceStart start, double from, Point2 end, double z, int axes)
    {
        var tool = InPlane(_state.Position);
        var before = start switch
        {
            PieceStart.Round => PathPiece.Arc(tool, offset.From, piece.From, ToLeft > 0).Length,
            PieceStart.Aside => (offset.From - tool).Length,
            _ => 0,
        };
        var along = (end == offset.To ? offset.Length : offset.Along(end)) - from;
        var down = (axes & ~PlaneAxes) != 0 ? z - _state.Position.Z : 0;
        return before + Math.Sqrt(along * along + down * down);
    }

    readonly void Straight(MoveKind kind, Point2 to, double z, int axes, double way = double.NaN)
    {
        var place = new Point3(to.X, to.Y, z);
        if (kind == MoveKind.Rapid)
            Rapid(place, axes | PlaneAxes, MoveRole.Plain);
        else
            Feed(place, axes | PlaneAxes, MoveRole.Plain, way);
    }

    /// <summary>An arc of the tool's centre; <paramref name="across"/> is the bit of Z where that moves along.</summary>
    readonly void Round(Point2 to, Point2 centre, bool clockwise, int across, double way, double z = double.NaN)
    {
        var from = _state.Position;
        var place = new Point3(to.X, to.Y, across == 0 ? from.Z : z);
        AddArc(new Move(MoveKind.Arc, MoveRole.Plain, from, place, new Point3(centre.X, centre.Y, from.Z), clockwise, WorkPlane.XY, 0, double.NaN, double.NaN),
            across | PlaneAxes, way);
    }
}
