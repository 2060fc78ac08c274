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

    /// <summary>Puts the tool where it stands behind the next hole, drilled as the block before drilled the last one.</summary>
    [MethodImpl(MethodImplOptions.AggressiveInlining)]
    readonly Slot GoesToNextHole(in PlainBlock says)
    {
        if (!says.HasOnly(PlainLetters.X | PlainLetters.Y | PlainLetters.N) || says.Motion is not null)
            return Slot.None;
        var to = EndOf(says, AreHolesDistances, out var axes);
        axes = Moving(to, axes);
        var sets = SlotsOf(axes);
        if (axes == 0)
            return sets;
        _state.Position = to;
        _state.MachinePosition = Along(axes, to + _step.ToMachine, _state.MachinePosition);
        _state.Set |= sets;
        return sets;
    }

    /// <summary>Tells what has drilled the hole that the tool stands at.</summary>
    public readonly void TellHole(HolePattern pattern)
    {
        ref readonly var from = ref _step.Before.Position;
        pattern.Repeat(_step, from, _state.Position, MoveTime.Rapid(Way(from, _state.Position, AxesOf(_step.Sets)), Machine));
    }

    /// <summary>Notes whether a block with another X and Y would do there what this one did here: it has drilled one hole and left everything as it was, but for X and Y.</summary>
    readonly void LearnHole()
    {
        if (!IsPlaceAlone || (_state.Happened & Happened.LengthRead) == 0 || _state.Plane != WorkPlane.XY || _state.ProgramFrame is not null
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
        {
            _step.Hole = _step.OwnHole;
            _step.KeepAlike();
        }
    }

    /// <summary>True where the machine's place follows from that in work coordinates alone, or neither is known.</summary>
    readonly bool HasPlainOffsets => _step.ToMachine.IsKnown || !_state.MachinePosition.IsKnownAlongAny;
}
