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

    /// <summary>False only where what is known of the work contradicts the thread. A milled thread is as wide as its helix.</summary>
    public bool Fits(in PlaceWork work)
    {
        const double Equal = 0.005;
        if (work.Kind == WorkKind.MillThread)
            return Math.Abs(work.Diameter - Diameter) <= MostMilledOff * (Pitch ?? work.Pitch) && (Pitch is null || Math.Abs(work.Pitch - Pitch.Value) <= PitchOfHelix);
        var tool = work.Tool;
        if (tool?.Kind == ToolKind.Tap && tool.Diameter is { } diameter && Math.Abs(diameter - Diameter) > Equal)
            return false;
        return Pitch is null || tool?.Pitch is null || Math.Abs(tool.Pitch.Value - Pitch.Value) <= Equal;
    }

    /// <summary>A milled thread is cut a little wider or narrower until the gauge fits: so much of its pitch (common practice).</summary>
    const double MostMilledOff = 0.25;

    /// <summary>A helix is written with rounded levels, mm.</summary>
    const double PitchOfHelix = 0.01;

    static double? Number(ReadOnlySpan<char> text) =>
        double.TryParse(text.Trim(), NumberStyles.AllowDecimalPoint, CultureInfo.InvariantCulture, out var value) && value > 0 ? value : null;
}
