using NcLanguage.Control.Codes;
using NcLanguage.Control.Flow;
using NcLanguage.Control.State;
using NcLanguage.Syntax.Lexing;

namespace NcLanguage.Control.Execution;

// Statements, calls and returns: what a block says of where the run goes on. Who follows it is the flow's matter.
ref partial struct BlockRun
{
    /// <summary>True for a block whose words are not carried out: a statement, a call with arguments, a code whose number is not known, a block not read to its end.</summary>
    readonly bool IsSteeredElsewhere()
    {
        var wordsAct = false;
        if (_words.Find(ModalGroup.MacroCall) is { } call)
        {
            CallWithArguments(call);
            FlagUnusedWords();
            return true;
        }
        // Words alone lead nowhere.
        if ((_step.Events & StepEvents.OddText) == 0 && !_words.IsCodeUnknown)
            return false;
        // What is text for people says nothing to the control.
        var end = _block.TextIndex is >= 0 and var text ? text : _block.Tokens.Length;
        for (var i = 0; i < end; i++)
        {
            ref readonly var token = ref _block.Tokens[i];
            if (token.Kind == TokenKind.Statement)
            {
                wordsAct = wordsAct || WordsAct(i);
                if (wordsAct)
                    continue;
                ReadStatement(i);
                FlagUnusedWords();
                return true;
            }
            var isOpaque = token.Kind switch
            {
                TokenKind.Excess => i == 0 || !_block.Tokens[i - 1].IsComment || _block.Tokens[i - 1].Kind == TokenKind.Comment,
                TokenKind.Word => (token.IsWord('G') || token.IsWord('M')) && !token.IsMalformed && double.IsNaN(ValueOf(token)),
                _ => false,
            };
            if (isOpaque)
            {
                NoteVacant(i);
                Leave(i);
                return true;
            }
        }
        return false;
    }

    /// <summary>True for words behind a THEN whose condition is known to hold: the block is carried out as if they stood alone (common practice).</summary>
    readonly bool WordsAct(int index) =>
        !_words.Has('O') && _block.Tokens[index].Statement == StatementKind.If && Following(index, StatementKind.Then) is var then and >= 0
        && HasWordBehind(then) && ConditionOf(index) is not (0 or double.NaN);

    readonly bool HasWordBehind(int index)
    {
        for (var i = index + 1; i < _block.Tokens.Length; i++)
            if (_block.Tokens[i].Kind == TokenKind.Word)
                return true;
        return false;
    }

    /// <summary>What the block does is not known, and so is nothing behind it.</summary>
    readonly void Leave(int token)
    {
        AddFault(FaultKind.NotFollowed, token);
        _state = _state.Forgotten();
    }

    readonly double ValueOf(in Token token)
    {
        if (!token.ReadsVariables)
            return token.Value;
        var reader = new VariableReader(_step.Before, Setup, Machine);
        return BlockWords.ValueOf(_block, token, ref reader);
    }

    readonly void ReadStatement(int index)
    {
        ref readonly var token = ref _block.Tokens[index];
        if (_words.Has('O'))
        {
            ReadArguments();
            // DO has its condition at the WHILE that ends its loop.
            var takesValue = token.Statement != StatementKind.Do && Statements.TakesValue(token.Statement);
            Steer(TransferKind.Structure, index, _words['O'], takesValue ? ConditionOf(index) : 1, true);
            return;
        }
        switch (token.Statement)
        {
            case StatementKind.If:
                ReadCondition(index);
                break;
            case StatementKind.Goto:
                Steer(TransferKind.Jump, index, ConditionOf(index), 1, false);
                break;
            case StatementKind.While:
                if (Following(index, StatementKind.Do) is var loop and >= 0)
                    Steer(TransferKind.Structure, index, ConditionOf(loop), ConditionOf(index), false);
                else
                    AddFault(FaultKind.StatementIncomplete, index);
                break;
            case StatementKind.Do or StatementKind.End:
                Steer(TransferKind.Structure, index, ConditionOf(index), 1, false);
                break;
            default:
                AddFault(FaultKind.StatementIncomplete, index);
                break;
        }
    }

    readonly void ReadCondition(int index)
    {
        var condition = ConditionOf(index);
        var then = Following(index, StatementKind.Then);
        if (Following(then >= 0 ? then : index, StatementKind.Goto) is var jump and >= 0)
        {
            var target = ConditionOf(jump);
            _step.Transfer = new Transfer(
                TransferKind.Jump, StatementKind.Goto, false, jump, target, condition, !_block.Tokens[index].ReadsVariables);
            return;
        }
        if (then < 0)
        {
            AddFault(FaultKind.StatementIncomplete, index);
            return;
        }
        if (HasWordBehind(then))
        {
            _words.UseAll();
            if (double.IsNaN(condition))
                Leave(index);
            return;
        }
        if (condition == 0)
            return;
        Assign(isCertain: !double.IsNaN(condition));
    }

    readonly void Steer(TransferKind kind, int index, double number, double value, bool isBehindO) =>
        _step.Transfer = new Transfer(kind, _block.Tokens[index].Statement, isBehindO, index, number, value, !_block.Tokens[index].ReadsVariables);

    /// <summary>The value of a statement; NaN where it is not known. One without a value is incomplete.</summary>
    readonly double ConditionOf(int index)
    {
        ref readonly var token = ref _block.Tokens[index];
        // A value that cannot be read has a finding of its own.
        if (token.IsMalformed)
            return double.NaN;
        if (token.ValueStart == token.End)
        {
            AddFault(FaultKind.StatementIncomplete, index);
            return double.NaN;
        }
        NoteVacant(index);
        return ValueOf(token);
    }

    readonly int Following(int index, StatementKind statement)
    {
        for (var i = index + 1; i < _block.Tokens.Length; i++)
            if (_block.Tokens[i].Kind == TokenKind.Statement)
                return _block.Tokens[i].Statement == statement ? i : -1;
        return -1;
    }

    /// <summary>The values in brackets behind a call are its variables from #1 on.</summary>
    readonly void ReadArguments()
    {
        var number = 0;
        for (var i = 0; i < _block.Tokens.Length; i++)
        {
            if (_block.Tokens[i].Kind != TokenKind.Argument)
                continue;
            NoteVacant(i);
            _step.Arguments.Add((++number, ValueOf(_block.Tokens[i])));
        }
    }

    /// <summary>G65: the words of the block are local variables of the program called.</summary>
    readonly void CallWithArguments(CodeWord call)
    {
        for (var i = 0; i < _block.Tokens.Length; i++)
        {
            ref readonly var token = ref _block.Tokens[i];
            var number = token.Kind == TokenKind.Word ? CallArguments.NumberOf((char)token.Letter) : 0;
            if (number == 0)
                continue;
            _words.Use((char)token.Letter);
            NoteVacant(i);
            _step.Arguments.Add((number, ValueOf(token)));
        }
        Call(TransferKind.CallWithArguments, call.Token);
    }

    /// <summary>A subprogram runs when everything else of its block is done (common practice).</summary>
    readonly void CallSubprogram()
    {
        if (_words.TokenOfCode('M', 980) is var call and >= 0)
            Call(TransferKind.CallProgram, call);
        else if (_words.TokenOfCode('M', 990) is var back and >= 0)
            _step.Transfer = new Transfer(TransferKind.Return, StatementKind.None, false, back, _words['P'], _words.Has('P') ? 1 : 0, true);
    }

    readonly void Call(TransferKind kind, int token)
    {
        if (!_words.Has('P'))
        {
            AddFault(FaultKind.WordMissing, token, 'P');
            _state = _state.Forgotten();
            return;
        }
        var number = TakeWhole('P', out var program) ? program : double.NaN;
        var times = _words.Has('L') ? TakeRepeats(out var count) ? count : double.NaN : 1;
        _step.Transfer = new Transfer(kind, StatementKind.None, false, token, number, times, true);
    }

    readonly bool TakeRepeats(out int count)
    {
        if (!TakeWhole('L', out count))
            return false;
        if (count > 0)
            return true;
        AddFault(FaultKind.ValueNotAllowed, _words.TokenOf('L'), 'L', 0);
        return false;
    }
}
