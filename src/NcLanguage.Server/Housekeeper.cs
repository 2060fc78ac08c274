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
    readonly Lock _timers = new();
    bool _isDisposed;

    /// <summary>In use after the last collection, bytes. Amid typing that is more than has to stay: the version before is still at hand, and what was being worked out.</summary>
    long _kept;

    /// <summary>All that had been made when it rested last, bytes.</summary>
    long _made;

    /// <param name="isAtWork">Whether an answer is being made or sent. What it needs is in use till then and garbage right behind it: that is no rest.</param>
    public Housekeeper(Func<bool> isAtWork)
    {
        // Before the first rest it is not known how much is in use.
        _breath = new Timer(_ => TakeBreath());
        _rest = new Timer(_ =>
        {
            if (isAtWork())
                PutOff();
            else
                Tidy();
        });
    }

    /// <summary>Something was asked: breath and rest begin anew.</summary>
    public void Touch() => Begin(withBreath: true);

    /// <summary>Something was told, perhaps the end of an analysis long after its key: the rest begins anew. The breath does not, for the next key may be near.</summary>
    public void PutOff() => Begin(withBreath: false);

    void Begin(bool withBreath)
    {
        lock (_timers)
        {
            // What is still under way when the session ends may tell of itself once more.
            if (_isDisposed)
                return;
            if (withBreath)
                _breath.Change(Breath, Timeout.InfiniteTimeSpan);
            _rest.Change(Rest, Timeout.InfiniteTimeSpan);
        }
    }

    /// <summary>Collects where a tenth of what has to stay has been made since the last rest, whatever became of it: what was collected amid typing lies about still, or was in use then;
    /// false where there is nothing to gain.</summary>
    internal bool Tidy()
    {
        lock (_gate)
        {
            if (GC.GetTotalAllocatedBytes() - _made < Math.Max(_kept / 10, Little))
                return false;
            Collect();
            _made = GC.GetTotalAllocatedBytes();
            return true;
        }
    }

    /// <summary>Collects where much more is in use than after the last collection.</summary>
    internal void TakeBreath()
    {
        lock (_gate)
        {
            if (_kept > 0 && GC.GetTotalMemory(forceFullCollection: false) >= _kept + Math.Max(_kept / 2, Much))
                Collect();
            else if (CollectorPause.End())
                GC.Collect(1, GCCollectionMode.Forced, blocking: true);
        }
    }

    void Collect()
    {
        CollectorPause.End();
        GC.Collect(GC.MaxGeneration, GCCollectionMode.Aggressive, blocking: true, compacting: true);
        _kept = GC.GetTotalMemory(forceFullCollection: false);
    }

    public void Dispose()
    {
        lock (_timers)
        {
            _isDisposed = true;
            _breath.Dispose();
            _rest.Dispose();
        }
        CollectorPause.End();
    }
}
