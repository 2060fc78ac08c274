using NcLanguage.Control.Moves;
using NcLanguage.Control.State;
using NcLanguage.Machine.Geometry;
using NcLanguage.Machine.Profiles;

namespace NcLanguage.Control.Execution;

// What each cycle does between the R level and the way out (NISTIR 6556 §3.5.16.2 to .10; G73, G74 and G76 common practice).
ref partial struct BlockRun
{
    readonly void DrillInHole(in Point3 place)
    {
        switch (_state.Cycle)
        {
            case 83:
                Peck(fullRetract: true);
                break;
            case 73:
                Peck(fullRetract: false);
                break;
            case 84 or 74:
                Down();
                DwellInHole();
                Reverse();
                break;
            case 87:
                BoreBack(place);
                break;
            case 76:
                Down();
                DwellInHole();
                Act(MoveKind.Spindle, 0, MoveRole.InHole);
                Rapid(_state.Position + ShiftVector(), AllAxes & ~Bit(DepthAxis), MoveRole.InHole);
                break;
            case 86:
                Down();
                DwellInHole();
                Act(MoveKind.Spindle, 0, MoveRole.InHole);
                break;
            case 88:
                Down();
                DwellInHole();
                Act(MoveKind.Spindle, 0, MoveRole.InHole);
                // The operator takes the tool out by hand: how long that takes is not known.
                Act(MoveKind.Stop, double.NaN, MoveRole.InHole);
                break;
            default:
                Down();
                DwellInHole();
                break;
        }
    }

    readonly void LeaveHole(in Point3 place, double level)
    {
        var depth = Bit(DepthAxis);
        var way = _state.Position.With(DepthAxis, level);
        switch (_state.Cycle)
        {
            case 85 or 89:
                Feed(way, depth, MoveRole.Return);
                break;
            case 84 or 74:
                // Out at the feed to the R level, where the thread is left; the rest of the way is a rapid in effect but the
                // published specification feeds all the way.
                Feed(way, depth, MoveRole.Return);
                Act(MoveKind.Spindle, 0, MoveRole.Return);
                break;
            case 76:
                Rapid(way, depth, MoveRole.Return);
                Rapid(place.With(DepthAxis, level), AllAxes & ~depth, MoveRole.Return);
                Act(MoveKind.Spindle, 0, MoveRole.Return);
                break;
            case 86 or 88:
                Rapid(way, depth, MoveRole.Return);
                Act(MoveKind.Spindle, 0, MoveRole.Return);
                break;
            default:
                Rapid(way, depth, MoveRole.Return);
                break;
        }
    }

    readonly void Down() => Feed(_state.Position.With(DepthAxis, _state.Bottom), Bit(DepthAxis), MoveRole.InHole);

    readonly void DwellInHole()
    {
        if (Dwells && !double.IsNaN(_state.DwellNumber))
            Act(MoveKind.Dwell, DwellSeconds(_state.DwellNumber, _state.DwellHasPoint), MoveRole.InHole);
    }

    readonly void Reverse()
    {
        _state.Spindle = _state.Spindle switch
        {
            SpindleState.Clockwise => SpindleState.Counterclockwise,
            SpindleState.Counterclockwise => SpindleState.Clockwise,
            var other => other,
        };
        Act(MoveKind.Spindle, 0, MoveRole.InHole);
    }

    /// <summary>Feeds down by the peck, each time back to the level the hole is left at (NISTIR 6556 §3.5.16.4; by the reading to R, or up by the gap)
    /// and down by rapid to just above the last bottom.</summary>
    readonly void Peck(bool fullRetract)
    {
        var depth = DepthAxis;
        var peck = _state.Peck;
        var bottom = _state.Bottom;
        // Without a peck that is known the way down is one stroke; the missing word is refused elsewhere.
        if (!(peck > 0) || !(_state.RLevel - bottom > 0))
        {
            Down();
            return;
        }
        if ((_state.RLevel - bottom) / peck * 3 > MovesAllowed - _step.Moves.Count)
        {
            RefuseMoves(_words.Has('Q') ? _words.TokenOf('Q') : FirstCycleToken(), 'Q');
            Down();
            return;
        }
        var clear = Readings.PeckReturn == PeckReturnReading.RLevel ? _state.RLevel : ReturnLevelOfHole();
        var reached = _state.RLevel;
        while (true)
        {
            reached = Math.Max(bottom, reached - peck);
            Feed(_state.Position.With(depth, reached), Bit(depth), MoveRole.InHole);
            // Rounding must not add a stroke of nothing.
            if (reached - bottom < Rounding)
                return;
            var up = fullRetract ? clear : Math.Min(_state.RLevel, reached + BlockExecutor.PeckGap);
            Rapid(_state.Position.With(depth, up), Bit(depth), MoveRole.InHole);
            if (fullRetract)
                Rapid(_state.Position.With(depth, Math.Min(_state.RLevel, reached + BlockExecutor.PeckGap)), Bit(depth), MoveRole.InHole);
        }
    }

    /// <summary>Back boring (NISTIR 6556 §3.5.16.8): in off-centre with the spindle stopped, bore upward, out the same way. By the reading it steps aside where it has bored up to, and goes out from there (common practice).</summary>
    readonly void BoreBack(in Point3 place)
    {
        var depth = DepthAxis;
        var across = AllAxes & ~Bit(depth);
        var beside = place + ShiftVector();
        var bottom = _state.Bottom;
        Rapid(beside.With(depth, _state.Position[depth]), across, MoveRole.InHole);
        Act(MoveKind.Spindle, 0, MoveRole.InHole);
        Rapid(_state.Position.With(depth, bottom), Bit(depth), MoveRole.InHole);
        Rapid(place.With(depth, bottom), across, MoveRole.InHole);
        Act(MoveKind.Spindle, 0, MoveRole.InHole);
        Feed(place.With(depth, _state.BoreTop), Bit(depth), MoveRole.InHole);
        var end = BoresFromR ? _state.BoreTop : bottom;
        if (BoresFromR)
            DwellInHole();
        else
            Feed(place.With(depth, bottom), Bit(depth), MoveRole.InHole);
        Act(MoveKind.Spindle, 0, MoveRole.InHole);
        Rapid(beside.With(depth, end), across, MoveRole.InHole);
        var level = ReturnLevelOfHole();
        Rapid(beside.With(depth, level), Bit(depth), MoveRole.Return);
        Rapid(place.With(depth, level), across, MoveRole.Return);
        Act(MoveKind.Spindle, 0, MoveRole.Return);
    }

    /// <summary>By how much an oriented tool is moved off the wall: I, J, K across the hole, or Q along the plane's first axis.</summary>
    readonly Point3 ShiftVector() =>
        _state.BoreShiftGiven || double.IsNaN(_state.Peck) ? _state.BoreShift : default(Point3).With(Arcs.Axes(_state.Plane).First, _state.Peck);
}
