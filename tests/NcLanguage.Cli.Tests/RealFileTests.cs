using System.Text;
using NcLanguage.Cli.Tests.Support;

namespace NcLanguage.Cli.Tests;

/// <summary>Files as they are met: saved by any editor, sent by any machine, in use by others, on disks that are full.</summary>
public sealed class RealFileTests : IDisposable
{
    const string Untidy = "g21 g90 g17 g54\ng0   x1 y1\nM30\n";

    readonly Scratch _scratch = new();

    public void Dispose() => _scratch.Dispose();

    Outcome Shell(string script) => Shell(_scratch.Folder, script);

    static Outcome Shell(string folder, string script) => Command.Start("bash", folder, null, ["-c", script.Replace("nclanguage ", $"'{Command.Executable}' ", StringComparison.Ordinal)]);

    string[] Names() => [.. Directory.GetFileSystemEntries(_scratch.Folder).Select(path => Path.GetFileName(path)).Order(StringComparer.Ordinal)];

    /// <summary>ISO/IEC 10646, UTF-16: two bytes a character, either first; the mark before it may be left out (RFC 2781, 4.3).</summary>
    [Theory]
    [InlineData(true, false)]
    [InlineData(true, true)]
    [InlineData(false, false)]
    [InlineData(false, true)]
    public void UTF_16_is_read_right_told_and_kept(bool hasMark, bool isBigEndian)
    {
        var encoding = new UnicodeEncoding(isBigEndian, hasMark);
        byte[] Bytes(string text) => [.. encoding.GetPreamble(), .. encoding.GetBytes(text)];
        _scratch.Write("wide.nc", Bytes("G21 G90 G17 G54\nG999\nG0 X1 Y1\n"));
        var file = Command.In(_scratch.Folder, "check", "wide.nc", "--format", "json").Json.GetProperty("files")[0];
        Assert.Contains("UTF-16", file.GetProperty("remark").GetString(), StringComparison.Ordinal);
        Assert.Contains(file.GetProperty("findings").EnumerateArray(), finding => finding.GetProperty("name").GetString() == "code-unknown" && finding.GetProperty("line").GetInt32() == 2);
        Assert.Equal(1, Command.In(_scratch.Folder, "check", "wide.nc", "--fix").ExitCode);
        Assert.Equal(Bytes("G21 G90 G17 G54\nG999\nG0 X1 Y1\nM30\n"), File.ReadAllBytes(_scratch.At("wide.nc")));
    }

    [Fact]
    public void UTF_32_is_refused_by_name()
    {
        _scratch.Write("wider.nc", [.. Encoding.UTF32.GetPreamble(), .. Encoding.UTF32.GetBytes(Samples.Sound)]);
        var outcome = Command.In(_scratch.Folder, "check", "wider.nc");
        Assert.Equal((2, 1), (outcome.ExitCode, outcome.ErrorLines.Length));
        Assert.Contains("UTF-32", outcome.Errors, StringComparison.Ordinal);
    }

    [Fact]
    public void A_called_program_in_UTF_16_is_read_right()
    {
        _scratch.Write("main.nc", "O1\nG21 G90 G17 G54\nM98 P1200\nM30\n");
        _scratch.Write("O1200.nc", [0xFF, 0xFE, .. Encoding.Unicode.GetBytes("O1200\nG999\nM99\n")]);
        Assert.Contains("G999", Command.In(_scratch.Folder, "check", "main.nc").Output, StringComparison.Ordinal);
    }

