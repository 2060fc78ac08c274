using NcLanguage.Cli.Tests.Support;

namespace NcLanguage.Cli.Tests;

/// <summary>Names and paths as a file system takes them and nobody gives them: with line ends and what a terminal obeys, longer than the system opens, gone since they were listed.</summary>
public sealed class OddNameTests : IDisposable
{
    const string Escape = "\u001b";

    readonly Scratch _scratch = new();

    public void Dispose() => _scratch.Dispose();

    /// <summary>As a shell takes it between $' and ' (POSIX.1-2024, 2.2.4): one line, and nothing that a terminal obeys.</summary>
    [Theory]
    [InlineData("new\nline.nc", @"new\x0aline.nc")]
    [InlineData("red" + Escape + "[31m.nc", @"red\x1b[31m.nc")]
    [InlineData("turn\u202egnp.nc", @"turn\xe2\x80\xaegnp.nc")]
    [InlineData("bell\a\u009b2J Grüße.nc", @"bell\x07\xc2\x9b2J Grüße.nc")]
    public void A_name_with_control_characters_is_shown_in_one_line_and_told_as_it_is_in_JSON(string name, string shown)
    {
        if (OperatingSystem.IsWindows())
            return;
        _scratch.Write("O/" + name, Samples.WithError);
        _scratch.Write("O/z.nc", Samples.Sound);
        Assert.StartsWith($"O/{shown}\n\n", Command.In(_scratch.Folder, "check", "O").Output, StringComparison.Ordinal);
        Assert.Equal("O/" + name, Command.In(_scratch.Folder, "check", "O", "--format", "json").Json.GetProperty("files")[0].GetProperty("path").GetString());
        foreach (var command in new[] { "trace", "holes" })
            Assert.StartsWith($"O/{shown}, read for", Command.In(_scratch.Folder, command, "O/" + name).Output, StringComparison.Ordinal);
        Assert.StartsWith($"O/{shown} and O/z.nc make", Command.In(_scratch.Folder, "compare", "O/" + name, "O/z.nc").Output, StringComparison.Ordinal);
        foreach (var command in new[] { "check", "trace", "compare" })
        {
            var outcome = Command.In(_scratch.Folder, [command, "no" + name, .. command == "compare" ? (string[])["O/z.nc"] : []]);
            Assert.Equal((2, 1), (outcome.ExitCode, outcome.ErrorLines.Length));
            Assert.EndsWith($"no{shown}\n", outcome.Errors, StringComparison.Ordinal);
        }
    }

    /// <summary>Whatever is told, of names and of what stands in files.</summary>
    [Fact]
    public void Nothing_that_a_terminal_obeys_is_shown()
    {
        if (OperatingSystem.IsWindows())
            return;
        const string Name = $"q\n{Escape}[31mq";
        _scratch.Write($"{Name}.nc", $"G21 G90 G17 G40 G49 G80 G54\nT1 M6\nS800 M3\nG43 H1 G0 Z50\nG99 G81 X10 Y10 Z-3 R2 F100 ({Escape}[31mRED\u202e)\nM5 \nM98 P77 ({Escape}[31m\nM30\n");
        _scratch.Write($"{Name}.setup.json", """{ "units": "mm", "frame": "G54", "stock": { "min": [0, 0, -20], "max": [100, 100, 0] }, "clearance": 2, "tools": [], "holes": [ { "x": 50, "y": 50, "diameter": 5, "depth": 3 } ] }""");
        _scratch.Write("other.nc", Samples.Sound);
        string[][] commands =
        [
            ["check", $"{Name}.nc"], ["check", "."], ["check", "--fix", "--preview", $"{Name}.nc"], ["trace", $"{Name}.nc"], ["holes", $"{Name}.nc"], ["compare", $"{Name}.nc", "other.nc"],
            ["view", $"{Name}.nc", "-o", $"{Name}.html"], ["sheet", $"{Name}.nc", "-o", $"{Name}-sheet.html"], ["demo", $"{Name}-demo"], ["format", "--check", $"{Name}.nc"], ["explain", Name],
        ];
        foreach (var command in commands)
        {
            var outcome = Command.In(_scratch.Folder, command);
            Assert.NotEmpty(outcome.Output + outcome.Errors);
            Assert.DoesNotContain(outcome.Output + outcome.Errors, sign => (char.IsControl(sign) && sign != '\n') || sign == '\u202e');
            Assert.DoesNotContain("q\n", outcome.Output + outcome.Errors, StringComparison.Ordinal);
        }
    }

