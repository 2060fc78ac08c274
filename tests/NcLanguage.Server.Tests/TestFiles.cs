using System.Collections.Concurrent;
using System.Text;
using NcLanguage.Machine.Files;

namespace NcLanguage.Server.Tests;

/// <summary>Files in memory. Reading can be held up, which holds up the analysis of every program opened meanwhile.</summary>
sealed class TestFiles : IFileAccess
{
    readonly ConcurrentDictionary<string, string> _texts = new();
    volatile TaskCompletionSource? _held;

    public string this[string path]
    {
        set => _texts[path] = value;
    }

    public void Hold() => _held = new TaskCompletionSource();

    public void Release()
    {
        _held?.TrySetResult();
        _held = null;
    }

    public FileAnswer Read(string path)
    {
        if (_held is { } held)
            Assert.True(held.Task.Wait(TimeSpan.FromSeconds(30)));
        return _texts.TryGetValue(path, out var text) ? new FileAnswer(FileState.Read, Encoding.UTF8.GetBytes(text)) : new FileAnswer(FileState.Missing);
    }
}
