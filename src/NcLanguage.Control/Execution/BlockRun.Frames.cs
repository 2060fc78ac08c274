using NcLanguage.Control.Codes;
using NcLanguage.Control.Moves;
using NcLanguage.Control.State;
using NcLanguage.Machine.Geometry;

namespace NcLanguage.Control.Execution;

// Polar words, scaling, rotation and mirror, on and off (common practice). Nothing moves: the place where the tool stands keeps its work
// coordinates and gets other numbers in the program, as it does under another work offset (NISTIR 6556 §3.5.13).
ref partial struct BlockRun
{
    readonly void SetProgramFrame()
    {
        var polar = _words.Find(ModalGroup.Polar);
        var scaling = _words.Find(ModalGroup.Scaling);
        var rotation = _words.Find(ModalGroup.Rotation);
        var mirror = _words.Find(ModalGroup.Mirror);
        if (polar is null && scaling is null && rotation is null && mirror is null)
            return;
        _step.Sets |= (polar is null ? 0 : Slot.Polar) | (scaling is null ? 0 : Slot.Scaling) | (rotation is null ? 0 : Slot.Rotation) | (mirror is null ? 0 : Slot.Mirror);
        // The offset path goes on from a place in the frame that is left (common practice: refused).
        foreach (var word in _words.Codes)
            if (word.Code.Letter == 'G' && IsFrame(word.Code.Tenths))
                RefuseUnderCompensation(word.Token, word.Code.Tenths);
        if (mirror is { } across)
            ReplaceFrame(Frame with { Mirror = TakeMirror(across.Code.Tenths == 511, across.Token) });
        if (scaling is { } scale)
            ReplaceFrame(Frame with { Scaling = scale.Code.Tenths == 510 ? TakeScaling(scale.Token) : null });
        if (rotation is { } turn)
            ReplaceFrame(Frame with { Rotation = turn.Code.Tenths == 680 ? TakeRotation(turn.Token) : null });
        if (polar is { } on)
            ReplaceFrame(Frame with { Polar = on.Code.Tenths == 160 ? Frame.Polar ?? PolarPlace.At(Programmed, _state.Plane) : null });
    }

    readonly void LeaveProgramFrame() => ReplaceFrame(ProgramFrame.None);

    readonly ProgramFrame Frame => _state.ProgramFrame ?? ProgramFrame.None;

    readonly void ReplaceFrame(ProgramFrame frame)
    {
        _state.ProgramFrame = frame.OrNull;
        _state.Programmed = default;
        FollowInProgram();
    }

    /// <summary>G51: P is one factor for all axes, I, J and K are one for each, 1 where left out; the point is given in places, G91 or not.</summary>
    readonly Scaling TakeScaling(int token)
    {
        var factors = new Point3(1, 1, 1);
        if (_words.HasAny(CentreWords))
        {
            for (var axis = 0; axis < 3; axis++)
                if (_words.Has((char)('I' + axis)))
                    factors = factors.With(axis, TakeFactor((char)('I' + axis)));
        }
        else if (_words.Has('P'))
        {
            var factor = TakeFactor('P');
            factors = new Point3(factor, factor, factor);
        }
        else
        {
            AddFault(FaultKind.WordMissing, token, 'P');
            factors = Point3.Unknown;
        }
        // Where it turns too, the point that stays is one of the path before it is turned.
        return new Scaling(TakePoint(Frame.BeforeRotation(_state.ProgrammedPosition), AllAxes), factors);
    }

    readonly double TakeFactor(char letter)
    {
        _words.Use(letter);
        if (_words[letter] != 0)
            return _words[letter];
        AddFault(FaultKind.ValueNotAllowed, _words.TokenOf(letter), letter, 0);
        return double.NaN;
    }

    /// <summary>G68: R degrees about a point of the plane; in G91 they are added to those in force.</summary>
    readonly Rotation TakeRotation(int token)
    {
        if (!_words.Has('R'))
            AddFault(FaultKind.WordMissing, token, 'R');
        _words.Use('R');
        var before = _state.Distance switch
        {
            DistanceMode.Absolute => 0,
            DistanceMode.Incremental => _state.ProgramFrame?.Rotation?.Degrees ?? 0,
            _ => double.NaN,
        };
        return new Rotation(_state.Plane, TakePoint(Frame.BeforeMirror(_state.ProgrammedPosition), AllAxes & ~Bit(DepthAxis)), before + _words['R']);
    }

    /// <summary>G51.1 and G50.1: the axes named are mirrored, each about its word, or no longer; G50.1 alone ends the mirror of all.</summary>
    readonly Mirror? TakeMirror(bool isOn, int token)
    {
        var (mirror, named) = (Frame.Mirror, 0);
        for (var axis = 0; axis < 3; axis++)
        {
            var letter = (char)('X' + axis);
            if (!_words.Has(letter))
                continue;
            _words.Use(letter);
            named |= Bit(axis);
            if (isOn)
                mirror = (mirror ?? new Mirror(default, 0)).With(axis, Length(letter));
        }
        if (isOn && named == 0)
            AddFault(FaultKind.WordMissing, token, 'X');
        return isOn ? mirror : mirror?.Without(named == 0 ? AllAxes : named);
    }

    /// <summary>The point that scaling or rotation is about: the words of the axes named, and where one is left out, where the tool stands.</summary>
    readonly Point3 TakePoint(Point3 here, int axes)
    {
        for (var axis = 0; axis < 3; axis++)
        {
            var letter = (char)('X' + axis);
            if ((axes & Bit(axis)) == 0 || !_words.Has(letter))
                continue;
            _words.Use(letter);
            here = here.With(axis, Length(letter));
        }
        return here;
    }
}
