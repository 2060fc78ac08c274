using System.Text.Json;
using NcLanguage.Cli.Tests.Support;

namespace NcLanguage.Cli.Tests;

/// <summary>With real files and links: what files of a checked folder lead to is read only within it, in the program's folder, and beside what the command line names. Of what lies elsewhere
/// nothing is shown, neither its text nor whether it is there.</summary>
public sealed class JobFenceTests : IDisposable
{
    // A machine whose travel is so short that the program leaves it: whether it was read shows in the findings. Its mistake would show its text.
    const string ShortMachine = """
        { "base": "iso-mill", "name": "short", "travel": { "x": [-1, 1], "y": [-1, 1], "z": [-1, 1] },
          "hunter2": "swordfish" }
        """;
    const string Program = "G21 G90 G17 G53 G0 X-300\nM30\n";

    readonly Scratch _scratch = new();

    public JobFenceTests()
    {
        _scratch.Write("outside/short.machine.json", ShortMachine);
        _scratch.Write("outside/some.setup.json", """{ "machine": "short.machine.json" }""");
        _scratch.Write("job/part.nc", Program);
    }

    public void Dispose() => _scratch.Dispose();

    [Theory]
    [InlineData("../outside/short.machine.json")]
    [InlineData("./../job/../outside/short.machine.json")]
    [InlineData("{outside}/short.machine.json")]
    [InlineData("link.machine.json")]
    [InlineData("twice.machine.json")]
    [InlineData("linked/short.machine.json")]
    [InlineData("based.machine.json")]
    [InlineData("../outside/not-there.machine.json")]
    public void A_reference_that_leads_out_is_a_finding_at_its_place_and_nothing_is_read(string machine)
    {
        if (OperatingSystem.IsWindows())
            return;
        File.CreateSymbolicLink(_scratch.At("job/link.machine.json"), "../outside/short.machine.json");
        File.CreateSymbolicLink(_scratch.At("job/twice.machine.json"), "link.machine.json");
        Directory.CreateSymbolicLink(_scratch.At("job/linked"), _scratch.At("outside"));
        _scratch.Write("job/based.machine.json", "\n{ \"base\": \"../outside/short.machine.json\" }");
        var isBase = machine == "based.machine.json";
        _scratch.Write("job/part.setup.json", $"\n{{ \"machine\": \"{machine.Replace("{outside}", _scratch.At("outside"), StringComparison.Ordinal)}\" }}");
        foreach (var path in new[] { "job", "job/part.nc", "job/part.setup.json" })
        {
            var outcome = Check(path);
            var refused = Assert.Single(FindingsOf(outcome, isBase ? "job/based.machine.json" : "job/part.setup.json"));
            Assert.Contains("leads outside the program's folder and the folder that is open or checked", refused.GetProperty("message").GetString(), StringComparison.Ordinal);
            Assert.Contains(Path.GetFileName(isBase ? "short.machine.json" : machine), refused.GetProperty("message").GetString(), StringComparison.Ordinal);
            Assert.Equal((2, isBase ? 11 : 14), (refused.GetProperty("line").GetInt32(), refused.GetProperty("column").GetInt32()));
            AssertUnread(outcome);
            Assert.DoesNotContain("travel-exceeded", outcome.Output, StringComparison.Ordinal);
        }
    }

    [Theory]
    [InlineData("text")]
    [InlineData("json")]
    [InlineData("sarif")]
    [InlineData("github")]
    public void A_setup_that_is_a_link_out_is_refused_and_not_shown(string format)
    {
        if (OperatingSystem.IsWindows())
            return;
        _scratch.Write("outside/swordfish.setup.json", """{ "hunter2": "swordfish" }""");
        File.CreateSymbolicLink(_scratch.At("job/part.setup.json"), "../outside/swordfish.setup.json");
        var outcome = Command.In(_scratch.Folder, "check", "job", "--format", format);
        Assert.Contains("part.setup.json leads outside", outcome.Output.Replace("\\u0027", "'", StringComparison.Ordinal), StringComparison.Ordinal);
        AssertUnread(outcome);
    }

