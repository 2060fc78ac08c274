using NcLanguage.Cli.Common;
using NcLanguage.Machine.Files;

namespace NcLanguage.Cli.Files;

/// <summary>Writes files so that a reader sees the old one or the new one, never a half: beside, then renamed.</summary>
static class WrittenFile
{
    /// <summary>Puts new bytes in the place of a file's. A link stays a link; permissions stay.</summary>
    /// <param name="path">The file.</param>
    /// <param name="bytes">What it is to hold.</param>
    /// <param name="read">Its state when it was read: what somebody else wrote since is not written over. Null where it was not.</param>
    /// <exception cref="CannotRunException">It could not be written; nothing was changed.</exception>
    public static void Replace(string path, byte[] bytes, FileStamp? read)
    {
        if (!File.Exists(path))
            throw new CannotRunException($"{path} is there no longer: nothing was written to it");
        var target = Target(path);
        if (FileBytes.IsStream(path) || !FileKind.IsOrdinary(target))
            throw new CannotRunException($"{path} is a pipe or a device, not a file: nothing was written to it");
        UnixFileMode? mode = null;
        Try(path, () =>
        {
            // Renaming would get past both.
            if (IsReadOnly(target))
                throw new CannotRunException($"{path} is read-only: nothing was written to it");
            using (new FileStream(target, FileMode.Open, FileAccess.Write, FileShare.ReadWrite, bufferSize: 0))
                mode = ModeOf(target);
        });
        Write(path, target, bytes, mode, beside =>
        {
            if (read is { } stamp && stamp != FileStamp.Of(target))
                throw new CannotRunException($"{path} was changed by somebody else since it was read: nothing was written to it");
            File.Move(beside, target, overwrite: true);
        });
    }

    /// <summary>Writes a file where none stands.</summary>
    /// <exception cref="CannotRunException">One stands there, or it could not be written.</exception>
    public static void Create(string path, byte[] bytes)
    {
        var target = Path.GetFullPath(path);
        if (Directory.Exists(target))
            throw new CannotRunException($"{path} is a folder, not a file: nothing was written");
        Write(path, target, bytes, null, beside => File.Move(beside, target, overwrite: false));
    }

    /// <summary>Writes what was made of a program, over what stands there already, but for the program itself.</summary>
    /// <exception cref="CannotRunException">The path is the program's, or it could not be written.</exception>
    public static void PutBeside(string program, string path, byte[] bytes)
    {
        if (File.Exists(program) && File.Exists(path) && Target(path) == Target(program))
            throw new CannotRunException($"{path} is the program itself: nothing was written to it");
        Put(path, bytes);
    }

    /// <summary>The file behind a path, links followed.</summary>
    static string Target(string path)
    {
        // Of a link that is named without its folder the target would be looked for at the root.
        var full = Path.GetFullPath(path);
        return File.ResolveLinkTarget(full, returnFinalTarget: true)?.FullName ?? full;
    }

    /// <summary>Writes a file, over one that stands there already; into a pipe or a device as it is.</summary>
    /// <exception cref="CannotRunException">It could not be written.</exception>
    /// <exception cref="ReaderGoneException">It is a pipe that nobody reads any more.</exception>
    public static void Put(string path, byte[] bytes)
    {
        if (FileBytes.IsClosedStream(path))
            throw new CannotRunException($"{path} could not be written: it is closed");
        if (FileBytes.IsStream(path) || !FileKind.IsOrdinary(path))
            Try(path, () =>
            {
                Waiting.BeginOutput();
                try
                {
                    using var stream = new FileStream(path, FileMode.Open, FileAccess.Write, FileShare.ReadWrite, bufferSize: 0);
                    stream.Write(bytes);
                }
                finally
                {
                    Waiting.EndOutput();
                }
            });
        else if (File.Exists(path))
            Replace(path, bytes, null);
        else
            Create(path, bytes);
    }

    /// <summary>Whether nobody may write the file. Whether this user may is found out by trying: who has all rights may write another's.</summary>
    static bool IsReadOnly(string target)
    {
        const UnixFileMode Writable = UnixFileMode.UserWrite | UnixFileMode.GroupWrite | UnixFileMode.OtherWrite;
        return ModeOf(target) is { } mode ? (mode & Writable) == 0 : new FileInfo(target).IsReadOnly;
    }

    /// <summary>Who may do what with the file; null where the system does not say so in that way.</summary>
    static UnixFileMode? ModeOf(string target) => OperatingSystem.IsWindows() ? null : File.GetUnixFileMode(target);

    /// <param name="mode">Who may read and write the new file: from its first byte on, for what is secret must not be so only at the end.</param>
    static void Write(string path, string target, byte[] bytes, UnixFileMode? mode, Action<string> rename)
    {
        // A name of its own, and a short one: that of the file may be as long as the system allows.
        var beside = Path.Combine(Path.GetDirectoryName(target) ?? "", $".{Path.GetRandomFileName()}.new");
        Waiting.BeginFile();
        try
        {
            Try(path, () => WriteBeside(beside, bytes, mode, rename), beside);
        }
        finally
        {
            Waiting.EndFile();
        }
    }

    static void WriteBeside(string beside, byte[] bytes, UnixFileMode? mode, Action<string> rename)
    {
        try
        {
            var options = new FileStreamOptions { Mode = FileMode.CreateNew, Access = FileAccess.Write, Share = FileShare.None, BufferSize = 0 };
            if (mode is { } allowed && !OperatingSystem.IsWindows())
                options.UnixCreateMode = allowed | UnixFileMode.UserWrite;
            using (var stream = new FileStream(beside, options))
            {
                // What is masked by the user's habit is given back; the old one's mode is wanted, whole.
                if (mode is { } wanted && !OperatingSystem.IsWindows())
                    File.SetUnixFileMode(stream.SafeFileHandle, wanted);
                stream.Write(bytes);
                // The name must not stand for the new file before the disk holds it.
                stream.Flush(flushToDisk: true);
            }
            rename(beside);
        }
        finally
        {
            File.Delete(beside);
        }
    }

    static void Try(string path, Action write, string? beside = null)
    {
        try
        {
            write();
        }
        catch (UnauthorizedAccessException)
        {
            throw new CannotRunException($"{path} may not be written by you");
        }
        catch (IOException e) when (e.HResult == DescriptorStream.ReaderIsGone)
        {
            throw new ReaderGoneException();
        }
        catch (Exception e) when (e is IOException or ArgumentOutOfRangeException)
        {
            // The file beside is nobody's business.
            var why = WriteFailure.Clause(e);
            throw new CannotRunException($"{path} could not be written: {(beside is null ? why : why.Replace(beside, path, StringComparison.Ordinal))}");
        }
    }
}
