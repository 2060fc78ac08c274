using System.Text;
using NcLanguage.Control.Codes;
using NcLanguage.Control.Flow;
using NcLanguage.Control.State;
using NcLanguage.Syntax.Expressions;
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
        for (var i = 0; i < _block.Tokens.Length; i++)
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
        var number = _words.Has('O') ? _words['O'] : double.NaN;
        var isBehindO = _words.Has('O');
        if (isBehindO)
        {
            ReadArguments();
            // DO has its condition at the WHILE that ends its loop.
            var takesValue = token.Statement != StatementKind.Do && Statements.TakesValue(token.Statement);
            Steer(TransferKind.Structure, index, number, takesValue ? ConditionOf(index) : 1, true);
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

    /// <summary>Settings act after every read of their block (NISTIR 6556 §3.3.3); the last of a double setting wins.</summary>
    /// <param name="isCertain">False behind a condition that is not known: the variable may have been set.</param>
    readonly void Assign(bool isCertain = true)
    {
        for (var i = 0; i < _block.Tokens.Length; i++)
        {
            if (_block.Tokens[i].Kind != TokenKind.Assignment)
                continue;
            if (!_block.Tokens[i].IsMalformed)
                NoteVacant(i);
            NoteVacantTarget(i);
        }
        AssignIn(ref _state, isCertain);
        if ((_step.Events & StepEvents.WritesDatum) != 0)
            WriteDatums(isCertain);
    }

    /// <summary>What was written into the variables of datums moves them.</summary>
    readonly void WriteDatums(bool isCertain)
    {
        foreach (ref readonly var token in _block.Tokens)
        {
            if (token.Kind != TokenKind.Assignment || NameOf(token) is not null)
                continue;
            var reader = new VariableReader(_step.Before, Setup, Machine);
            var number = Math.Round(Expression.Read(_block.Line, token.Start + 1, ref reader).Value);
            if (SystemVariables.IsDatum((int)number))
                SetDatumByVariable((int)number, isCertain && !token.IsMalformed ? ValueOf(token) : double.NaN);
        }
    }

    readonly void AssignIn(ref ControlState state, bool isCertain = true)
    {
        for (var i = 0; i < _block.Tokens.Length; i++)
        {
            ref readonly var token = ref _block.Tokens[i];
            if (token.Kind != TokenKind.Assignment)
                continue;
            // A value that cannot be read leaves the variable set to what is not known.
            var value = isCertain && !token.IsMalformed ? ValueOf(token) : double.NaN;
            var variables = state.Variables ?? Variables.None;
            if (NameOf(token) is { } name)
            {
                state.Variables = variables.With(name, value);
                continue;
            }
            var reader = new VariableReader(_step.Before, Setup, Machine);
            var number = Expression.Read(_block.Line, token.Start + 1, ref reader).Value;
            var whole = Math.Round(number);
            var isOne = Math.Abs(number - whole) <= Expression.WholeTolerance && whole is >= Expression.FirstVariable and <= Expression.LastVariable;
            // A variable whose number is not known could be any: none is known after it.
            if (isOne && whole == SystemVariables.Alarm && value != 0)
                _step.Events |= StepEvents.Alarm;
            if (isOne && SystemVariables.IsDatum((int)whole))
            {
                // It is kept where the datum is, and read from there.
                _step.Events |= StepEvents.WritesDatum;
                continue;
            }
            state.Variables = isOne ? variables.With((int)whole, value) : Variables.Unknown;
        }
    }

    /// <summary>The name of a named variable that is set, in lower case and without blanks; null for a numbered one.</summary>
    readonly string? NameOf(in Token token)
    {
        var target = _block.Line[token.Start..token.ValueStart];
        var open = target.IndexOf((byte)'<');
        var close = target.IndexOf((byte)'>');
        if (open < 0 || close < open || target[..open].TrimStart("# \t"u8).Length > 0)
            return null;
        return Encoding.UTF8.GetString(target[(open + 1)..close]).Replace(" ", "", StringComparison.Ordinal)
            .Replace("\t", "", StringComparison.Ordinal).ToLowerInvariant();
    }

    /// <summary>Notes a variable never set that says which one is to be set: #[#9]=5.</summary>
    readonly void NoteVacantTarget(int index)
    {
        var reader = new VariableReader(_step.Before, Setup, Machine);
        Expression.Read(_block.Line, _block.Tokens[index].Start + 1, ref reader);
        NoteUnset(index, reader.FirstVacant);
    }

    readonly void NoteVacantWords()
    {
        for (var i = 0; i < _block.Tokens.Length; i++)
            if (_block.Tokens[i].Kind == TokenKind.Word)
                NoteVacant(i);
    }

    /// <summary>Notes that a token reads a variable that was never set; each variable once.</summary>
    readonly void NoteVacant(int index)
    {
        ref readonly var token = ref _block.Tokens[index];
        if (!token.ReadsVariables)
            return;
        var reader = new VariableReader(_step.Before, Setup, Machine, unsetIsVacant: true);
        var value = BlockWords.ValueOf(_block, token, ref reader);
        if (reader.ReadsPlace)
            _step.Events |= StepEvents.ReadsPlace;
        // Those of words are told where the words are read.
        if (token.Kind != TokenKind.Word)
            BlockWords.NoteImpossible(token, index, reader, _step);
        // A comparison with #0 has a value: that is how a program asks whether a variable was set.
        if (!(double.IsNaN(value) || Expression.IsVacant(value)) || _state.IsCalled)
            return;
        if (reader.FirstVacant < 0 && reader.FirstVacantName is { } name)
        {
            AddFault(FaultKind.VariableUnset, index, '#', double.NaN);
            _state.Variables = (_state.Variables ?? Variables.None).With(name, double.NaN);
        }
        NoteUnset(index, reader.FirstVacant);
    }

    readonly void NoteUnset(int index, int number)
    {
        if (number < 0 || _state.IsCalled)
            return;
        AddFault(FaultKind.VariableUnset, index, '#', number);
        _state.Variables = (_state.Variables ?? Variables.None).With(number, double.NaN);
    }
}