    [Fact]
    public void A_program_that_is_a_link_out_of_the_folder_is_checked_only_when_it_is_named()
    {
        if (OperatingSystem.IsWindows())
            return;
        _scratch.Write("outside/secret.txt", "SWORDFISH HUNTER2\n");
        File.CreateSymbolicLink(_scratch.At("job/link.nc"), "../outside/secret.txt");
        File.CreateSymbolicLink(_scratch.At("job/within.nc"), "part.nc");
        var outcome = Command.In(_scratch.Folder, "check", "job");
        Assert.Equal((2, "nclanguage: not checked: job/link.nc is a link out of the folder job, where nothing is read unless it is named\n"), (outcome.ExitCode, outcome.Errors));
        Assert.DoesNotContain("SWORDFISH", outcome.Output, StringComparison.OrdinalIgnoreCase);
        Assert.Contains("2 programs", outcome.Output, StringComparison.Ordinal);
        Assert.Contains("SWORDFISH", Command.In(_scratch.Folder, "check", "job/link.nc").Output, StringComparison.Ordinal);
    }

    /// <summary>Under another name it has another setup, so that it is checked under each.</summary>
    [Theory]
    [InlineData("job", "lib")]
    [InlineData("lib", "job/")]
    [InlineData("job", "libs")]
    public void A_program_that_is_a_link_from_one_named_folder_into_another_is_checked_under_both_names(params string[] folders)
    {
        if (OperatingSystem.IsWindows())
            return;
        _scratch.Write("lib/deep/shared.nc", Program);
        Directory.CreateSymbolicLink(_scratch.At("libs"), "lib");
        File.CreateSymbolicLink(_scratch.At("job/link.nc"), "../lib/deep/shared.nc");
        File.CreateSymbolicLink(_scratch.At("job/out.nc"), "../outside/secret.nc");
        var outcome = Check(folders);
        Assert.Equal(["job/link.nc", "job/part.nc", $"{folders.Single(folder => folder[0] == 'l')}/deep/shared.nc"], Paths(outcome, "files"));
        Assert.Equal(["job/out.nc"], Paths(outcome, "notRead"));
        Assert.Equal(["job/link.nc", "job/out.nc"], Paths(Check("job"), "notRead"));
    }

    /// <summary>Told is what is not searched under any name; a link that leads to what is searched, or in a circle, keeps nothing from being checked.</summary>
    [Theory]
    [InlineData("job", "job/linked", "job/twice")]
    [InlineData("job/", "job/linked", "job/twice")]
    [InlineData("deep", "deep/only")]
    [InlineData("job outside")]
    [InlineData("job job/linked")]
    [InlineData("job/linked outside job")]
    [InlineData(".")]
    public void A_link_to_a_folder_that_is_not_searched_is_told(string folders, params string[] told)
    {
        if (OperatingSystem.IsWindows())
            return;
        _scratch.Write("outside/secret.nc", "SWORDFISH HUNTER2\n");
        Directory.CreateDirectory(_scratch.At("deep"));
        foreach (var (link, target) in new[] { ("job/linked", "../outside"), ("job/twice", "linked"), ("job/ring", "ring"), ("job/up", "."), ("job/.hidden", "../outside"), ("deep/only", "../outside") })
            Directory.CreateSymbolicLink(_scratch.At(link), target);
        var outcome = Check(folders.Split(' '));
        Assert.Equal(told.Select(path => (path, $"{path} is a link to a folder, which is searched only when it is named")),
            told.Length == 0 && !outcome.Json.TryGetProperty("notRead", out _) ? [] : outcome.Json.GetProperty("notRead").EnumerateArray().Select(file => (file.GetProperty("path").GetString()!, file.GetProperty("reason").GetString()!)));
        Assert.Equal(told.Length == 0, outcome.Errors.Length == 0);
        Assert.Equal(told.Length == 0, outcome.Output.Contains("outside/secret.nc", StringComparison.Ordinal) || outcome.Output.Contains("job/linked/secret.nc", StringComparison.Ordinal));
        if (told.Length == 0)
            return;
        Assert.Equal((2, 1), (outcome.ExitCode, outcome.ErrorLines.Length));
        var invocation = Command.In(_scratch.Folder, ["check", .. folders.Split(' '), "--format", "sarif"]).Json.GetProperty("runs")[0].GetProperty("invocations")[0];
        Assert.False(invocation.GetProperty("executionSuccessful").GetBoolean());
        Assert.Equal(told.Length, invocation.GetProperty("toolExecutionNotifications").GetArrayLength());
    }

