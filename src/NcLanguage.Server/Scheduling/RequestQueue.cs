using System.Threading.Channels;
using NcLanguage.Server.Rpc;

namespace NcLanguage.Server.Scheduling;

/// <summary>Starts messages one after the other, in the order they came. After one that is to run in order it waits until that is
/// done; the rest it only starts. While the client does not take its answers nothing is started.</summary>
internal sealed class RequestQueue : IDisposable
{
    private readonly Channel<Entry> _entries = Channel.CreateUnbounded<Entry>(new UnboundedChannelOptions { SingleReader = true });

    private readonly Backlog _backlog;

    public RequestQueue(Backlog backlog)
    {
        _backlog = backlog;
        _ = Task.Run(RunAsync);
    }

    /// <summary>Puts a message in the queue; the task ends as the message does. One cancelled before its turn is never started.</summary>
    public Task<T> Enqueue<T>(bool inOrder, Func<ValueTask<T>> start, CancellationToken cancellationToken)
    {
        var entry = new Entry<T>(inOrder, start, cancellationToken);
        if (!_entries.Writer.TryWrite(entry)) return Task.FromCanceled<T>(new CancellationToken(canceled: true));
        return entry.Result;
    }

    /// <summary>Takes no more messages; those queued still run.</summary>
    public void Dispose() => _entries.Writer.TryComplete();

    private async Task RunAsync()
    {
        await foreach (Entry entry in _entries.Reader.ReadAllAsync().ConfigureAwait(false))
        {
            await _backlog.RoomToStartAsync().ConfigureAwait(false);
            Task done = entry.RunAsync();
            if (entry.InOrder) await done.ConfigureAwait(false);
        }
    }

    private abstract class Entry(bool inOrder)
    {
        public bool InOrder { get; } = inOrder;

        /// <summary>Runs the message; never throws.</summary>
        public abstract Task RunAsync();
    }

    private sealed class Entry<T>(bool inOrder, Func<ValueTask<T>> start, CancellationToken cancellationToken) : Entry(inOrder)
    {
        private readonly TaskCompletionSource<T> _result = new(TaskCreationOptions.RunContinuationsAsynchronously);

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