    /// <summary>Every kind of line end counts as one, in one file too, and the last line may have none.</summary>
    [Theory]
    [InlineData("G21 G90 G17 G54\rG0 X1\rG999\rM30", 3)]
    [InlineData("G21 G90 G17 G54\r\nG0 X1\rG0 X2\n\nG999\r\nM30", 5)]
    public void Line_ends_of_every_kind_are_counted_and_kept(string text, int line)
    {
        _scratch.Write("ends.nc", text);
        var finding = Command.In(_scratch.Folder, "check", "ends.nc", "--format", "json").Json.GetProperty("files")[0].GetProperty("findings").EnumerateArray()
            .Single(finding => finding.GetProperty("name").GetString() == "code-unknown");
        Assert.Equal(line, finding.GetProperty("line").GetInt32());
        _scratch.Write("ends.nc", text.Replace("G999", "G4 P500", StringComparison.Ordinal).Replace("M30", "G0 X9", StringComparison.Ordinal));
        Command.In(_scratch.Folder, "check", "ends.nc", "--fix");
        Assert.StartsWith(text.Replace("G999", "G4 P500", StringComparison.Ordinal).Replace("M30", "G0 X9", StringComparison.Ordinal),
            File.ReadAllText(_scratch.At("ends.nc")), StringComparison.Ordinal);
    }

    [Theory]
    [InlineData("")]
    [InlineData("\uFEFF")]
    [InlineData("%\n%\n")]
    public void A_file_without_a_block_is_told_as_such(string text)
    {
        _scratch.Write("none.nc", text);
        var outcome = Command.In(_scratch.Folder, "check", "none.nc");
        Assert.Equal((0, ""), (outcome.ExitCode, outcome.Errors));
        Assert.Contains("no block in this file: nothing was checked", outcome.Output, StringComparison.Ordinal);
    }

    /// <summary>A pipe that nobody writes into would be waited for without end.</summary>
    [Fact]
    public void Pipes_and_devices_are_no_programs_and_no_setups()
    {
        if (!OperatingSystem.IsLinux())
            return;
        Assert.Equal(0, Shell("mkfifo pipe.nc nc.setup.json && mkdir deep && mkfifo deep/inner.nc").ExitCode);
        foreach (var command in new[] { "check", "trace", "holes" })
        {
            var named = Command.In(_scratch.Folder, command, "pipe.nc");
            Assert.Equal((2, "nclanguage: pipe.nc is a pipe or a device, not a file; - reads standard input\n"), (named.ExitCode, named.Errors));
        }
        Assert.Equal(2, Command.In(_scratch.Folder, "check", "/dev/zero").ExitCode);
        _scratch.Write("sound.nc", Samples.Sound);
        var all = Command.In(_scratch.Folder, "check", ".", "--format", "json");
        Assert.Equal(["nc.setup.json", "sound.nc"], all.Json.GetProperty("files").EnumerateArray().Select(file => file.GetProperty("path").GetString()!).Order());
        Assert.Equal(2, all.ExitCode);
        Assert.Equal(["deep/inner.nc", "pipe.nc"], all.Json.GetProperty("notRead").EnumerateArray().Select(file => file.GetProperty("path").GetString()!));
    }

    /// <summary>A file system takes any bytes but / and NUL for a name; written out here as a shell takes them.</summary>
    [Fact]
    public void Names_that_are_no_UTF_8_are_told()
    {
        if (!OperatingSystem.IsLinux())
            return;
        _scratch.Write("sound.nc", Samples.Sound);
        Assert.Equal(0, Shell(@"cp sound.nc $'b\xffad.nc' && cp sound.nc $'b\xfead.nc' && cp sound.nc $'no\xff.txt' && cp sound.nc 'really�.nc' && mkdir $'d\xe4'").ExitCode);
        try
        {
            var all = Command.In(_scratch.Folder, "check", ".", "--format", "json");
            Assert.Equal(2, all.ExitCode);
            Assert.Equal(["really�.nc", "sound.nc"], all.Json.GetProperty("files").EnumerateArray().Select(file => file.GetProperty("path").GetString()!).Order(StringComparer.Ordinal));
            var notRead = all.Json.GetProperty("notRead").EnumerateArray().ToList();
            Assert.Equal([@"b\xfead.nc", @"b\xffad.nc", @"d\xe4"], notRead.Select(file => file.GetProperty("path").GetString()!));
            Assert.All(notRead, file => Assert.Contains("not written in UTF-8", file.GetProperty("reason").GetString(), StringComparison.Ordinal));
            foreach (var command in new[] { "check", "trace", "format" })
            {
                var named = Shell($@"nclanguage {command} $'b\xffad.nc'");
                Assert.Equal(2, named.ExitCode);
                Assert.Contains("has a name that is not written in UTF-8 and cannot be opened", named.Errors, StringComparison.Ordinal);
            }
            Assert.Contains("there is no file", Shell(@"nclanguage check $'none\xff.nc'").Errors, StringComparison.Ordinal);
        }
        finally
        {
            // The runtime that makes the folder empty cannot open them either.
            Shell(@"LC_ALL=C; rm -r b*ad.nc no*.txt d?");
        }
    }

