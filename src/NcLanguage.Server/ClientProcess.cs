using System.Diagnostics;

namespace NcLanguage.Server;

/// <summary>Watches the process that started the server, so that none is left behind when an editor dies.</summary>
static class ClientProcess
{
    /// <summary>The platform's own wait looks ten times a second for a process that is no child (on Windows it is told): a server that nobody asks anything would never be still.</summary>
    static readonly TimeSpan BetweenLooks = TimeSpan.FromSeconds(2);

    /// <summary>Waits until the process has ended; false where the wait was cancelled first. One that can't be watched never ends.</summary>
    public static async Task<bool> WaitForEndAsync(int processId, CancellationToken cancellationToken)
    {
        try
        {
            using var process = Process.GetProcessById(processId);
            if (OperatingSystem.IsWindows())
                await process.WaitForExitAsync(cancellationToken).ConfigureAwait(false);
            else
                while (!process.HasExited)
                    await Task.Delay(BetweenLooks, cancellationToken).ConfigureAwait(false);
            return true;
        }
        catch (ArgumentException)
        {
            return true;
        }
        catch (Exception e) when (e is OperationCanceledException or InvalidOperationException or System.ComponentModel.Win32Exception or NotSupportedException)
        {
            return false;
        }
    }
}
