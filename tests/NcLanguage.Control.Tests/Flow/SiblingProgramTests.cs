using NcLanguage.Control.Flow;
using NcLanguage.Machine.Files;

namespace NcLanguage.Control.Tests.Flow;

/// <summary>Called programs in real files beside the calling one.</summary>
public sealed class SiblingProgramTests : IDisposable
{
    readonly string _folder = Directory.CreateTempSubdirectory("nc-siblings").FullName;

    public void Dispose() => Directory.Delete(_folder, recursive: true);

    string At(string name) => Path.Combine(_folder, name);

    SiblingPrograms Siblings(string program = "main.nc")
    {
        File.WriteAllText(At(program), "M98 P12\nM30\n");
        return new SiblingPrograms(At(program), new DiskFiles());
    }

    [Theory]
    [InlineData("O12.nc")]
    [InlineData("O0012.nc")]
    [InlineData("12.nc")]
    [InlineData("0012.nc")]
    [InlineData("o12.nc")]
    [InlineData("O12.tap")]
    public void A_file_is_found_by_its_number(string name)
    {
        var siblings = Siblings();
        Assert.Null(siblings.Find(12));
        File.WriteAllText(At(name), "G0 X5\nM99\n");
        var found = siblings.Find(12);
        Assert.Equal(name, found?.Name);
        Assert.Equal("5", new FlowSession("G90\nM98 P12\nM30", siblings).X);
    }

    /// <summary>One with the calling program's own ending is meant first.</summary>
    [Fact]
    public void Its_own_ending_first()
    {
        var siblings = Siblings("main.tap");
        File.WriteAllText(At("O12.nc"), "M99");
        File.WriteAllText(At("O12.tap"), "M99");
        Assert.Equal("O12.tap", siblings.Find(12)!.Name);
    }

    /// <summary>A program is not called from itself as if it were another file.</summary>
    [Fact]
    public void Not_the_calling_file() => Assert.Null(Siblings("O12.nc").Find(12));

    /// <summary>Nothing outside the program's folder is read, by whatever link.</summary>
    [Fact]
    public void A_link_out_of_the_folder_is_not_followed()
    {
        var outside = Directory.CreateTempSubdirectory("nc-outside").FullName;
        try
        {
            File.WriteAllText(Path.Combine(outside, "secret.nc"), "G0 X5\nM99\n");
            File.CreateSymbolicLink(At("O12.nc"), Path.Combine(outside, "secret.nc"));
            Assert.Null(Siblings().Find(12));
            // One to a file of the same folder is.
            File.WriteAllText(At("pocket.nc"), "G0 X5\nM99\n");
            File.CreateSymbolicLink(At("O13.nc"), At("pocket.nc"));
            Assert.Equal("O13.nc", Siblings().Find(13)?.Name);
            // A ring of links is none.
            File.CreateSymbolicLink(At("O14.nc"), At("O15.nc"));
            File.CreateSymbolicLink(At("O15.nc"), At("O14.nc"));
            Assert.Null(Siblings().Find(14));
            Assert.Equal("O12.nc is a link out of the program's folder, where nothing is read", Siblings().WhyNotRead(12));
            Assert.Equal("O14.nc is a link that leads back to itself", Siblings().WhyNotRead(14));
        }
        finally
        {
            Directory.Delete(outside, recursive: true);
        }
    }

    /// <summary>What stands there and is no program that can be read is no absent one.</summary>
    [Fact]
    public void A_file_that_cannot_be_read_is_told_with_the_reason()
    {
        var siblings = Siblings();
        Assert.Null(siblings.WhyNotRead(1));
        Directory.CreateDirectory(At("O2.nc"));
        using (var large = File.Create(At("O3.nc")))
            large.SetLength(DiskFiles.GreatestSize + 1L);
        File.CreateSymbolicLink(At("O4.nc"), At("nowhere.nc"));
        Assert.Equal("O2.nc is a folder, not a file", siblings.WhyNotRead(2));
        Assert.StartsWith("O3.nc is larger than 16 MB", siblings.WhyNotRead(3), StringComparison.Ordinal);
        Assert.Equal("O4.nc is a link to a file that is not there", siblings.WhyNotRead(4));
        if (OperatingSystem.IsLinux())
        {
            using (var mkfifo = System.Diagnostics.Process.Start("mkfifo", [At("O5.nc")]))
                mkfifo.WaitForExit();
            Assert.Equal("O5.nc is a pipe or a device, not a file", siblings.WhyNotRead(5));
        }
        // Another name of the same number that can be read is.
        File.WriteAllText(At("0003.nc"), "M99");
        Assert.Equal("0003.nc", siblings.Find(3)?.Name);
        Assert.Null(siblings.WhyNotRead(3));
    }

    [Fact]
    public void A_file_that_others_keep_for_themselves_is_told_as_such() =>
        Assert.Equal("O12.nc may not be read by you", new SiblingPrograms(At("main.nc"), new Kept()).WhyNotRead(12));

    /// <summary>Who runs the tests may read everything: this stands in for a user who may not.</summary>
    sealed class Kept : IFileAccess
    {
        public FileAnswer Read(string path) => new(path.EndsWith("O12.nc", StringComparison.Ordinal) ? FileState.Denied : FileState.Missing);
    }
}
