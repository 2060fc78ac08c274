using System.Runtime.InteropServices;

namespace NcLanguage.Cli.Common;

/// <summary>How many places and lines the terminal has that standard output goes to.</summary>
static class TerminalSize
{
    const int Output = 1;

    // asm-generic/ioctls.h of Linux; the record has lines, places and two numbers more.
    const nuint AskForSize = 0x5413;
    const int RecordLength = 4;

    const int UsualWidth = 80;
    const int UsualHeight = 24;

    /// <summary>Asks the terminal itself: the console would put its keys into another mode before it answers.</summary>
    public static (int Width, int Height) Get()
    {
        if (!OperatingSystem.IsLinux())
            return (OrUsual(Console.BufferWidth, UsualWidth), OrUsual(Console.WindowHeight, UsualHeight));
        var record = new ushort[RecordLength];
        try
        {
            _ = Control(Output, AskForSize, record);
        }
        catch (Exception e) when (e is EntryPointNotFoundException or DllNotFoundException)
        {
            // The usual size then.
        }
        return (OrUsual(record[1], UsualWidth), OrUsual(record[0], UsualHeight));
    }

    static int OrUsual(int size, int usual) => size > 0 ? size : usual;

    [DllImport("libc", EntryPoint = "ioctl", ExactSpelling = true)]
    [DefaultDllImportSearchPaths(DllImportSearchPath.SafeDirectories)]
    static extern int Control(int descriptor, nuint request, ushort[] record);
}
