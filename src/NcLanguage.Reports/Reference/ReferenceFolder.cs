using System.Collections.Immutable;
using System.Text;

namespace NcLanguage.Reports.Reference;

/// <summary>Puts pages on the disk so that a reader sees whole files only: beside, then renamed.</summary>
public static class ReferenceFolder
{
    /// <summary>Writes the pages. A folder that is not there yet appears with all of them at once; in one that is there, pages that differ
    /// are replaced one by one and other files are left alone.</summary>
    /// <exception cref="IOException">It could not be written.</exception>
    /// <exception cref="UnauthorizedAccessException">It may not be written.</exception>
    public static void Write(string folder, ImmutableArray<ReferencePage> pages)
    {
        folder = Path.TrimEndingDirectorySeparator(Path.GetFullPath(folder));
        if (!Directory.Exists(folder) && TryCreate(folder, pages))
            return;
        foreach (var page in pages)
            Replace(Path.Combine(folder, page.FileName), Encoding.UTF8.GetBytes(page.Text));
    }

    /// <summary>False where somebody else made the folder meanwhile.</summary>
    static bool TryCreate(string folder, ImmutableArray<ReferencePage> pages)
    {
        var beside = Beside(folder);
        try
        {
            Directory.CreateDirectory(beside);
            foreach (var page in pages)
                File.WriteAllBytes(Path.Combine(beside, page.FileName), Encoding.UTF8.GetBytes(page.Text));
            Directory.Move(beside, folder);
            return true;
        }
        catch (IOException) when (Directory.Exists(folder))
        {
            return false;
        }
        finally
        {
            if (Directory.Exists(beside))
                Directory.Delete(beside, recursive: true);
        }
    }

    static void Replace(string path, byte[] bytes)
    {
        if (File.Exists(path) && File.ReadAllBytes(path).AsSpan().SequenceEqual(bytes))
            return;
        var beside = Beside(path);
        try
        {
            File.WriteAllBytes(beside, bytes);
            File.Move(beside, path, overwrite: true);
        }
        finally
        {
            File.Delete(beside);
        }
    }

    static string Beside(string path) => $"{path}.{Environment.ProcessId}-{Path.GetRandomFileName()}.new";
}
