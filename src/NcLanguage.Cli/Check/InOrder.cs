namespace NcLanguage.Cli.Check;

/// <summary>Does numbered pieces of work on all processors, and hands over what comes of them one at a time in the order of their numbers.</summary>
/// <param name="count">How many pieces there are; their numbers begin at 0.</param>
/// <param name="work">Does one piece, on any thread.</param>
/// <param name="weight">How much room a result takes while it waits for those before it.</param>
/// <param name="hand">Takes a result.</param>
sealed class InOrder<T>(int count, Func<int, T> work, Func<T, int> weight, Action<T> hand)
{
    /// <summary>The weight that may wait. Whoever would begin another piece waits then until some of it was handed over.</summary>
    const int MostWaiting = 50_000;

    /// <summary>Milliseconds after which who waits for room looks whether it was cancelled.</summary>
    const int Look = 50;

    readonly object _gate = new();
    readonly SortedDictionary<int, T> _done = [];
    int _next;
    int _due;
    long _waiting;
    bool _isHanding;
    Exception? _failed;

    /// <summary>Works until all is done, or until it is cancelled: then what was done is still handed over. The caller's thread works too.</summary>
    /// <returns>How many were handed over.</returns>
    /// <exception cref="Exception">What a piece threw, the first one; nothing more is handed over then.</exception>
    public int Run(CancellationToken cancel)
    {
        var helpers = Enumerable.Range(0, Math.Max(0, Math.Min(Environment.ProcessorCount, count) - 1))
            .Select(_ => new Thread(() => Work(cancel)) { IsBackground = true, Name = "check" })
            .ToList();
        helpers.ForEach(helper => helper.Start());
        Work(cancel);
        helpers.ForEach(helper => helper.Join());
        if (_failed is { } failed)
            System.Runtime.ExceptionServices.ExceptionDispatchInfo.Throw(failed);
        // Where it was cancelled, some may lack others before them.
        foreach (var left in _done.Values)
        {
            hand(left);
            _due++;
        }
        return _due;
    }

    void Work(CancellationToken cancel)
    {
        try
        {
            while (Take(cancel) is { } number)
                Put(number, work(number));
        }
        catch (OperationCanceledException) when (cancel.IsCancellationRequested)
        {
        }
#pragma warning disable CA1031 // Thrown again where all of them are waited for.
        catch (Exception e)
#pragma warning restore CA1031
        {
            lock (_gate)
                _failed ??= e;
        }
    }

    /// <summary>The next piece, once there is room for what comes of it; null where none is left.</summary>
    int? Take(CancellationToken cancel)
    {
        lock (_gate)
        {
            // The piece that is due has begun, since they begin in order, and whoever does it is not waiting here.
            while (_waiting > MostWaiting && _failed is null && !cancel.IsCancellationRequested)
                Monitor.Wait(_gate, Look);
            cancel.ThrowIfCancellationRequested();
            return _failed is not null || _next == count ? null : _next++;
        }
    }

    void Put(int number, T result)
    {
        lock (_gate)
        {
            _done.Add(number, result);
            _waiting += weight(result);
            // One thread hands over at a time; the others go on with their work.
            if (_isHanding)
                return;
            _isHanding = true;
        }
        while (Due() is (true, var due))
            hand(due);
    }

    (bool Found, T Result) Due()
    {
        lock (_gate)
        {
            if (_failed is not null || !_done.Remove(_due, out var due))
            {
                _isHanding = false;
                return (false, default!);
            }
            _due++;
            _waiting -= weight(due);
            Monitor.PulseAll(_gate);
            return (true, due);
        }
    }
}
