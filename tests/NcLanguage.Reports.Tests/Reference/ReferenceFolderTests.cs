using NcLanguage.Reports.Reference;

namespace NcLanguage.Reports.Tests.Reference;

/// <summary>Pages on the disk.</summary>
public sealed class ReferenceFolderTests : IDisposable
{
    readonly string _folder = Directory.CreateTempSubdirectory("nclanguage-reference-").FullName;

    [Fact]
    public void A_new_folder_holds_all_pages_and_nothing_lies_beside_it()
    {
        ReferenceFolder.Write(At("new"), [new("a.md", "one\n"), new("b.md", "zwölf\n")]);
        Assert.Equal(["new"], Names(_folder));
        Assert.Equal(["a.md", "b.md"], Names(At("new")));
        Assert.Equal("zwölf\n", File.ReadAllText(At("new", "b.md")));
    }

    [Fact]
    public void In_a_folder_that_stands_only_what_differs_is_written()
    {
        ReferenceFolder.Write(At("old"), [new("a.md", "one"), new("b.md", "two")]);
        var before = DateTime.UtcNow.AddDays(-1);
        File.SetLastWriteTimeUtc(At("old", "a.md"), before);
        File.WriteAllText(At("old", "b.md"), "tw");
        File.WriteAllText(At("old", "mine.txt"), "kept");
        ReferenceFolder.Write(At("old"), [new("a.md", "one"), new("b.md", "two"), new("c.md", "three")]);
        Assert.Equal(["a.md", "b.md", "c.md", "mine.txt"], Names(At("old")));
        Assert.Equal(("one", "two", "kept"), (File.ReadAllText(At("old", "a.md")), File.ReadAllText(At("old", "b.md")), File.ReadAllText(At("old", "mine.txt"))));
        Assert.Equal(before, File.GetLastWriteTimeUtc(At("old", "a.md")), TimeSpan.FromSeconds(2));
    }

    [Fact]
    public void Where_nothing_can_be_written_nothing_is_left()
    {
        File.WriteAllText(At("file"), "");
        Assert.ThrowsAny<IOException>(() => ReferenceFolder.Write(At("file", "below"), [new("a.md", "one")]));
        Assert.Equal(["file"], Names(_folder));
    }

    [Fact]
    public void The_cache_holds_a_page_for_each_rule_and_is_written_once()
    {
        var folder = ReferenceCache.Write(_folder, "1.2.3");
        Assert.StartsWith(At("nclanguage", "reference", "1.2.3-"), folder, StringComparison.Ordinal);
        Assert.True(File.Exists(Path.Combine(folder, "NC3001.md")));
        var written = File.GetLastWriteTimeUtc(Path.Combine(folder, "index.md"));
        Assert.Equal(folder, ReferenceCache.Write(_folder, "1.2.3"));
        Assert.Equal(written, File.GetLastWriteTimeUtc(Path.Combine(folder, "index.md")));
        Assert.NotEqual(folder, ReferenceCache.Write(_folder, "1.2.4"));
    }

    /// <summary>Several editors started together: each gets the whole folder.</summary>
    [Fact]
    public void Several_at_once_give_one_folder()
    {
        var folders = Enumerable.Range(0, 8).AsParallel().WithDegreeOfParallelism(8).Select(_ =>
        {
            var folder = ReferenceCache.Write(_folder, "1.0.0");
            return (folder, Directory.GetFiles(folder).Count(file => file.EndsWith(".md", StringComparison.Ordinal)));
        }).Distinct().ToList();
        Assert.Equal(ReferencePages.All(PageFormat.Markdown).Length, Assert.Single(folders).Item2);
        Assert.Single(Directory.GetDirectories(At("nclanguage", "reference")));
    }

    public void Dispose() => Directory.Delete(_folder, recursive: true);

    string At(params string[] parts) => Path.Combine([_folder, .. parts]);

    static IEnumerable<string> Names(string folder) => Directory.GetFileSystemEntries(folder).Select(entry => Path.GetFileName(entry)!).Order(StringComparer.Ordinal);
}
