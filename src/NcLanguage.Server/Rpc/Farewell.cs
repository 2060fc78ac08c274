namespace NcLanguage.Server.Rpc;

/// <summary>The end of what is sent: a message that was begun leaves whole, and none begins behind it.</summary>
sealed class Farewell
{
    /// <summary>How long a client is given to take what it is still owed.</summary>
    public static readonly TimeSpan Longest = TimeSpan.FromSeconds(3);

    readonly Lock _gate = new();
    readonly TaskCompletionSource _isQuiet = new(TaskCreationOptions.RunContinuationsAsynchronously);
    bool _isWriting;
    bool _isSaid;

    /// <summary>A message is about to be written; false where it must not be any more.</summary>
    public bool Begin()
    {
        lock (_gate)
        {
            if (_isSaid)
                return false;
            return _isWriting = true;
        }
    }

    /// <summary>All that was written has left.</summary>
    public void Done()
    {
        lock (_gate)
        {
            _isWriting = false;
            if (_isSaid)
                _isQuiet.TrySetResult();
        }
    }

    /// <summary>Waits for the message that is being written, at most <see cref="Longest"/>: a client that takes nothing gets a part of it.</summary>
    public async Task SayAsync()
    {
        lock (_gate)
        {
            _isSaid = true;
            if (!_isWriting)
                return;
        }
        await Task.WhenAny(_isQuiet.Task, Task.Delay(Longest)).ConfigureAwait(false);
    }
}
