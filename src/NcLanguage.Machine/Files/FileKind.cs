using System.Buffers.Binary;
using System.Runtime.InteropServices;
using System.Text;

namespace NcLanguage.Machine.Files;

/// <summary>Tells files with bytes of their own from pipes, sockets and devices: opening a pipe that nobody writes to would wait for ever, and a
/// device may never end.</summary>
public static class FileKind
{
    // statx(2) of Linux: its record is the same on every processor, unlike that of stat(2).
    const int RecordSize = 256;
    const int ModeAt = 28;
    const int KindBits = 0xF000;
    const int Ordinary = 0x8000;
    const int Folder = 0x4000;
    const int CurrentFolder = -100;
    const uint WantKind = 1;

    /// <summary>False where a pipe, a socket or a device stands at the path, links followed. True on systems that are not asked.</summary>
    public static bool IsOrdinary(string path)
    {
        ArgumentNullException.ThrowIfNull(path);
        if (!OperatingSystem.IsLinux())
            return true;
        var record = new byte[RecordSize];
        try
        {
            if (StatX(CurrentFolder, Encoding.UTF8.GetBytes(path + '\0'), 0, WantKind, record) != 0)
                return true;
        }
        catch (Exception e) when (e is EntryPointNotFoundException or DllNotFoundException)
        {
            return true;
        }
        var mode = BitConverter.IsLittleEndian
            ? BinaryPrimitives.ReadUInt16LittleEndian(record.AsSpan(ModeAt))
            : BinaryPrimitives.ReadUInt16BigEndian(record.AsSpan(ModeAt));
        return (mode & KindBits) is Ordinary or Folder;
    }

    [DllImport("libc", EntryPoint = "statx", ExactSpelling = true)]
    [DefaultDllImportSearchPaths(DllImportSearchPath.SafeDirectories)]
    static extern int StatX(int folder, byte[] path, int flags, uint mask, byte[] record);
}
