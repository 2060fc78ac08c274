using System.Text.Json;
using NcLanguage.Server.Protocol;
using NcLanguage.Server.Rpc;

namespace NcLanguage.Server.Features;

/// <summary>$/progress of a request whose client gave a token for it: begins with the first work there is, and ends once.</summary>
/// <param name="title">What is done, as the user reads it.</param>
internal sealed class WorkProgress(JsonElement? token, string title, Action<string, object> notify)
{
    private bool _isBegun;
    private bool _isEnded;
    private int _percent = -1;

    /// <summary>Shows work of which nobody can tell how far it is, as long as it lasts.</summary>
    /// <param name="work">Started at once: it takes its turn with the message that asked for it.</param>
    public static async Task<T> DuringAsync<T>(JsonElement? token, string title, Action<string, object> notify, Func<Task<T>> work)
    {
        var progress = new WorkProgress(token, title, notify);
        progress.Begin();
        try
        {
            return await work().ConfigureAwait(false);
        }
        finally
        {
            progress.End();
        }
    }

    private void Begin()
    {
        Send(new WorkDoneProgress("begin", title));
        _isBegun = true;
    }

    /// <summary>So many of so many programs are done.</summary>
    public void Report(int done, int total)
    {
        if (_isEnded) return;
        int percent = total > 0 ? Math.Clamp(done * 100 / total, 0, 100) : 0;
        if (percent == _percent) return;
        _percent = percent;
        Send(_isBegun ? new WorkDoneProgress("report", null, $"{done} of {total}", percent) : new WorkDoneProgress("begin", title, $"{done} of {total}", percent));
        _isBegun = true;
    }

    public void End()
    {
        if (_isBegun && !_isEnded) Send(new WorkDoneProgress("end"));
        _isEnded = _isEnded || _isBegun;
    }

    private void Send(WorkDoneProgress value)
    {
        if (token is { } own) notify(Methods.Progress, new WorkProgressParams(own, value));
    }
}
