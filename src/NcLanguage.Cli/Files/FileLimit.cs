using System.Runtime.InteropServices;

namespace NcLanguage.Cli.Files;

/// <summary>The size that files may have for a user or a shell (ulimit -f). The system ends a process that writes beyond it, amid the file; here the write is to fail instead, which leaves no
/// half of a file and can be told.</summary>
static class FileLimit
{
    // signal.h of Linux and macOS.
    const int SizeExceeded = 25;
    const nint Ignored = 1;

    public static void FailTheWrite()
    {
        if (OperatingSystem.IsWindows())
            return;
        try
        {
            _ = Handle(SizeExceeded, Ignored);
        }
        catch (Exception e) when (e is EntryPointNotFoundException or DllNotFoundException)
        {
            // Then it stays as the system has it.
        }
    }

    [DllImport("libc", EntryPoint = "signal", ExactSpelling = true)]
    [DefaultDllImportSearchPaths(DllImportSearchPath.SafeDirectories)]
    static extern nint Handle(int signal, nint handler);
}
