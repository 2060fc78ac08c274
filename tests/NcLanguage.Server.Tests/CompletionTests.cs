using System.Text.Json.Nodes;

namespace NcLanguage.Server.Tests;

/// <summary>What completion and signature help look like to the client (LSP 3.17). What they say is tested in the editing room.</summary>
public sealed class CompletionTests
{
    const string Uri = "file:///job/part.nc";
    const string Snippets = """{"textDocument":{"completion":{"completionItem":{"snippetSupport":true,"documentationFormat":["markdown"]}}}}""";
    const string Offsets = """{"textDocument":{"signatureHelp":{"signatureInformation":{"documentationFormat":["markdown"],"parameterInformation":{"labelOffsetSupport":true}}}}}""";

    [Fact]
    public async Task Both_are_announced_with_their_triggers()
    {
        await using var client = new TestClient();
        var capabilities = (await client.RequestAsync("initialize", """{"processId":null,"rootUri":null,"capabilities":{}}"""))!["capabilities"]!;
        Assert.True((bool)capabilities["completionProvider"]!["resolveProvider"]!);
        Assert.Equal("""["#","["]""", capabilities["completionProvider"]!["triggerCharacters"]!.ToJsonString());
        string[] triggers = [.. capabilities["signatureHelpProvider"]!["triggerCharacters"]!.AsArray().Select(c => (string)c!)];
        Assert.Equal(53, triggers.Distinct().Count());
        Assert.Contains(" ", triggers);
    }

    [Theory]
    [InlineData("{}", 12)]
    [InlineData("""{"general":{"positionEncodings":["utf-8"]}}""", 15)]
    public async Task An_item_replaces_the_word_begun_in_the_agreed_encoding(string capabilities, int character)
    {
        // "(drill é🔩) G8": the word begins at 12 in UTF-16 units, 15 in bytes.
        await using var client = await OpenAsync("G21 G90\n(drill é🔩) G8", capabilities);
        var list = await CompleteAsync(client, 1, character + 2);
        Assert.False((bool)list["isIncomplete"]!);
        var item = Item(list, "G83");
        Assert.Equal($$$"""{"range":{"start":{"line":1,"character":{{{character}}}},"end":{"line":1,"character":{{{character + 2}}}}},"newText":"G83"}""", item["textEdit"]!.ToJsonString());
        Assert.Equal(3, (int)item["kind"]!);
        Assert.Equal("peck drilling · needs Z R Q", (string?)item["detail"]);
        Assert.False(item.AsObject().ContainsKey("documentation"));
        Assert.False(item.AsObject().ContainsKey("commitCharacters"));
    }

    [Fact]
    public async Task The_order_is_kept_by_the_sort_texts()
    {
        await using var client = await OpenAsync("G21 G90 G0 X1\nG83 X1 ");
        string[] texts = [.. (await CompleteAsync(client, 1, 7))["items"]!.AsArray().Select(item => (string)item!["sortText"]!)];
        Assert.Equal(texts.Order(StringComparer.Ordinal), texts);
        Assert.Equal(texts.Length, texts.Distinct().Count());
    }

    [Theory]
    [InlineData(Snippets, "markdown")]
    [InlineData("{}", "plaintext")]
    public async Task The_documentation_comes_by_resolving(string capabilities, string kind)
    {
        await using var client = await OpenAsync("G8", capabilities);
        var item = Item(await CompleteAsync(client, 0, 2), "G83");
        var resolved = (await client.RequestAsync("completionItem/resolve", item.ToJsonString()))!;
        Assert.Equal(kind, (string?)resolved["documentation"]!["kind"]);
        Assert.Contains("comes out at rapid", (string?)resolved["documentation"]!["value"], StringComparison.Ordinal);
        resolved.AsObject().Remove("documentation");
        Assert.Equal(item.ToJsonString(), resolved.ToJsonString());
    }

    /// <summary>Lines to insert are shown as a block of code: its fence is Markdown's.</summary>
    [Theory]
    [InlineData("""{"textDocument":{"completion":{"completionItem":{"documentationFormat":["markdown","plaintext"]}}}}""", "markdown", "```nc\nG81 ")]
    [InlineData("""{"textDocument":{"completion":{"completionItem":{"documentationFormat":["plaintext","markdown"]}}}}""", "plaintext", "G81 ")]
    [InlineData("""{"textDocument":{"completion":{"completionItem":{"documentationFormat":["plaintext"]}}}}""", "plaintext", "G81 ")]
    public async Task The_format_that_the_client_names_first_is_taken(string capabilities, string kind, string beginning)
    {
        await using var client = await OpenAsync("G21\n", capabilities);
        var text = Item(await CompleteAsync(client, 1, 0), "G81 X Y Z R F")["documentation"]!;
        Assert.Equal(kind, (string?)text["kind"]);
        Assert.StartsWith(beginning, (string?)text["value"], StringComparison.Ordinal);
    }