    /// <summary>A circle of links within what may be read is told as one; one by way of elsewhere is not followed to its end.</summary>
    [Theory]
    [InlineData("round.machine.json", "round.machine.json is a link that leads back to itself")]
    [InlineData("there.machine.json", "there.machine.json is a link that leads back to itself")]
    [InlineData("by.machine.json", "by.machine.json leads outside")]
    [InlineData("../outside/round.machine.json", "round.machine.json leads outside")]
    [InlineData("same.machine.json", "the bases go in a circle: same.machine.json is based on same.machine.json")]
    [InlineData(".", "job is a folder, not a file")]
    [InlineData("./", "job is a folder, not a file")]
    [InlineData("deep/..", "job is a folder, not a file")]
    [InlineData("deep", "deep is a folder, not a file")]
    [InlineData("deep/", "deep is a folder, not a file")]
    [InlineData("home", "home is a folder, not a file")]
    [InlineData("..", "leads outside")]
    public void A_machine_that_is_a_circle_or_a_folder_is_told_as_such_at_its_place(string machine, string told)
    {
        if (OperatingSystem.IsWindows())
            return;
        foreach (var (link, target) in new[]
        {
            ("job/round.machine.json", "round.machine.json"), ("job/there.machine.json", "back.machine.json"), ("job/back.machine.json", "there.machine.json"),
            ("outside/round.machine.json", "round.machine.json"), ("job/by.machine.json", "../outside/back.machine.json"), ("outside/back.machine.json", "../job/by.machine.json"),
            ("job/same.machine.json", "own.machine.json"),
        })
            File.CreateSymbolicLink(_scratch.At(link), target);
        _scratch.Write("job/own.machine.json", """{ "base": "same.machine.json" }""");
        Directory.CreateDirectory(_scratch.At("job/deep"));
        Directory.CreateSymbolicLink(_scratch.At("job/home"), ".");
        _scratch.Write("job/part.setup.json", $"\n{{ \"machine\": \"{machine}\" }}");
        foreach (var path in new[] { "job", "job/part.nc", "job/part.setup.json" })
        {
            var outcome = Check(path);
            var isBase = machine == "same.machine.json";
            var finding = Assert.Single(FindingsOf(outcome, isBase ? "job/same.machine.json" : "job/part.setup.json"));
            Assert.Contains(told, finding.GetProperty("message").GetString(), StringComparison.Ordinal);
            Assert.Equal(isBase ? (1, 11) : (2, 14), (finding.GetProperty("line").GetInt32(), finding.GetProperty("column").GetInt32()));
        }
    }

    [Theory]
    [InlineData(".", "../outside/short.machine.json")]
    [InlineData("job/part.nc", "short.machine.json")]
    [InlineData("job/part.nc", "deep/../short.machine.json")]
    [InlineData("job/part.nc", "within.machine.json")]
    public void What_lies_within_is_read_by_dots_and_by_links(string path, string machine)
    {
        if (OperatingSystem.IsWindows())
            return;
        _scratch.Write("job/short.machine.json", ShortMachine);
        File.CreateSymbolicLink(_scratch.At("job/within.machine.json"), _scratch.At("job/short.machine.json"));
        _scratch.Write("job/part.setup.json", $"{{ \"machine\": \"{machine}\" }}");
        Assert.Contains("travel-exceeded", Check(path).Output, StringComparison.Ordinal);
    }

