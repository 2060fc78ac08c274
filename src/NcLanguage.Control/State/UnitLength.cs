namespace NcLanguage.Control.State;

/// <summary>Lengths of the units that programs are written in.</summary>
static class UnitLength
{
    public const double MmPerInch = 25.4;

    /// <summary>Millimetres in one unit; NaN where it is not known which one is in force.</summary>
    public static double Of(LengthUnit units) => units switch
    {
        LengthUnit.Millimetre => 1,
        LengthUnit.Inch => MmPerInch,
        _ => double.NaN,
    };
}
