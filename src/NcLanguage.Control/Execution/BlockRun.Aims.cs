using System.Runtime.CompilerServices;
using NcLanguage.Control.Moves;
using NcLanguage.Control.State;
using NcLanguage.Machine.Geometry;

namespace NcLanguage.Control.Execution;

// From the axis words of a block to a place in work coordinates: distances, polar words, scaling and rotation.
ref partial struct BlockRun
{
    /// <summary>Where the axis words of a move lead.</summary>
    readonly Aim TakeAim() => TakeAim(_state.Distance == DistanceMode.Incremental, leaveOut: 0);

    /// <param name="incremental">Whether the words are distances.</param>
    /// <param name="leaveOut">Axes whose words say something else, as bits.</param>
    [MethodImpl(MethodImplOptions.AggressiveInlining)]
    readonly Aim TakeAim(bool incremental, int leaveOut)
    {
        var frame = _state.ProgramFrame;
        var here = Programmed;
        var (x, y, z, words) = (here.X, here.Y, here.Z, 0);
        if ((leaveOut & 1) == 0)
            TakeAlong('X', 1, incremental, ref x, ref words);
        if ((leaveOut & 2) == 0)
            TakeAlong('Y', 2, incremental, ref y, ref words);
        if ((leaveOut & 4) == 0)
            TakeAlong('Z', 4, incremental, ref z, ref words);
        var to = new Point3(x, y, z);
        if (frame?.Polar is { } polar)
            frame = AimPolar(frame, polar, words, incremental, here, ref to);
        var axes = BackOnPath(frame is null ? words : frame.Moved(words));
        var work = frame is null ? to : frame.ToWork(to);
        return new Aim(to, Along(axes, work, _state.Position), frame, axes);
    }

    /// <summary>Takes the word of one axis, as a distance or a place.</summary>
    /// <param name="axis">The axis as a bit, which is added to those that the words move.</param>
    /// <param name="at">Where the axis stands, mm; becomes where the word leads.</param>
    [MethodImpl(MethodImplOptions.AggressiveInlining)]
    readonly void TakeAlong(char letter, int axis, bool incremental, ref double at, ref int axes)
    {
        // A distance of 0 moves nothing.
        if (!_words.Has(letter) || (incremental && _words[letter] == 0))
            return;
        var length = Length(letter);
        at = incremental ? at + length : IsPlace ? length : double.NaN;
        axes |= axis;
    }

    /// <summary>True where it is known that words which are no distances are places.</summary>
    readonly bool IsPlace => _state.Distance != DistanceMode.Unknown;

    /// <summary>Reads the plane's words as radius and angle (common practice): in G90 about the datum, and the angle from the plane's first axis;
    /// in G91 the radius about where the tool stands, and the angle from the one before. A word left out keeps what it said.</summary>
    readonly ProgramFrame AimPolar(ProgramFrame frame, PolarPlace polar, int words, bool incremental, Point3 here, ref Point3 to)
    {
        var (first, second, third) = Arcs.Axes(polar.Plane);
        if ((words & (Bit(first) | Bit(second))) == 0)
            return frame;
        if ((words & Bit(first)) != 0)
        {
            polar = polar with
            {
                Radius = incremental || IsPlace ? Length((char)('X' + first)) : double.NaN,
                Pole = incremental ? here.With(third, 0) : default,
            };
        }
        if ((words & Bit(second)) != 0)
        {
            var angle = _words[(char)('X' + second)];
            polar = polar with { Angle = incremental ? polar.Angle + angle : IsPlace ? angle : double.NaN };
        }
        to = polar.Put(to);
        return frame with { Polar = polar };
    }

    /// <summary>Where the words of the program say the tool stands.</summary>
    readonly Point3 Programmed => _state.ProgramFrame is null ? _state.ProgrammedPosition : _state.Programmed;

    /// <summary>Takes up, when the tool has gone where the words led, what they said.</summary>
    readonly void Arrive(in Aim aim)
    {
        if (aim.Frame is null)
            return;
        _state.ProgramFrame = aim.Frame;
        _state.Programmed = aim.Programmed;
    }
}
