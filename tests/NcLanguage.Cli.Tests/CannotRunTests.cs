using NcLanguage.Cli.Tests.Support;

namespace NcLanguage.Cli.Tests;

/// <summary>What cannot be done ends with 2 and one clear line; exit codes as the contract of the command says.</summary>
public sealed class CannotRunTests : IDisposable
{
    readonly Scratch _scratch = new();

    public CannotRunTests()
    {
        _scratch.Write("sound.nc", Samples.Sound);
        _scratch.Write("other/readme.txt", "no program");
        _scratch.Write("holes.csv", "x,y\n1,2\n");
    }

    public void Dispose() => _scratch.Dispose();

    [Theory]
    [InlineData("no command", "")]
    [InlineData("did you mean check", "chekc")]
    [InlineData("did you mean --format", "check", "sound.nc", "--formt", "json")]
    [InlineData("there is no option -x", "check", "sound.nc", "-x")]
    [InlineData("check needs PATH", "check")]
    [InlineData("demo needs FOLDER", "demo")]
    [InlineData("no file or folder nowhere.nc", "check", "nowhere.nc")]
    [InlineData("no file nowhere.nc", "trace", "nowhere.nc")]
    [InlineData("no file or folder nowhere/at/all", "check", "nowhere/at/all")]
    [InlineData("no name of a page: it has to end in .html", "sheet", "sound.nc", "-o", "sound.nc")]
    [InlineData("no file nowhere.nc", "sheet", "nowhere.nc", "-o", "sheet.html")]
    [InlineData("could not be written", "sheet", "sound.nc", "-o", "no/such/folder/sheet.html")]
    [InlineData("other holds no program", "check", "other")]
    [InlineData("other is a folder", "holes", "other")]
    [InlineData("--format has no choice xml", "check", "sound.nc", "--format", "xml")]
    [InlineData("did you mean warning", "check", "sound.nc", "--fail-on", "warnings")]
    [InlineData("did you mean dwell", "check", "sound.nc", "--reading", "dwel=seconds")]
    [InlineData("no choice \"hours\"", "check", "sound.nc", "--reading", "dwell=hours")]
    [InlineData("form NAME=CHOICE", "trace", "sound.nc", "--reading", "dwell")]
    [InlineData("no file no-mill", "check", "sound.nc", "--machine", "no-mill")]
    [InlineData("no file no.setup.json", "holes", "sound.nc", "--setup", "no.setup.json")]
    [InlineData("nothing is named G999", "explain", "G999")]
    [InlineData("did you mean hop-hits-obstacle", "explain", "hop-hit-obstacle")]
    [InlineData("there is no schema setups; did you mean setup", "schema", "setups")]
    [InlineData("one argument too many", "trace", "sound.nc", "sound.nc")]
    [InlineData("--fix needs a file", "check", "-", "--fix")]
    [InlineData("either --pipe", "serve", "--pipe", "a", "--socket", "1")]
    [InlineData("nobody could be reached", "serve", "--socket", "1")]
    [InlineData("there already", "demo", ".")]
    [InlineData("sound.nc is a file, not a folder", "demo", "sound.nc")]
    [InlineData("sound.nc is a file, not a folder", "explain", "--all", "-o", "sound.nc")]
    [InlineData("sound.nc cannot take the holes: in line 1, expected '{', but found 'G'", "holes", "--import", "holes.csv", "-o", "sound.nc")]
    public void One_line_says_why(string part, params string[] arguments)
    {
        _scratch.Write("cover-plate.nc", "(mine)");
        var outcome = Command.In(_scratch.Folder, [.. arguments.Where(argument => argument.Length > 0)]);
        Assert.Equal(2, outcome.ExitCode);
        Assert.Single(outcome.ErrorLines);
        Assert.StartsWith("nclanguage: ", outcome.Errors, StringComparison.Ordinal);
        Assert.Contains(part, outcome.Errors, StringComparison.Ordinal);
        Assert.Empty(outcome.Output);
        Assert.Equal("(mine)", File.ReadAllText(_scratch.At("cover-plate.nc")));
    }

    [Fact]
    public void A_file_of_2_GB_is_refused_without_being_read()
    {
        using (var file = File.Create(_scratch.At("huge.nc")))
            file.SetLength(2L << 30);
        var outcome = Command.In(_scratch.Folder, "check", "huge.nc");
        Assert.Equal((2, 1), (outcome.ExitCode, outcome.ErrorLines.Length));
        Assert.Contains("larger than 1 GB", outcome.Errors, StringComparison.Ordinal);
    }

    [Fact]
    public void Files_that_can_be_read_are_checked_beside_one_that_cannot()
    {
        using (var file = File.Create(_scratch.At("huge.nc")))
            file.SetLength(3L << 30);
        _scratch.Write("wrong.nc", Samples.WithError);
        var outcome = Command.In(_scratch.Folder, "check", ".", "--format", "json");
        Assert.Equal((2, 1), (outcome.ExitCode, outcome.ErrorLines.Length));
        Assert.Equal("huge.nc", outcome.Json.GetProperty("notRead")[0].GetProperty("path").GetString());
        Assert.Equal(1, outcome.Json.GetProperty("errors").GetInt32());
    }

    [Theory]
    [InlineData("error", 1)]
    [InlineData("warning", 1)]
    [InlineData("note", 1)]
    [InlineData("never", 0)]
    public void Errors_end_with_1_unless_nothing_shall(string failOn, int expected)
    {
        _scratch.Write("wrong.nc", Samples.WithError);
        Assert.Equal(expected, Command.In(_scratch.Folder, "check", "wrong.nc", "--fail-on", failOn).ExitCode);
    }

    [Theory]
    [InlineData("error", 0)]
    [InlineData("warning", 0)]
    [InlineData("note", 1)]
    public void A_note_counts_only_where_it_is_asked_for(string failOn, int expected)
    {
        // The only finding: no setup file stands beside it.
        _scratch.Write("note.nc", "G21 G90 G17 G54\nG0 X0 Y0\nM30\n");
        Assert.Equal(expected, Command.In(_scratch.Folder, "check", "note.nc", "--fail-on", failOn).ExitCode);
    }

    /// <summary>The longest name of an option sets all descriptions in: it leaves them room on a terminal of 120 places.</summary>
    [Theory]
    [InlineData("check")]
    [InlineData("holes")]
    [InlineData("explain")]
    [InlineData("serve")]
    [InlineData("figure", "speed")]
    [InlineData("figure", "feed")]
    public void Help_has_a_narrow_column_of_names(params string[] command)
    {
        var rows = Command.Run([.. command, "--help"]).Output.Split('\n').Where(line => line.StartsWith("  -", StringComparison.Ordinal)).ToList();
        Assert.NotEmpty(rows);
        Assert.All(rows, row => Assert.InRange(row.IndexOf("  ", 2, StringComparison.Ordinal), 2, 60));
    }

    [Theory]
    [InlineData("--help")]
    [InlineData("--version")]
    [InlineData("check", "--help")]
    public void Help_and_version_end_with_0(params string[] arguments)
    {
        var outcome = Command.Run(arguments);
        Assert.Equal((0, ""), (outcome.ExitCode, outcome.Errors));
        Assert.NotEmpty(outcome.Output);
    }
}
