using System.Globalization;
using System.Text;
using NcLanguage.Control.State;
using NcLanguage.Machine.Setups;

namespace NcLanguage.Editing;

/// <summary>What a number in a program can stand for.</summary>
public enum NamedKind
{
    /// <summary>N, and GOTO or M99 P that leads there.</summary>
    BlockNumber,

    /// <summary>O, and the calls of it; the numbers of structures behind an O word too.</summary>
    Program,

    /// <summary>#100.</summary>
    Variable,

    /// <summary>#&lt;depth&gt;.</summary>
    NamedVariable,

    /// <summary>The number of DO and END.</summary>
    Loop,

    Tool,

    /// <summary>H.</summary>
    LengthOffset,

    /// <summary>D.</summary>
    RadiusOffset,
}

/// <summary>What a place names: a kind with its number, or the name (lower case, without blanks) of a variable that has one.</summary>
public readonly record struct ProgramSymbol(NamedKind Kind, int Number, string? Name = null)
{
    /// <summary>The variable that a setup names so: #100 or #&lt;depth&gt;; null for any other text.</summary>
    public static ProgramSymbol? VariableIn(string name)
    {
        if (name.Length > 3 && name.StartsWith("#<", StringComparison.Ordinal) && name[^1] == '>')
            return new ProgramSymbol(NamedKind.NamedVariable, -1, Variables.NameIn(Encoding.UTF8.GetBytes(name[2..^1])));
        return name.StartsWith('#') && int.TryParse(name.AsSpan(1), NumberStyles.None, CultureInfo.InvariantCulture, out var number) && number > 0
            ? new ProgramSymbol(NamedKind.Variable, number)
            : null;
    }

    /// <summary>A variable as programs write it: #100, #&lt;depth&gt;.</summary>
    public string VariableName => Name is { } name ? $"#<{name}>" : "#" + Number.ToString(CultureInfo.InvariantCulture);

    /// <summary>The line (from 1) on which a setup gives this variable its value; null where it does not, and for what is no variable.</summary>
    public int? LineIn(Setup setup)
    {
        foreach (var (name, line) in setup.VariableLines)
            if (VariableIn(name) == this)
                return line;
        return null;
    }
}

/// <summary>How a place uses what it names.</summary>
public enum UseRole
{
    /// <summary>Reads it, or leads to it.</summary>
    Read,

    /// <summary>Calls the program.</summary>
    Call,

    /// <summary>Sets it.</summary>
    Write,

    /// <summary>Stands where it begins.</summary>
    Definition,
}

/// <summary>A number or name in a line, byte columns from 0, the end excluded; what stands there is what a renaming replaces.</summary>
public readonly record struct SymbolUse(ProgramSymbol Symbol, int Line, int Start, int End, UseRole Role)
{
    /// <summary>Whether the cursor at a column stands on it or right behind it.</summary>
    public bool Touches(int column, int wordStart) => column >= wordStart && column <= End;
}
