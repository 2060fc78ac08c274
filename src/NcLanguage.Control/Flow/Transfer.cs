using NcLanguage.Syntax.Lexing;

namespace NcLanguage.Control.Flow;

/// <summary>Where a block sends the run, apart from the next block.</summary>
public enum TransferKind : byte
{
    /// <summary>To the next block.</summary>
    None,

    /// <summary>To the block with an N number, if the condition holds.</summary>
    Jump,

    /// <summary>To a program by number (M98), which shares the caller's local variables.</summary>
    CallProgram,

    /// <summary>To a program by number with arguments (G65), which has local variables of its own.</summary>
    CallWithArguments,

    /// <summary>Back to the caller (M99), or on to a block of it by its number.</summary>
    Return,

    /// <summary>By a statement that pairs with others by its number: loops, and all that stands behind an O word.</summary>
    Structure,
}

/// <summary>What a block says of where the run goes on.</summary>
/// <param name="Statement">The statement, where <paramref name="Kind"/> is <see cref="TransferKind.Structure"/>.</param>
/// <param name="BehindO">Whether the statement stands behind an O word, whose number it then has.</param>
/// <param name="Token">The token that says it.</param>
/// <param name="Number">Block number, program number or the number that pairs statements; NaN where there is none or it is not known.</param>
/// <param name="Value">The condition (0 does not hold) or how many times; NaN where not known; 1 where there is none.</param>
/// <param name="IsFixed">The condition hangs on no variable.</param>
public readonly record struct Transfer(
    TransferKind Kind, StatementKind Statement, bool BehindO, int Token, double Number, double Value, bool IsFixed);
