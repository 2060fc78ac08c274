using System.Diagnostics;
using NcLanguage.Cli.Tests.Support;

namespace NcLanguage.Cli.Tests;

/// <summary>Standard input, output and error that are closed, full, or that nobody fills or empties.</summary>
public sealed class StandardStreamTests : IDisposable
{
    readonly Scratch _scratch = new();

    public StandardStreamTests() => _scratch.Write("part.nc", Samples.WithError);

    public void Dispose() => _scratch.Dispose();

    Outcome Shell(string script) =>
        Command.Start("bash", _scratch.Folder, null, ["-c", script.Replace("nclanguage ", $"'{Command.Executable}' ", StringComparison.Ordinal)]);

    [Theory]
    [InlineData("nclanguage check nosuch 2>&-", 2)]
    [InlineData("nclanguage check nosuch 2> /dev/full", 2)]
    [InlineData("nclanguage chekc 2>&-", 2)]
    [InlineData("nclanguage check part.nc 2>&-", 1)]
    public void What_cannot_be_told_on_standard_error_changes_no_exit_code(string script, int expected)
    {
        if (OperatingSystem.IsWindows())
            return;
        Assert.Equal(expected, Shell(script).ExitCode);
    }

    [Theory]
    [InlineData("check part.nc")]
    [InlineData("check part.nc --format json")]
    [InlineData("trace part.nc")]
    [InlineData("trace part.nc --format json")]
    [InlineData("format part.nc")]
    [InlineData("completions bash")]
    [InlineData("grammar vim")]
    [InlineData("schema setup")]
    [InlineData("explain G81")]
    [InlineData("figure spot --help")]
    public void Output_that_is_closed_or_full_is_told_in_one_line(string command)
    {
        if (!OperatingSystem.IsLinux())
            return;
        var closed = Shell($"nclanguage {command} >&-");
        Assert.Equal((2, "nclanguage: the output could not be written: standard output is closed\n"), (closed.ExitCode, closed.Errors));
        var full = Shell($"nclanguage {command} > /dev/full");
        Assert.Equal((2, "nclanguage: the output could not be written: the disk is full\n"), (full.ExitCode, full.Errors));
    }

    [Theory]
    [InlineData("check - <&-", "standard input is closed: there is no program on it")]
    [InlineData("format - <&-", "standard input is closed: there is no program on it")]
    [InlineData("trace /dev/stdin <&-", "/dev/stdin is closed: there is nothing to read")]
    [InlineData("check - < .", "standard input is a folder, not a program")]
    [InlineData("serve <&-", "standard input or output is closed: an editor talks to the server over both")]
    [InlineData("serve >&-", "standard input or output is closed: an editor talks to the server over both")]
    public void Input_that_is_closed_or_a_folder_is_told_as_such(string command, string expected)
    {
        if (!OperatingSystem.IsLinux())
            return;
        var outcome = Shell($"nclanguage {command}");
        Assert.Equal((2, "nclanguage: " + expected + "\n"), (outcome.ExitCode, outcome.Errors));
    }

    /// <summary>Nothing was begun that would be lost, and what is waited for may never come. With time for a slow machine, but far from the two seconds that a
    /// command has to end by itself.</summary>
    [Theory]
    [InlineData("exec nclanguage check - < pipe")]
    [InlineData("exec nclanguage format - < pipe")]
    [InlineData("exec nclanguage trace - < pipe")]
    [InlineData("exec nclanguage holes - < pipe")]
    [InlineData("exec nclanguage trace large.nc > pipe")]
    [InlineData("exec nclanguage check large.nc --format json > pipe")]
    public async Task Ctrl_C_ends_a_command_at_once_that_waits_for_input_or_for_a_reader(string script)
    {
        if (!OperatingSystem.IsLinux())
            return;
        _scratch.Write("large.nc", "G21 G90 G17 G54\n" + string.Concat(Enumerable.Repeat("G999 X1\n", 5_000)) + "M30\n");
        Assert.Equal(0, Shell("mkfifo pipe").ExitCode);
        // Opened for both, so that neither end is waited for when it is opened, and no end of the input ever comes.
        var arguments = new[] { "--default-signal=INT", "bash", "-c", $"exec 9<> pipe; {script.Replace("nclanguage ", $"'{Command.Executable}' ", StringComparison.Ordinal)}" };
        using var process = Process.Start(new ProcessStartInfo("env", arguments) { WorkingDirectory = _scratch.Folder, RedirectStandardError = true })!;
        var errors = process.StandardError.ReadToEndAsync();
        await WaitUntilIdle(process);
        var clock = Stopwatch.StartNew();
        Signals.Send(process, Signals.Interrupt);
        Assert.True(process.WaitForExit(TimeSpan.FromSeconds(10)), "It did not end.");
        Assert.True(clock.Elapsed < TimeSpan.FromSeconds(1.5), $"{clock.Elapsed.TotalSeconds} s");
        Assert.Equal((130, "nclanguage: stopped before it was done\n"), (process.ExitCode, await errors));
    }

    /// <summary>It has worked and works no longer.</summary>
    static async Task WaitUntilIdle(Process process)
    {
        var (last, rests) = (TimeSpan.Zero, 0);
        while (rests < 10)
        {
            await Task.Delay(100);
            process.Refresh();
            var now = process.TotalProcessorTime;
            var rested = now > TimeSpan.Zero && now - last < TimeSpan.FromMilliseconds(20) && process.ProcessName.StartsWith("nclanguage", StringComparison.Ordinal) && Sleeps(process);
            rests = rested ? rests + 1 : 0;
            last = now;
        }
    }

