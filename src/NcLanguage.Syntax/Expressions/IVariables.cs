namespace NcLanguage.Syntax.Expressions;

/// <summary>The values of a program's variables at one place of its run.</summary>
public interface IVariables
{
    /// <summary>The value of <c>#number</c>, which is within <see cref="Expression.FirstVariable"/> to
    /// <see cref="Expression.LastVariable"/>; NaN where it is not known.</summary>
    double Get(int number);

    /// <summary>The value of <c>#&lt;name&gt;</c>; NaN where it is not known.</summary>
    /// <param name="name">The name in lower case (ASCII letters), without spaces and tabs.</param>
    double Get(scoped ReadOnlySpan<byte> name);
}

/// <summary>No variable is known: for reading an expression's shape.</summary>
public readonly struct UnknownVariables : IVariables
{
    public double Get(int number) => double.NaN;

    public double Get(scoped ReadOnlySpan<byte> name) => double.NaN;
}

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
