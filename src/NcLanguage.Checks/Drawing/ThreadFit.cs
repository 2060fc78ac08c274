using NcLanguage.Checks.Cutting;
using NcLanguage.Machine.Setups;

namespace NcLanguage.Checks.Drawing;

/// <summary>Holds a thread that is cut against the drawing's: diameter, pitch and hand, each as far as it is known of both.</summary>
static class ThreadFit
{
    /// <summary>A milled thread is cut a little wider or narrower until the gauge fits: so much of its pitch (common practice).</summary>
    const double MostMilledOff = 0.25;

    /// <summary>A helix is written with rounded levels, mm.</summary>
    const double PitchOfHelix = 0.01;

    /// <summary>How far a tapping feed may be off the pitch, as in tap-feed, and how far an inch pitch rounded to a thousandth is, mm.</summary>
    const double FeedOff = 0.01, PitchOff = 0.013;

    /// <summary>False only where what is known of the work contradicts the thread.</summary>
    public static bool Fits(ThreadName thread, in PlaceWork work) => HasItsHand(thread, work) && HasItsSize(thread, work);

    /// <summary>Whether a thread is cut in the drawing's hand, as far as that is known.</summary>
    public static bool HasItsHand(ThreadName thread, in PlaceWork work) => work.IsLeftHand is not { } isLeft || isLeft == thread.IsLeftHand;

    // A milled thread is as wide as its helix.
    static bool HasItsSize(ThreadName thread, in PlaceWork work) => work.Kind == WorkKind.MillThread
        ? Math.Abs(work.Diameter - thread.Major) <= MostMilledOff * (double.IsNaN(thread.Pitch) ? work.Pitch : thread.Pitch) && !(Math.Abs(work.Pitch - thread.Pitch) > PitchOfHelix)
        : !thread.IsOther(work.Tool is { Kind: ToolKind.Tap } tap ? tap.Diameter : null, work.Tool?.Pitch) && !IsFedOtherwise(thread, work);

    static bool IsFedOtherwise(ThreadName thread, in PlaceWork work) =>
        work.IsPitchFed && Math.Abs(work.FeedPerTurn - thread.Pitch) > Math.Max(PitchOff, FeedOff * thread.Pitch);

    /// <summary>Whether all of the size is known of both, so that a thread that fits was compared.</summary>
    public static bool IsSizeKnown(ThreadName thread, in PlaceWork work) => !double.IsNaN(thread.Pitch + work.ThreadPitch + work.Diameter);
}
