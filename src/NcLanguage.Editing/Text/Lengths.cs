using NcLanguage.Checks;
using NcLanguage.Control.Execution;
using NcLanguage.Control.State;
using NcLanguage.Machine.Profiles;
using NcLanguage.Syntax.Lexing;

namespace NcLanguage.Editing;

/// <summary>Lengths and feeds in the unit that the program is written in, mm or inch; what goes in is mm and mm/min.</summary>
readonly record struct Lengths(bool IsInch)
{
    public const string NotKnown = "not known here";

    public static Lengths Of(in ControlState state) => new(state.Units == LengthUnit.Inch);

    public string Unit => IsInch ? "in" : "mm";

    /// <summary>12.5, or ? where not known.</summary>
    public string Number(double mm) => new LengthText(IsInch).Number(mm);

    /// <summary>12.5 mm</summary>
    public string Length(double mm) => double.IsNaN(mm) ? NotKnown : $"{Number(mm)} {Unit}";

    /// <summary>+12.5 mm, -3 mm</summary>
    public string Way(double mm) => double.IsNaN(mm) ? NotKnown : $"{(mm >= 0 ? "+" : "")}{Number(mm)} {Unit}";

    /// <summary>Z2</summary>
    public string Axis(char letter, double mm) => double.IsNaN(mm) ? $"{letter} {NotKnown}" : letter + Number(mm);

    /// <summary>X45 Y15</summary>
    public string Place(in Place place) => double.IsNaN(place.First + place.Second)
        ? "a place " + NotKnown
        : $"{place.FirstLetter}{Number(place.First)} {place.SecondLetter}{Number(place.Second)}";

    /// <summary>120 mm/min</summary>
    public string Feed(double mmPerMinute) =>
        !double.IsFinite(mmPerMinute) ? "feed " + NotKnown
        : IsInch ? $"{Say.Number(mmPerMinute / UnitLength.MmPerInch, 2)} in/min" : $"{Say.Number(mmPerMinute, 1)} mm/min";

    /// <summary>0.08 mm, with the figures a feed per turn or tooth needs.</summary>
    public string Fine(double mm) => $"{Say.Number(IsInch ? mm / UnitLength.MmPerInch : mm, IsInch ? 5 : 4)} {Unit}";

    /// <summary>Millimetres that a length word of a block stands for, signs and readings as the control takes them; NaN where not known.</summary>
    public static double Written(in Block block, Step step, char letter, Readings readings)
    {
        if (!step.Words.Has(letter))
            return double.NaN;
        var token = block.Tokens[step.Words.TokenOf(letter)];
        return step.Words[letter] * UnitLength.Of(step.After.Units) * UnitLength.OfOne(token, step.After.Units, readings);
    }
}
