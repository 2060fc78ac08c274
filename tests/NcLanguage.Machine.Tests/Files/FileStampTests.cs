using NcLanguage.Machine.Files;

namespace NcLanguage.Machine.Tests.Files;

public sealed class FileStampTests : IDisposable
{
    readonly string _folder = Directory.CreateTempSubdirectory("nclanguage-").FullName;

    public void Dispose() => Directory.Delete(_folder, recursive: true);

    [Fact]
    public void A_link_has_the_stamp_of_what_it_leads_to()
    {
        File.WriteAllText(At("shop.json"), "{}");
        File.CreateSymbolicLink(At("first.json"), "shop.json");
        File.CreateSymbolicLink(At("nc.setup.json"), "first.json");
        var before = FileStamp.Of(At("nc.setup.json"));
        File.WriteAllText(At("shop.json"), "{ }");
        Assert.Equal(3, FileStamp.Of(At("nc.setup.json")).Length);
        Assert.NotEqual(before, FileStamp.Of(At("nc.setup.json")));
    }

    [Fact]
    public void What_is_not_there_has_none()
    {
        File.CreateSymbolicLink(At("nowhere.json"), "gone.json");
        File.CreateSymbolicLink(At("ring.json"), "ring.json");
        Assert.All(["gone.json", "nowhere.json", "ring.json", "", "a\0b"], name => Assert.Equal(default, FileStamp.Of(name.Length > 0 ? At(name) : "")));
        Assert.Equal(default, FileStamp.Of(_folder));
    }

    string At(string name) => Path.Combine(_folder, name);
}