    /// <summary>Whatever cannot be read, by itself or among others: the rest is checked, it is named, JSON and SARIF are whole.</summary>
    [Theory]
    [InlineData("dang.nc", "dang.nc is a link to a file that is not there")]
    [InlineData("self.nc", "self.nc is a link that leads back to itself")]
    [InlineData("links", "links/dang.nc is a link to a file that is not there")]
    [InlineData("nosuch.nc", "there is no file or folder nosuch.nc")]
    [InlineData("empty", "the folder empty holds no program")]
    [InlineData("", "an empty name is that of no file or folder")]
    public void What_cannot_be_read_is_named_and_the_rest_is_checked(string path, string reason)
    {
        if (OperatingSystem.IsWindows())
            return;
        _scratch.Write("good.nc", Samples.WithError);
        Directory.CreateDirectory(_scratch.At("empty"));
        Directory.CreateDirectory(_scratch.At("links"));
        File.CreateSymbolicLink(_scratch.At("dang.nc"), "nowhere.nc");
        File.CreateSymbolicLink(_scratch.At("links/dang.nc"), "nowhere.nc");
        File.CreateSymbolicLink(_scratch.At("self.nc"), "self.nc");
        foreach (var others in new string[][] { [], ["good.nc"] })
        {
            var json = Command.In(_scratch.Folder, ["check", path, .. others, "--format", "json"]);
            Assert.Equal((2, 1), (json.ExitCode, json.ErrorLines.Length));
            Assert.StartsWith(others.Length == 0 ? "nclanguage: " + reason : "nclanguage: not checked: " + reason, json.Errors, StringComparison.Ordinal);
            Assert.StartsWith(reason, Assert.Single(json.Json.GetProperty("notRead").EnumerateArray()).GetProperty("reason").GetString(), StringComparison.Ordinal);
            Assert.Equal(others, json.Json.GetProperty("files").EnumerateArray().Select(file => file.GetProperty("path").GetString()!));
            var run = Command.In(_scratch.Folder, ["check", path, .. others, "--format", "sarif"]).Json.GetProperty("runs")[0];
            Assert.False(run.GetProperty("invocations")[0].GetProperty("executionSuccessful").GetBoolean());
            Assert.Equal(others.Length > 0, Command.In(_scratch.Folder, ["check", path, .. others]).Output.Contains("1 program, ", StringComparison.Ordinal));
        }
    }

    [Fact]
    public void A_pipe_that_a_shell_hands_over_is_read()
    {
        if (OperatingSystem.IsWindows())
            return;
        Assert.Contains("G999", Shell(@"nclanguage check <(printf 'G21 G90 G17 G54\nG999\nM30\n')").Output, StringComparison.Ordinal);
    }

    /// <summary>Links that lead in a circle, to nowhere and to themselves; what is beside them is checked.</summary>
    [Fact]
    public void Links_in_circles_keep_nothing_from_being_checked()
    {
        if (OperatingSystem.IsWindows())
            return;
        _scratch.Write("deep/wrong.nc", Samples.WithError);
        Directory.CreateSymbolicLink(_scratch.At("deep/up"), _scratch.Folder);
        File.CreateSymbolicLink(_scratch.At("self.nc"), "self.nc");
        File.CreateSymbolicLink(_scratch.At("gone.nc"), "nowhere.nc");
        var outcome = Command.In(_scratch.Folder, "check", ".", "--format", "json");
        Assert.Equal((2, 1), (outcome.ExitCode, outcome.ErrorLines.Length));
        Assert.Equal("deep/wrong.nc", Assert.Single(outcome.Json.GetProperty("files").EnumerateArray(), file => file.GetProperty("blocks").GetInt32() > 0).GetProperty("path").GetString());
        Assert.Equal(["gone.nc", "self.nc"], outcome.Json.GetProperty("notRead").EnumerateArray().Select(file => file.GetProperty("path").GetString()!).Order());
    }

