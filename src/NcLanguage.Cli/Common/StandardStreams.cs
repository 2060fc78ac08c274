using System.Runtime.InteropServices;
using Microsoft.Win32.SafeHandles;
using NcLanguage.Cli.Files;

namespace NcLanguage.Cli.Common;

/// <summary>Standard input, output and error, as far as whoever started the command has them open.</summary>
static class StandardStreams
{
    const int InputNumber = 0;
    const int OutputNumber = 1;
    const int ErrorNumber = 2;

    // fcntl.h of Linux and macOS.
    const int GetDescriptorFlags = 1;
    const int CloseOnExec = 1;

    /// <summary>Lets the console's writers write through the streams of this class.</summary>
    public static void Prepare()
    {
        if (OperatingSystem.IsWindows())
            return;
        var encoding = Console.OutputEncoding;
        Console.SetOut(new StreamWriter(Output(), encoding) { AutoFlush = true });
        Console.SetError(new StreamWriter(new ErrorStream(IsOpen(ErrorNumber) ? new DescriptorStream(ErrorNumber) : Stream.Null), encoding) { AutoFlush = true });
    }

    /// <summary>Whether input and output are both there to talk over.</summary>
    public static bool AreOpen => IsOpen(InputNumber) && IsOpen(OutputNumber);

    /// <summary>Standard output; where it is closed writing to it fails, and where nobody reads it any more it ends the command.</summary>
    public static Stream Output() => new OutputStream(
        OperatingSystem.IsWindows() ? Console.OpenStandardOutput() : IsOpen(OutputNumber) ? new DescriptorStream(OutputNumber) : null);

    /// <summary>Standard output for a server: what it does when nobody reads any more is its own business.</summary>
    public static Stream Conversation() =>
        OperatingSystem.IsWindows() ? Console.OpenStandardOutput() : new DescriptorStream(OutputNumber);

    /// <summary>All that is given on standard input.</summary>
    /// <exception cref="ProgramFailedException">It is closed, a folder, or cannot be read.</exception>
    public static byte[] ReadInput()
    {
        if (!IsOpen(InputNumber))
            throw new ProgramFailedException("standard input is closed: there is no program on it");
        if (!OperatingSystem.IsWindows() && Directory.Exists("/dev/stdin"))
            throw new ProgramFailedException("standard input is a folder, not a program");
        try
        {
            // The console's own stream would put a terminal's keys into another mode.
            using var input = OperatingSystem.IsWindows()
                ? Console.OpenStandardInput()
                : new FileStream(new SafeFileHandle(InputNumber, ownsHandle: false), FileAccess.Read, bufferSize: 0);
            return FileBytes.ReadToEnd(input, "the program on standard input");
        }
        catch (UnauthorizedAccessException)
        {
            throw new ProgramFailedException("standard input may not be read by you");
        }
        catch (IOException e)
        {
            throw new ProgramFailedException($"standard input could not be read: {e.Message}");
        }
    }

    /// <summary>Whether a descriptor was handed over by whoever started the process. One that was closed then may have been taken since for something
    /// else that the process opened: what is opened here is not handed on to other programs, and what was handed over is.</summary>
    public static bool IsOpen(int descriptor)
    {
        if (OperatingSystem.IsWindows())
            return true;
        try
        {
            return Control(descriptor, GetDescriptorFlags) is >= 0 and var flags && (flags & CloseOnExec) == 0;
        }
        catch (Exception e) when (e is EntryPointNotFoundException or DllNotFoundException)
        {
            return true;
        }
    }

    [DllImport("libc", EntryPoint = "fcntl", ExactSpelling = true)]
    [DefaultDllImportSearchPaths(DllImportSearchPath.SafeDirectories)]
    static extern int Control(int descriptor, int command);
}
