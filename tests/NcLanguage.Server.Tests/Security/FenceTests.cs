using System.Text.Json.Nodes;
using NcLanguage.Machine.Files;

namespace NcLanguage.Server.Tests.Security;

/// <summary>With real files and links: what lies outside the workspace and the folders of what is open is not read, by whatever way it is named.</summary>
public sealed class FenceTests : IDisposable
{
    // A machine whose travel is so short that the program leaves it: whether it was read shows in the findings.
    const string ShortMachine = """{ "base": "iso-mill", "name": "short", "travel": { "x": [-1, 1], "y": [-1, 1], "z": [-1, 1] } }""";
    const string Program = "G21 G90 G17 G53 G0 X-300\nM30\n";
    const string Watching = """{"workspace":{"didChangeWatchedFiles":{"dynamicRegistration":true}},"window":{"showMessage":{}}}""";

    readonly string _folder = Directory.CreateTempSubdirectory("nclanguage-").FullName;
    readonly string _workspace;
    readonly string _outside;

    public FenceTests()
    {
        _workspace = Directory.CreateDirectory(Path.Combine(_folder, "workspace")).FullName;
        _outside = Directory.CreateDirectory(Path.Combine(_folder, "outside")).FullName;
        File.WriteAllText(Path.Combine(_outside, "short.machine.json"), ShortMachine);
        File.WriteAllText(Path.Combine(_outside, "nc.machine.json"), ShortMachine);
        File.WriteAllText(Path.Combine(_outside, "some.setup.json"), """{ "machine": "short.machine.json" }""");
    }

    public void Dispose() => Directory.Delete(_folder, recursive: true);

    [Fact]
    public async Task A_machine_within_the_workspace_is_read_by_dots_and_by_links()
    {
        File.WriteAllText(Path.Combine(_workspace, "short.machine.json"), ShortMachine);
        Directory.CreateDirectory(Path.Combine(_workspace, "jobs"));
        File.CreateSymbolicLink(Path.Combine(_workspace, "jobs", "link.machine.json"), Path.Combine(_workspace, "short.machine.json"));
        foreach (var machine in new[] { "../short.machine.json", "link.machine.json" })
        {
            Setup("jobs/part.setup.json", machine);
            Assert.Contains("travel", string.Join(' ', await NamesOfAsync("jobs/part.nc")), StringComparison.Ordinal);
        }
    }

    [Theory]
    [InlineData("../outside/short.machine.json")]
    [InlineData("./../workspace/../outside/short.machine.json")]
    [InlineData("{outside}/short.machine.json")]
    [InlineData("link.machine.json")]
    [InlineData("linked/short.machine.json")]
    [InlineData("twice.machine.json")]
    public async Task A_machine_outside_is_not_read_and_that_is_told(string machine)
    {
        File.CreateSymbolicLink(Path.Combine(_workspace, "link.machine.json"), Path.Combine(_outside, "short.machine.json"));
        File.CreateSymbolicLink(Path.Combine(_workspace, "twice.machine.json"), "link.machine.json");
        Directory.CreateSymbolicLink(Path.Combine(_workspace, "linked"), _outside);
        Setup("part.setup.json", machine.Replace("{outside}", _outside, StringComparison.Ordinal));
        var told = await SetupFindingAsync("part.nc", "part.setup.json");
        Assert.Contains("leads outside the program's folder and the folder that is open", (string?)told["message"], StringComparison.Ordinal);
        Assert.DoesNotContain(await NamesOfAsync("part.nc"), name => name!.Contains("travel", StringComparison.Ordinal));
    }

    [Theory]
    [InlineData("round.machine.json", "round.machine.json is a link that leads back to itself")]
    [InlineData(".", "workspace is a folder, not a file")]
    public async Task A_link_that_leads_back_to_itself_and_a_folder_are_told_as_such(string machine, string why)
    {
        File.CreateSymbolicLink(Path.Combine(_workspace, "round.machine.json"), "round.machine.json");
        Setup("part.setup.json", machine);
        Assert.Contains(why, (string?)(await SetupFindingAsync("part.nc", "part.setup.json"))["message"], StringComparison.Ordinal);
    }

    [Fact]
    public async Task A_setup_that_is_a_link_out_is_not_read_and_that_is_told()
    {
        File.CreateSymbolicLink(Path.Combine(_workspace, "part.setup.json"), Path.Combine(_outside, "some.setup.json"));
        var told = await SetupFindingAsync("part.nc", "part.setup.json");
        Assert.Contains("leads outside", (string?)told["message"], StringComparison.Ordinal);
    }

