using System.Runtime;

namespace NcLanguage.Server;

/// <summary>A stretch of time in which memory is not collected: a large program that is run anew makes tens of megabytes that are all to stay, and a collection amid it copies them while every
/// thread stands still. It is one for the whole process, as the collector is.</summary>
static class CollectorPause
{
    /// <summary>Beyond this, collecting is the smaller evil, bytes.</summary>
    const long Most = 256L << 20;

    static readonly Lock Gate = new();
    static bool _isOn;

    /// <summary>Begins it, where it is not on and there is memory enough. It ends by itself when more is made than was said.</summary>
    /// <param name="bytes">How much will be made.</param>
    public static void Begin(long bytes)
    {
        lock (Gate)
        {
            if (_isOn && IsOnStill)
                return;
            try
            {
                _isOn = GC.TryStartNoGCRegion(Math.Min(bytes, Most), disallowFullBlockingGC: true);
            }
            catch (ArgumentOutOfRangeException)
            {
                // More than this process may use.
                _isOn = false;
            }
        }
    }

    /// <summary>Ends it; false where none was begun since the last time.</summary>
    public static bool End()
    {
        lock (Gate)
        {
            if (!_isOn)
                return false;
            _isOn = false;
            try
            {
                if (IsOnStill)
                    GC.EndNoGCRegion();
            }
            catch (InvalidOperationException)
            {
                // Another thread has used up the rest just now.
            }
            return true;
        }
    }

    static bool IsOnStill => GCSettings.LatencyMode == GCLatencyMode.NoGCRegion;
}
