using System.Text.Json.Nodes;
using NcLanguage.Server.Documents;

namespace NcLanguage.Server.Tests;

/// <summary>codeDescription of findings: a link to the rule's page, where the client takes it and the page can be read.</summary>
public sealed class ReferenceLinkTests : IDisposable
{
    const string Takes = """{"textDocument":{"publishDiagnostics":{"codeDescriptionSupport":true},"codeAction":{"codeActionLiteralSupport":{"codeActionKind":{"valueSet":["quickfix"]}}}}}""";
    const string Uri = "file:///job/part.nc";
    const string Faulty = "G21 G90 G17 G54\nG999\nM30\n";

    // A blank, a letter beyond ASCII and a sign that means something in addresses must all come through.
    readonly string _folder = Directory.CreateDirectory(Path.Combine(Path.GetTempPath(), $"nclanguage ü# {Guid.NewGuid():N}")).FullName;

    [Fact]
    public async Task Findings_link_to_pages_that_are_there()
    {
        await using var client = await TestClient.InitializedAsync(Takes, writeReference: Write);
        await client.OpenAsync(Uri, Faulty);
        var linked = await LinkedAsync(client, Uri, 1);
        Assert.NotEmpty(linked);
        Assert.All(linked, AssertPage);
        Assert.Contains(linked, finding => (string?)finding["code"] == "NC1008");

        // A later version has its links from the start.
        await client.ChangeAsync(Uri, 2, TestClient.Insert(1, 0, "G998\n"));
        JsonNode[] later = [.. (await client.DiagnosticsAsync(Uri, 2))["diagnostics"]!.AsArray().Select(finding => finding!)];
        Assert.True(later.Length > linked.Length);
        Assert.All(later, AssertPage);
    }

    [Fact]
    public async Task Findings_of_setup_files_link_as_well()
    {
        await using var client = await TestClient.InitializedAsync(Takes, writeReference: Write);
        await client.OpenAsync("file:///job/part.setup.json", """{ "clearence": 2 }""");
        Assert.All(await LinkedAsync(client, "file:///job/part.setup.json", null), AssertPage);
    }

    [Fact]
    public async Task A_fix_carries_the_link_of_its_finding()
    {
        await using var client = await TestClient.InitializedAsync(Takes, writeReference: Write);
        await client.OpenAsync(Uri, "G21 G90 G17 G54\n(open\nM30\n");
        await LinkedAsync(client, Uri, 1);
        var actions = (await client.RequestAsync("textDocument/codeAction",
            $$"""{"textDocument":{"uri":"{{Uri}}"},"range":{"start":{{TestClient.At(1, 0)}},"end":{{TestClient.At(1, 5)}} },"context":{"diagnostics":[],"only":["quickfix"]} }"""))!.AsArray();
        Assert.NotEmpty(actions);
        Assert.All(actions, action => AssertPage(action!["diagnostics"]![0]!));
    }

    [Fact]
    public async Task Nothing_is_written_before_the_first_finding()
    {
        var written = 0;
        await using var client = await TestClient.InitializedAsync(Takes, writeReference: () =>
        {
            Interlocked.Increment(ref written);
            return _folder;
        });
        await client.OpenAsync(Uri, "");
        Assert.Empty((await client.DiagnosticsAsync(Uri, 1))["diagnostics"]!.AsArray());
        await client.RequestAsync("textDocument/hover", $$"""{"textDocument":{"uri":"{{Uri}}"},"position":{{TestClient.At(0, 0)}} }""");
        Assert.Equal(0, Volatile.Read(ref written));
        await client.ChangeAsync(Uri, 2, TestClient.Insert(0, 0, Faulty));
        await LinkedAsync(client, Uri, 2);
        await client.ChangeAsync(Uri, 3, TestClient.Insert(0, 0, "G998\n"));
        await LinkedAsync(client, Uri, 3);
        Assert.Equal(1, Volatile.Read(ref written));
    }

    /// <summary>The findings come while the pages are still being written, and so does the answer to a request.</summary>
    [Fact]
    public async Task Nothing_waits_for_the_pages()
    {
        var held = new TaskCompletionSource();
        await using var client = await TestClient.InitializedAsync(Takes, writeReference: () =>
        {
            Assert.True(held.Task.Wait(TimeSpan.FromSeconds(30)));
            return Write();
        });
        await client.OpenAsync(Uri, Faulty);
        AssertNoLinks(await client.DiagnosticsAsync(Uri, 1));
        Assert.NotNull(await client.RequestAsync("textDocument/hover", $$"""{"textDocument":{"uri":"{{Uri}}"},"position":{{TestClient.At(0, 0)}} }"""));
        await client.ChangeAsync(Uri, 2, TestClient.Insert(1, 0, "G998\n"));
        AssertNoLinks(await client.DiagnosticsAsync(Uri, 2));
        held.SetResult();
        Assert.All(await LinkedAsync(client, Uri, 2), AssertPage);
        // The version before is never told again.
        Assert.Single(client.Log, message => (string?)message["method"] == "textDocument/publishDiagnostics" && (int?)message["params"]!["version"] == 1);
    }

