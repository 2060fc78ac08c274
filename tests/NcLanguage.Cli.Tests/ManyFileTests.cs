using System.Text.Json;
using NcLanguage.Cli.Tests.Support;

namespace NcLanguage.Cli.Tests;

/// <summary><c>check</c> of many programs at once.</summary>
public sealed class ManyFileTests : IDisposable
{
    readonly Scratch _scratch = new();

    public void Dispose() => _scratch.Dispose();

    /// <summary>Some take a thousand times longer than others; each is told as if it were alone.</summary>
    [Theory]
    [InlineData("json")]
    [InlineData("text")]
    [InlineData("github")]
    public void They_are_told_in_the_order_of_their_names_whichever_is_done_first(string format)
    {
        var names = new List<string>();
        for (var i = 0; i < 60; i++)
        {
            names.Add($"{i:00}.nc");
            _scratch.Write(names[i], "G21 G90 G17 G54\n" + string.Concat(Enumerable.Repeat("G0 X1 Y1\n", i % 7 == 0 ? 20_000 : 20)) + "G999\nM30\n");
        }
        var outcome = Command.In(_scratch.Folder, "check", ".", "--format", format);
        Assert.Equal((1, ""), (outcome.ExitCode, outcome.Errors));
        var told = format switch
        {
            "json" => outcome.Json.GetProperty("files").EnumerateArray().Select(file => file.GetProperty("path").GetString()!),
            "text" => outcome.Output.Split('\n').Where(line => line.EndsWith(".nc", StringComparison.Ordinal)),
            _ => outcome.Output.Split('\n').Where(line => line.Contains("NC1008", StringComparison.Ordinal)).Select(line => line.Split("file=")[1].Split(',')[0]),
        };
        Assert.Equal(names, told);
    }

    [Fact]
    public void Setups_with_mistakes_are_told_after_the_programs_once_each()
    {
        foreach (var name in new[] { "a/1.nc", "a/2.nc", "z/1.nc" })
            _scratch.Write(name, Samples.Sound);
        _scratch.Write("a/nc.setup.json", "{ \"tols\": [] }");
        _scratch.Write("z/nc.setup.json", "{ \"tols\": [] }");
        var files = Command.In(_scratch.Folder, "check", ".", "--format", "json").Json.GetProperty("files").EnumerateArray();
        Assert.Equal(["a/1.nc", "a/2.nc", "z/1.nc", "a/nc.setup.json", "z/nc.setup.json"], files.Select(file => file.GetProperty("path").GetString()));
    }

    /// <summary>How far a check is stands on the terminal as long as it takes, and is wiped at its end; whoever collects standard error gets nothing of it. The output is not taken for a while, so that it takes long.</summary>
    [Fact]
    public void How_far_a_check_is_is_shown_on_a_terminal_alone()
    {
        if (!OperatingSystem.IsLinux())
            return;
        for (var i = 0; i < 9; i++)
            _scratch.Write($"{i}.nc", string.Concat(Enumerable.Repeat("G999\n", 20_000)));
        var check = $"'{Command.Executable}' check . --format json | (sleep 4; cat > all.json)";
        var shown = Command.Start("script", _scratch.Folder, null, ["-qec", check, "/dev/null"]).Output;
        Assert.Matches(@"^\r[0-9] of 9 programs, [0-9]+\.[0-9] MB checked", shown);
        Assert.Matches(@"\r +\r$", shown);
        Assert.DoesNotMatch("[^\r0-9A-Za-z., ]", shown);
        Assert.Equal(9, JsonDocument.Parse(File.ReadAllText(_scratch.At("all.json"))).RootElement.GetProperty("files").GetArrayLength());
        var collected = Command.Start("bash", _scratch.Folder, null, ["-c", check]);
        Assert.Equal(("", ""), (collected.Output, collected.Errors));
    }

    /// <summary>JSON and SARIF are whole where the check was stopped, and say that it was.</summary>
    [Theory]
    [InlineData("json", Signals.Interrupt, 130)]
    [InlineData("sarif", Signals.Interrupt, 130)]
    [InlineData("text", Signals.Interrupt, 130)]
    [InlineData("text", Signals.Terminate, 143)]
    public async Task Ctrl_C_ends_a_check_with_what_was_found_until_then(string format, int signal, int expected)
    {
        if (OperatingSystem.IsWindows())
            return;
        // Far more than is checked until it is stopped: one file under many names.
        var path = _scratch.Write("part.txt", "G21 G90 G17 G54\n" + string.Concat(Enumerable.Repeat("G1 X1 Y1 F100\nG1 X2\n", 5_000)) + "M30\n");
        for (var i = 0; i < 20_000; i++)
            File.CreateSymbolicLink(_scratch.At($"{i:00000}.nc"), path);
        using var process = Command.Begin("check", _scratch.Folder, "--format", format);
        var (reading, readingErrors) = (process.StandardOutput.ReadToEndAsync(), process.StandardError.ReadToEndAsync());
        // By then it is at work, however slow the machine.
        while (process.TotalProcessorTime < TimeSpan.FromSeconds(2))
            await Task.Delay(50);
        Signals.Send(process, signal);
        Assert.True(process.WaitForExit(TimeSpan.FromSeconds(30)), "It did not end.");
        var (output, errors) = (await reading, await readingErrors);
        Assert.Equal(expected, process.ExitCode);
        Assert.Matches("^nclanguage: stopped: [0-9,]+ of 20,000 programs were checked\n$", errors);
        var checkedFiles = int.Parse(errors.Split(' ')[2].Replace(",", "", StringComparison.Ordinal), System.Globalization.CultureInfo.InvariantCulture);
        switch (format)
        {
            case "json":
                using (var json = JsonDocument.Parse(output))
                {
                    Assert.Equal(checkedFiles, json.RootElement.GetProperty("files").GetArrayLength());
                    Assert.Equal(20_000 - checkedFiles, json.RootElement.GetProperty("leftOut").GetInt32());
                }
                break;
            case "sarif":
                using (var json = JsonDocument.Parse(output))
                    Assert.False(json.RootElement.GetProperty("runs")[0].GetProperty("invocations")[0].GetProperty("executionSuccessful").GetBoolean());
                break;
            default:
                Assert.Contains($"The check was stopped: {20_000 - checkedFiles} programs not checked.", output, StringComparison.Ordinal);
                break;
        }
    }
}
