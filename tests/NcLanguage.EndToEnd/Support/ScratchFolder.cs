namespace NcLanguage.EndToEnd.Support;

/// <summary>A folder of a test's own, removed at its end.</summary>
sealed class ScratchFolder : IDisposable
{
    public string Path { get; } = Directory.CreateTempSubdirectory("nclanguage-e2e-").FullName;

    public string At(params string[] parts) => System.IO.Path.Combine([Path, .. parts]);

    public string Write(string name, string text)
    {
        var file = At(name);
        Directory.CreateDirectory(System.IO.Path.GetDirectoryName(file)!);
        File.WriteAllText(file, text);
        return file;
    }

    public void Dispose()
    {
        try
        {
            Directory.Delete(Path, recursive: true);
        }
        catch (IOException)
        {
            // An editor that is still ending may write once more; the system clears its temporary folder.
        }
    }
}
