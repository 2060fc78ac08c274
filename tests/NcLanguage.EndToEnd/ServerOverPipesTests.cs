using System.Text.Json;
using System.Text.Json.Nodes;
using NcLanguage.EndToEnd.Lsp;
using NcLanguage.EndToEnd.Support;

namespace NcLanguage.EndToEnd;

/// <summary>
/// The executable as an editor starts it. What is expected of the protocol: Language Server Protocol 3.17 (Base Protocol,
/// Server lifecycle, Position encoding) and JSON-RPC 2.0 (error codes).
/// </summary>
public sealed class ServerOverPipesTests
{
    const string CycleLeftOn = """
        %
        O0007 (TWO HOLES)
        N10 G21 G17 G90 G54 G94 G98
        N20 T1 M6
        N30 S1500 M3
        N40 G0 G43 H1 Z50
        N50 X20 Y12
        N60 G81 X20 Y12 Z-3 R2 F120
        N70 X45
        N80 M5
        N90 M30
        %

        """;

    [Fact]
    public async Task The_server_introduces_itself_and_leaves_in_order()
    {
        using var folder = new ScratchFolder();
        await using var session = await LspSession.StartAsync(folder.Path, "utf-16");
        Assert.Equal("nclanguage", session.Initialized.GetProperty("serverInfo").GetProperty("name").GetString());
        var capabilities = session.Initialized.GetProperty("capabilities");
        Assert.Equal(2, Sync(capabilities.GetProperty("textDocumentSync")));

        Assert.Equal(JsonValueKind.Null, (await session.Client.RequestAsync("shutdown")).ValueKind);
        await session.Client.NotifyAsync("exit");
        Assert.Equal(0, await session.Client.ExitAsync());
    }

    [Theory]
    [InlineData("utf-8,utf-16", "utf-8")]
    [InlineData("utf-16", "utf-16")]
    [InlineData("utf-32,utf-16", "utf-16")]
    public async Task The_position_encoding_is_one_that_the_client_knows(string offered, string chosen)
    {
        using var folder = new ScratchFolder();
        await using var session = await LspSession.StartAsync(folder.Path, offered.Split(','));
        // Left out means utf-16.
        var encoding = session.Initialized.GetProperty("capabilities").TryGetProperty("positionEncoding", out var told) ? told.GetString() : "utf-16";
        Assert.Equal(chosen, encoding);
    }

    [Fact]
    public async Task Exit_without_shutdown_is_an_error()
    {
        using var folder = new ScratchFolder();
        await using var session = await LspSession.StartAsync(folder.Path, "utf-16");
        await session.Client.NotifyAsync("exit");
        Assert.Equal(1, await session.Client.ExitAsync());
    }

    [Fact]
    public async Task A_server_whose_client_is_gone_ends()
    {
        using var folder = new ScratchFolder();
        await using var session = await LspSession.StartAsync(folder.Path, "utf-16");
        session.Client.CloseInput();
        await session.Client.ExitAsync();
    }

    [Fact]
    public async Task A_cycle_left_on_is_found_fixed_and_gone()
    {
        using var folder = new ScratchFolder();
        var file = folder.At("two-holes.nc");
        await using var session = await LspSession.StartAsync(folder.Path, "utf-16");
        await session.OpenAsync(file, CycleLeftOn);

        var finding = Assert.Single((await session.FindingsAsync(file, 1)).EnumerateArray(), d => Name(d) == "cycle-not-cancelled");
        Assert.Equal("nclanguage", finding.GetProperty("source").GetString());
        Assert.Equal(1, finding.GetProperty("severity").GetInt32());

        var fix = (await session.FixesAsync(file, finding))[0];
        await session.ChangeAsync(file, 2, TextEdits.AsChanges(TextEdits.For(fix.GetProperty("edit"), file)));
        Assert.DoesNotContain((await session.FindingsAsync(file, 2)).EnumerateArray(), d => Name(d) == "cycle-not-cancelled");
    }

    [Fact]
    public async Task A_keystroke_brings_the_finding_back()
    {
        using var folder = new ScratchFolder();
        var file = folder.At("two-holes.nc");
        var sound = CycleLeftOn.Replace("N80 M5", "N80 G80 M5", StringComparison.Ordinal);
        await using var session = await LspSession.StartAsync(folder.Path, "utf-16");
        await session.OpenAsync(file, sound);
        Assert.DoesNotContain((await session.FindingsAsync(file, 1)).EnumerateArray(), d => Name(d) == "cycle-not-cancelled");

        var line = sound.Split('\n').ToList().FindIndex(text => text.StartsWith("N80", StringComparison.Ordinal)) + 1;
        await session.ChangeAsync(file, 2, [new JsonObject { ["range"] = LspSession.Range(line, 5, line, 9), ["text"] = "" }]);
        Assert.Contains((await session.FindingsAsync(file, 2)).EnumerateArray(), d => Name(d) == "cycle-not-cancelled");
    }

    [Fact]
    public async Task The_findings_are_those_of_the_command_line()
    {
        using var folder = new ScratchFolder();
        var demo = await DemoJob.WriteAsync(folder.At("demo"));
        await using var session = await LspSession.StartAsync(demo.Folder, "utf-16");
        await session.OpenAsync(demo.Program, await File.ReadAllTextAsync(demo.Program));
        var shown = (await session.FindingsAsync(demo.Program, 1)).EnumerateArray()
            .Select(d => (Name(d), d.GetProperty("range").GetProperty("start").GetProperty("line").GetInt32() + 1));
        Assert.Equal(demo.Findings.Select(f => ((string?)f.Name, f.Line)).Order(), shown.Order());
    }

    [Fact]
    public async Task Hover_and_hints_answer_on_the_demo()
    {
        using var folder = new ScratchFolder();
        var demo = await DemoJob.WriteAsync(folder.At("demo"));
        await using var session = await LspSession.StartAsync(demo.Folder, "utf-16");
        await session.OpenAsync(demo.Program, await File.ReadAllTextAsync(demo.Program));
        var (line, column, word) = demo.Cycle;

        var hover = await session.HoverAsync(demo.Program, line, column);
        Assert.Contains(word, hover.GetProperty("contents").GetProperty("value").GetString(), StringComparison.Ordinal);
        Assert.NotEmpty(await session.HintsAsync(demo.Program, demo.Lines.Count));
    }

    [Fact]
    public async Task A_method_that_is_not_known_and_parameters_that_are_wrong_are_answered_with_their_codes()
    {
        using var folder = new ScratchFolder();
        await using var session = await LspSession.StartAsync(folder.Path, "utf-16");
        var unknown = await Assert.ThrowsAsync<LspErrorException>(() => session.Client.RequestAsync("textDocument/notAMethod", new JsonObject()));
        Assert.Equal(-32601, unknown.Code);
        var wrong = await Assert.ThrowsAsync<LspErrorException>(() => session.Client.RequestAsync("textDocument/hover", new JsonObject { ["position"] = "here" }));
        Assert.Equal(-32602, wrong.Code);
        Assert.DoesNotContain("   at ", wrong.Message, StringComparison.Ordinal);

        // It still answers after both.
        Assert.Equal(JsonValueKind.Null, (await session.Client.RequestAsync("shutdown")).ValueKind);
    }

    static int Sync(JsonElement capability) =>
        capability.ValueKind == JsonValueKind.Number ? capability.GetInt32() : capability.GetProperty("change").GetInt32();

    static string? Name(JsonElement diagnostic) => diagnostic.TryGetProperty("data", out var data)
        ? data.ValueKind == JsonValueKind.String ? data.GetString() : data.GetProperty("name").GetString()
        : null;
}
