using System.Runtime.Versioning;
using System.Text.Json;
using System.Text.RegularExpressions;
using System.Xml.Linq;
using NcLanguage.EndToEnd.Support;

namespace NcLanguage.EndToEnd;

/// <summary>What people install: the tool package, the hook and the steps for a build server, by the commands that their pages give.</summary>
[SupportedOSPlatform("linux")]
public sealed partial class DeliveryTests
{
    static readonly TimeSpan Limit = TimeSpan.FromMinutes(10);

    static string Version => XDocument.Load(Repository.At("Directory.Build.props")).Descendants("VersionPrefix").Single().Value;

    [Fact]
    public async Task The_tool_package_is_installed_from_a_folder_and_checks_programs_as_the_build_server_would()
    {
        using var folder = new ScratchFolder();
        // As the page has it, but of what was built with these tests, and to another folder.
        var page = ClientPage.Code("ci", "sh");
        Assert.Equal("dotnet pack src/NcLanguage.Cli -c Release -o artifacts/packages\n", page);
        var configuration = new DirectoryInfo(AppContext.BaseDirectory).Parent!.Name;
        await CommandLine.OutputAsync(
            ["dotnet", "pack", Repository.At("src", "NcLanguage.Cli"), "-c", configuration, "--no-build", "-o", folder.At("packages"), "-nodeReuse:false", "--nologo"], Limit);
        Assert.True(File.Exists(folder.At("packages", $"NcLanguage.{Version}.nupkg")), "The package has another version than Directory.Build.props.");
        await CommandLine.OutputAsync(ServerCommand.With("demo", folder.At("demo")), Limit);

        var commands = Runs().Matches(await File.ReadAllTextAsync(Repository.At("editor-clients", "ci", "check-programs.yaml"))).Select(match => match.Groups[1].Value).ToList();
        Assert.Equal(2, commands.Count);
        var home = new Dictionary<string, string> { ["DOTNET_CLI_HOME"] = folder.At("home"), ["NUGET_PACKAGES"] = folder.At("nuget") };
        var install = await CommandLine.RunAsync(["bash", "-c", commands[0]], Limit, home, folder.Path);
        Assert.True(install.ExitCode == 0, install.Output + install.Errors);
        var check = await CommandLine.RunAsync(["bash", "-c", commands[1]], Limit, home, folder.Path);
        // The demonstration has errors: the step fails, and what it wrote is there to be shown.
        Assert.True(check.ExitCode == 1, check.Output + check.Errors);
        var log = JsonElement.Parse(await File.ReadAllTextAsync(folder.At("nclanguage.sarif")));
        Assert.Equal("2.1.0", log.GetProperty("version").GetString());
        Assert.Equal(Version, log.GetProperty("runs")[0].GetProperty("tool").GetProperty("driver").GetProperty("version").GetString());
        Assert.True(log.GetProperty("runs")[0].GetProperty("results").GetArrayLength() > 5);
        Assert.Equal(Version, (await CommandLine.OutputAsync([folder.At(".tools", "nclanguage"), "--version"], Limit)).Trim());
    }

    [EditorFact(Editor.Workbench)]
    public async Task The_extension_has_the_same_version()
    {
        using var folder = new ScratchFolder();
        var vsix = folder.At("versioned.vsix");
        await CommandLine.OutputAsync(["node", Repository.At("editor-clients", "vscode", "package.mjs"), "--server", ServerCommand.Executable, "--out", vsix], Limit);
        using var package = System.IO.Compression.ZipFile.OpenRead(vsix);
        using var manifest = await JsonDocument.ParseAsync(package.GetEntry("extension/package.json")!.Open());
        Assert.Equal(Version, manifest.RootElement.GetProperty("version").GetString());
    }

