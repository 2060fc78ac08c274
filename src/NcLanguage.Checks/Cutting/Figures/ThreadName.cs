using NcLanguage.Control.State;
namespace NcLanguage.Checks.Cutting;

/// <summary>A thread as a drawing names it. Lengths in mm.</summary>
/// <remarks>Metric threads as ISO 965-1 writes them (M8, M10x1.25, M8x1-6H-LH), unified ones as ASME B1.1 does (1/4-20, 5/16-18 UNC-2B, 10-32 UNF, 1 1/8-7, .250-20, 1/4 UNC); both from memory.</remarks>
/// <param name="Pitch">Where a metric name leaves it out that of the coarse series, as ISO 965-1 means it; NaN where the series is not known to have the diameter.</param>
/// <param name="IsLeftHand">Threads are right-hand unless they are said to be left-hand.</param>
public readonly record struct ThreadName(double Major, double Pitch, bool IsInch, bool IsLeftHand)
{
    /// <summary>No thread is coarser than this part of its diameter: M1 with its 0.25 is the coarsest (ISO 261, from memory). Where a name says more it means something else, as the length of a screw.</summary>
    const double MostPitch = 0.25;

    /// <summary>The greatest of the number sizes, which are 0.060 + 0.013·N inch (ASME B1.1, from memory; No. 0 and No. 4 to 10 as published charts have them).</summary>
    const int LastNumberSize = 12;

    const double Rounding = 1e-9;

    /// <summary>Null where the name is none that can be read.</summary>
    public static ThreadName? Read(string name)
    {
        ArgumentNullException.ThrowIfNull(name);
        var text = new NameText(name);
        var read = text.Take('M') ? ReadMetric(ref text) : ReadInch(ref text);
        return read is not { } thread || !text.TakeEnding(out var isLeftHand) || thread.Pitch > MostPitch * thread.Major + Rounding
            ? null
            : thread with { IsLeftHand = isLeftHand };
    }

    static ThreadName? ReadMetric(ref NameText text)
    {
        if (text.Number() is not { } major)
            return null;
        var pitch = Threads.Coarse.FirstOrDefault(thread => thread.Major == major)?.Pitch ?? double.NaN;
        if (text.Take('X'))
        {
            if (text.Number() is not { } written)
                return null;
            pitch = written;
        }
        return new ThreadName(major, pitch, false, false);
    }

    static ThreadName? ReadInch(ref NameText text)
    {
        var isNumbered = text.Take('#') || text.Take("NO.") || text.Take("NO");
        if (text.Size(out var isWhole) is not { } size)
            return null;
        if (!text.Take('-'))
            return text.TakeSeries() is { } series && Threads.OfSeries(SizeOf(size, isNumbered), series) is { } thread ? new ThreadName(thread.Major, thread.Pitch, true, false) : null;
        if (text.Number() is not { } perInch)
            return null;
        text.TakeSeries();
        var pitch = UnitLength.MmPerInch / perInch;
        // 1-8 is a thread of one inch, 1-64 one of the number 1.
        var asNumber = SizeOf(size, true);
        isNumbered |= isWhole && size <= LastNumberSize && pitch <= MostPitch * asNumber;
        return new ThreadName(isNumbered ? asNumber : SizeOf(size, false), pitch, true, false);
    }

    static double SizeOf(double size, bool isNumber) => (isNumber ? 0.060 + 0.013 * size : size) * UnitLength.MmPerInch;

    /// <summary>Diameters and pitches of tools that differ by no more are one: an inch value rounded to a thousandth is off by up to half of it, 0.0127 mm.</summary>
    const double Equal = 0.013;

    /// <summary>Whether a tap cannot be the one for this thread, as far as its size is known.</summary>
    public bool IsOther(double? diameter, double? pitch) => Math.Abs(diameter - Major ?? 0) > Equal || Math.Abs(pitch - Pitch ?? 0) > Equal;
}
