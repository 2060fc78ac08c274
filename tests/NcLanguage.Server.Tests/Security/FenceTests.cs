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

    /// <summary>What is told when a link stands where a setup, a machine, cutting data or a called program is looked for, and no longer once a file stands there.</summary>
    [Theory]
    [InlineData("part.setup.json", "{}", true)]
    [InlineData("part.setup.json", "{}", false)]
    [InlineData("link.machine.json", ShortMachine, true)]
    [InlineData("link.machine.json", ShortMachine, false)]
    [InlineData("nc.cutting.json", "{}", true)]
    [InlineData("nc.cutting.json", "{}", false)]
    [InlineData("O1200.nc", "O1200\nM99\n", true)]
    [InlineData("O1200.nc", "O1200\nM99\n", false)]
    public async Task A_file_in_the_place_of_a_link_that_was_refused_is_noticed(string name, string text, bool clientWatches)
    {
        var (link, outside) = (Path.Combine(_workspace, name), Path.Combine(_outside, name));
        File.WriteAllText(outside, text);
        File.CreateSymbolicLink(link, outside);
        if (name.EndsWith(".machine.json", StringComparison.Ordinal))
            Setup("part.setup.json", name);
        await using var client = await InitializedAsync(watches: clientWatches);
        var uri = new Uri(Path.Combine(_workspace, "part.nc")).AbsoluteUri;
        await client.OpenAsync(uri, "G21 G90 G17 G54\nM98 P1200\nM30\n");
        await UntilAsync(client, told => told.Any(message => IsRefusal(message, name)));
        File.Delete(link);
        File.WriteAllText(link, text);
        if (clientWatches)
            await client.NotifyAsync("workspace/didChangeWatchedFiles", "{\"changes\":[{\"uri\":\"" + new Uri(link).AbsoluteUri + "\",\"type\":2}]}");
        await UntilAsync(client, told => !told.Any(message => IsRefusal(message, name)));
    }

    /// <summary>The same of a setup that is open by itself, without a program.</summary>
    [Theory]
    [InlineData(true)]
    [InlineData(false)]
    public async Task An_open_setup_whose_machine_was_refused_is_checked_anew(bool clientWatches)
    {
        var link = Path.Combine(_workspace, "link.machine.json");
        File.CreateSymbolicLink(link, Path.Combine(_outside, "short.machine.json"));
        var uri = new Uri(Setup("part.setup.json", "link.machine.json")).AbsoluteUri;
        await using var client = await InitializedAsync(watches: clientWatches);
        await client.OpenAsync(uri, """{ "machine": "link.machine.json" }""");
        await UntilAsync(client, told => told.Any(message => IsRefusal(message, "link.machine.json")));
        File.Delete(link);
        File.WriteAllText(link, ShortMachine);
        if (clientWatches)
            await client.NotifyAsync("workspace/didChangeWatchedFiles", "{\"changes\":[{\"uri\":\"" + new Uri(link).AbsoluteUri + "\",\"type\":2}]}");
        await UntilAsync(client, told => told.Count == 0);
    }

    static bool IsRefusal(string message, string name) => message.Contains(name, StringComparison.Ordinal) && (message.Contains("leads outside", StringComparison.Ordinal) || message.Contains("is a link out of", StringComparison.Ordinal));

    /// <summary>Waits until what stands told of all files meets a demand; the newest of each file counts.</summary>
    static async Task UntilAsync(TestClient client, Func<List<string>, bool> isMet)
    {
        while (true)
        {
            var published = client.Log.Where(message => (string?)message["method"] == "textDocument/publishDiagnostics").Select(message => message["params"]!);
            if (isMet([.. published.GroupBy(told => (string)told["uri"]!).SelectMany(file => file.Last()["diagnostics"]!.AsArray()).Select(finding => (string)finding!["message"]!)]))
                return;
            await client.NextAsync("textDocument/publishDiagnostics");
        }
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

    Task<TestClient> InitializedAsync(string more = "", bool watches = true) => TestClient.InitializedAsync(
        watches ? Watching : """{"window":{"showMessage":{}}}""", $$""","workspaceFolders":[{"uri":"{{new Uri(_workspace).AbsoluteUri}}","name":"w"}]""" + more, DiskFiles.Instance);

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
