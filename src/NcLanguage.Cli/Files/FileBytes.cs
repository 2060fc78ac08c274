using System.Globalization;
using Microsoft.Win32.SafeHandles;
using NcLanguage.Cli.Common;
using NcLanguage.Machine.Files;

namespace NcLanguage.Cli.Files;

/// <summary>Reads whole files, such that what is read stood in the file at one time.</summary>
static class FileBytes
{
    /// <summary>Above it nothing is read. A program of 1 GB has some 40 million blocks.</summary>
    const long Greatest = 1L << 30;

    const int MostTries = 4;

    /// <summary>
    /// How far apart two changes are at least if their times differ. Kernels stamp files by the tick of the scheduler, which is 10 ms at its coarsest.
    /// </summary>
    static readonly TimeSpan Tick = TimeSpan.FromMilliseconds(20);

    /// <exception cref="ProgramFailedException">It cannot be read; the message names it.</exception>
    public static (byte[] Bytes, FileStamp? Stamp) Read(string path)
    {
        if (path.Length == 0)
            throw new ProgramFailedException("an empty name is that of no file");
        try
        {
            if (Directory.Exists(path))
                throw new ProgramFailedException($"{path} is a folder, not a program");
            if (IsClosedStream(path))
                throw new ProgramFailedException($"{path} is closed: there is nothing to read");
            if (IsStream(path))
            {
                using var stream = new FileStream(path, FileMode.Open, FileAccess.Read, FileShare.ReadWrite, bufferSize: 0);
                return (ReadToEnd(stream, path), null);
            }
            if (!FileKind.IsOrdinary(path))
                throw new ProgramFailedException($"{path} is a pipe or a device, not a file; - reads standard input");
            return ReadFile(path);
        }
        catch (Exception e) when (e is FileNotFoundException or DirectoryNotFoundException)
        {
            throw new ProgramFailedException(UnreadableName.Reason(path)
                ?? (new FileInfo(path).LinkTarget is null ? $"there is no file {path}" : $"{path} is a link to a file that is not there"));
        }
        catch (UnauthorizedAccessException)
        {
            throw new ProgramFailedException($"{path} may not be read by you");
        }
        catch (Exception e) when (e is IOException or ArgumentException or NotSupportedException or OutOfMemoryException)
        {
            throw new ProgramFailedException(DiskFiles.StateOfLink(path) == FileState.LinkRing ? $"{path} is a link that leads back to itself" : $"{path} could not be read: {e.Message}");
        }
    }

    /// <summary>Reads a stream whose length is not known.</summary>
    /// <param name="stream">What to read.</param>
    /// <param name="name">What a message calls it.</param>
    /// <exception cref="ProgramFailedException">There is more than is ever read.</exception>
    public static byte[] ReadToEnd(Stream stream, string name)
    {
        using var bytes = new MemoryStream();
        var buffer = new byte[1 << 16];
        int count;
        while ((count = ReadSome(stream, buffer)) > 0)
        {
            bytes.Write(buffer, 0, count);
            if (bytes.Length > Greatest)
                throw TooLarge(name);
        }
        return bytes.ToArray();
    }

    static int ReadSome(Stream stream, byte[] buffer)
    {
        Waiting.BeginInput();
        try
        {
            return stream.Read(buffer);
        }
        finally
        {
            Waiting.EndInput();
        }
    }

    /// <summary>Whether a path names what another process handed over, which is there already and can be read or written once.</summary>
    public static bool IsStream(string path) => Descriptor(path) is not null;

    /// <summary>Whether a path names what another process would have handed over, and none did.</summary>
    public static bool IsClosedStream(string path) => Descriptor(path) is { } descriptor && !StandardStreams.IsOpen(descriptor);

    /// <summary>The descriptor that a path stands for; −1 where that is none, null where the path is an ordinary one.</summary>
    static int? Descriptor(string path)
    {
        const string Descriptors = "/dev/fd/";
        if (OperatingSystem.IsWindows())
            return null;
        if (path.StartsWith(Descriptors, StringComparison.Ordinal))
            return int.TryParse(path.AsSpan(Descriptors.Length), NumberStyles.None, CultureInfo.InvariantCulture, out var number) ? number : -1;
        return path switch { "/dev/stdin" => 0, "/dev/stdout" => 1, "/dev/stderr" => 2, _ => null };
    }

    static (byte[], FileStamp?) ReadFile(string path)
    {
        for (var tried = 0; tried < MostTries; tried++)
        {
            // An editor may be writing or replacing the file at this moment.
            using var file = File.OpenHandle(path, FileMode.Open, FileAccess.Read, FileShare.ReadWrite | FileShare.Delete, FileOptions.SequentialScan);
            var stamp = new FileStamp(File.GetLastWriteTimeUtc(file), RandomAccess.GetLength(file));
            if (stamp.Length > Greatest)
                throw TooLarge(path);
            // What is written within the same tick would leave the stamp as it is. Files that a system makes up as they are read tell no length and are always new; so is one that was emptied just now, to be written.
            if ((DateTime.UtcNow - stamp.Written).Duration() < Tick && (stamp.Length > 0 || tried < MostTries - 1))
            {
                Thread.Sleep(Tick);
                continue;
            }
            // One that tells no length yet has contents is made up as it is read, or somebody has just emptied it to write it anew.
            using var stream = new FileStream(file, FileAccess.Read, bufferSize: 0);
            var bytes = stamp.Length == 0 ? ReadToEnd(stream, path) : ReadLength(file, (int)stamp.Length);
            if (bytes is not null && stamp == new FileStamp(File.GetLastWriteTimeUtc(file), RandomAccess.GetLength(file)))
                return (bytes, stamp);
        }
        throw new ProgramFailedException($"{path} is being written to: it changed each of the {MostTries} times that it was read");
    }

    /// <summary>So many bytes from the beginning, or null where there are fewer.</summary>
    static byte[]? ReadLength(SafeFileHandle file, int length)
    {
        var bytes = GC.AllocateUninitializedArray<byte>(length);
        var read = 0;
        for (int count; read < length && (count = RandomAccess.Read(file, bytes.AsSpan(read), read)) > 0;)
            read += count;
        return read == length ? bytes : null;
    }

    static ProgramFailedException TooLarge(string name) => new($"{name} is larger than 1 GB, too large to be read");
}