    [Fact]
    public async Task Nothing_is_looked_for_above_a_program_outside_of_the_workspace()
    {
        var deep = Directory.CreateDirectory(Path.Combine(_outside, "deep")).FullName;
        Assert.DoesNotContain(await NamesOfAsync(Path.Combine(deep, "part.nc")), name => name!.Contains("travel", StringComparison.Ordinal));
        Assert.Contains(await NamesOfAsync(Path.Combine(_outside, "part.nc")), name => name!.Contains("travel", StringComparison.Ordinal));
    }

    [Theory]
    [InlineData("machine", "short.machine.json")]
    [InlineData("setup", "some.setup.json")]
    public async Task A_setting_does_not_lead_out_and_that_is_told_to_the_user_and_not_to_the_log(string setting, string file)
    {
        var path = Path.Combine(_outside, file);
        await using var client = await InitializedAsync($$""","initializationOptions":{"{{setting}}":{{TestClient.Quote(path)}}}""");
        Assert.DoesNotContain(await NamesOfAsync("part.nc", client), name => name!.Contains("travel", StringComparison.Ordinal));
        var told = await client.NextAsync("window/showMessage");
        Assert.Contains("leads outside the program's folder", (string?)told["message"], StringComparison.Ordinal);
        Assert.DoesNotContain(file, client.ErrorLog.ToString(), StringComparison.Ordinal);
        Assert.DoesNotContain(client.Log, message => (string?)message["method"] == "window/logMessage");
    }

    [Fact]
    public async Task Definition_does_not_tell_whether_a_file_outside_is_there()
    {
        var uri = new Uri(Setup("part.setup.json", "../outside/short.machine.json")).AbsoluteUri;
        await using var client = await InitializedAsync();
        await client.OpenAsync(uri, """{ "machine": "../outside/short.machine.json" }""");
        Assert.Empty((await client.RequestAsync("textDocument/definition", "{\"textDocument\":{\"uri\":\"" + uri + "\"},\"position\":" + TestClient.At(0, 20) + "}"))!.AsArray());
    }

    [Fact]
    public async Task Symbols_of_the_workspace_are_not_looked_for_behind_links()
    {
        File.WriteAllText(Path.Combine(_outside, "O77.nc"), "O0077 (OUTSIDE)\nM99\n");
        File.WriteAllText(Path.Combine(_workspace, "O78.nc"), "O0078 (INSIDE)\nM99\n");
        Directory.CreateSymbolicLink(Path.Combine(_workspace, "linked"), _outside);
        File.CreateSymbolicLink(Path.Combine(_workspace, "O77.nc"), Path.Combine(_outside, "O77.nc"));
        await using var client = await InitializedAsync();
        string[] names = [.. (await client.RequestAsync("workspace/symbol", """{"query":""}"""))!.AsArray().Select(symbol => (string)symbol!["name"]!)];
        Assert.Contains(names, name => name.Contains("INSIDE", StringComparison.Ordinal));
        Assert.DoesNotContain(names, name => name.Contains("OUTSIDE", StringComparison.Ordinal));
    }

    string Setup(string name, string machine)
    {
        var path = Path.Combine(_workspace, name);
        File.WriteAllText(path, $$"""{ "machine": {{TestClient.Quote(machine)}} }""");
        return path;
    }

    Task<TestClient> InitializedAsync(string more = "") => TestClient.InitializedAsync(
        Watching, $$""","workspaceFolders":[{"uri":"{{new Uri(_workspace).AbsoluteUri}}","name":"w"}]""" + more, DiskFiles.Instance);

    async Task<List<string?>> NamesOfAsync(string program)
    {
        await using var client = await InitializedAsync();
        return await NamesOfAsync(program, client);
    }

    async Task<List<string?>> NamesOfAsync(string program, TestClient client)
    {
        var uri = new Uri(Path.Combine(_workspace, program)).AbsoluteUri;
        await client.OpenAsync(uri, Program);
        return [.. (await client.DiagnosticsAsync(uri, 1))["diagnostics"]!.AsArray().Select(finding => (string?)finding!["data"])];
    }

    async Task<JsonNode> SetupFindingAsync(string program, string setup)
    {
        await using var client = await InitializedAsync();
        await client.OpenAsync(new Uri(Path.Combine(_workspace, program)).AbsoluteUri, Program);
        return Assert.Single((await client.DiagnosticsAsync(new Uri(Path.Combine(_workspace, setup)).AbsoluteUri, null))["diagnostics"]!.AsArray())!;
    }
}
