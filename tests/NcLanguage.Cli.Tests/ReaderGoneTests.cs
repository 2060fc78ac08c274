using NcLanguage.Cli.Tests.Support;

namespace NcLanguage.Cli.Tests;

/// <summary>Real pipes whose reader has seen enough. POSIX.1-2017, write(): the writer gets SIGPIPE and EPIPE; a shell tells of a command that a signal ends as 128 and the signal's number
/// (bash manual, "Exit Status"), and SIGPIPE is 13.</summary>
public sealed class ReaderGoneTests : IDisposable
{
    const int Ended = 128 + 13;

    readonly Scratch _scratch = new();

    public void Dispose() => _scratch.Dispose();

    Outcome Shell(string script) =>
        Command.Start("bash", _scratch.Folder, null, ["-c", script.Replace("nclanguage ", $"'{Command.Executable}' ", StringComparison.Ordinal)]);

    [Theory]
    [InlineData("check part.nc")]
    [InlineData("check part.nc --format json")]
    [InlineData("check part.nc --format sarif")]
    [InlineData("check part.nc --format github")]
    [InlineData("trace part.nc")]
    [InlineData("trace part.nc --format json")]
    [InlineData("holes part.nc")]
    [InlineData("holes part.nc --format csv")]
    [InlineData("holes part.nc --format json")]
    [InlineData("format part.nc")]
    [InlineData("compare part.nc part.nc --format json")]
    [InlineData("sheet part.nc -o out.html")]
    [InlineData("view part.nc -o out.html")]
    public void A_command_ends_without_a_word_as_others_do(string command)
    {
        if (OperatingSystem.IsWindows())
            return;
        // More than a pipe holds, of all that is told.
        _scratch.Write("part.nc", "G21 G90 G17 G54\nT1 M6\nS900 M3\nG0 X0 Y0\nG43 H1 Z50\nG99 G81 X1 Y1 Z-5 R2 F100\n" + string.Concat(Enumerable.Repeat("X1 Y2\nX2 Y1\n", 3000)) + "G80\nG999\nM30\n");
        // One that reads nothing: what is told on the screen of a page is short.
        File.CreateSymbolicLink(_scratch.At("out.html"), "/dev/stdout");
        var outcome = Shell($"set -o pipefail; (sleep 0.2; nclanguage {command}) | true; echo ${{PIPESTATUS[0]}}");
        Assert.Equal(($"{Ended}\n", ""), (outcome.Output, outcome.Errors));
    }

    [Theory]
    [InlineData("text")]
    [InlineData("json")]
    public void One_that_reads_the_beginning_gets_it(string format)
    {
        if (OperatingSystem.IsWindows())
            return;
        _scratch.Write("part.nc", "G21 G90 G17 G54\n" + string.Concat(Enumerable.Repeat("G999 X1\n", 3000)) + "M30\n");
        var outcome = Shell($"nclanguage check part.nc --format {format} | head -c 7");
        Assert.Equal((format == "text" ? "part.nc" : "{\"files", ""), (outcome.Output, outcome.Errors));
    }

    /// <summary>How far a check of a folder went shows in the programs that it mended: each of them has its fix.</summary>
    [Fact]
    public void A_check_of_a_folder_goes_no_farther_and_leaves_each_program_whole()
    {
        if (OperatingSystem.IsWindows())
            return;
        const int Programs = 2000;
        for (var i = 0; i < Programs; i++)
            _scratch.Write($"job/{i:0000}.nc", "G21 G90 G17 G54\nG0 X10\n");
        var outcome = Shell("nclanguage check job --fix | head -1; exit ${PIPESTATUS[0]}");
        Assert.Equal((Ended, "job/0000.nc\n", ""), (outcome.ExitCode, outcome.Output, outcome.Errors));
        string[] texts = [.. Directory.GetFiles(_scratch.At("job")).Select(File.ReadAllText)];
        Assert.Equal(Programs, texts.Length);
        Assert.InRange(texts.Count(text => text == "G21 G90 G17 G54\nG0 X10\nM30\n"), 1, Programs / 2);
        Assert.All(texts, text => Assert.True(text is "G21 G90 G17 G54\nG0 X10\nM30\n" or "G21 G90 G17 G54\nG0 X10\n"));
    }

    /// <summary>What is told beside the output goes nowhere then, and that changes nothing.</summary>
    [Fact]
    public void Nobody_at_standard_error_is_no_reason_to_end()
    {
        if (OperatingSystem.IsWindows())
            return;
        _scratch.Write("part.nc", Samples.Sound);
        _scratch.Write("part.setup.json", "{ \"no\": 1 }");
        var outcome = Shell("{ (sleep 0.2; nclanguage holes part.nc 2>&1 >&3; echo $? >&3) | true; } 3>&1");
        Assert.EndsWith("\n0\n", outcome.Output, StringComparison.Ordinal);
    }
}