    /// <summary>What the user names may stand anywhere, and leads to what lies beside it.</summary>
    [Theory]
    [InlineData("job/part.nc", "--setup", "outside/some.setup.json")]
    [InlineData("job/part.nc", "--setup", "link.setup.json")]
    [InlineData("job/part.nc", "--machine", "outside/short.machine.json")]
    [InlineData("job/part.nc", "--machine", "link.machine.json")]
    [InlineData("job/part.nc", "outside/short.machine.json")]
    [InlineData("job", "outside")]
    [InlineData("elsewhere.nc")]
    public void What_is_named_may_stand_anywhere(params string[] arguments)
    {
        if (OperatingSystem.IsWindows())
            return;
        _scratch.Write("outside/other.setup.json", """{ "machine": "outside/short.machine.json" }""");
        File.CreateSymbolicLink(_scratch.At("link.setup.json"), "outside/other.setup.json");
        File.CreateSymbolicLink(_scratch.At("link.machine.json"), "outside/short.machine.json");
        // A program behind a link has two folders, the one where it is named and its own.
        _scratch.Write("outside/part.nc", Program);
        File.CreateSymbolicLink(_scratch.At("elsewhere.nc"), "outside/part.nc");
        _scratch.Write("elsewhere.setup.json", """{ "machine": "outside/short.machine.json" }""");
        _scratch.Write("job/part.setup.json", """{ "machine": "../outside/short.machine.json" }""");
        Assert.Contains("travel-exceeded", Check(arguments).Output, StringComparison.Ordinal);
    }

    /// <summary>A setup for all programs stands above them, and its machine beside it; the program's own setup does not come by that to lead there.</summary>
    [Fact]
    public void A_setup_found_upward_leads_to_what_lies_beside_it()
    {
        _scratch.Write("shop/machines/short.machine.json", ShortMachine);
        _scratch.Write("shop/nc.setup.json", """{ "machine": "machines/short.machine.json" }""");
        _scratch.Write("shop/nc.cutting.json", "{}");
        _scratch.Write("shop/jobs/plate/part.nc", Program);
        foreach (var path in new[] { "shop/jobs/plate", "shop/jobs/plate/part.nc" })
            Assert.Contains("travel-exceeded", Check(path).Output, StringComparison.Ordinal);
        _scratch.Write("shop/jobs/plate/part.setup.json", """{ "machine": "../../machines/short.machine.json" }""");
        Assert.DoesNotContain("travel-exceeded", Check("shop/jobs/plate").Output, StringComparison.Ordinal);
        _scratch.Write("shop/nc.setup.json", """{ "machine": "../outside/short.machine.json" }""");
        File.Delete(_scratch.At("shop/jobs/plate/part.setup.json"));
        var outcome = Check("shop/jobs/plate");
        Assert.DoesNotContain("travel-exceeded", outcome.Output, StringComparison.Ordinal);
        Assert.Contains("leads outside", outcome.Output, StringComparison.Ordinal);
    }

    [Theory]
    [InlineData("sheet", "out.html")]
    [InlineData("view", "out.html")]
    [InlineData("trace", null)]
    [InlineData("holes", null)]
    public void Other_commands_go_no_farther(string command, string? output)
    {
        _scratch.Write("job/part.setup.json", """{ "machine": "../outside/short.machine.json" }""");
        string[] arguments = [command, "job/part.nc", .. output is null ? [] : (string[])["-o", output]];
        var outcome = Command.In(_scratch.Folder, arguments);
        var told = outcome.Output + outcome.Errors + (output is null ? "" : File.ReadAllText(_scratch.At(output)));
        Assert.Contains("short.machine.json leads outside the program", told, StringComparison.Ordinal);
        Assert.DoesNotContain("hunter2", told, StringComparison.Ordinal);
        Assert.DoesNotContain("swordfish", told, StringComparison.Ordinal);
    }

    Outcome Check(params string[] arguments) => Command.In(_scratch.Folder, ["check", .. arguments, "--format", "json"]);

    static JsonElement[] FindingsOf(Outcome outcome, string path) =>
        [.. outcome.Json.GetProperty("files").EnumerateArray().Where(file => file.GetProperty("path").GetString() == path).SelectMany(file => file.GetProperty("findings").EnumerateArray())];

    static IEnumerable<string> Paths(Outcome outcome, string member) => outcome.Json.GetProperty(member).EnumerateArray().Select(file => file.GetProperty("path").GetString()!);

    static void AssertUnread(Outcome outcome)
    {
        Assert.DoesNotContain("hunter2", outcome.Output + outcome.Errors, StringComparison.Ordinal);
        Assert.DoesNotContain("swordfish", (outcome.Output + outcome.Errors).Replace("swordfish.setup.json", "", StringComparison.Ordinal), StringComparison.Ordinal);
    }
}
