using System.Text;
using NcLanguage.Machine.Profiles;
using NcLanguage.Machine.Setups;
using NcLanguage.Syntax.Expressions;

namespace NcLanguage.Control.State;

/// <summary>Lets expressions read the variables of a state, those too that the control keeps itself. Notes the first that was never set.</summary>
public ref struct VariableReader : IVariables
{
    readonly Variables? _variables;
    readonly ref readonly ControlState _state;
    readonly Setup _setup;
    readonly MachineProfile _machine;
    readonly bool _unsetIsVacant;

    /// <param name="unsetIsVacant">Whether a common variable that the program has not set counts as vacant: so a program that asks for it is told from one that works with it.</param>
    public VariableReader(in ControlState state, Setup setup, MachineProfile machine, bool unsetIsVacant = false)
    {
        _unsetIsVacant = unsetIsVacant;
        _variables = state.Variables;
        _state = ref state;
        _setup = setup;
        _machine = machine;
    }

    /// <summary>The number of the first vacant variable that was read; −1 where none was. 0 (#0, always vacant) does not count.</summary>
    public int FirstVacant { get; private set; } = -1;

    /// <summary>The name, in lower case, of the first named variable that was read and never set; null where none was. Names that begin with _ are
    /// left out: controls fill some of them themselves.</summary>
    public string? FirstVacantName { get; private set; }

    /// <summary>Whether a value was read that hangs on where the tool stands.</summary>
    public bool ReadsPlace { get; private set; }

    /// <summary>What was wrong with the value last read: no number comes of it, such as of a division by 0.</summary>
    public ExpressionError Error { get; internal set; }

    public double Get(int number)
    {
        if (number == 0)
            return Expression.Vacant;
        var value = (_variables ?? Variables.None).Get(number);
        if (!Expression.IsVacant(value))
            return value;
        if (SystemVariables.IsOne(number))
        {
            ReadsPlace = true;
            return SystemVariables.Get(number, _state, _setup, _machine);
        }
        if (FirstVacant < 0)
            FirstVacant = number;
        // The program's own variables are cleared when it begins (common practice); the common ones hold what was left in them.
        return number <= Variables.LastLocal || _unsetIsVacant ? value : double.NaN;
    }

    public double Get(scoped ReadOnlySpan<byte> name)
    {
        var text = Encoding.UTF8.GetString(name);
        var value = (_variables ?? Variables.None).Get(text);
        if (Expression.IsVacant(value) && !text.StartsWith('_'))
            FirstVacantName ??= text;
        return value;
    }
}
