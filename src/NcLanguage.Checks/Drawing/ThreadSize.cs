using System.Globalization;
using NcLanguage.Machine.Setups;

namespace NcLanguage.Checks.Drawing;

/// <summary>A metric thread as a drawing writes it (ISO 965-1): M8, M10x1.25. Lengths in mm.</summary>
/// <param name="Pitch">Null where the designation leaves it to the coarse series.</param>
readonly record struct ThreadSize(double Diameter, double? Pitch)
{
    /// <summary>Null where the designation is no metric one.</summary>
    public static ThreadSize? Parse(string designation)
    {
        var text = designation.AsSpan().Trim();
        if (text.IsEmpty || text[0] is not ('M' or 'm'))
            return null;
        text = text[1..];
        // A tolerance class (M8-6H) says nothing of the size.
        if (text.IndexOf('-') is > 0 and var dash)
            text = text[..dash];
        var times = text.IndexOfAny("xX×*");
        if (times < 0)
            return Number(text) is { } size ? new ThreadSize(size, null) : null;
        return Number(text[..times]) is { } diameter && Number(text[(times + 1)..]) is { } pitch ? new ThreadSize(diameter, pitch) : null;
    }

    /// <summary>False only where what is known of the tool contradicts the thread. A thread mill cuts threads of many diameters.</summary>
    public bool Fits(Tool? tool)
    {
        const double Equal = 0.005;
        if (tool?.Kind == ToolKind.Tap && tool.Diameter is { } diameter && Math.Abs(diameter - Diameter) > Equal)
            return false;
        return Pitch is null || tool?.Pitch is null || Math.Abs(tool.Pitch.Value - Pitch.Value) <= Equal;
    }

    static double? Number(ReadOnlySpan<char> text) =>
        double.TryParse(text.Trim(), NumberStyles.AllowDecimalPoint, CultureInfo.InvariantCulture, out var value) && value > 0 ? value : null;
}
