namespace NcLanguage.Server;

/// <summary>Tells what runs for a session that it has ended. Whoever asks only then, in a message that was still being worked on, is told so too:
/// a source of tokens gives none once it is disposed.</summary>
sealed class SessionEnd : IDisposable
{
    readonly CancellationTokenSource _source = new();

    public SessionEnd() => Token = _source.Token;

    public CancellationToken Token { get; }

    public void Dispose()
    {
        _source.Cancel();
        _source.Dispose();
    }
}
