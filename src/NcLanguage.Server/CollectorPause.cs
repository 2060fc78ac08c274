using System.Runtime;

namespace NcLanguage.Server;

/// <summary>A stretch of time in which memory is not collected: a large program that is run anew makes tens of megabytes that are all to stay, and a collection amid it copies them while every
/// thread stands still. It is one for the whole process, as the collector is.</summary>
static class CollectorPause
{
    /// <summary>Beyond this, collecting is the smaller evil, bytes.</summary>
    const long Most = 256L << 20;

    static readonly Lock Gate = new();
    /// <summary>Less than this, made since it began, is not worth a collection, bytes.</summary>
    const long Little = 8 << 20;

    /// <summary>How long what was found last needs to go out: while memory is collected nothing is written.</summary>
    static readonly TimeSpan Out = TimeSpan.FromMilliseconds(2);

    static bool _isOn;
    static long _begin;

    /// <summary>Begins it, where there is memory enough. It ends by itself when more is made than was said. Where one is on still, what was made in it is collected first: before the work that
    /// takes less long than amid it, when more has gathered.</summary>
    /// <param name="bytes">How much will be made.</param>
    public static void Begin(long bytes)
    {
        lock (Gate)
        {
            if (_isOn && IsOnStill && GC.GetTotalAllocatedBytes() - _begin < Little)
                return;
            if (_isOn)
            {
                Thread.Sleep(Out);
                Collect();
            }
            try
            {
                _begin = GC.GetTotalAllocatedBytes();
                _isOn = GC.TryStartNoGCRegion(Math.Min(bytes, Most), disallowFullBlockingGC: true);
            }
            catch (ArgumentOutOfRangeException)
            {
                // More than this process may use.
                _isOn = false;
            }
        }
    }

    /// <summary>Ends it, where it is on.</summary>
    public static void End()
    {
        lock (Gate)
            Stop();
    }

    /// <summary>Ends it, where it is on, and collects what was made in it.</summary>
    public static void EndAndCollect()
    {
        lock (Gate)
            if (_isOn)
                Collect();
    }

    static void Collect()
    {
        Stop();
        GC.Collect(1, GCCollectionMode.Forced, blocking: true);
    }

    static void Stop()
    {
        try
        {
            if (_isOn && IsOnStill)
                GC.EndNoGCRegion();
        }
        catch (InvalidOperationException)
        {
            // Another thread has used up the rest just now.
        }
        _isOn = false;
    }

    static bool IsOnStill => GCSettings.LatencyMode == GCLatencyMode.NoGCRegion;
}
