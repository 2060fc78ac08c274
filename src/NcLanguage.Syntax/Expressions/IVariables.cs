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