    [Fact]
    public async Task An_item_without_topic_is_resolved_to_itself()
    {
        await using var client = await OpenAsync("G8");
        Assert.Equal("""{"label":"mine"}""", (await client.RequestAsync("completionItem/resolve", """{"label":"mine"}"""))!.ToJsonString());
        Assert.Equal("""{"label":"mine","data":"code G999"}""", (await client.RequestAsync("completionItem/resolve", """{"label":"mine","data":"code G999"}"""))!.ToJsonString());
        Assert.Equal(-32602, await client.ErrorOfAsync("completionItem/resolve", "{}"));
    }

    [Fact]
    public async Task Places_to_fill_in_go_only_to_clients_that_have_them()
    {
        await using var with = await OpenAsync("G21\n", Snippets);
        var item = Item(await CompleteAsync(with, 1, 0), "G81 X Y Z R F");
        Assert.Equal(2, (int)item["insertTextFormat"]!);
        Assert.Contains("${1:", (string?)item["textEdit"]!["newText"], StringComparison.Ordinal);

        await using var without = await OpenAsync("G21\n");
        var items = (await CompleteAsync(without, 1, 0))["items"]!.AsArray();
        Assert.NotEmpty(items);
        Assert.All(items, plain =>
        {
            Assert.False(plain!.AsObject().ContainsKey("insertTextFormat"));
            Assert.DoesNotContain("${", (string?)plain["textEdit"]!["newText"], StringComparison.Ordinal);
        });
    }

    [Fact]
    public async Task Values_come_from_the_setup_beside_the_program()
    {
        var files = new TestFiles { ["/job/part.setup.json"] = """{"tools":[{"number":7,"kind":"drill","diameter":8}]}""" };
        await using var client = await TestClient.InitializedAsync(files: files);
        await client.OpenAsync(Uri, "T");
        var item = Item(await CompleteAsync(client, 0, 1), "T7");
        Assert.Equal("drill 8 mm", (string?)item["detail"]);
        Assert.Contains("In the setup: drill", (string?)item["documentation"]!["value"], StringComparison.Ordinal);
    }

    [Fact]
    public async Task Where_nothing_fits_the_list_is_empty()
    {
        await using var client = await OpenAsync("G0 X10 (note)");
        foreach (var character in new[] { 5, 6, 9 })
            Assert.Equal("""{"isIncomplete":false,"items":[]}""", (await CompleteAsync(client, 0, character)).ToJsonString());
        await client.OpenAsync("file:///job/nc.setup.json", "{ }");
        // A setup file has a list of its own, and no words to sign.
        Assert.Null(await client.RequestAsync("textDocument/signatureHelp", Params("file:///job/nc.setup.json", 0, 1)));
    }

    [Fact]
    public async Task A_signature_names_its_words_by_place_where_the_client_can()
    {
        await using var client = await OpenAsync("G21 G90 G0 Z50\nG83 X10 Y5 ", Offsets);
        var help = (await client.RequestAsync("textDocument/signatureHelp", Params(Uri, 1, 11)))!;
        var signature = help["signatures"]![(int)help["activeSignature"]!]!;
        var label = (string)signature["label"]!;
        Assert.Equal("G83 X10 Y5 Z… R… F… [L] Q… [P]", label);
        var active = signature["parameters"]![(int)help["activeParameter"]!]!;
        Assert.Equal("Z…", label[(int)active["label"]![0]!..(int)active["label"]![1]!]);
        Assert.Equal((int)help["activeParameter"]!, (int)signature["activeParameter"]!);
        Assert.Equal("bottom of the hole · mm · needed", (string?)active["documentation"]);
        Assert.Equal("markdown", (string?)signature["documentation"]!["kind"]);
    }

    [Fact]
    public async Task A_signature_names_its_words_by_text_otherwise()
    {
        await using var client = await OpenAsync("G83 X10 ");
        var help = (await client.RequestAsync("textDocument/signatureHelp", Params(Uri, 0, 8)))!;
        Assert.Equal("X10", (string?)help["signatures"]![0]!["parameters"]![0]!["label"]);
        Assert.Equal("plaintext", (string?)help["signatures"]![0]!["documentation"]!["kind"]);
    }

    static async Task<TestClient> OpenAsync(string text, string capabilities = "{}")
    {
        var client = await TestClient.InitializedAsync(capabilities);
        await client.OpenAsync(Uri, text);
        return client;
    }

    static async Task<JsonNode> CompleteAsync(TestClient client, int line, int character) =>
        (await client.RequestAsync("textDocument/completion", Params(Uri, line, character)))!;

    static JsonNode Item(JsonNode list, string label) => list["items"]!.AsArray().Single(item => (string?)item!["label"] == label)!;

    static string Params(string uri, int line, int character) => $$"""{"textDocument":{"uri":"{{uri}}"},"position":{{TestClient.At(line, character)}} }""";
}
