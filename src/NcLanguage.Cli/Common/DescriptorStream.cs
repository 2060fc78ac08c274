using System.Runtime.InteropServices;

namespace NcLanguage.Cli.Common;

/// <summary>Writes to an open descriptor of a Unix system and does nothing else to it: the console's own stream puts a terminal's keys into another mode
/// before its first byte and leaves them so.</summary>
sealed class DescriptorStream(int descriptor) : WrittenStream
{
    /// <summary>EPIPE of Linux and macOS (errno.h): nobody reads any more.</summary>
    public const int ReaderIsGone = 32;

    // errno.h of Linux and macOS.
    const int Interrupted = 4;

    // EAGAIN of Linux and of macOS: a terminal or pipe that another program has told not to wait.
    const int NoRoomYet = 11;
    const int NoRoomYetOnMac = 35;

    /// <exception cref="IOException">The bytes could not be written; <see cref="Exception.HResult"/> is the system's number for it.</exception>
    public override void Write(ReadOnlySpan<byte> buffer)
    {
        while (buffer.Length > 0)
        {
            var written = Write(descriptor, in MemoryMarshal.GetReference(buffer), buffer.Length);
            if (written >= 0)
            {
                buffer = buffer[(int)written..];
                continue;
            }
            switch (Marshal.GetLastPInvokeError())
            {
                case Interrupted:
                    break;
                case NoRoomYet or NoRoomYetOnMac:
                    Thread.Sleep(1);
                    break;
                case var error:
                    throw new IOException(Marshal.GetPInvokeErrorMessage(error), error);
            }
        }
    }

    [DllImport("libc", EntryPoint = "write", ExactSpelling = true, SetLastError = true)]
    [DefaultDllImportSearchPaths(DllImportSearchPath.SafeDirectories)]
    static extern nint Write(int descriptor, in byte bytes, nint count);
}
