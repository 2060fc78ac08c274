using System.Collections.Immutable;
using static NcLanguage.Control.Codes.Tables.Row;

namespace NcLanguage.Control.Codes;

/// <summary>One function or operator of expressions.</summary>
public sealed record FunctionEntry
{
    /// <summary>As written, upper case: SQRT, MOD, +.</summary>
    public required string Text { get; init; }

    /// <summary>0 for functions; for operators the rank, higher binding tighter, equal ranks going from left to right.</summary>
    public required int Rank { get; init; }

    public required string Name { get; init; }

    /// <summary>What its value is, in one sentence.</summary>
    public required string Meaning { get; init; }

    /// <summary>An expression with it.</summary>
    public required string Example { get; init; }

    /// <summary>The value of <see cref="Example"/>.</summary>
    public required double ExampleValue { get; init; }

    public required string Source { get; init; }

    public bool IsOperator => Rank > 0;
}

/// <summary>The functions and operators of expressions.</summary>
public static class FunctionTable
{
    /// <summary>Functions first, then operators by falling rank.</summary>
    public static ImmutableArray<FunctionEntry> All { get; } =
    [
        Function("ABS", "absolute value", "Gives the size of the value without its sign.", "ABS[-1.5]", 1.5),
        Function("ACOS", "arc cosine", "Gives the angle in degrees, from 0 to 180, that has this cosine.", "ACOS[0.5]", 60),
        Function("ASIN", "arc sine", "Gives the angle in degrees, from -90 to 90, that has this sine.", "ASIN[0.5]", 30),
        Function("ATAN", "arc tangent of two values", "Gives the direction in degrees, over -180 up to 180, of the point whose Y is the first value and whose X is the second.", "ATAN[10]/[-10]", 135),
        Function("COS", "cosine", "Gives the cosine of an angle in degrees.", "COS[60]", 0.5),
        Function("EXP", "power of e", "Gives e raised to the value.", "EXP[0]", 1),
        Function("FIX", "round down", "Gives the next whole number below, also for negative values.", "FIX[-2.8]", -3),
        Function("FUP", "round up", "Gives the next whole number above, also for negative values.", "FUP[-2.8]", -2),
        Function("LN", "natural logarithm", "Gives the power of e that makes the value.", "LN[1]", 0),
        Function("ROUND", "round", "Gives the nearest whole number, halves away from nought.", "ROUND[2.5]", 3),
        Function("SIN", "sine", "Gives the sine of an angle in degrees.", "SIN[30]", 0.5),
        Function("SQRT", "square root", "Gives the square root of the value.", "SQRT[16]", 4),
        Function("TAN", "tangent", "Gives the tangent of an angle in degrees.", "TAN[45]", 1),
        Operator(4, "**", "power", "Raises the left value to the right one.", "[2 ** 3]", 8),
        Operator(3, "*", "times", "Multiplies the two values.", "[3 * 5]", 15),
        Operator(3, "/", "divided by", "Divides the left value by the right one.", "[2 / 5]", 0.4),
        Operator(3, "MOD", "remainder", "Gives what is left of the left value after taking out the right one as often as it goes.", "[15 MOD 4]", 3),
        Operator(2, "+", "plus", "Adds the two values.", "[1 + 2]", 3),
        Operator(2, "-", "minus", "Takes the right value from the left one.", "[1 - 2]", -1),
        Operator(2, "AND", "both", "Gives 1 when both values differ from nought, else 0.", "[2 AND 0]", 0),
        Operator(2, "OR", "either", "Gives 1 when at least one value differs from nought, else 0.", "[2 OR 0]", 1),
        Operator(2, "XOR", "one only", "Gives 1 when exactly one value differs from nought, else 0.", "[2 XOR 2]", 0),
        Comparison("EQ", "equal", "Gives 1 when the values are equal, else 0.", "[2 EQ 2]", 1),
        Comparison("NE", "not equal", "Gives 1 when the values differ, else 0.", "[2 NE 2]", 0),
        Comparison("GT", "greater", "Gives 1 when the left value is the greater, else 0.", "[3 GT 2]", 1),
        Comparison("GE", "greater or equal", "Gives 1 when the left value is not the smaller, else 0.", "[2 GE 3]", 0),
        Comparison("LT", "less", "Gives 1 when the left value is the smaller, else 0.", "[2 LT 3]", 1),
        Comparison("LE", "less or equal", "Gives 1 when the left value is not the greater, else 0.", "[3 LE 2]", 0),
    ];

    /// <summary>The row of a function or operator as written, in any case, or null.</summary>
    public static FunctionEntry? Find(ReadOnlySpan<char> text)
    {
        foreach (var row in All)
        {
            if (text.Equals(row.Text, StringComparison.OrdinalIgnoreCase))
                return row;
        }

        return null;
    }

    static FunctionEntry Function(string text, string name, string meaning, string example, double value) =>
        new() { Text = text, Rank = 0, Name = name, Meaning = meaning, Example = example, ExampleValue = value, Source = Nist("3.3.2") };

    static FunctionEntry Operator(int rank, string text, string name, string meaning, string example, double value) =>
        new() { Text = text, Rank = rank, Name = name, Meaning = meaning, Example = example, ExampleValue = value, Source = Nist("3.3.2") };

    static FunctionEntry Comparison(string text, string name, string meaning, string example, double value) =>
        Operator(1, text, name, meaning, example, value) with { Source = Practice };
}
