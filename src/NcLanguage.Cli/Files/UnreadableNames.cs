using System.Runtime.InteropServices;
using System.Text;
using NcLanguage.Syntax.Text;

namespace NcLanguage.Cli.Files;

/// <summary>The names in one folder that are not written in UTF-8, with their bytes written out: b\xffad.nc (<see cref="ShownText"/>).</summary>
sealed class UnreadableNames
{
    // dirent.h of Linux: on processors of 64 bits the record is the same with every C library.
    const int NameAt = 19;

    readonly Dictionary<string, Queue<string>> _written = new(StringComparer.Ordinal);

    /// <summary>Empty where the system does not say.</summary>
    public static UnreadableNames In(string folder)
    {
        var names = new UnreadableNames();
        // Other systems take no such name.
        if (!OperatingSystem.IsLinux() || !Environment.Is64BitProcess)
            return names;
        try
        {
            var open = OpenFolder(Encoding.UTF8.GetBytes(folder + '\0'));
            if (open == 0)
                return names;
            for (nint entry; (entry = NextEntry(open)) != 0;)
                names.Add(NameOf(entry));
            _ = CloseFolder(open);
        }
        catch (Exception e) when (e is EntryPointNotFoundException or DllNotFoundException)
        {
            // Then they are told as the runtime reads them.
        }
        return names;
    }

    /// <summary>How a name that the runtime has read is written; null where there is none.</summary>
    public string? Find(string name) => _written.TryGetValue(name, out var all) ? all.Peek() : null;

    /// <summary>The same, another one each time where several read alike.</summary>
    public string Next(string name)
    {
        if (!_written.TryGetValue(name, out var all))
            return name;
        return all.Count > 1 ? all.Dequeue() : all.Peek();
    }

    void Add(byte[] bytes)
    {
        var read = Encoding.UTF8.GetString(bytes);
        if (!read.Contains(UnreadableName.Sign))
            return;
        if (!_written.TryGetValue(read, out var all))
            _written.Add(read, all = new Queue<string>());
        all.Enqueue(ShownText.Of(bytes));
    }

    static byte[] NameOf(nint entry)
    {
        var length = 0;
        while (Marshal.ReadByte(entry, NameAt + length) != 0)
            length++;
        var bytes = new byte[length];
        Marshal.Copy(entry + NameAt, bytes, 0, length);
        return bytes;
    }

    [DllImport("libc", EntryPoint = "opendir", ExactSpelling = true)]
    [DefaultDllImportSearchPaths(DllImportSearchPath.SafeDirectories)]
    static extern nint OpenFolder(byte[] path);

    [DllImport("libc", EntryPoint = "readdir", ExactSpelling = true)]
    [DefaultDllImportSearchPaths(DllImportSearchPath.SafeDirectories)]
    static extern nint NextEntry(nint folder);

    [DllImport("libc", EntryPoint = "closedir", ExactSpelling = true)]
    [DefaultDllImportSearchPaths(DllImportSearchPath.SafeDirectories)]
    static extern int CloseFolder(nint folder);
}