    /// <summary>Whether all its threads wait for something. On a busy machine one that could run may stand still as well: that is no rest.</summary>
    static bool Sleeps(Process process)
    {
        try
        {
            // The state stands behind the name in brackets (proc_pid_stat(5)).
            return Directory.EnumerateDirectories($"/proc/{process.Id}/task").All(thread => File.ReadAllText(Path.Combine(thread, "stat")) is var stat && stat[stat.LastIndexOf(')') + 2] == 'S');
        }
        catch (IOException)
        {
            // A thread has ended just now.
            return false;
        }
    }

    /// <summary>A reader that is slow, and reads, gets the whole of what was found.</summary>
    [Fact]
    public async Task Ctrl_C_leaves_JSON_whole_for_a_slow_reader()
    {
        if (OperatingSystem.IsWindows())
            return;
        await AssertWholeAsync(process => Signals.Send(process, Signals.Interrupt), rest: 2);
    }

    /// <summary>A machine that had no time for the command had none for its reader: what was not taken meanwhile does not tell that nobody reads. SIGSTOP stands for such a machine.</summary>
    [Fact]
    public async Task Ctrl_C_leaves_JSON_whole_where_the_machine_stood_still()
    {
        if (!OperatingSystem.IsLinux())
            return;
        await AssertWholeAsync(
            process =>
            {
                Signals.Send(process, Signals.Interrupt);
                Thread.Sleep(20);
                Signals.Send(process, Signals.Stop);
            },
            rest: 0,
            process =>
            {
                Thread.Sleep(700);
                Signals.Send(process, Signals.Continue);
            });
    }

    /// <summary>Demands that all of a long output comes although the command is interrupted amid it. Where the machine kept the reader so long from its work that the command may take it
    /// for one that does not read, and has, nothing is shown, and it is tried anew.</summary>
    /// <param name="interrupt">Interrupts the command while it waits for its reader.</param>
    /// <param name="rest">Milliseconds that the reader rests behind each piece that it then takes.</param>
    /// <param name="standStill">What happens between, in which the command does nothing.</param>
    async Task AssertWholeAsync(Action<Process> interrupt, int rest, Action<Process>? standStill = null)
    {
        _scratch.Write("large.nc", "G21 G90 G17 G54\n" + string.Concat(Enumerable.Repeat("G999 X1\n", 3_000)) + "M30\n");
        for (var tries = 1; ; tries++)
        {
            using var process = Command.Begin("check", _scratch.At("large.nc"), "--format", "json");
            var errors = process.StandardError.ReadToEndAsync();
            // On a thread of its own: those that tests go on with may be busy with others that wait.
            var reading = await Task.Factory.StartNew(() => Read(process, interrupt, rest, standStill), CancellationToken.None, TaskCreationOptions.LongRunning, TaskScheduler.Default);
            if (await errors != "" && reading.LongestRest > LongRest && tries < MostTries)
                continue;
            using var json = System.Text.Json.JsonDocument.Parse(reading.Output);
            Assert.InRange(json.RootElement.GetProperty("errors").GetInt32(), 3_000, int.MaxValue);
            return;
        }
    }

    /// <summary>Shorter than the time behind which a command that was interrupted takes a reader for one that does not read.</summary>
    static readonly TimeSpan LongRest = TimeSpan.FromMilliseconds(250);

    const int MostTries = 30;

    static (byte[] Output, TimeSpan LongestRest) Read(Process process, Action<Process> interrupt, int rest, Action<Process>? standStill)
    {
        var output = new MemoryStream();
        var buffer = new byte[8192];
        while (output.Length < 100_000)
        {
            var count = process.StandardOutput.BaseStream.Read(buffer);
            Assert.True(count > 0, "It ended before it was interrupted.");
            output.Write(buffer, 0, count);
        }
        var clock = Stopwatch.StartNew();
        interrupt(process);
        var longest = clock.Elapsed;
        standStill?.Invoke(process);
        clock.Restart();
        for (int count; (count = process.StandardOutput.BaseStream.Read(buffer)) > 0;)
        {
            longest = clock.Elapsed > longest ? clock.Elapsed : longest;
            clock.Restart();
            output.Write(buffer, 0, count);
            Thread.Sleep(rest);
        }
        return (output.ToArray(), longest);
    }

    /// <summary>Terminals are left as they were: ESC [ ? 1 h would make their arrow keys send other signs (common practice of terminals).</summary>
    [Theory]
    [InlineData("nclanguage check part.nc")]
    [InlineData("nclanguage check nosuch")]
    [InlineData("nclanguage check - < part.nc")]
    [InlineData("nclanguage format --check part.nc")]
    [InlineData("nclanguage figure spot --help")]
    public void A_terminal_is_left_as_it_was(string command)
    {
        if (!OperatingSystem.IsLinux() || !File.Exists("/usr/bin/script"))
            return;
        _scratch.Write("run.sh", command.Replace("nclanguage ", $"'{Command.Executable}' ", StringComparison.Ordinal));
        Command.Start("script", _scratch.Folder, null, ["-qc", "bash run.sh", "seen"], ("TERM", "xterm-256color"));
        var seen = File.ReadAllText(_scratch.At("seen"));
        Assert.DoesNotContain("\u001b[?1h", seen, StringComparison.Ordinal);
        Assert.DoesNotContain("\u001b=", seen, StringComparison.Ordinal);
    }
}