    [Theory]
    [InlineData("two words.nc")]
    [InlineData("Grüße 板 🔧.nc")]
    [InlineData("'quoted' $HOME & ; #.nc")]
    [InlineData("UPPER.NC")]
    public void Any_name_is_found_and_fixed(string name)
    {
        _scratch.Write("O/" + name, "G21 G90 G17 G54\nG0 X1 Y1\n");
        var outcome = Command.In(_scratch.Folder, "check", "O", "--fix", "--format", "json");
        Assert.Equal("O/" + name, outcome.Json.GetProperty("files")[0].GetProperty("path").GetString());
        Assert.EndsWith("M30\n", File.ReadAllText(_scratch.At("O/" + name)), StringComparison.Ordinal);
    }

    /// <summary>The longest name that Linux takes has 255 bytes (limits.h, NAME_MAX): what is written beside must not need a longer one.</summary>
    [Fact]
    public void The_longest_name_is_fixed_and_nothing_is_left_beside_it()
    {
        var name = new string('n', 252) + ".nc";
        _scratch.Write(name, "G21 G90 G17 G54\nG0 X1 Y1\n");
        Assert.Equal(0, Command.In(_scratch.Folder, "check", name, "--fix").ExitCode);
        Assert.EndsWith("M30\n", File.ReadAllText(_scratch.At(name)), StringComparison.Ordinal);
        Assert.Equal([name], Names());
    }

    [Theory]
    [InlineData("check", "--fix")]
    [InlineData("format", "--write")]
    public void A_read_only_file_is_left_alone(string command, string option)
    {
        var path = _scratch.Write("mine.nc", Untidy.Replace("M30\n", "", StringComparison.Ordinal));
        File.SetAttributes(path, FileAttributes.ReadOnly);
        var outcome = Command.In(_scratch.Folder, command, "mine.nc", option);
        File.SetAttributes(path, FileAttributes.Normal);
        Assert.Equal((2, "nclanguage: mine.nc is read-only: nothing was written to it\n"), (outcome.ExitCode, outcome.Errors));
        Assert.Equal(Untidy.Replace("M30\n", "", StringComparison.Ordinal), File.ReadAllText(path));
        Assert.Equal(["mine.nc"], Names());
    }

    /// <summary>Who may do what with a file is so from the first byte of the new one on.</summary>
    [Fact]
    public void A_file_for_one_pair_of_eyes_stays_so()
    {
        if (OperatingSystem.IsWindows())
            return;
        var path = _scratch.Write("mine.nc", Untidy);
        const UnixFileMode mode = UnixFileMode.UserRead | UnixFileMode.UserWrite;
        File.SetUnixFileMode(path, mode);
        Assert.Equal(0, Command.In(_scratch.Folder, "format", "mine.nc", "--write").ExitCode);
        Assert.Equal(mode, File.GetUnixFileMode(path));
        File.SetUnixFileMode(path, UnixFileMode.UserRead | UnixFileMode.GroupRead | UnixFileMode.OtherRead | UnixFileMode.UserWrite | UnixFileMode.GroupWrite | UnixFileMode.OtherWrite);
        Assert.Equal(0, Command.In(_scratch.Folder, "format", "mine.nc", "--write", "--renumber=5").ExitCode);
        Assert.True(File.GetUnixFileMode(path).HasFlag(UnixFileMode.OtherWrite));
    }

