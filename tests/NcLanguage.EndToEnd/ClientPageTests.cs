using System.Runtime.Versioning;
using System.Text.Json;
using System.Text.RegularExpressions;
using System.Xml.Linq;
using NcLanguage.EndToEnd.Support;

namespace NcLanguage.EndToEnd;

/// <summary>The pages of the clients: each is linked, has what people need, and the files it names are there and say what they must.</summary>
[SupportedOSPlatform("linux")]
public sealed partial class ClientPageTests
{
    static readonly string[] Endings = ["nc", "cnc", "tap", "iso", "eia", "ncp"];

    [Fact]
    public void Every_client_has_a_page_that_the_readme_links_to_with_the_cautions()
    {
        var readme = File.ReadAllText(Repository.At("README.md"));
        var clients = Directory.GetDirectories(Repository.At("editor-clients")).Select(folder => Path.GetFileName(folder)!).ToList();
        Assert.True(clients.Count >= 8);
        Assert.All(clients, client =>
        {
            Assert.Contains($"(editor-clients/{client}/README.md)", readme, StringComparison.Ordinal);
            var page = File.ReadAllText(Repository.At("editor-clients", client, "README.md"));
            Assert.Contains("## A check is no proof", page, StringComparison.Ordinal);
            Assert.Contains("single block", page, StringComparison.Ordinal);
            Assert.Contains("## Install", page, StringComparison.Ordinal);
            Assert.Contains("## What works, and how that is known", page, StringComparison.Ordinal);
        });
    }

    /// <summary>The commands of the pages of editors that the tests cannot run: they put the files where the pages say.</summary>
    [Theory]
    [InlineData("kate", ".config/kate/lspclient/settings.json", ".local/share/org.kde.syntax-highlighting/syntax/nc.xml")]
    [InlineData("helix", ".config/helix/languages.toml")]
    [InlineData("sublime", ".config/sublime-text/Packages/User/LSP.sublime-settings", ".config/sublime-text/Packages/NcLanguage/nc.sublime-syntax")]
    [InlineData("zed", ".config/zed/tasks.json")]
    public async Task The_commands_of_the_page_put_its_files_in_place(string client, params string[] files)
    {
        using var folder = new ScratchFolder();
        var commands = ClientPage.Code(client, "sh");
        Assert.StartsWith("git clone REPOSITORY ", commands, StringComparison.Ordinal);
        // The repository is here already. What a package manager makes beforehand is made.
        Directory.CreateDirectory(folder.At(".config", "sublime-text", "Packages", "User"));
        var run = await CommandLine.RunAsync(["bash", "-ec", commands[commands.IndexOf('\n', StringComparison.Ordinal)..]], TimeSpan.FromMinutes(1),
            new Dictionary<string, string> { ["HOME"] = folder.Path });
        Assert.True(run.ExitCode == 0, run.Output + run.Errors);
        Assert.All(files, file => Assert.True(new FileInfo(folder.At(file)) is { Exists: true, Length: > 0 }, file));
    }

    [Fact]
    public void Kate_s_settings_start_the_server_for_the_mode_that_its_definition_names()
    {
        var definition = XDocument.Load(Repository.At("editor-clients", "kate", "nc.xml"));
        var language = definition.Root!;
        Assert.Equal(Endings.Select(ending => "*." + ending), language.Attribute("extensions")!.Value.Split(';'));
        var server = JsonElement.Parse(File.ReadAllText(Repository.At("editor-clients", "kate", "settings.json"))).GetProperty("servers").GetProperty("nc");
        Assert.Equal(["nclanguage", "serve"], server.GetProperty("command").EnumerateArray().Select(word => word.GetString()));
        Assert.Matches(server.GetProperty("highlightingModeRegex").GetString()!, language.Attribute("name")!.Value);
        var styles = definition.Descendants("itemData").Select(item => item.Attribute("name")!.Value).ToList();
        Assert.Equal(styles.Count, styles.Distinct().Count());
        var used = definition.Descendants().Where(element => element.Name.LocalName is "RegExpr" or "context").Select(element => element.Attribute("attribute")!.Value);
        Assert.Subset(styles.ToHashSet(), used.ToHashSet());
        Assert.All(definition.Descendants("RegExpr"), rule => Assert.NotNull(new Regex(rule.Attribute("String")!.Value)));
    }

    [Theory]
    [InlineData("helix", "languages.toml", "command = \"nclanguage\"\nargs = [\"serve\"]")]
    [InlineData("sublime", "LSP.sublime-settings", "\"command\": [\"nclanguage\", \"serve\"]")]
    public void Settings_start_the_server(string client, string file, string expected) =>
        Assert.Contains(expected, File.ReadAllText(Repository.At("editor-clients", client, file)), StringComparison.Ordinal);

    [Theory]
    [InlineData("helix", "languages.toml")]
    [InlineData("sublime", "nc.sublime-syntax")]
    public void Settings_name_the_endings_of_programs(string client, string file)
    {
        var text = File.ReadAllText(Repository.At("editor-clients", client, file));
        Assert.Equal(Endings, Lists().Matches(text).Select(match => match.Groups[1].Value.Split(',').Select(word => word.Trim(' ', '"'))).First());
    }

    [Fact]
    public async Task The_task_for_zed_checks_a_program()
    {
        using var folder = new ScratchFolder();
        var task = JsonElement.Parse(File.ReadAllText(Repository.At("editor-clients", "zed", "tasks.json")))[0];
        var run = await CommandLine.RunAsync(["bash", "-c", task.GetProperty("command").GetString()!], TimeSpan.FromMinutes(1), new Dictionary<string, string>
        {
            ["PATH"] = ClientPage.PathWithServer(folder), ["ZED_FILE"] = folder.Write("two holes.nc", "G21 G90 G17 G54\nG999\nM30\n"),
        });
        Assert.Equal(1, run.ExitCode);
        Assert.Contains("G999", run.Output, StringComparison.Ordinal);
    }

    [GeneratedRegex(@"(?:file-types = |file_extensions: )\[([^\]{]+)\]")]
    private static partial Regex Lists();
}
