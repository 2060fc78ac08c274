using NcLanguage.Machine.Profiles;
using NcLanguage.Syntax.Lexing;

namespace NcLanguage.Control.State;

/// <summary>The units that programs are written in: how long they are, and the codes that set them.</summary>
public static class UnitLength
{
    /// <summary>The international inch, exact by definition (1959).</summary>
    public const double MmPerInch = 25.4;

    /// <summary>Millimetres in one unit; NaN where it is not known which one is in force.</summary>
    public static double Of(LengthUnit units) => units switch
    {
        LengthUnit.Millimetre => 1,
        LengthUnit.Inch => MmPerInch,
        _ => double.NaN,
    };

    /// <summary>The number of the G code that sets a unit: G20 and G21, or G70 and G71.</summary>
    public static int CodeOf(bool isInch, UnitReading reading) => (reading == UnitReading.G70G71 ? 70 : 20) + (isInch ? 0 : 1);

    /// <summary>The smallest increment of a control that counts in them, in programmed units: 0.001 mm or 0.0001 in (common practice).</summary>
    public static double OfIncrement(LengthUnit units) => units == LengthUnit.Inch ? 0.0001 : 0.001;

    /// <summary>Programmed units that one of a word's number stands for: an increment where numbers without a point are read as such, else 1.</summary>
    public static double OfOne(in Token token, LengthUnit units, Readings readings) =>
        readings.Integers != IntegerReading.Increments || token.HasPoint || token.IsExpression ? 1 : OfIncrement(units);
}
