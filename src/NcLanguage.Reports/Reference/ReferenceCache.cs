using System.Collections.Immutable;
using System.Globalization;
using System.Text;

namespace NcLanguage.Reports.Reference;

/// <summary>The reference in the user's cache folder, where editors open its pages.</summary>
public static class ReferenceCache
{
    /// <summary>Writes the pages for editors where they are not there yet, and gives the folder they stand in. Each version and each content
    /// has a folder of its own, so that a server still running keeps its pages.</summary>
    /// <exception cref="IOException">They could not be written.</exception>
    /// <exception cref="UnauthorizedAccessException">They may not be written.</exception>
    public static string Write(string version) => Write(CacheFolder(), version);

    /// <summary>The same under a cache folder that is given.</summary>
    public static string Write(string cache, string version)
    {
        var pages = ReferencePages.All(PageFormat.Markdown);
        var folder = Path.Combine(cache, "nclanguage", "reference", $"{version}-{Fingerprint(pages)}");
        Directory.CreateDirectory(Path.GetDirectoryName(folder)!);
        ReferenceFolder.Write(folder, pages);
        return folder;
    }

    /// <summary>The user's cache folder: on Linux as the XDG base directory specification says, which passes over a path that is not full;
    /// elsewhere the system's folder for data that stays on this computer.</summary>
    /// <exception cref="IOException">There is none.</exception>
    public static string CacheFolder()
    {
        if (OperatingSystem.IsLinux() && Environment.GetEnvironmentVariable("XDG_CACHE_HOME") is { } chosen && Path.IsPathFullyQualified(chosen))
            return chosen;
        var known = Environment.GetFolderPath(
            OperatingSystem.IsLinux() ? Environment.SpecialFolder.UserProfile : Environment.SpecialFolder.LocalApplicationData, Environment.SpecialFolderOption.DoNotVerify);
        if (!Path.IsPathFullyQualified(known))
            throw new IOException("there is no cache folder");
        return OperatingSystem.IsLinux() ? Path.Combine(known, ".cache") : known;
    }

    /// <summary>A short hash (FNV-1a, 64 bits) of all names and texts; it need only change when they do.</summary>
    static string Fingerprint(ImmutableArray<ReferencePage> pages)
    {
        var hash = 14695981039346656037UL;
        foreach (var page in pages)
            foreach (var part in new[] { page.FileName, page.Text })
            {
                foreach (var one in Encoding.UTF8.GetBytes(part))
                    hash = unchecked((hash ^ one) * 1099511628211UL);
                hash = unchecked((hash ^ 0xFF) * 1099511628211UL);
            }
        return hash.ToString("x16", CultureInfo.InvariantCulture);
    }
}
