using System.Text.Json;
using NcLanguage.Server.Protocol;
using NcLanguage.Server.Rpc;

namespace NcLanguage.Server.Features;

/// <summary>$/progress of a request whose client gave a token for it: begins with the first work there is, and ends once. The token holds until the request is answered (LSP 3.17,
/// "Work Done Progress"), so the answer waits for the end.</summary>
/// <param name="title">What is done, as the user reads it.</param>
/// <param name="notify">Sends a notification; ends when it and those before it are on their way.</param>
sealed class WorkProgress(JsonElement? token, string title, Func<string, object, Task> notify)
{
    bool _isBegun;
    bool _isEnded;
    int _percent = -1;

    /// <summary>Shows work of which nobody can tell how far it is, as long as it lasts.</summary>
    /// <param name="work">Started at once: it takes its turn with the message that asked for it.</param>
    public static async Task<T> DuringAsync<T>(JsonElement? token, string title, Func<string, object, Task> notify, Func<Task<T>> work)
    {
        var progress = new WorkProgress(token, title, notify);
        progress.Begin();
        try
        {
            return await work().ConfigureAwait(false);
        }
        finally
        {
            await progress.EndAsync().ConfigureAwait(false);
        }
    }

    void Begin()
    {
        _ = SendAsync(new WorkDoneProgress("begin", title));
        _isBegun = true;
    }

    /// <summary>So many of so many programs are done.</summary>
    public void Report(int done, int total)
    {
        if (_isEnded)
            return;
        var percent = total > 0 ? Math.Clamp(done * 100 / total, 0, 100) : 0;
        if (percent == _percent)
            return;
        _percent = percent;
        _ = SendAsync(_isBegun ? new WorkDoneProgress("report", null, $"{done} of {total}", percent) : new WorkDoneProgress("begin", title, $"{done} of {total}", percent));
        _isBegun = true;
    }

    public Task EndAsync()
    {
        if (!_isBegun || _isEnded)
            return Task.CompletedTask;
        _isEnded = true;
        return SendAsync(new WorkDoneProgress("end"));
    }

    Task SendAsync(WorkDoneProgress value) =>
        token is { } own ? notify(Methods.Progress, new WorkProgressParams(own, value)) : Task.CompletedTask;
}
