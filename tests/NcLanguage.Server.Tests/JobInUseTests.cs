using System.Text;
using System.Text.Json.Nodes;
using NcLanguage.Machine.Files;
using NcLanguage.Machine.Loading;

namespace NcLanguage.Server.Tests;

/// <summary>What a program is run with, and the beginning of a setup: the custom requests that DEVELOPERS.md describes.</summary>
public sealed class JobInUseTests
{
    const string Uri = "file:///job/part.nc";

    [Fact]
    public async Task The_setup_and_machine_in_use_are_named_with_their_mistakes()
    {
        var files = new TestFiles
        {
            ["/job/nc.setup.json"] = """{ "units": "miles", "machine": "mill.machine.json" }""",
            ["/job/mill.machine.json"] = """{ "name": "the mill", "base": "iso-mill" }""",
        };
        await using var client = await TestClient.InitializedAsync(files: files);
        await client.OpenAsync(Uri, "G0 X1.\n");
        Assert.Equal(
            """{"setup":{"name":"nc.setup.json","uri":"file:///job/nc.setup.json","problems":1,"isChosen":true},"machine":{"name":"the mill","uri":"file:///job/mill.machine.json","problems":0,"isChosen":true}}""",
            (await AskAsync(client, "nclanguage/jobInUse"))!.ToJsonString());
    }

    [Fact]
    public async Task Without_files_the_built_in_machine_is_named()
    {
        await using var client = await TestClient.InitializedAsync();
        await client.OpenAsync(Uri, "G0 X1.\n");
        Assert.Equal("""{"machine":{"name":"iso-mill","problems":0,"isChosen":false}}""", (await AskAsync(client, "nclanguage/jobInUse"))!.ToJsonString());
    }

    [Theory]
    [InlineData("G21 G90 G17 G55\nT4 M6\nG43 H14 Z50.\nG0 X0 Y0\nT2 M6\nG0 X5\nM30\n", "mm", "G55", "4:14 2:")]
    [InlineData("G20 G90 G54\nT1 M6\nG43 H1 Z2.\nG49\nM30\n", "inch", "G54", "1:1")]
    [InlineData("", "mm", "G54", "")]
    public async Task A_new_setup_says_what_the_program_tells_and_has_no_mistakes(string program, string units, string frame, string tools)
    {
        await using var client = await TestClient.InitializedAsync();
        await client.OpenAsync(Uri, program);
        var answer = (await AskAsync(client, "nclanguage/newSetup"))!;
        Assert.Equal("file:///job/part.setup.json", (string?)answer["uri"]);
        var text = (string)answer["text"]!;
        var read = SetupFile.Read("part.setup.json", Encoding.UTF8.GetBytes(text));
        Assert.Empty(read.Problems);
        Assert.Equal(units == "inch", read.Setup.IsInch);
        Assert.Contains($"\"frame\": \"{frame}\"", text, StringComparison.Ordinal);
        Assert.Equal(tools.Split(' ', StringSplitOptions.RemoveEmptyEntries).Order(), read.Setup.Tools.Select(tool => $"{tool.Number}:{tool.LengthOffset}").Order());
    }

    [Fact]
    public async Task The_lines_that_wait_for_sizes_are_sound_too()
    {
        await using var client = await TestClient.InitializedAsync();
        await client.OpenAsync(Uri, "G20 T1 M6\n");
        var text = (string)(await AskAsync(client, "nclanguage/newSetup"))!["text"]!;
        var read = SetupFile.Read("part.setup.json", Encoding.UTF8.GetBytes(text.Replace("// \"", "\"", StringComparison.Ordinal)));
        Assert.Empty(read.Problems);
        Assert.NotNull(read.Setup.Stock);
        Assert.Single(read.Setup.Obstacles);
    }

    [Fact]
    public async Task A_text_never_saved_has_no_place_for_a_setup()
    {
        await using var client = await TestClient.InitializedAsync();
        await client.OpenAsync("untitled:Untitled-1", "G0 X1.\n");
        Assert.Null(await client.RequestAsync("nclanguage/newSetup", """{"textDocument":{"uri":"untitled:Untitled-1"}}"""));
    }

    static Task<JsonNode?> AskAsync(TestClient client, string method) => client.RequestAsync(method, "{\"textDocument\":{\"uri\":\"" + Uri + "\"}}");
}
