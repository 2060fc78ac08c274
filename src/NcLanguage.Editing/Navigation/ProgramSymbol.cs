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
public readonly record struct ProgramSymbol(NamedKind Kind, int Number, string? Name = null);

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
