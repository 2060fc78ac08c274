using NcLanguage.Machine.Files;

namespace NcLanguage.Server.Documents;

/// <summary>Between the protocol's addresses and paths of files.</summary>
static class DocumentUri
{
    /// <summary>How paths compare on this system.</summary>
    public static StringComparer PathComparer => FilePath.Comparer;

    /// <summary>The path a file address stands for; null where it is no file's (a text not saved yet).</summary>
    public static string? ToPath(string uri)
    {
        if (!Uri.TryCreate(uri, UriKind.Absolute, out var parsed) || !parsed.IsFile)
            return null;
        // localhost is this computer (RFC 8089 section 2); the files of another one are names in its own network on Windows alone.
        if (parsed.Host.Equals("localhost", StringComparison.OrdinalIgnoreCase))
            return ToPath("file://" + parsed.AbsolutePath);
        if (parsed.Host.Length > 0 && !OperatingSystem.IsWindows())
            return null;
        var path = parsed.LocalPath;
        // Editors on Windows write file:///c%3A/…, which leaves a slash before the drive.
        if (OperatingSystem.IsWindows() && path.Length > 2 && path[0] is '/' or '\\' && path[2] == ':')
            path = path[1..];
        try
        {
            return Path.GetFullPath(path);
        }
        catch (ArgumentException)
        {
            return null;
        }
    }

    public static string FromPath(string path)
    {
        var full = Path.GetFullPath(path).Replace('\\', '/');
        var escaped = string.Join('/', full.Split('/').Select(Uri.EscapeDataString));
        return escaped.StartsWith('/') ? "file://" + escaped : "file:///" + escaped;
    }
}
