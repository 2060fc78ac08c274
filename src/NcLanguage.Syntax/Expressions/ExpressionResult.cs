namespace NcLanguage.Syntax.Expressions;

/// <summary>One value read from a line.</summary>
/// <param name="Value">NaN when it is not known or there is an error.</param>
/// <param name="End">Index of the byte after it. Equal to the start when no value begins there. After an error, the place where
/// reading goes on best: behind the brackets that were opened.</param>
/// <param name="Error">The first thing wrong, or <see cref="ExpressionError.None"/>.</param>
/// <param name="ErrorAt">Index of the byte the error stands at; may be the line's length. −1 without an error.</param>
/// <param name="ReadsVariables">Whether a <c>#</c> stands in it.</param>
public readonly record struct ExpressionResult(double Value, int End, ExpressionError Error, int ErrorAt, bool ReadsVariables)
{
    public bool IsKnown => !double.IsNaN(Value);
}
