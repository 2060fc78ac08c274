namespace NcLanguage.Server;

/// <summary>Gives memory back when nothing has been asked for a while: what long typing leaves behind is old to the collector, which would let it lie until as much again
/// has gathered.</summary>
internal sealed class Housekeeper : IDisposable
{
    /// <summary>How long nothing is asked before it tidies up: a collection of a large program's memory takes longer than a key may.</summary>
    private static readonly TimeSpan Rest = TimeSpan.FromSeconds(2);

    /// <summary>Less than this is not worth a collection, bytes.</summary>
    private const long Little = 8 << 20;

    private readonly Timer _timer;
    private long _kept;

    public Housekeeper() => _timer = new Timer(_ => Tidy());

    /// <summary>Something was asked: the rest begins anew.</summary>
    public void Touch() => _timer.Change(Rest, Timeout.InfiniteTimeSpan);

    /// <summary>Collects where a tenth more than after the last time is in use; false where there is nothing to gain.</summary>
    internal bool Tidy()
    {
        if (GC.GetTotalMemory(forceFullCollection: false) < _kept + Math.Max(_kept / 10, Little)) return false;
        GC.Collect(GC.MaxGeneration, GCCollectionMode.Aggressive, blocking: true, compacting: true);
        _kept = GC.GetTotalMemory(forceFullCollection: false);
        return true;
    }

    public void Dispose() => _timer.Dispose();
}
