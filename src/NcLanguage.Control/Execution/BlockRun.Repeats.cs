using System.Runtime.CompilerServices;
using NcLanguage.Control.Moves;
using NcLanguage.Control.State;
using NcLanguage.Machine.Geometry;
using NcLanguage.Machine.Profiles;

namespace NcLanguage.Control.Execution;

// The next hole of a run: most blocks of a drilling program say no more than where it is, and do there what the block before did.
ref partial struct BlockRun
{
    const uint Across = 1u << ('X' - 'A') | 1u << ('Y' - 'A');

    /// <summary>Whether the block says no more than where to go in X and Y.</summary>
    readonly bool IsPlaceAlone =>
        _words.HasOnly(Across) && _words.Codes.Length == 0 && (_step.Events & ~(StepEvents.Moves | StepEvents.Cut)) == 0 && _step.Faults.Count == 0;

    /// <summary>Drills the next hole as the block before drilled the last one; false where it has to be worked out anew.</summary>
    [MethodImpl(MethodImplOptions.AggressiveInlining)]
    readonly bool RepeatsHole(HolePattern pattern)
    {
        if (!IsPlaceAlone)
            return false;
        var from = _state.Position;
        var (x, y, axes) = (from.X, from.Y, 0);
        TakeAlong('X', 1, AreHolesDistances, ref x, ref axes);
        TakeAlong('Y', 2, AreHolesDistances, ref y, ref axes);
        var to = new Point3(x, y, from.Z);
        axes = Moving(to, axes);
        if (axes == 0)
            return false;
        UseAxisWords();
        var sets = SlotsOf(axes);
        pattern.Repeat(_step, from, to, sets, MoveTime.Rapid(Way(to, axes), Machine));
        _state.Position = new Point3(x, y, from.Z);
        _state.MachinePosition = Along(axes, to + _step.ToMachine, _state.MachinePosition);
        _state.Set |= sets;
        return true;
    }

    /// <summary>Notes whether a block with another X and Y would do there what this one did here: it has drilled one hole and left everything as it was, but for X and Y.</summary>
    readonly void LearnHole()
    {
        if (!IsPlaceAlone || _state.Plane != WorkPlane.XY || _state.ProgramFrame is not null
            || _state.Distance == DistanceMode.Unknown || _state.Cycle is 76 or 87
            || _state.NotFollowed != NotFollowed.None || _state.LostAxes != 0 || !HasPlainOffsets)
            return;
        ref readonly var before = ref _step.Before;
        var same = before with
        {
            Position = _state.Position with { Z = before.Position.Z },
            MachinePosition = _state.MachinePosition with { Z = before.MachinePosition.Z },
            Set = _state.Set,
        };
        if (same == _state && _step.Holes[0].IsHop && (_step.Sets & (Slot.X | Slot.Y)) != 0 && _step.OwnHole.Learn(_step))
            _step.Hole = _step.OwnHole;
    }

    /// <summary>True where the machine's place follows from that in work coordinates alone, or neither is known.</summary>
    readonly bool HasPlainOffsets => _step.ToMachine.IsKnown || !_state.MachinePosition.IsKnownAlongAny;
}
