using System.Text.Json;
using System.Text.RegularExpressions;
using NcLanguage.Cli.Tests.Support;

namespace NcLanguage.Cli.Tests;

/// <summary>The demonstration job: its sound program has nothing wrong, its faulty one has what its README says, and the fixes mend it.</summary>
public sealed partial class DemoTests : IDisposable
{
    sealed record Told(string Name, string Severity, int Line, int Fixes);

    readonly Scratch _scratch = new();

    public DemoTests() => Assert.Equal(0, Command.In(_scratch.Folder, "demo", "job").ExitCode);

    public void Dispose() => _scratch.Dispose();

    List<Told> Check(string program, params string[] options)
    {
        var outcome = Command.In(_scratch.Folder, ["check", Path.Combine("job", program), "--format", "json", .. options]);
        Assert.Equal("", outcome.Errors);
        return [.. outcome.Json.GetProperty("files").EnumerateArray()
            .Where(file => file.GetProperty("path").GetString()!.EndsWith(program, StringComparison.Ordinal))
            .SelectMany(file => file.GetProperty("findings").EnumerateArray())
            .Select(finding => new Told(
                finding.GetProperty("name").GetString()!,
                finding.GetProperty("severity").GetString()!,
                finding.GetProperty("line").GetInt32(),
                finding.GetProperty("fixes").GetArrayLength()))];
    }

    /// <summary>The list in the job's README: line and name of every planted fault.</summary>
    List<(int Line, string Name)> Planted() =>
        [.. PlantedLine().Matches(File.ReadAllText(_scratch.At("job/README.txt"))).Select(match => (int.Parse(match.Groups[1].Value), match.Groups[2].Value))];

    [Fact]
    public void The_sound_program_has_no_finding() => Assert.Empty(Check("cover-plate.nc"));

    [Fact]
    public void The_sound_program_makes_the_drawing()
    {
        var drawing = Command.In(_scratch.Folder, "holes", Path.Combine("job", "cover-plate.nc"), "--format", "json").Json.GetProperty("drawing");
        Assert.Equal(12, drawing.GetArrayLength());
        Assert.All(drawing.EnumerateArray(), hole => Assert.Equal("drilled", hole.GetProperty("status").GetString()));
    }

    [Fact]
    public void A_dozen_kinds_of_fault_are_planted() => Assert.True(Planted().Select(fault => fault.Name).Distinct().Count() >= 12);

    [Fact]
    public void Every_planted_fault_is_found_at_its_block()
    {
        var found = Check("cover-plate-faulty.nc").Select(told => (told.Line, told.Name)).ToHashSet();
        Assert.All(Planted(), fault => Assert.Contains(fault, found));
    }

    [Fact]
    public void What_is_found_is_what_the_readme_lists()
    {
        var planted = Planted().ToHashSet();
        Assert.All(Check("cover-plate-faulty.nc"), told => Assert.Contains((told.Line, told.Name), planted));
    }

    [Fact]
    public void The_fixes_that_are_certain_leave_no_finding_that_one_of_them_mends()
    {
        var mendable = Command.In(_scratch.Folder, "explain", "--format", "json").Json.GetProperty("entries").EnumerateArray()
            .Where(entry => entry.GetProperty("sections").EnumerateArray().Any(section =>
                section.GetProperty("heading").GetString() == "The fix" && section.GetProperty("text").GetString()!.Contains("Certain:", StringComparison.Ordinal)))
            .Select(entry => entry.GetProperty("name").GetString()!)
            .ToHashSet();
        var before = Check("cover-plate-faulty.nc");
        Assert.Contains(before, told => mendable.Contains(told.Name));
        var left = Check("cover-plate-faulty.nc", "--fix", "--fail-on", "never");
        Assert.DoesNotContain(left, told => mendable.Contains(told.Name));
        Assert.True(left.All(told => before.Exists(old => old.Name == told.Name)), $"New: {string.Join(", ", left)}");
    }

    [Fact]
    public void Setup_and_machine_have_no_mistake()
    {
        var files = Command.In(_scratch.Folder, "check", "job", "--format", "json").Json.GetProperty("files").EnumerateArray();
        Assert.DoesNotContain(files, file => file.GetProperty("path").GetString()!.EndsWith(".json", StringComparison.Ordinal));
    }

    [Fact]
    public void Written_and_checked_at_once_it_tells_the_faults()
    {
        var outcome = Command.In(_scratch.Folder, "demo", "again", "--check");
        Assert.Equal((1, ""), (outcome.ExitCode, outcome.Errors));
        Assert.Contains("hop-hits-obstacle", outcome.Output, StringComparison.Ordinal);
    }

    [GeneratedRegex(@"(?m)^ +line (\d+) +([a-z-]+)")]
    private static partial Regex PlantedLine();
}
