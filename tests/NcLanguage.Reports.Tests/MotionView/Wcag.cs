using System.Globalization;

namespace NcLanguage.Reports.Tests.MotionView;

/// <summary>Contrast of colours (six hexadecimal figures, sRGB) as WCAG 2.1 defines it.</summary>
static class Wcag
{
    public static double Contrast(string one, string other)
    {
        var (a, b) = (Luminance(one), Luminance(other));
        return (Math.Max(a, b) + 0.05) / (Math.Min(a, b) + 0.05);
    }

    /// <summary>What is seen where a colour covers only a part of what lies under it (simple alpha compositing, W3C Compositing and Blending Level 1).</summary>
    public static string Over(string colour, string ground, double alpha) =>
        string.Concat(Enumerable.Range(0, 3).Select(i => ((int)Math.Round(alpha * Part(colour, i) + (1 - alpha) * Part(ground, i))).ToString("x2", CultureInfo.InvariantCulture)));

    static double Luminance(string colour)
    {
        var parts = Enumerable.Range(0, 3).Select(i => Part(colour, i) / 255.0).Select(part => part <= 0.04045 ? part / 12.92 : Math.Pow((part + 0.055) / 1.055, 2.4)).ToList();
        return 0.2126 * parts[0] + 0.7152 * parts[1] + 0.0722 * parts[2];
    }

    static int Part(string colour, int index) => int.Parse(colour.AsSpan(2 * index, 2), NumberStyles.HexNumber, CultureInfo.InvariantCulture);
}
