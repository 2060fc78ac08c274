using System.Text;
using NcLanguage.Cli.Tests.Support;

namespace NcLanguage.Cli.Tests;

/// <summary><c>check --fix</c>: writes what is certain, and not a byte more.</summary>
public sealed class FixTests : IDisposable
{
    // The comment keeps the byte that is no UTF-8 from being mended itself.
    static readonly byte[] Unended = [.. "G21 G90 G17 G54 (nc-allow character-not-sendable: stays here) (f"u8, 0xFC, .. "r die Platte)\r\nG0  x10 ;  wie gehabt\r\n"u8];

    readonly Scratch _scratch = new();

    public void Dispose() => _scratch.Dispose();

    [Fact]
    public void The_rest_of_the_file_stays_byte_for_byte()
    {
        var path = _scratch.Write("plate.nc", Unended);
        var outcome = Command.In(_scratch.Folder, "check", "plate.nc", "--fix", "--format", "json");
        Assert.Equal((0, ""), (outcome.ExitCode, outcome.Errors));
        Assert.Equal([.. Unended, .. "M30\r\n"u8], File.ReadAllBytes(path));
        var made = outcome.Json.GetProperty("files")[0].GetProperty("fixed")[0];
        Assert.Contains("M30", made.GetProperty("title").GetString(), StringComparison.Ordinal);
        Assert.Equal(["plate.nc"], Directory.GetFiles(_scratch.Folder).Select(Path.GetFileName));
    }

    [Fact]
    public void A_preview_writes_nothing()
    {
        var path = _scratch.Write("plate.nc", Unended);
        var outcome = Command.In(_scratch.Folder, "check", "plate.nc", "--fix", "--preview");
        Assert.Contains("now  M30", outcome.Output, StringComparison.Ordinal);
        // And says so: nothing was fixed, and the lines of what is left are those of the text that was not written.
        Assert.Contains("would be fixed: Add M30", outcome.Output, StringComparison.Ordinal);
        Assert.DoesNotContain("  fixed: ", outcome.Output, StringComparison.Ordinal);
        Assert.Contains("Nothing is written.", outcome.Output, StringComparison.Ordinal);
        Assert.Equal(Unended, File.ReadAllBytes(path));
        Assert.DoesNotContain("Nothing is written.", Command.In(_scratch.Folder, "check", "plate.nc", "--fix").Output, StringComparison.Ordinal);
    }

    /// <summary>The setup may name another machine, which reads the program otherwise.</summary>
    [Fact]
    public void With_a_setup_that_cannot_be_read_nothing_is_fixed()
    {
        var path = _scratch.Write("plate.nc", Unended);
        _scratch.Write("plate.setup.json", "{ \"tools\": [");
        var outcome = Command.In(_scratch.Folder, "check", "plate.nc", "--fix");
        Assert.Contains("plate.setup.json cannot be read: nothing is fixed in this program.", outcome.Output, StringComparison.Ordinal);
        Assert.Equal(Unended, File.ReadAllBytes(path));
    }

    [Fact]
    public void UTF_16_stays_UTF_16()
    {
        var path = _scratch.Write("plate.nc", [0xFF, 0xFE, .. Encoding.Unicode.GetBytes("G21 G90 G17 G54 (nc-allow character-not-sendable: stays here) (ü)\nG0 X10\n")]);
        Command.In(_scratch.Folder, "check", "plate.nc", "--fix");
        byte[] expected = [0xFF, 0xFE, .. Encoding.Unicode.GetBytes("G21 G90 G17 G54 (nc-allow character-not-sendable: stays here) (ü)\nG0 X10\nM30\n")];
        Assert.Equal(expected, File.ReadAllBytes(path));
    }

    [Theory]
    [InlineData(true)]
    [InlineData(false)]
    public void Permissions_and_links_stay(bool leadsToFullPath)
    {
        if (OperatingSystem.IsWindows())
            return;
        var path = _scratch.Write("plate.nc", Unended);
        const UnixFileMode mode = UnixFileMode.UserRead | UnixFileMode.UserWrite | UnixFileMode.GroupRead | UnixFileMode.UserExecute;
        File.SetUnixFileMode(path, mode);
        var target = leadsToFullPath ? path : "plate.nc";
        File.CreateSymbolicLink(_scratch.At("link.nc"), target);
        Command.In(_scratch.Folder, "check", "link.nc", "--fix");
        Assert.Equal(target, new FileInfo(_scratch.At("link.nc")).LinkTarget);
        Assert.Equal(mode, File.GetUnixFileMode(path));
        Assert.EndsWith("M30\r\n", File.ReadAllText(path), StringComparison.Ordinal);
    }
}
