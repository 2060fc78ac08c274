namespace NcLanguage.Server.Rpc;

/// <summary>What is owed to the client. A client that asks and asks but does not read what it is answered must not fill the server's memory: from
/// a number of unsent answers on no more requests are started, and reading stops once a bounded amount was read beyond that.</summary>
sealed class Backlog
{
    /// <summary>Answers that are ready but not yet taken; a client that reads has none or a few.</summary>
    const int MostUnsent = 256;

    /// <summary>Memory that may be taken by what is read while there are so many: room for ten thousands of requests of common size sent in one go.</summary>
    const long MostAhead = 64 * 1024 * 1024;

    /// <summary>What a message that waits takes beside its bytes, measured: some 2 to 3 KB.</summary>
    const long OfEach = 2048;

    readonly Lock _gate = new();
    TaskCompletionSource? _quiet;
    TaskCompletionSource? _passed;
    TaskCompletionSource _change = new(TaskCreationOptions.RunContinuationsAsynchronously);
    int _owed;
    int _running;
    int _patient;
    long _ahead;

    /// <summary>A message came that is to be answered.</summary>
    public void Came() => Count(owed: 1, running: 0);

    /// <summary>Work on an answer began (1) or ended (−1).</summary>
    public void Works(int more) => Count(owed: 0, running: more);

    /// <summary>Work began (1) or ended (−1) on an answer that no key waits for: it comes when what it asks for is known, and nothing else need wait for it.</summary>
    public void WorksPatiently(int more)
    {
        lock (_gate)
        {
            _patient += more;
            End();
        }
    }

    /// <summary>An answer has gone out.</summary>
    public void Answered() => Count(owed: -1, running: 0);

    /// <summary>Waits until another request may be started.</summary>
    public async ValueTask RoomToStartAsync()
    {
        while (WaitIf(() => _owed - _running >= MostUnsent) is { } change)
            await change.ConfigureAwait(false);
    }

    /// <summary>Waits until a message of this many bytes may be read.</summary>
    public async ValueTask RoomToReadAsync(long bytes, CancellationToken cancellationToken)
    {
        lock (_gate)
            _ahead = _owed >= MostUnsent ? _ahead + bytes + OfEach : 0;
        while (WaitIf(() => _owed >= MostUnsent && _ahead > MostAhead) is { } change)
            await change.WaitAsync(cancellationToken).ConfigureAwait(false);
    }

    /// <summary>Waits until nothing is owed any more, at most as long as given.</summary>
    public Task SettleAsync(TimeSpan longest)
    {
        lock (_gate)
            return _owed == 0 ? Task.CompletedTask : EndOf(ref _quiet, longest);
    }

    /// <summary>The same, but for answers that no key waits for.</summary>
    public Task PassAsync(TimeSpan longest)
    {
        lock (_gate)
            return _owed <= _patient ? Task.CompletedTask : EndOf(ref _passed, longest);
    }

    /// <summary>Whether nothing is owed now but answers that no key waits for.</summary>
    public bool IsPassed
    {
        get { lock (_gate) return _owed <= _patient; }
    }

    static Task<Task> EndOf(ref TaskCompletionSource? end, TimeSpan longest)
    {
        end ??= new TaskCompletionSource(TaskCreationOptions.RunContinuationsAsynchronously);
        return Task.WhenAny(end.Task, Task.Delay(longest));
    }

    void End()
    {
        if (_owed <= _patient)
        {
            _passed?.TrySetResult();
            _passed = null;
        }
        if (_owed == 0)
        {
            _quiet?.TrySetResult();
            _quiet = null;
        }
    }

    Task? WaitIf(Func<bool> isFull)
    {
        lock (_gate)
            return isFull() ? _change.Task : null;
    }

    void Count(int owed, int running)
    {
        TaskCompletionSource change;
        lock (_gate)
        {
            _owed += owed;
            _running += running;
            End();
            if (_owed < MostUnsent - 1)
                return;
            change = _change;
            _change = new TaskCompletionSource(TaskCreationOptions.RunContinuationsAsynchronously);
        }
        change.TrySetResult();
    }
}