    [Fact]
    public void One_file_that_cannot_be_fixed_keeps_no_other_from_it()
    {
        var path = _scratch.Write("b.nc", "G21 G90 G17 G54\nG0 X1 Y1\n");
        _scratch.Write("a.nc", "G21 G90 G17 G54\nG0 X1 Y1\n");
        _scratch.Write("c.nc", "G21 G90 G17 G54\nG0 X1 Y1\n");
        File.SetAttributes(path, FileAttributes.ReadOnly);
        var outcome = Command.In(_scratch.Folder, "check", ".", "--fix");
        File.SetAttributes(path, FileAttributes.Normal);
        Assert.Equal((2, "nclanguage: not checked: b.nc is read-only: nothing was written to it\n"), (outcome.ExitCode, outcome.Errors));
        Assert.EndsWith("M30\n", File.ReadAllText(_scratch.At("a.nc")), StringComparison.Ordinal);
        Assert.EndsWith("M30\n", File.ReadAllText(_scratch.At("c.nc")), StringComparison.Ordinal);
    }

    /// <summary>A limit on the size of written files stands in for a disk that is full: the write fails amid the file.</summary>
    [Theory]
    [InlineData("format --write part.nc", "")]
    [InlineData("format --write part.nc", "trap '' XFSZ;")]
    [InlineData("view part.nc -o part.html", "")]
    [InlineData("view part.nc -o new.html", "")]
    [InlineData("sheet part.nc -o part.html", "")]
    public void Where_the_disk_is_full_the_old_file_stays_and_no_half_of_a_new_one(string command, string trap)
    {
        if (!OperatingSystem.IsLinux())
            return;
        var text = string.Concat(Enumerable.Repeat("g0   x1\n", 4000));
        _scratch.Write("part.nc", "g21 g90 g17 g54\n" + text + "M30\n");
        _scratch.Write("part.html", "(old)");
        // The signal that comes before the error ends a process that does not see to it. The runtime's own file behind its code would be too large.
        var outcome = Shell($"{trap} ulimit -f 8; export DOTNET_EnableWriteXorExecute=0; nclanguage {command}");
        Assert.Equal((2, 1), (outcome.ExitCode, outcome.ErrorLines.Length));
        Assert.EndsWith(" could not be written: it is larger than a file may become here\n", outcome.Errors, StringComparison.Ordinal);
        Assert.Equal("(old)", File.ReadAllText(_scratch.At("part.html")));
        Assert.Contains(text, File.ReadAllText(_scratch.At("part.nc")), StringComparison.Ordinal);
        Assert.Equal(["part.html", "part.nc"], Names());
    }

    [Fact]
    public void A_demo_that_cannot_be_written_whole_leaves_nothing()
    {
        if (!OperatingSystem.IsLinux())
            return;
        var outcome = Shell("ulimit -f 1; export DOTNET_EnableWriteXorExecute=0; nclanguage demo job");
        Assert.Equal((2, 1), (outcome.ExitCode, outcome.ErrorLines.Length));
        Assert.EndsWith(" could not be written: it is larger than a file may become here\n", outcome.Errors, StringComparison.Ordinal);
        Assert.Empty(Names());
    }

    [Theory]
    [InlineData("explain --all -o pages")]
    [InlineData("trace part.nc > trace.txt")]
    public void A_limit_on_files_is_told_of_what_else_is_written(string command)
    {
        if (!OperatingSystem.IsLinux())
            return;
        _scratch.Write("part.nc", "g21 g90 g17 g54\n" + string.Concat(Enumerable.Repeat("g0   x1\n", 4000)) + "M30\n");
        var outcome = Shell($"ulimit -f 8; export DOTNET_EnableWriteXorExecute=0; nclanguage {command}");
        Assert.Equal((2, 1), (outcome.ExitCode, outcome.ErrorLines.Length));
        Assert.EndsWith(": it is larger than a file may become here\n", outcome.Errors, StringComparison.Ordinal);
        Assert.DoesNotContain(Names(), name => name.StartsWith("pages", StringComparison.Ordinal));
    }

