using NcLanguage.Syntax.Expressions;

namespace NcLanguage.Syntax.Lexing;

/// <summary>What a stretch of a block is.</summary>
public enum TokenKind : byte
{
    /// <summary>An address letter with its number or expression: X12.5, G81, N40, O1000, :5.</summary>
    Word,

    /// <summary>An address letter that no number follows.</summary>
    BareLetter,

    /// <summary>( … ) with both brackets.</summary>
    Comment,

    /// <summary>( … without its closing bracket; runs to the end of the line.</summary>
    UnclosedComment,

    /// <summary>; … to the end of the line.</summary>
    LineComment,

    /// <summary>/ or /2: the block can be skipped by a switch at the machine.</summary>
    Skip,

    /// <summary>%</summary>
    Percent,

    /// <summary>#5 = …: the value is that of the right side.</summary>
    Assignment,

    /// <summary>IF, GOTO, WHILE … with the condition or number that belongs to it.</summary>
    Statement,

    /// <summary>[ … ] behind a call of a subroutine, or behind its return: a value handed over.</summary>
    Argument,

    /// <summary>A character that has no place in a block.</summary>
    Unknown,

    /// <summary>The rest of a block too long to be read.</summary>
    Excess,
}

/// <summary>Particulars of a token's text.</summary>
[Flags]
public enum TokenTraits : byte
{
    None = 0,

    /// <summary>The number has a decimal point.</summary>
    HasPoint = 1,

    /// <summary>The value is an expression, not a plain number.</summary>
    IsExpression = 2,

    /// <summary>The expression reads variables: its value is known only when it runs.</summary>
    ReadsVariables = 4,

    /// <summary>The number or expression cannot be read.</summary>
    Malformed = 8,

    /// <summary>A comment with an opening bracket inside.</summary>
    Nested = 16,
}

/// <summary>A stretch of a block: start and end are byte columns in its line, the end excluded.</summary>
/// <param name="Letter">Upper-case address letter, ':' included; 0 where there is none.</param>
/// <param name="Value">The number as written, without regard to units; NaN where there is none or it is not known.</param>
/// <param name="ValueStart">Where the number or expression begins.</param>
/// <param name="Statement">The statement of a <see cref="TokenKind.Statement"/>.</param>
/// <param name="Error">What is wrong with a malformed expression.</param>
public record struct Token(
    TokenKind Kind, TokenTraits Traits, byte Letter, StatementKind Statement, ExpressionError Error,
    int Start, int End, int ValueStart, double Value)
{
    public TokenKind Kind { get; private set; } = Kind;

    public TokenTraits Traits { get; internal set; } = Traits;

    public byte Letter { get; private set; } = Letter;

    public StatementKind Statement { get; private set; } = Statement;

    public ExpressionError Error { get; private set; } = Error;

    public int Start { get; private set; } = Start;

    public int End { get; private set; } = End;

    public int ValueStart { get; private set; } = ValueStart;

    public double Value { get; private set; } = Value;

    public readonly bool HasPoint => (Traits & TokenTraits.HasPoint) != 0;

    public readonly bool IsExpression => (Traits & TokenTraits.IsExpression) != 0;

    public readonly bool ReadsVariables => (Traits & TokenTraits.ReadsVariables) != 0;

    public readonly bool IsMalformed => (Traits & TokenTraits.Malformed) != 0;

    public readonly bool IsNested => (Traits & TokenTraits.Nested) != 0;

    public readonly bool IsComment => Kind is TokenKind.Comment or TokenKind.UnclosedComment or TokenKind.LineComment;

    /// <summary>Becomes a word with a plain number, where it stands: nearly all tokens are one, and to make each elsewhere and copy it takes as long as to read it.</summary>
    internal void BecomeWord(byte letter, bool hasPoint, int start, int end, double value)
    {
        (Kind, Traits, Letter) = (TokenKind.Word, hasPoint ? TokenTraits.HasPoint : TokenTraits.None, letter);
        (Statement, Error) = (StatementKind.None, ExpressionError.None);
        (Start, End, ValueStart, Value) = (start, end, start + 1, value);
    }

    /// <summary>True for a word of this address letter (upper case).</summary>
    public readonly bool IsWord(char letter) => Kind == TokenKind.Word && Letter == letter;
}
