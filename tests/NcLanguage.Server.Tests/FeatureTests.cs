using System.Text.Json.Nodes;

namespace NcLanguage.Server.Tests;

/// <summary>What each method's answer looks like to the client. What the answers say is the editing room's business and is tested there.</summary>
public sealed class FeatureTests
{
    const string Uri = "file:///job/part.nc";

    const string Drilling = """
        %
        G21 G90 G17 G54
        T1 M6
        (drill é🔩) G0 X0. Y0. S1000 M3
        G43 H1 Z50.
        G91 G98 G81 X10. Y0. Z-5. R-48. F100.
        X10.
        G80 G90
        M30
        %
        """;

    [Fact]
    public async Task A_hover_gives_markdown_and_the_words_range()
    {
        await using var client = await OpenAsync("""{"textDocument":{"hover":{"contentFormat":["markdown","plaintext"]}}}""");
        // "(drill é🔩) G0": the word begins at 12 in UTF-16 units, 15 in bytes.
        var hover = (await client.RequestAsync("textDocument/hover", At(3, 13)))!;
        Assert.Equal("markdown", (string?)hover["contents"]!["kind"]);
        Assert.Contains("G0", (string?)hover["contents"]!["value"], StringComparison.Ordinal);
        Assert.Equal("""{"start":{"line":3,"character":12},"end":{"line":3,"character":14}}""", hover["range"]!.ToJsonString());
    }

    /// <summary>LSP 3.17, "Hover Request": contentFormat names formats in the order of the client's preference.</summary>
    [Theory]
    [InlineData("""["plaintext"]""")]
    [InlineData("""["plaintext","markdown"]""")]
    [InlineData("[]")]
    public async Task Plain_text_has_no_signs_of_markdown(string formats)
    {
        await using var client = await OpenAsync("""{"textDocument":{"hover":{"contentFormat":F},"signatureHelp":{"signatureInformation":{"documentationFormat":F}}}}""".Replace("F}", formats + "}", StringComparison.Ordinal));
        var hover = (await client.RequestAsync("textDocument/hover", At(3, 13)))!["contents"]!;
        Assert.Equal("plaintext", (string?)hover["kind"]);
        Assert.StartsWith("G0 ", (string?)hover["value"], StringComparison.Ordinal);
        var help = (await client.RequestAsync("textDocument/signatureHelp", At(5, 10)))!["signatures"]![0]!;
        Assert.Equal("plaintext", (string?)help["documentation"]!["kind"]);
    }

    [Fact]
    public async Task A_hover_counts_bytes_where_that_was_agreed()
    {
        await using var client = await OpenAsync("""{"general":{"positionEncodings":["utf-8"]}}""");
        var hover = (await client.RequestAsync("textDocument/hover", At(3, 16)))!;
        Assert.Equal("plaintext", (string?)hover["contents"]!["kind"]);
        Assert.Equal("""{"start":{"line":3,"character":15},"end":{"line":3,"character":17}}""", hover["range"]!.ToJsonString());
    }

    [Fact]
    public async Task Hints_tell_where_incremental_holes_are()
    {
        await using var client = await OpenAsync();
        var hints = (await client.RequestAsync("textDocument/inlayHint", Range(0, 0, 99, 0)))!.AsArray();
        var second = hints.Single(hint => (int)hint!["position"]!["line"]! == 6)!;
        Assert.Contains("X20", (string?)second["label"], StringComparison.Ordinal);
        Assert.Equal(4, (int)second["position"]!["character"]!);
        Assert.Empty((await client.RequestAsync("textDocument/inlayHint", Range(0, 0, 2, 0)))!.AsArray());
    }

    /// <summary>LSP 3.17, "Inlay Hint Resolve Request": what a client leaves for later comes when it asks.</summary>
    [Fact]
    public async Task A_hint_tells_the_rest_when_somebody_looks()
    {
        await using var client = await OpenAsync("""{"textDocument":{"inlayHint":{"resolveSupport":{"properties":["tooltip","label.location"]}}}}""");
        var hint = (await client.RequestAsync("textDocument/inlayHint", Range(0, 0, 99, 0)))!.AsArray().Single(hint => (int)hint!["position"]!["line"]! == 6)!;
        Assert.Null(hint["tooltip"]);
        Assert.Null(hint["label"]![0]!["location"]);
        var whole = (await client.RequestAsync("inlayHint/resolve", hint.ToJsonString()))!;
        Assert.Equal("Hole 2 is drilled here.", (string?)whole["tooltip"]);
        Assert.Equal((string?)hint["label"]![0]!["value"], (string?)whole["label"]![0]!["value"]);
        Assert.Equal(5, (int)whole["label"]![0]!["location"]!["range"]!["start"]!["line"]!);
        await client.ChangeAsync(Uri, 2, TestClient.Insert(0, 0, "\n"));
        Assert.Equal(-32801, await client.ErrorOfAsync("inlayHint/resolve", hint.ToJsonString()));
        await using var plain = await OpenAsync();
        var at = (await plain.RequestAsync("textDocument/inlayHint", Range(0, 0, 99, 0)))!.AsArray().Single(hint => (int)hint!["position"]!["line"]! == 6)!;
        Assert.Equal("Hole 2 is drilled here.", (string?)at["tooltip"]);
        Assert.Equal(at.ToJsonString(), (await plain.RequestAsync("inlayHint/resolve", at.ToJsonString()))!.ToJsonString());
    }

    [Fact]
    public async Task The_state_at_a_line_names_what_is_in_force()
    {
        await using var client = await OpenAsync();
        var state = (await client.RequestAsync("nclanguage/stateAt", At(6, 0)))!;
        Assert.True((bool)state["runs"]!);
        Assert.Equal(20, (double)state["position"]!["x"]!);
        var cycle = state["modes"]!.AsArray().Single(mode => (string?)mode!["name"] == "cycle")!;
        Assert.Equal("G81", (string?)cycle["code"]);
        Assert.Equal(5, (int)cycle["setLine"]!);
    }

