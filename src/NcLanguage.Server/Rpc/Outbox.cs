using NcLanguage.Server.Protocol;

namespace NcLanguage.Server.Rpc;

/// <summary>Notifications on their way to the client, one after the other in the order they were put in. While the client does not read, only the newest
/// findings of each document wait, what belongs to an answer that waits for it, and a bounded number of everything else, so that the memory is bounded too.</summary>
/// <param name="send">Sends one; ends when it is on its way. Never throws.</param>
sealed class Outbox(Func<string, object, Task> send)
{
    /// <summary>Lines for logs and traces that wait at most; what comes beyond is dropped and counted.</summary>
    public const int MostWaiting = 1000;

    readonly Lock _gate = new();
    readonly LinkedList<Entry> _waiting = [];
    readonly Dictionary<string, LinkedListNode<Entry>> _findings = [];
    bool _isSending;
    int _dropped;

    /// <summary>How many wait.</summary>
    public int Count
    {
        get { lock (_gate) return _waiting.Count; }
    }

    public void Put(string method, object parameters)
    {
        lock (_gate)
        {
            if (_isSending)
            {
                Wait(method, parameters);
                return;
            }
            _isSending = true;
        }
        _ = SendAtOnce(method, parameters);
    }

    /// <summary>Puts in what has to arrive before something else is sent: it is never dropped.</summary>
    /// <returns>Ends when it is on its way, and so all that was put in before it.</returns>
    public Task PutAsync(string method, object parameters)
    {
        lock (_gate)
        {
            if (_isSending)
            {
                var left = new TaskCompletionSource(TaskCreationOptions.RunContinuationsAsynchronously);
                _waiting.AddLast(new Entry(method, parameters, left));
                return left.Task;
            }
            _isSending = true;
        }
        return SendAtOnce(method, parameters);
    }

    /// <summary>At once, so that what the caller sends next goes behind it.</summary>
    Task SendAtOnce(string method, object parameters)
    {
        var sent = send(method, parameters);
        _ = SendRestAsync(sent);
        return sent;
    }

    void Wait(string method, object parameters)
    {
        var document = (parameters as PublishDiagnosticsParams)?.Uri;
        if (document is not null && _findings.TryGetValue(document, out var older))
        {
            older.Value = new Entry(method, parameters, null);
            return;
        }
        if (document is null && _waiting.Count - _findings.Count >= MostWaiting)
        {
            _dropped++;
            return;
        }
        var node = _waiting.AddLast(new Entry(method, parameters, null));
        if (document is not null)
            _findings[document] = node;
    }

    async Task SendRestAsync(Task first)
    {
        await first.ConfigureAwait(false);
        while (NextAfter() is { } next)
        {
            await send(next.Method, next.Parameters).ConfigureAwait(false);
            next.Left?.SetResult();
        }
    }

    /// <summary>What is to be sent when the last one is gone; null, and nothing counts as being sent any more, where nothing waits.</summary>
    Entry? NextAfter()
    {
        lock (_gate)
        {
            if (_waiting.First is not { } first)
            {
                if (_dropped > 0)
                {
                    var told = new LogMessageParams(MessageType.Warning, $"{_dropped} lines of the log were dropped while nothing was read.");
                    _dropped = 0;
                    return new Entry(Methods.LogMessage, told, null);
                }
                _isSending = false;
                return null;
            }
            _waiting.RemoveFirst();
            if (first.Value.Parameters is PublishDiagnosticsParams findings)
                _findings.Remove(findings.Uri);
            return first.Value;
        }
    }

    /// <param name="Left">Set when it is on its way; null where nobody waits for that.</param>
    sealed record Entry(string Method, object Parameters, TaskCompletionSource? Left);
}