    [Fact]
    public async Task The_hook_stops_a_commit_with_an_error_and_lets_a_mended_one_pass()
    {
        using var folder = new ScratchFolder();
        Directory.CreateDirectory(folder.At("job"));
        var environment = new Dictionary<string, string>
        {
            ["PATH"] = ClientPage.PathWithServer(folder), ["HOME"] = folder.Path, ["GIT_CONFIG_NOSYSTEM"] = "1",
            ["GIT_AUTHOR_NAME"] = "Setter", ["GIT_AUTHOR_EMAIL"] = "setter@example.org", ["GIT_COMMITTER_NAME"] = "Setter", ["GIT_COMMITTER_EMAIL"] = "setter@example.org",
        };
        async Task<CommandResult> Run(string command) => await CommandLine.RunAsync(["bash", "-c", command], Limit, environment, folder.At("job"));
        async Task Do(string command)
        {
            var run = await Run(command);
            Assert.True(run.ExitCode == 0, $"{command}: {run.Output}{run.Errors}");
        }

        await Do("git init -q");
        await Do(ClientPage.Code("pre-commit", "sh"));
        folder.Write("job/two holes.nc", "G21 G90 G17 G54\nG999\nM30\n");
        folder.Write("job/notes.txt", "no program\n");
        await Do("git add notes.txt && git commit -q -m notes");
        await Do("git add .");
        var stopped = await Run("git commit -q -m faulty");
        Assert.NotEqual(0, stopped.ExitCode);
        Assert.Contains("G999", stopped.Output + stopped.Errors, StringComparison.Ordinal);

        // What is staged counts, not what lies in the folder.
        folder.Write("job/two holes.nc", "G21 G90 G17 G54\nM30\n");
        Assert.NotEqual(0, (await Run("git commit -q -m 'still faulty'")).ExitCode);
        await Do("git add . && git commit -q -m mended");

        // A setup file that no program can be checked with stops the commit as well.
        folder.Write("job/nc.setup.json", "{ \"units\": \"furlong\" }\n");
        await Do("git add .");
        var setup = await Run("git commit -q -m setup");
        // Git tells what a hook writes on its own stream of errors.
        Assert.Contains("furlong", setup.Output + setup.Errors, StringComparison.Ordinal);
        Assert.Equal("2", (await Run("git rev-list --count HEAD")).Output.Trim());
    }

    [Fact]
    public async Task The_hook_checks_the_callers_of_what_changes_or_is_deleted()
    {
        using var folder = new ScratchFolder();
        Directory.CreateDirectory(folder.At("job"));
        var environment = new Dictionary<string, string>
        {
            ["PATH"] = ClientPage.PathWithServer(folder), ["HOME"] = folder.Path, ["GIT_CONFIG_NOSYSTEM"] = "1",
            ["GIT_AUTHOR_NAME"] = "Setter", ["GIT_AUTHOR_EMAIL"] = "setter@example.org", ["GIT_COMMITTER_NAME"] = "Setter", ["GIT_COMMITTER_EMAIL"] = "setter@example.org",
        };
        async Task<CommandResult> Run(string command) => await CommandLine.RunAsync(["bash", "-c", command], Limit, environment, folder.At("job"));
        async Task<string> Stopped(string command)
        {
            var run = await Run(command);
            Assert.NotEqual(0, run.ExitCode);
            return run.Output + run.Errors;
        }
        async Task Do(string command)
        {
            var run = await Run(command);
            Assert.True(run.ExitCode == 0, $"{command}: {run.Output}{run.Errors}");
        }

        await Do("git init -q");
        await Do(ClientPage.Code("pre-commit", "sh"));
        const string caller = "G21 G90 G17 G54\nM98 P1200\nM30\n";
        folder.Write("job/plates/two holes.nc", caller);
        folder.Write("job/plates/O1200.nc", "O1200\nG90\nM99\n");
        folder.Write("job/else.nc", "G21 G90 G17 G54\nM30\n");
        await Do("git add . && git commit -q -m job");

        // The caller is not staged, and is told all the same.
        Assert.Contains("two holes.nc", await Stopped("git rm -q plates/O1200.nc && git commit -q -m deleted"), StringComparison.Ordinal);
        await Do("git reset -q --hard");
        Assert.Contains("two holes.nc", await Stopped("git mv plates/O1200.nc plates/O1300.nc && git commit -q -m renamed"), StringComparison.Ordinal);
        await Do("git reset -q --hard");
        // What the called program does wrong shows where it is called.
        folder.Write("job/plates/O1200.nc", "O1200\nG1 X5\nM99\n");
        Assert.Contains("two holes.nc", await Stopped("git add . && git commit -q -m changed"), StringComparison.Ordinal);
        await Do("git reset -q --hard");
        // Nobody calls it: there is nothing to check, and nothing stops.
        await Do("git rm -q else.nc && git commit -q -m 'one less'");
        await Do("git rm -q -r plates && git commit -q -m 'all gone'");
    }

    [GeneratedRegex(@"^\s+run: (.+)$", RegexOptions.Multiline)]
    private static partial Regex Runs();
}
