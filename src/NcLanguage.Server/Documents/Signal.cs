namespace NcLanguage.Server.Documents;

/// <summary>Something that happens again and again, and whose next time somebody may wait for. May be raised by several workers at once.</summary>
sealed class Signal
{
    TaskCompletionSource _next = new(TaskCreationOptions.RunContinuationsAsynchronously);

    /// <summary>Done when it happens next.</summary>
    public Task Next => Volatile.Read(ref _next).Task;

    /// <summary>It happens. Of two that raise it at once each ends the waiting that it found: none is left behind.</summary>
    public void Raise() => Interlocked.Exchange(ref _next, new TaskCompletionSource(TaskCreationOptions.RunContinuationsAsynchronously)).TrySetResult();
}
