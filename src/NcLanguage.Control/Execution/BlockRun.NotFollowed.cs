using NcLanguage.Control.Codes;
using NcLanguage.Control.State;
using NcLanguage.Syntax.Expressions;
using NcLanguage.Syntax.Lexing;

namespace NcLanguage.Control.Execution;

// Codes and statements that are read but not yet followed: they make what they would change not known, and say so.
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

    /// <summary>A subprogram runs when everything else of its block is done (common practice).</summary>
    readonly void CallSubprogram()
    {
        if (_words.HasCode('M', 980))
            Leave(_words.TokenOfCode('M', 980));
    }

    /// <summary>True for a block that steers where the run goes on, calls with arguments, holds a code whose number is not known, or is
    /// not read to its end: none of its words can be taken at face value.</summary>
    readonly bool LeavesProgram()
    {
        var token = _words.Find(ModalGroup.MacroCall)?.Token ?? FirstOpaqueToken();
        if (token < 0)
            return false;
        Leave(token);
        return true;
    }

    readonly int FirstOpaqueToken()
    {
        for (var i = 0; i < _block.Tokens.Length; i++)
        {
            ref readonly var token = ref _block.Tokens[i];
            var isOpaque = token.Kind switch
            {
                TokenKind.Statement => true,
                TokenKind.Excess => i == 0 || !_block.Tokens[i - 1].IsComment || _block.Tokens[i - 1].Kind == TokenKind.Comment,
                TokenKind.Word => (token.IsWord('G') || token.IsWord('M')) && !token.IsMalformed && double.IsNaN(BlockWords.ValueOf(_block, token, _state.Variables)),
                _ => false,
            };
            if (isOpaque)
                return i;
        }
        return -1;
    }

    /// <summary>The run goes on elsewhere and comes back with a state that is not known here.</summary>
    readonly void Leave(int token)
    {
        AddFault(FaultKind.NotFollowed, token);
        var (started, set) = (_state.Started, _state.Set);
        _state = ControlState.Unknown with { Started = started, Set = set };
    }

    /// <summary>Settings act after every read of their block (NISTIR 6556 §3.3.3); the last of a double setting wins.</summary>
    readonly void Assign() => AssignIn(ref _state);

    readonly void AssignIn(ref ControlState state)
    {
        foreach (ref readonly var token in _block.Tokens)
        {
            if (token.Kind != TokenKind.Assignment || token.IsMalformed || IsNamed(token))
                continue;
            var reader = new VariableReader(_step.Before.Variables);
            var number = Expression.Read(_block.Line, token.Start + 1, ref reader).Value;
            var whole = Math.Round(number);
            var isOne = Math.Abs(number - whole) <= Expression.WholeTolerance && whole is >= Expression.FirstVariable and <= Expression.LastVariable;
            // A variable whose number is not known could be any: none is known after it.
            state.Variables = isOne
                ? (state.Variables ?? Variables.None).With((int)whole, BlockWords.ValueOf(_block, token, _step.Before.Variables))
                : null;
        }
    }

    // Named variables are not followed: none has a value that is known.
    readonly bool IsNamed(in Token token) => _block.Line[token.Start..token.End].TrimStart("# \t"u8).StartsWith("<"u8);

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
