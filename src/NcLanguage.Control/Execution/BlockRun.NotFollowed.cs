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
            Follow(NotFollowed.Rotation, rotation.Code.Tenths == 690, rotation.Token);
            _words.Use('X');
            _words.Use('Y');
            _words.Use('R');
        }
        if (_words.Find(ModalGroup.Scaling) is { } scaling)
        {
            Follow(NotFollowed.Scaling, scaling.Code.Tenths == 500, scaling.Token);
            foreach (var letter in "XYZIJKP")
                _words.Use(letter);
        }
        if (_words.Find(ModalGroup.Polar) is { } polar)
            Follow(NotFollowed.Polar, polar.Code.Tenths == 150, polar.Token);
        if (_words.Find(ModalGroup.SpeedMode) is { } speed)
            Follow(NotFollowed.SurfaceSpeed, speed.Code.Tenths == 970, speed.Token);
        if (_words.Find(ModalGroup.MacroCall) is { } call)
            Leave(call.Token, "ABCDEFHIJKLMPQRSTUVWXYZ");
        if (_words.HasCode('M', 980))
            Leave(_words.TokenOfCode('M', 980), "PLQ");
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

    /// <summary>The run goes on elsewhere and comes back with a state that is not known here.</summary>
    readonly void Leave(int token, string usedWords)
    {
        foreach (var letter in usedWords)
            _words.Use(letter);
        AddFault(FaultKind.NotFollowed, token);
        var (started, set) = (_state.Started, _state.Set);
        _state = ControlState.Unknown with { Started = started, Set = set };
    }

    readonly void RunStatements()
    {
        for (var i = 0; i < _block.Tokens.Length; i++)
        {
            if (_block.Tokens[i].Kind != TokenKind.Statement)
                continue;
            Leave(i, "");
            return;
        }
    }

    /// <summary>Settings act after every read of their block (NISTIR 6556 §3.3.3); the last of a double setting wins.</summary>
    readonly void Assign()
    {
        foreach (ref readonly var token in _block.Tokens)
        {
            if (token.Kind != TokenKind.Assignment || token.IsMalformed)
                continue;
            var reader = new VariableReader(_step.Before.Variables);
            if (_block.Line[token.Start + 1] == '<')
                continue;
            var number = Expression.Read(_block.Line, token.Start + 1, ref reader).Value;
            var value = token.ReadsVariables ? BlockWords.Evaluate(_block, token, _step.Before.Variables) : token.Value;
            // A variable whose number is not known could be any: none is known after it.
            _state.Variables = double.IsNaN(number) ? null : (_state.Variables ?? Variables.None).With((int)number, value);
        }
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
