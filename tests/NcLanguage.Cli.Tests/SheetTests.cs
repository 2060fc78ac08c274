using NcLanguage.Cli.Tests.Support;

namespace NcLanguage.Cli.Tests;

/// <summary><c>sheet</c>: the page is written, over one that is there, and what goes wrong leaves the old one.</summary>
public sealed class SheetTests : IDisposable
{
    readonly Scratch _scratch = new();

    public void Dispose() => _scratch.Dispose();

    [Fact]
    public void The_page_of_the_demonstration_is_written()
    {
        Command.In(_scratch.Folder, "demo", "job");
        var outcome = Command.In(_scratch.Folder, "sheet", "job/cover-plate.nc", "-o", "sheet.html");
        Assert.Equal((0, ""), (outcome.ExitCode, outcome.Errors));
        Assert.Contains("sheet.html written", outcome.Output, StringComparison.Ordinal);
        Assert.Contains("A check is no proof", outcome.Output, StringComparison.Ordinal);
        var page = File.ReadAllText(_scratch.At("sheet.html"));
        Assert.Contains("Setup sheet: cover-plate.nc", page, StringComparison.Ordinal);

        // Another program over it; its errors make the exit code only where that is asked for.
        Assert.Equal(0, Command.In(_scratch.Folder, "sheet", "job/cover-plate-faulty.nc", "-o", "sheet.html").ExitCode);
        Assert.Contains("Setup sheet: cover-plate-faulty.nc", File.ReadAllText(_scratch.At("sheet.html")), StringComparison.Ordinal);
        Assert.Equal(1, Command.In(_scratch.Folder, "sheet", "job/cover-plate-faulty.nc", "-o", "sheet.html", "--fail-on", "error").ExitCode);
        Assert.Equal(2, Command.In(_scratch.Folder, "sheet", "job/nowhere.nc", "-o", "sheet.html").ExitCode);
        Assert.Contains("Setup sheet: cover-plate-faulty.nc", File.ReadAllText(_scratch.At("sheet.html")), StringComparison.Ordinal);
    }

    [Fact]
    public void The_trace_ends_with_operations_levels_and_closest_approaches()
    {
        Command.In(_scratch.Folder, "demo", "job");
        var lines = Command.In(_scratch.Folder, "trace", "job/cover-plate.nc").Output.Split('\n').ToList();
        var operations = lines.FindIndex(line => line.StartsWith("   op tool", StringComparison.Ordinal));
        var levels = lines.FindIndex(line => line.StartsWith("Return levels: 6 of 31 traverses", StringComparison.Ordinal));
        var approaches = lines.FindIndex(line => line.StartsWith("Closest approaches", StringComparison.Ordinal));
        Assert.True(0 < operations && operations < levels && levels < approaches, string.Join(' ', operations, levels, approaches));
        Assert.EndsWith("SPOT ALL HOLES", lines[operations + 1], StringComparison.Ordinal);
        // The traverses over the clamps of 22 run at the initial level of 30.
        Assert.StartsWith("8 mm  clamp A, line 13, T1", lines[approaches + 1].Trim(), StringComparison.Ordinal);
    }
}