    [Fact]
    public async Task A_client_that_asks_for_findings_is_told_to_ask_again_when_the_pages_are_there()
    {
        const string Refresh = "workspace/diagnostic/refresh";
        const string Asks = """{"textDocument":{"publishDiagnostics":{"codeDescriptionSupport":true},"diagnostic":{}},"workspace":{"diagnostics":{"refreshSupport":true}}}""";
        const string Document = $$"""{"textDocument":{"uri":"{{Uri}}"} }""";
        var held = new TaskCompletionSource();
        await using var client = await TestClient.InitializedAsync(Asks, writeReference: () =>
        {
            Assert.True(held.Task.Wait(TimeSpan.FromSeconds(30)));
            return Write();
        });
        await client.OpenAsync(Uri, Faulty);
        AssertNoLinks((await client.RequestAsync("textDocument/diagnostic", Document))!, "items");
        Assert.DoesNotContain(client.Log, message => (string?)message["method"] == Refresh);
        held.SetResult();
        await client.NextAsync(Refresh);
        var asked = (await client.RequestAsync("textDocument/diagnostic", Document))!["items"]!.AsArray();
        Assert.NotEmpty(asked);
        Assert.All(asked, finding => AssertPage(finding!));
    }

    [Fact]
    public async Task A_closed_document_is_not_told_again()
    {
        var held = new TaskCompletionSource();
        await using var client = await TestClient.InitializedAsync(Takes, writeReference: () =>
        {
            Assert.True(held.Task.Wait(TimeSpan.FromSeconds(30)));
            return Write();
        });
        await client.OpenAsync(Uri, Faulty);
        await client.DiagnosticsAsync(Uri, 1);
        await client.NotifyAsync("textDocument/didClose", $$"""{"textDocument":{"uri":"{{Uri}}"} }""");
        Assert.Empty((await client.DiagnosticsAsync(Uri, null))["diagnostics"]!.AsArray());
        await client.OpenAsync("file:///job/other.nc", Faulty);
        await client.DiagnosticsAsync("file:///job/other.nc", 1);
        held.SetResult();
        await LinkedAsync(client, "file:///job/other.nc", 1);
        Assert.Equal(2, client.Log.Count(message => (string?)message["params"]?["uri"] == Uri));
    }

    [Fact]
    public async Task Pages_that_cannot_be_written_leave_no_link_and_one_line_in_the_log()
    {
        await using var client = await TestClient.InitializedAsync(Takes, writeReference: () => throw new UnauthorizedAccessException("the cache is read-only"));
        await client.OpenAsync(Uri, Faulty);
        AssertNoLinks(await client.DiagnosticsAsync(Uri, 1));
        Assert.Contains("The pages of the reference could not be written", (string?)(await client.NextAsync("window/logMessage"))["message"], StringComparison.Ordinal);
        await client.ChangeAsync(Uri, 2, TestClient.Insert(1, 0, "G998\n"));
        AssertNoLinks(await client.DiagnosticsAsync(Uri, 2));
        Assert.Single(client.Log, message => (string?)message["method"] == "window/logMessage");
    }

    [Fact]
    public async Task A_client_that_does_not_ask_for_links_gets_none()
    {
        var written = 0;
        await using var client = await TestClient.InitializedAsync(writeReference: () =>
        {
            Interlocked.Increment(ref written);
            return Write();
        });
        await client.OpenAsync(Uri, Faulty);
        AssertNoLinks(await client.DiagnosticsAsync(Uri, 1));
        await client.ChangeAsync(Uri, 2, TestClient.Insert(1, 0, "G998\n"));
        AssertNoLinks(await client.DiagnosticsAsync(Uri, 2));
        Assert.Equal(0, Volatile.Read(ref written));
    }

    public void Dispose() => Directory.Delete(_folder, recursive: true);

    /// <summary>Stands for the pages: one for each rule, as the server is promised. That the real ones are there is tested with the reports.</summary>
    string Write()
    {
        foreach (var rule in Checks.RuleList.All)
            File.WriteAllText(Path.Combine(_folder, rule.Info.Id + ".md"), "# " + rule.Info.Id);
        return _folder;
    }

    /// <summary>The findings of a version once they carry links: at first, or when told again.</summary>
    static async Task<JsonNode[]> LinkedAsync(TestClient client, string uri, int? version)
    {
        while (true)
        {
            JsonNode[] findings = [.. (await client.DiagnosticsAsync(uri, version))["diagnostics"]!.AsArray().Select(finding => finding!)];
            Assert.NotEmpty(findings);
            if (findings.All(finding => finding["codeDescription"] is not null))
                return findings;
        }
    }

    void AssertPage(JsonNode finding)
    {
        var href = (string)finding["codeDescription"]!["href"]!;
        Assert.StartsWith("file:///", href, StringComparison.Ordinal);
        var path = DocumentUri.ToPath(href);
        Assert.Equal(Path.Combine(_folder, (string?)finding["code"] + ".md"), path);
        Assert.Equal("# " + (string?)finding["code"], File.ReadAllText(path!));
    }

    static void AssertNoLinks(JsonNode told, string member = "diagnostics")
    {
        var findings = told[member]!.AsArray();
        Assert.NotEmpty(findings);
        Assert.All(findings, finding => Assert.Null(finding!["codeDescription"]));
    }
}
