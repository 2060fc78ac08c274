using System.Runtime.CompilerServices;
using NcLanguage.Control.State;
using NcLanguage.Machine.Geometry;
using NcLanguage.Machine.Setups;

namespace NcLanguage.Control.Execution;

/// <summary>What <see cref="Offsets"/> gave last, kept until something it hangs on changes: it is asked for at every block and every move. Not shared between threads.</summary>
sealed class OffsetMemo
{
    int _workOffset, _h;
    LengthOffsetMode _length;
    NotFollowed _notFollowed;
    bool _isSideUnknown;
    Point3 _shift, _localShift, _toFrame, _toMachine;
    OffsetData? _data;
    Setup? _setup;

    /// <inheritdoc cref="Offsets.ToFrame"/>
    public ref readonly Point3 ToFrame(in ControlState state, Setup setup)
    {
        Renew(state, setup);
        return ref _toFrame;
    }

    /// <inheritdoc cref="Offsets.ToMachine"/>
    public ref readonly Point3 ToMachine(in ControlState state, Setup setup)
    {
        Renew(state, setup);
        return ref _toMachine;
    }

    void Renew(in ControlState state, Setup setup)
    {
        var isSideUnknown = state.Compensation == CompensationSide.Unknown;
        // A shift that is not known equals none and is worked out each time. The offsets that a program writes are an object that never changes.
        if (state.WorkOffset == _workOffset && state.H == _h && state.LengthOffset == _length && state.NotFollowed == _notFollowed && isSideUnknown == _isSideUnknown
            && IsSame(state.Shift, _shift) && IsSame(state.LocalShift, _localShift) && ReferenceEquals(state.OffsetData, _data) && ReferenceEquals(setup, _setup))
            return;
        (_workOffset, _h, _length, _notFollowed, _isSideUnknown) = (state.WorkOffset, state.H, state.LengthOffset, state.NotFollowed, isSideUnknown);
        (_shift, _localShift, _data, _setup) = (state.Shift, state.LocalShift, state.OffsetData, setup);
        _toFrame = Offsets.ToFrame(state, setup);
        _toMachine = Offsets.ToMachine(state, setup);
    }

    [MethodImpl(MethodImplOptions.AggressiveInlining)]
    static bool IsSame(in Point3 a, in Point3 b) => a.X == b.X && a.Y == b.Y && a.Z == b.Z;
}
