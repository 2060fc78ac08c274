namespace NcLanguage.Machine.Loading;

/// <summary>The unit of the lengths in one file.</summary>
readonly record struct LengthUnit(string Name, double Millimetres)
{
    public static LengthUnit Mm { get; } = new("mm", 1);

    /// <summary>The international inch: 25.4 mm exactly.</summary>
    public static LengthUnit Inch { get; } = new("inch", 25.4);

    /// <summary>Where the file's unit could not be read, no length of it is known.</summary>
    public static LengthUnit Unknown { get; } = new("", double.NaN);

    public bool IsKnown => !double.IsNaN(Millimetres);
}
