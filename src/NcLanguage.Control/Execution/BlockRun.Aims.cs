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
    readonly Aim TakeAim(bool incremental, int leaveOut)
    {
        var frame = _state.ProgramFrame;
        if (frame is null && !incremental && IsPlace)
            return AimAtPlace(leaveOut);
        var here = Programmed;
        var to = here;
        var words = 0;
        for (var axis = 0; axis < 3; axis++)
        {
            var letter = (char)('X' + axis);
            // A distance of 0 moves nothing.
            if ((leaveOut & Bit(axis)) != 0 || !_words.Has(letter) || (incremental && _words[letter] == 0))
                continue;
            words |= Bit(axis);
            var length = Length(letter);
            to = to.With(axis, incremental ? here[axis] + length : IsPlace ? length : double.NaN);
        }
        if (frame?.Polar is { } polar)
            frame = AimPolar(frame, polar, words, incremental, here, ref to);
        var axes = BackOnPath(frame is null ? words : frame.Moved(words));
        var work = frame is null ? to : frame.ToWork(to);
        return new Aim(to, Along(axes, work, _state.Position), frame, axes);
    }

    /// <summary>The same where the words are places and nothing turns or scales them, as in most blocks.</summary>
    readonly Aim AimAtPlace(int leaveOut)
    {
        var here = Programmed;
        var words = 0;
        var (x, y, z) = (here.X, here.Y, here.Z);
        if ((leaveOut & 1) == 0 && _words.Has('X'))
            (x, words) = (Length('X'), 1);
        if ((leaveOut & 2) == 0 && _words.Has('Y'))
            (y, words) = (Length('Y'), words | 2);
        if ((leaveOut & 4) == 0 && _words.Has('Z'))
            (z, words) = (Length('Z'), words | 4);
        var to = new Point3(x, y, z);
        var axes = BackOnPath(words);
        return new Aim(to, Along(axes, to, _state.Position), null, axes);
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
