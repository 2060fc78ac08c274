namespace NcLanguage.Server;

/// <summary>Gives memory back when nothing has been asked for a while: what long typing leaves behind is old to the collector, which would let it lie until as much again
/// has gathered.</summary>
sealed class Housekeeper : IDisposable
{
    /// <summary>How long nothing is asked before it tidies up: a collection of a large program's memory takes longer than a key may.</summary>
    static readonly TimeSpan Rest = TimeSpan.FromSeconds(2);

    /// <summary>A pause between two keys, long enough for a collection where much has gathered.</summary>
    static readonly TimeSpan Breath = TimeSpan.FromSeconds(0.3);

    /// <summary>Less than this is not worth a collection, bytes.</summary>
    const long Little = 8 << 20;

    /// <summary>More than this is not left lying until fingers rest, bytes; nor half of what is in use.</summary>
    const long Much = 64 << 20;

    readonly Timer _breath;
    readonly Timer _rest;
    readonly Lock _gate = new();
    long _kept;

    public Housekeeper()
    {
        // Before the first rest it is not known how much is in use.
        _breath = new Timer(_ => TakeBreath());
        _rest = new Timer(_ => Tidy());
    }

    /// <summary>Something was asked: breath and rest begin anew.</summary>
    public void Touch()
    {
        _breath.Change(Breath, Timeout.InfiniteTimeSpan);
        _rest.Change(Rest, Timeout.InfiniteTimeSpan);
    }

    /// <summary>Collects where a tenth more than after the last time is in use; false where there is nothing to gain.</summary>
    internal bool Tidy() => Tidy(_kept + Math.Max(_kept / 10, Little));

    void TakeBreath()
    {
        if (!Tidy(_kept == 0 ? long.MaxValue : _kept + Math.Max(_kept / 2, Much)) && CollectorPause.End())
            GC.Collect(1, GCCollectionMode.Forced, blocking: true);
    }

    bool Tidy(long most)
    {
        lock (_gate)
        {
            if (GC.GetTotalMemory(forceFullCollection: false) < most)
                return false;
            CollectorPause.End();
            GC.Collect(GC.MaxGeneration, GCCollectionMode.Aggressive, blocking: true, compacting: true);
            _kept = GC.GetTotalMemory(forceFullCollection: false);
            return true;
        }
    }

    public void Dispose()
    {
        _breath.Dispose();
        _rest.Dispose();
        CollectorPause.End();
    }
}
