using NcLanguage.Control.Codes;
using NcLanguage.Control.State;

namespace NcLanguage.Control.Execution;

// Codes that are read but not yet followed: they make what they would change not known, and say so.
ref partial struct BlockRun
{
    readonly void NoteNotFollowed()
    {
        if (_words.Find(ModalGroup.Rotation) is { } rotation)
        {
            FollowFrame(NotFollowed.Rotation, rotation.Code.Tenths == 690, rotation.Token, _state.Plane == WorkPlane.Unknown ? AllAxes : AllAxes & ~Bit(DepthAxis));
            _words.Use('X');
            _words.Use('Y');
            _words.Use('R');
        }
        if (_words.Find(ModalGroup.Scaling) is { } scaling)
        {
            FollowFrame(NotFollowed.Scaling, scaling.Code.Tenths == 500, scaling.Token, AllAxes);
            foreach (var letter in "XYZIJKP")
                _words.Use(letter);
        }
        if (_words.Find(ModalGroup.Polar) is { } polar)
            Follow(NotFollowed.Polar, polar.Code.Tenths == 150, polar.Token);
        // P and L of a call, and of its return, are not those of a cycle that is on.
        if (_words.Find(ModalGroup.Subprogram) is not null)
            foreach (var letter in "PLQ")
                _words.Use(letter);
    }

    /// <summary>A code that gives the place where the tool stands other numbers, when it comes and when it goes.</summary>
    readonly void FollowFrame(NotFollowed what, bool ends, int token, int axes)
    {
        var wasOn = (_state.NotFollowed & what) != 0;
        Follow(what, ends, token);
        if (wasOn || !ends)
            Forget(axes);
    }

    readonly void Follow(NotFollowed what, bool ends, int token)
    {
        if (ends)
        {
            _state.NotFollowed &= ~what;
            return;
        }
        _state.NotFollowed |= what;
        AddFault(FaultKind.NotFollowed, token);
    }

    readonly void FlagUnusedWords()
    {
        var unused = _words.Unused;
        if (unused == 0)
            return;
        for (var letter = 'A'; letter <= 'Z'; letter++)
            if ((unused & BlockWords.Bit(letter)) != 0)
                AddFault(FaultKind.WordWithoutEffect, _words.TokenOf(letter), letter, _words[letter]);
    }
}
