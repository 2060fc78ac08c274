using System.Diagnostics;

namespace NcLanguage.Server;

/// <summary>Watches the process that started the server, so that none is left behind when an editor dies.</summary>
static class ClientProcess
{
    /// <summary>Waits until the process has ended; false where the wait was cancelled first. One that can't be watched never ends.</summary>
    public static async Task<bool> WaitForEndAsync(int processId, CancellationToken cancellationToken)
    {
        try
        {
            using var process = Process.GetProcessById(processId);
            await process.WaitForExitAsync(cancellationToken).ConfigureAwait(false);
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
