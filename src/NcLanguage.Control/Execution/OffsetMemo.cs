using NcLanguage.Control.State;
using NcLanguage.Machine.Geometry;
using NcLanguage.Machine.Setups;

namespace NcLanguage.Control.Execution;

/// <summary>What <see cref="Offsets"/> gave last, kept until something it hangs on changes: it is asked for at every block and every move. Not shared between threads.</summary>
sealed class OffsetMemo
{
    Key _key;
    Setup? _setup;
    Point3 _toFrame, _toMachine;

    /// <inheritdoc cref="Offsets.ToFrame"/>
    public Point3 ToFrame(in ControlState state, Setup setup)
    {
        Renew(state, setup);
        return _toFrame;
    }

    /// <inheritdoc cref="Offsets.ToMachine"/>
    public Point3 ToMachine(in ControlState state, Setup setup)
    {
        Renew(state, setup);
        return _toMachine;
    }

    void Renew(in ControlState state, Setup setup)
    {
        var key = new Key(
            state.WorkOffset, state.H, state.LengthOffset, state.NotFollowed, state.Compensation == CompensationSide.Unknown, state.Shift, state.LocalShift, state.OffsetData);
        if (ReferenceEquals(setup, _setup) && key.Equals(_key))
            return;
        (_setup, _key) = (setup, key);
        _toFrame = Offsets.ToFrame(state, setup);
        _toMachine = Offsets.ToMachine(state, setup);
    }

    // The offsets that a program writes are an object that never changes.
    readonly record struct Key(
        int WorkOffset, int H, LengthOffsetMode Length, NotFollowed NotFollowed, bool IsSideUnknown, Point3 Shift, Point3 LocalShift, OffsetData? Data);
}
