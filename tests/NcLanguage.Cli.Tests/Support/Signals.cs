using System.Diagnostics;
using System.Runtime.InteropServices;

namespace NcLanguage.Cli.Tests.Support;

/// <summary>Sends signals at once: a program that does so takes some tenths of a second to start on a busy machine. Numbers as on Linux (signal(7)); the first two are the same everywhere.</summary>
static class Signals
{
    public const int Interrupt = 2;
    public const int Terminate = 15;
    public const int Continue = 18;
    public const int Stop = 19;

    public static void Send(Process process, int signal) => Assert.Equal(0, Kill(process.Id, signal));

    [DllImport("libc", EntryPoint = "kill", ExactSpelling = true)]
    [DefaultDllImportSearchPaths(DllImportSearchPath.SafeDirectories)]
    static extern int Kill(int process, int signal);
}