    /// <summary>Whoever may not look into a folder finds nothing in it; one with all rights gives them up for the command.</summary>
    [Theory]
    [InlineData("check shut/part.nc")]
    [InlineData("check shut/within")]
    [InlineData("trace shut/part.nc")]
    [InlineData("format --write shut/part.nc")]
    public void A_program_in_a_folder_that_may_not_be_read_is_told_as_such(string command)
    {
        if (!OperatingSystem.IsLinux())
            return;
        var outcome = Shell($"""
            mkdir -p shut/within; echo M30 | tee shut/part.nc > shut/within/part.nc; chmod 0 shut
            if ls shut > names 2> /dev/null; then unshare --user ls shut > names 2> /dev/null && exit 77; as="unshare --user"; fi
            $as nclanguage {command}; code=$?; chmod 700 shut; exit $code
            """);
        if (outcome.ExitCode is 77 || outcome.Errors.StartsWith("unshare:", StringComparison.Ordinal))
            return;
        Assert.Equal((2, 1), (outcome.ExitCode, outcome.ErrorLines.Length));
        Assert.EndsWith($"{command[(command.LastIndexOf(' ') + 1)..]} may not be read by you\n", outcome.Errors, StringComparison.Ordinal);
    }

    /// <summary>A file system of 256 KB in memory that is filled to the last byte. Where a user may mount none there is the test above alone.</summary>
    [Theory]
    [InlineData("format --write part.nc")]
    [InlineData("check part.nc --fix")]
    [InlineData("view part.nc -o part.html")]
    [InlineData("view part.nc -o new.svg")]
    [InlineData("sheet part.nc -o part.html")]
    [InlineData("sheet part.nc -o new.html")]
    [InlineData("demo job")]
    [InlineData("explain --all -o pages")]
    public void On_a_disk_without_room_nothing_is_lost_and_one_line_says_so(string command)
    {
        if (!OperatingSystem.IsLinux())
            return;
        _scratch.Write("part.nc", "g21 g90 g17 g54\n" + string.Concat(Enumerable.Repeat("g0   x1\n", 4000)));
        _scratch.Write("part.html", "(old)");
        var outcome = Shell($$"""
            unshare --user --map-root-user --mount bash -c '
            mkdir disk && mount -t tmpfs -o size=256k tmpfs disk 2> /dev/null || exit 77
            cp part.nc part.html disk && cd disk; cat /dev/zero > fill 2> /dev/null
            "$0" {{command}}; code=$?
            cmp ../part.nc part.nc && cmp ../part.html part.html && ls -A && exit $code' '{{Command.Executable}}' || exit $?
            """);
        if (outcome.ExitCode is 77 || outcome.Errors.StartsWith("unshare:", StringComparison.Ordinal))
            return;
        Assert.Equal((2, 1), (outcome.ExitCode, outcome.ErrorLines.Length));
        Assert.Matches(@"^nclanguage: (part\.nc|part\.html|new\.svg|new\.html|job/[A-Za-z.-]+|the reference) could not be written( into pages)?: the disk is full$", outcome.ErrorLines[0]);
        Assert.Equal("fill\npart.html\npart.nc\n", outcome.Output);
    }

    [Theory]
    [InlineData("check part.nc")]
    [InlineData("check part.nc --format json")]
    [InlineData("check part.nc --format sarif")]
    [InlineData("trace part.nc --format json")]
    [InlineData("holes part.nc --format csv")]
    public void Output_that_nobody_can_take_ends_with_one_line(string command)
    {
        if (!OperatingSystem.IsLinux())
            return;
        _scratch.Write("part.nc", Samples.WithError);
        var outcome = Shell($"nclanguage {command} > /dev/full");
        Assert.Equal((2, 1), (outcome.ExitCode, outcome.ErrorLines.Length));
    }

    /// <summary>Renaming over what a path of the system stands for would take it away from everybody.</summary>
    [Fact]
    public void A_page_goes_into_a_pipe_as_it_is()
    {
        if (!OperatingSystem.IsLinux())
            return;
        _scratch.Write("part.nc", Samples.Sound);
        var outcome = Shell("mkfifo page.html; cat page.html > copy.txt & nclanguage view part.nc -o page.html; wait; test -p page.html && echo pipe");
        Assert.EndsWith("\npipe\n", outcome.Output, StringComparison.Ordinal);
        Assert.Contains("</html>", File.ReadAllText(_scratch.At("copy.txt")), StringComparison.Ordinal);
    }
}
