using NcLanguage.Cli.Common;

namespace NcLanguage.Cli.Files;

/// <summary>Writes files so that a reader sees the old one or the new one, never a half: beside, then renamed.</summary>
static class WrittenFile
{
    /// <summary>Puts new bytes in the place of a file's. A link stays a link; permissions stay.</summary>
    /// <exception cref="CannotRunException">It could not be written; nothing was changed.</exception>
    public static void Replace(string path, byte[] bytes)
    {
        var target = File.ResolveLinkTarget(path, returnFinalTarget: true)?.FullName ?? Path.GetFullPath(path);
        Write(path, target, bytes, beside =>
        {
            if (!OperatingSystem.IsWindows())
                File.SetUnixFileMode(beside, File.GetUnixFileMode(target));
            File.Move(beside, target, overwrite: true);
        });
    }

    /// <summary>Writes a file where none stands.</summary>
    /// <exception cref="CannotRunException">One stands there, or it could not be written.</exception>
    public static void Create(string path, byte[] bytes) =>
        Write(path, Path.GetFullPath(path), bytes, beside => File.Move(beside, path, overwrite: false));

    /// <summary>Writes a file, over one that stands there already.</summary>
    /// <exception cref="CannotRunException">It could not be written.</exception>
    public static void Put(string path, byte[] bytes)
    {
        if (File.Exists(path))
            Replace(path, bytes);
        else
            Create(path, bytes);
    }

    static void Write(string path, string target, byte[] bytes, Action<string> rename)
    {
        var beside = $"{target}.{Environment.ProcessId}.new";
        try
        {
            try
            {
                File.WriteAllBytes(beside, bytes);
                rename(beside);
            }
            finally
            {
                File.Delete(beside);
            }
        }
        catch (UnauthorizedAccessException)
        {
            throw new CannotRunException($"{path} may not be written by you");
        }
        catch (DirectoryNotFoundException)
        {
            throw new CannotRunException($"{path} could not be written: there is no such folder");
        }
        catch (IOException e)
        {
            // The file beside is nobody's business.
            throw new CannotRunException($"{path} could not be written: {e.Message.Replace(beside, path, StringComparison.Ordinal)}");
        }
    }
}
