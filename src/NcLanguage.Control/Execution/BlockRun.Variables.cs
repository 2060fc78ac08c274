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
            NumberOf(_block.Tokens[i], out var vacant);
            NoteUnset(i, vacant);
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
            if (token.Kind != TokenKind.Assignment || AssignedVariable.NameOf(_block, token) is not null)
                continue;
            var number = NumberOf(token, out _);
            if (SystemVariables.IsDatum(number))
                SetDatumByVariable(number, isCertain && !token.IsMalformed ? ValueOf(token) : double.NaN);
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
            if (AssignedVariable.NameOf(_block, token) is { } name)
            {
                state.Variables = variables.With(name, value);
                continue;
            }
            var number = NumberOf(token, out _);
            if (number == SystemVariables.Alarm && value != 0)
                _step.Events |= StepEvents.Alarm;
            if (SystemVariables.IsDatum(number))
            {
                // It is kept where the datum is, and read from there.
                _step.Events |= StepEvents.WritesDatum;
                continue;
            }
            // A variable whose number is not known could be any: none is known after it.
            state.Variables = number > 0 ? variables.With(number, value) : Variables.Unknown;
        }
    }

    /// <summary>The number of the variable that a token sets; −1 where it is not known, or there is no such variable.</summary>
    /// <param name="firstVacant">The number of a variable never set that says which one is to be set, as in #[#9]=5; −1 where there is none.</param>
    readonly int NumberOf(in Token token, out int firstVacant)
    {
        var reader = new VariableReader(_step.Before, Setup, Machine);
        var number = AssignedVariable.NumberOf(_block, token, ref reader);
        firstVacant = reader.FirstVacant;
        return number;
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
