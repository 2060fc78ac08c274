namespace NcLanguage.Server.Tests;

/// <summary>A folder on disk, gone after the test.</summary>
sealed class TestFolder : IDisposable
{
    // As the system names it: where /tmp is a link, the server sees through it.
    public string Path { get; } = Directory.CreateTempSubdirectory("nclanguage-").FullName;

    public string Uri => new Uri(Path).AbsoluteUri;

    public string this[string name]
    {
        set
        {
            var path = PathOf(name);
            Directory.CreateDirectory(System.IO.Path.GetDirectoryName(path)!);
            File.WriteAllText(path, value);
        }
    }

    public string PathOf(string name) => System.IO.Path.Combine(Path, name);

    public string UriOf(string name) => new Uri(PathOf(name)).AbsoluteUri;

    public void Dispose() => Directory.Delete(Path, recursive: true);
}
