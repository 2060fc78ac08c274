namespace NcLanguage.Syntax.Expressions;

/// <summary>What is wrong with an expression.</summary>
public enum ExpressionError
{
    None,

    /// <summary>A value was expected and there is none.</summary>
    MissingOperand,

    /// <summary>Two values follow each other within brackets.</summary>
    MissingOperator,

    /// <summary>The place is the opening bracket.</summary>
    UnclosedBracket,

    /// <summary>A character that has no part in an expression, such as a round bracket.</summary>
    UnexpectedCharacter,

    /// <summary>A number with two points, without a digit, or too large for a double.</summary>
    NumberMalformed,

    /// <summary>A name before a bracket that is no function.</summary>
    UnknownFunction,

    /// <summary>A function's name without the bracket it needs.</summary>
    FunctionWithoutBracket,

    /// <summary>ATAN without its <c>/[…]</c>.</summary>
    AtanWithoutSecond,

    /// <summary>A divisor of nought, also of MOD, or nought to a negative power.</summary>
    DivisionByZero,

    /// <summary>A value the function is not defined for: SQRT and LN of negatives, ASIN and ACOS beyond ±1, TAN of a right angle, a
    /// fractional power of a negative.</summary>
    OutsideDomain,

    /// <summary>The result is larger than a double holds.</summary>
    ResultTooLarge,

    /// <summary>A variable's number is not a whole number.</summary>
    VariableNotWhole,

    /// <summary>A variable's number is outside <see cref="Expression.FirstVariable"/> to <see cref="Expression.LastVariable"/>.</summary>
    VariableOutOfRange,

    /// <summary>A named variable without name, without <c>&gt;</c>, or with a name longer than <see cref="Expression.LongestName"/>.</summary>
    VariableNameMalformed,

    /// <summary>More than <see cref="Expression.DeepestNesting"/> brackets, functions and <c>#</c> within each other.</summary>
    TooDeep,
}
