namespace NcLanguage.Editing;

/// <summary>The values that something takes on from run to run: the least, the greatest, how many different ones.</summary>
sealed class Span
{
    // Nearer values are one to a setter, and sums of tenths are not told as many.
    const int Decimals = 6;

    readonly HashSet<double> _values = [];

    public double Least { get; private set; } = double.PositiveInfinity;

    public double Greatest { get; private set; } = double.NegativeInfinity;

    public int Different => _values.Count;

    /// <summary>Whether it was not known at one of the runs.</summary>
    public bool HasUnknown { get; private set; }

    public bool Varies => Different > 1;

    public void Add(double value)
    {
        if (double.IsNaN(value))
        {
            HasUnknown = true;
            return;
        }
        value = Math.Round(value, Decimals) + 0.0;
        (Least, Greatest) = (Math.Min(Least, value), Math.Max(Greatest, value));
        _values.Add(value);
    }
}
