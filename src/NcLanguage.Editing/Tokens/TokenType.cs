namespace NcLanguage.Editing;

/// <summary>What a stretch of a program is, for its colour. Where the protocol has a name for it, it has that name.</summary>
public enum TokenType
{
    Comment,

    /// <summary>G codes, and the words that steer the order of blocks.</summary>
    Keyword,

    /// <summary>A cycle's code, a function in an expression, a program's number.</summary>
    Function,

    /// <summary>The letter of another address.</summary>
    Parameter,
    Number,
    Variable,
    Operator,

    /// <summary>A block number.</summary>
    Label,

    /// <summary>What switches the machine: M codes, and the letters of feed, speed, tool and offset numbers.</summary>
    Property,
}

/// <summary>What more is known of a stretch.</summary>
[Flags]
public enum TokenModifiers
{
    None = 0,

    /// <summary>A number or name that begins here.</summary>
    Definition = 1 << 0,

    /// <summary>A variable that is set here.</summary>
    Modification = 1 << 1,

    /// <summary>A comment that silences a finding.</summary>
    Documentation = 1 << 2,

    /// <summary>A word of a block that moves the tool at rapid.</summary>
    Rapid = 1 << 3,

    /// <summary>A word of a block that cuts.</summary>
    Cut = 1 << 4,

    /// <summary>A word of a block that the run never comes to.</summary>
    NotRun = 1 << 5,
}

/// <summary>A stretch of a line with its colour; byte columns from 0, the end excluded.</summary>
public readonly record struct ColouredToken(int Line, int Start, int End, TokenType Type, TokenModifiers Modifiers);
