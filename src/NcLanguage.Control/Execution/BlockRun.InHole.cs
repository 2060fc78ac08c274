using NcLanguage.Control.Moves;
using NcLanguage.Control.State;
using NcLanguage.Machine.Geometry;

namespace NcLanguage.Control.Execution;

// What each cycle does between the R level and the way out (NISTIR 6556 §3.5.16.2 to .10; G73, G74 and G76 common practice).
ref partial struct BlockRun
{
    /// <summary>How far above the last bottom a peck goes back in by rapid, mm. The published specification leaves the amount open.</summary>
    public const double PeckGap = 1;

    readonly void DrillInHole(Point3 place)
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
                Rapid(Shifted(_state.Position), MoveRole.InHole);
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

    readonly void LeaveHole(double level)
    {
        switch (_state.Cycle)
        {
            case 85 or 89:
                Feed(_state.Position.With(DepthAxis, level), MoveRole.Return);
                break;
            case 84 or 74:
                // Out at the feed to the R level, where the thread is left; the rest of the way is a rapid in effect but the
                // published specification feeds all the way.
                Feed(_state.Position.With(DepthAxis, level), MoveRole.Return);
                Act(MoveKind.Spindle, 0, MoveRole.Return);
                break;
            case 76:
                Rapid(_state.Position.With(DepthAxis, level), MoveRole.Return);
                Rapid(_state.Position - ShiftVector(), MoveRole.Return);
                Act(MoveKind.Spindle, 0, MoveRole.Return);
                break;
            case 86 or 88:
                Rapid(_state.Position.With(DepthAxis, level), MoveRole.Return);
                Act(MoveKind.Spindle, 0, MoveRole.Return);
                break;
            default:
                Rapid(_state.Position.With(DepthAxis, level), MoveRole.Return);
                break;
        }
    }

    readonly void Down() => Feed(_state.Position.With(DepthAxis, _state.Bottom), MoveRole.InHole);

    readonly void DwellInHole()
    {
        if (HasDwell(_state.Cycle) && !double.IsNaN(_state.DwellNumber))
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

    /// <summary>Feeds down by the peck, each time back to R (or up by the gap) and down by rapid to just above the last bottom.</summary>
    readonly void Peck(bool fullRetract)
    {
        var depth = DepthAxis;
        var peck = _state.Peck;
        var bottom = _state.Bottom;
        // An unknown or senselessly small peck is followed as one stroke; its own findings say what is wrong.
        if (!(peck > 0) || !(_state.RLevel - bottom > 0) || (_state.RLevel - bottom) / peck > MostPecks)
        {
            Down();
            return;
        }
        var reached = _state.RLevel;
        while (true)
        {
            reached = Math.Max(bottom, reached - peck);
            Feed(_state.Position.With(depth, reached), MoveRole.InHole);
            // Rounding must not add a stroke of nothing.
            if (reached - bottom < 1e-9)
                return;
            var up = fullRetract ? _state.RLevel : Math.Min(_state.RLevel, reached + PeckGap);
            Rapid(_state.Position.With(depth, up), MoveRole.InHole);
            if (fullRetract)
                Rapid(_state.Position.With(depth, Math.Min(_state.RLevel, reached + PeckGap)), MoveRole.InHole);
        }
    }

    const int MostPecks = 10_000;

    /// <summary>Back boring (NISTIR 6556 §3.5.16.8): in off-centre with the spindle stopped, bore upward, out the same way.</summary>
    readonly void BoreBack(Point3 place)
    {
        var depth = DepthAxis;
        var offset = ShiftVector();
        var bottom = _state.Bottom;
        Rapid(_state.Position + offset, MoveRole.InHole);
        Act(MoveKind.Spindle, 0, MoveRole.InHole);
        Rapid(_state.Position.With(depth, bottom), MoveRole.InHole);
        Rapid(_state.Position - offset, MoveRole.InHole);
        Act(MoveKind.Spindle, 0, MoveRole.InHole);
        var top = _words.Has('K') ? (_state.Distance == DistanceMode.Incremental ? bottom + Length('K') : Length('K')) : bottom;
        Feed(place.With(depth, top), MoveRole.InHole);
        Feed(place.With(depth, bottom), MoveRole.InHole);
        Act(MoveKind.Spindle, 0, MoveRole.InHole);
        Rapid(_state.Position + offset, MoveRole.InHole);
        Rapid(_state.Position.With(depth, ReturnLevelOfHole()), MoveRole.Return);
        Rapid(_state.Position - offset, MoveRole.Return);
        Act(MoveKind.Spindle, 0, MoveRole.Return);
    }

    /// <summary>By how much an oriented tool is moved off the wall: I and J, or Q along the first axis.</summary>
    readonly Point3 ShiftVector()
    {
        var (first, second, _) = Arcs.Axes(_state.Plane);
        var shift = default(Point3);
        if (_words.Has('I') || _words.Has('J'))
        {
            if (_words.Has('I'))
                shift = shift.With(first, Length('I'));
            if (_words.Has('J'))
                shift = shift.With(second, Length('J'));
            return shift;
        }
        return double.IsNaN(_state.Peck) ? shift : shift.With(first, _state.Peck);
    }

    readonly Point3 Shifted(Point3 place) => place + ShiftVector();
}