    /// <summary>A path of more than 4096 bytes is not opened (limits.h of Linux, PATH_MAX), yet such a folder can stand there.</summary>
    [Fact]
    public void Folders_are_searched_as_deep_as_the_system_opens_them_and_where_it_does_not_is_told()
    {
        if (!OperatingSystem.IsLinux())
            return;
        _scratch.Write($"short/{string.Join('/', Enumerable.Repeat("d", 300))}/part.nc", Samples.Sound);
        Assert.Equal(0, Command.Start("bash", _scratch.Folder, null, ["-c", "mkdir long && cd long && n=$(printf 'd%.0s' {1..100}) && for i in {1..60}; do mkdir $n && cd $n || exit; done; echo M30 > part.nc"]).ExitCode);
        try
        {
            var found = Command.In(_scratch.Folder, "check", "short", "--format", "json");
            Assert.EndsWith("/d/part.nc", Assert.Single(found.Json.GetProperty("files").EnumerateArray()).GetProperty("path").GetString(), StringComparison.Ordinal);
            var outcome = Command.In(_scratch.Folder, "check", "long", "--format", "json");
            Assert.Equal((2, 1), (outcome.ExitCode, outcome.ErrorLines.Length));
            var told = Assert.Single(outcome.Json.GetProperty("notRead").EnumerateArray());
            Assert.StartsWith("long/ddd", told.GetProperty("path").GetString(), StringComparison.Ordinal);
            Assert.EndsWith("cannot be opened: its path is longer than the system takes", told.GetProperty("reason").GetString(), StringComparison.Ordinal);
        }
        finally
        {
            // The runtime that makes the folder empty cannot reach it either.
            Command.Start("rm", _scratch.Folder, null, ["-r", "long"]);
        }
    }

    /// <summary>A file that is gone when its turn comes. While nobody takes what is found in the first ones, which is more than may wait, the last is not begun.</summary>
    [Fact]
    public void A_file_that_vanishes_amid_a_check_is_told_and_the_others_are_checked()
    {
        if (!OperatingSystem.IsLinux())
            return;
        var files = (2 * Environment.ProcessorCount) + 1;
        var wrong = string.Concat(Enumerable.Repeat("G999\n", 60_000));
        for (var i = 0; i < files; i++)
            _scratch.Write($"a{i}.nc", wrong);
        _scratch.Write("z.nc", Samples.Sound);
        var outcome = Command.Start("bash", _scratch.Folder, null, ["-c", $"set -o pipefail; '{Command.Executable}' check . --format json | (head -c 1; rm z.nc; cat)"]);
        Assert.Equal(2, outcome.ExitCode);
        Assert.Equal("nclanguage: not checked: there is no file z.nc\n", outcome.Errors);
        Assert.Equal(files, outcome.Json.GetProperty("files").GetArrayLength());
    }

    /// <summary>Most of it takes no room on the disk; it is not read to be refused.</summary>
    [Fact]
    public void A_file_of_more_than_a_gigabyte_is_refused_at_once()
    {
        using (var file = File.OpenHandle(_scratch.At("large.nc"), FileMode.Create, FileAccess.ReadWrite))
            RandomAccess.SetLength(file, 2_200L << 20);
        foreach (var command in new[] { "check", "trace" })
        {
            var outcome = Command.In(_scratch.Folder, command, "large.nc");
            Assert.Equal((2, "nclanguage: large.nc is larger than 1 GB, too large to be read\n"), (outcome.ExitCode, outcome.Errors));
        }
    }

    [Theory]
    [InlineData("view", "", "the name behind -o must end in .html or .svg")]
    [InlineData("sheet", "", "an empty name is no name of a page: it has to end in .html")]
    [InlineData("view", "folder.html", "folder.html is a folder, not a file: nothing was written")]
    [InlineData("sheet", "folder.html", "folder.html is a folder, not a file: nothing was written")]
    [InlineData("view", "missing/out.html", "missing/out.html could not be written: there is no such folder")]
    public void What_can_be_no_page_is_told_in_one_line(string command, string output, string told)
    {
        _scratch.Write("part.nc", Samples.Sound);
        Directory.CreateDirectory(_scratch.At("folder.html"));
        var outcome = Command.In(_scratch.Folder, command, "part.nc", "-o", output);
        Assert.Equal((2, $"nclanguage: {told}\n"), (outcome.ExitCode, outcome.Errors));
        Assert.Equal(["folder.html", "part.nc"], Directory.GetFileSystemEntries(_scratch.Folder).Select(path => Path.GetFileName(path)).Order(StringComparer.Ordinal));
    }
}
