using System.Text;
using NcLanguage.Control.State;
using NcLanguage.Syntax.Expressions;
using NcLanguage.Syntax.Lexing;

namespace NcLanguage.Control.Execution;

// Settings of variables, and what is said of those that were never set.
ref partial struct BlockRun
{
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
