namespace NcLanguage.Checks.Operations;

/// <summary>The least and the greatest of the values seen; none are known while both are NaN.</summary>
public readonly record struct ValueRange(double Least, double Greatest)
{
    public static ValueRange None { get; } = new(double.NaN, double.NaN);

    public bool IsKnown => !double.IsNaN(Least);

    /// <summary>The range with one more value; one that is not known changes nothing.</summary>
    public ValueRange With(double value) =>
        double.IsNaN(value) ? this
        : IsKnown ? new(Math.Min(Least, value), Math.Max(Greatest, value))
        : new(value, value);

    public ValueRange With(ValueRange other) => other.IsKnown ? With(other.Least).With(other.Greatest) : this;
}