    [Fact]
    public async Task The_holes_come_in_the_order_drilled()
    {
        await using var client = await OpenAsync();
        var holes = (await client.RequestAsync("nclanguage/holes", Document()))!["holes"]!.AsArray();
        Assert.Equal([10, 20], holes.Select(hole => (double)hole!["x"]!));
        Assert.Equal([5, 6], holes.Select(hole => (int)hole!["line"]!));
    }

    [Fact]
    public async Task The_outline_nests_where_the_client_can()
    {
        await using var client = await OpenAsync("""{"textDocument":{"documentSymbol":{"hierarchicalDocumentSymbolSupport":true}}}""");
        var tool = (await client.RequestAsync("textDocument/documentSymbol", Document()))!.AsArray().Single()!["children"]!.AsArray().Single(item => ((string)item!["name"]!).StartsWith("T1", StringComparison.Ordinal))!;
        Assert.NotEmpty(tool["children"]!.AsArray());
        AssertWithin(tool["selectionRange"]!, tool["range"]!);
        Assert.Equal(2, (int)tool["range"]!["start"]!["line"]!);
    }

    [Fact]
    public async Task The_outline_is_flat_where_the_client_cannot_nest()
    {
        await using var client = await OpenAsync();
        var items = (await client.RequestAsync("textDocument/documentSymbol", Document()))!.AsArray();
        Assert.True(items.Count >= 2);
        Assert.All(items, item => Assert.Null(item!["children"]));
    }

    [Fact]
    public async Task A_finding_carries_its_source_number_name_and_severity()
    {
        await using var client = await TestClient.InitializedAsync();
        await client.OpenAsync(Uri, "G21 G90 G54 G17\n(nc-allow feed-missing)\nG0 X0. Y0.\nM30", version: 7);
        var published = await client.DiagnosticsAsync(Uri, 7);
        var finding = published["diagnostics"]!.AsArray().Single(d => (string?)d!["data"] == "allow-without-reason")!;
        Assert.Equal("nclanguage", (string?)finding["source"]);
        Assert.Equal("NC6021", (string?)finding["code"]);
        Assert.Equal(2, (int)finding["severity"]!);
        Assert.False(finding.AsObject().ContainsKey("codeDescription"));
        Assert.Equal("""{"start":{"line":1,"character":0},"end":{"line":1,"character":23}}""", finding["range"]!.ToJsonString());
    }

    [Theory]
    [InlineData(2500, "2000 more findings are")]
    [InlineData(501, "1 more finding is")]
    public async Task A_flood_of_findings_is_cut_off_and_says_so(int count, string left)
    {
        await using var client = await TestClient.InitializedAsync();
        await client.OpenAsync(Uri, string.Concat(Enumerable.Repeat("(nc-allow feed-missing)\n", count)) + "M30\n");
        var findings = (await client.DiagnosticsAsync(Uri, 1))["diagnostics"]!.AsArray();
        Assert.Equal(501, findings.Count);
        Assert.Equal(left + " not shown here, none worse than these; the command nclanguage check --format json lists all.", (string?)findings[^1]!["message"]);
    }

    [Fact]
    public async Task Traces_come_only_when_asked_for()
    {
        await using var client = await OpenAsync();
        await client.RequestAsync("textDocument/documentSymbol", Document());
        Assert.DoesNotContain(client.Log, message => (string?)message["method"] == "$/logTrace");

        await client.NotifyAsync("$/setTrace", """{"value":"messages"}""");
        await client.RequestAsync("textDocument/documentSymbol", Document());
        var trace = await client.NextAsync("$/logTrace");
        Assert.False(trace.AsObject().ContainsKey("verbose"));

        await client.NotifyAsync("$/setTrace", """{"value":"verbose"}""");
        await client.RequestAsync("textDocument/hover", At(3, 0));
        do trace = await client.NextAsync("$/logTrace");
        while (!((string)trace["message"]!).Contains("textDocument/hover", StringComparison.Ordinal));
        Assert.Matches(@"^\d+\.\d+ ms", (string?)trace["verbose"]);
    }

    [Fact]
    public async Task Nothing_but_the_answer_comes_before_the_answer_to_initialize()
    {
        await using var client = new TestClient();
        await client.RequestAsync("initialize", """{"processId":null,"rootUri":null,"capabilities":{},"trace":"verbose"}""");
        Assert.NotNull(client.Log[0]["result"]);
    }

    static async Task<TestClient> OpenAsync(string capabilities = "{}")
    {
        var client = await TestClient.InitializedAsync(capabilities);
        await client.OpenAsync(Uri, Drilling);
        return client;
    }

    static string Document(string more = "") => "{\"textDocument\":{\"uri\":\"" + Uri + "\"}" + more + "}";

    static string At(int line, int character) => Document(",\"position\":" + TestClient.At(line, character));

    static string Range(int line, int character, int endLine, int endCharacter) =>
        Document(",\"range\":{\"start\":" + TestClient.At(line, character) + ",\"end\":" + TestClient.At(endLine, endCharacter) + "}");

    static void AssertWithin(JsonNode inner, JsonNode outer)
    {
        Assert.True(Compare(outer["start"]!, inner["start"]!) <= 0);
        Assert.True(Compare(inner["end"]!, outer["end"]!) <= 0);

        static int Compare(JsonNode a, JsonNode b) => ((int)a["line"]!, (int)a["character"]!).CompareTo(((int)b["line"]!, (int)b["character"]!));
    }
}
