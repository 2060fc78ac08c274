using NcLanguage.Server.Rpc;

namespace NcLanguage.Server.Scheduling;

/// <summary>Starts messages one after the other, in the order they came. After one that is to run in order it waits until that is
/// done; the rest it only starts. While the client does not take its answers nothing is started.</summary>
sealed class RequestQueue(Backlog backlog) : IDisposable
{
    readonly Lock _gate = new();
    readonly Queue<Entry> _waiting = new();
    bool _isBusy;
    bool _isClosed;

    /// <summary>Puts a message in the queue; the task ends as the message does. One cancelled before its turn is never started.</summary>
    public Task<T> Enqueue<T>(bool inOrder, Func<ValueTask<T>> start, CancellationToken cancellationToken)
    {
        var entry = new Entry<T>(inOrder, start, cancellationToken);
        lock (_gate)
        {
            if (_isClosed)
                return Task.FromCanceled<T>(new CancellationToken(canceled: true));
            if (_isBusy)
            {
                _waiting.Enqueue(entry);
                return entry.Result;
            }
            _isBusy = true;
        }
        // A key need not wait until another thread is woken for it. What may take long must not hold up the messages behind it.
        if (inOrder)
            _ = RunAsync(entry);
        else
            RunElsewhere(entry);
        return entry.Result;
    }

    /// <summary>Takes no more messages; those queued still run.</summary>
    public void Dispose()
    {
        lock (_gate)
            _isClosed = true;
    }

    async Task RunAsync(Entry entry)
    {
        await RunOneAsync(entry).ConfigureAwait(false);
        if (Next() is { } next)
            RunElsewhere(next);
    }

    void RunElsewhere(Entry first) => _ = Task.Run(async () =>
    {
        for (var entry = first; entry is not null; entry = Next())
            await RunOneAsync(entry).ConfigureAwait(false);
    });

    async Task RunOneAsync(Entry entry)
    {
        await backlog.RoomToStartAsync().ConfigureAwait(false);
        var done = entry.RunAsync();
        if (entry.InOrder)
            await done.ConfigureAwait(false);
    }

    Entry? Next()
    {
        lock (_gate)
        {
            if (_waiting.TryDequeue(out var next))
                return next;
            _isBusy = false;
            return null;
        }
    }

    abstract class Entry(bool inOrder)
    {
        public bool InOrder { get; } = inOrder;

        /// <summary>Runs the message; never throws.</summary>
        public abstract Task RunAsync();
    }

    sealed class Entry<T>(bool inOrder, Func<ValueTask<T>> start, CancellationToken cancellationToken) : Entry(inOrder)
    {
        readonly TaskCompletionSource<T> _result = new(TaskCreationOptions.RunContinuationsAsynchronously);

        public Task<T> Result => _result.Task;

        public override async Task RunAsync()
        {
            try
            {
                cancellationToken.ThrowIfCancellationRequested();
                _result.TrySetResult(await start().ConfigureAwait(false));
            }
            catch (OperationCanceledException e)
            {
                _result.TrySetCanceled(e.CancellationToken);
            }
#pragma warning disable CA1031 // Whatever it is, it belongs to the one who asked, not to the queue.
            catch (Exception e)
#pragma warning restore CA1031
            {
                _result.TrySetException(e);
            }
        }
    }
}
