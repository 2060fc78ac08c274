namespace NcLanguage.Server.Tests.Torture;

/// <summary>LSP 3.17, VersionedTextDocumentIdentifier: a version increases with each change; Range: its end does not lie before its start. A change is a notification, so that no error can
/// answer one that does otherwise; its text is taken all the same, since the client goes on from it.</summary>
public sealed class OddChangeTests
{
    const string Uri = "file:///job/secret.nc";

    [Theory]
    [InlineData(5)]
    [InlineData(3)]
    [InlineData(-1)]
    public async Task A_version_that_is_not_newer_is_taken_and_told_once_for_each_document(int version)
    {
        await using var client = await TestClient.InitializedAsync();
        await client.OpenAsync(Uri, "O1 (AB)\nM30\n", version: 5);
        await client.ChangeAsync(Uri, version, TestClient.Insert(0, 6, "C"));
        await client.ChangeAsync(Uri, version, TestClient.Insert(0, 7, "D"));
        Assert.Equal("O1 ABCD", await NameOfAsync(client, Uri));
        var told = (string)(await client.NextAsync("window/logMessage"))["message"]!;
        Assert.Matches($"^textDocument/didChange at document [0-9a-f]{{8}}, version {version}, came behind version 5, which is not older: it was taken all the same\\. Others like it of this document are not told\\.$", told);
        Assert.Single(Logged(client));

        await client.OpenAsync("file:///job/other.nc", "O2\nM30\n", version: 1);
        await client.ChangeAsync("file:///job/other.nc", 1, TestClient.Insert(0, 2, "2"));
        Assert.Equal("O22", await NameOfAsync(client, "file:///job/other.nc"));
        Assert.Equal(2, Logged(client).Length);
        Assert.DoesNotContain("secret", client.ErrorLog.ToString(), StringComparison.Ordinal);
    }

    /// <summary>Until version 3.15 the protocol let null stand for a version that is not known (from memory).</summary>
    [Theory]
    [InlineData("")]
    [InlineData(",\"version\":null")]
    public async Task A_change_without_a_version_is_taken_as_of_the_version_before_and_told_once(string version)
    {
        await using var client = await TestClient.InitializedAsync();
        await client.OpenAsync(Uri, "O1 (AB)\nM30\n", version: 5);
        foreach (var character in new[] { 6, 7 })
            await client.NotifyAsync("textDocument/didChange", $$"""{"textDocument":{"uri":"{{Uri}}"{{version}}},"contentChanges":[{{TestClient.Insert(0, character, "C")}}]}""");
        Assert.Equal("O1 ABCC", await NameOfAsync(client, Uri));
        Assert.Matches("at document [0-9a-f]{8}, has no version: it was taken all the same", (string?)(await client.NextAsync("window/logMessage"))["message"]);
        Assert.Single(Logged(client));
        await client.ChangeAsync(Uri, 6, TestClient.Insert(0, 8, "D"));
        Assert.Equal("O1 ABCCD", await NameOfAsync(client, Uri));
        Assert.Equal(6, (int?)(await client.DiagnosticsAsync(Uri, 6))["version"]);
    }

    [Fact]
    public async Task A_range_that_ends_before_it_begins_is_taken_from_its_end_to_its_start_and_told_once()
    {
        await using var client = await TestClient.InitializedAsync();
        await client.OpenAsync(Uri, "O1 (AB)\nG0 X1\nM30\n");
        await client.ChangeAsync(Uri, 2, TestClient.Replace(1, 2, 0, 6, ")\nG1"));
        await client.ChangeAsync(Uri, 3, TestClient.Replace(0, 6, 0, 4, "XY"));
        Assert.Equal("O1 XY", await NameOfAsync(client, Uri));
        var told = (string)(await client.NextAsync("window/logMessage"))["message"]!;
        Assert.Matches(
            @"^textDocument/didChange at document [0-9a-f]{8}, version 2, line 1 character 2 \(from 0\), has a range that ends before it begins, at line 0 character 6: it was taken from its end to its start\. Others like it of this document are not told\.$", told);
        Assert.Single(Logged(client));
    }

    [Fact]
    public async Task Of_a_setup_file_it_is_told_too()
    {
        await using var client = await TestClient.InitializedAsync();
        await client.OpenAsync("file:///job/secret.setup.json", "{ }", version: 5);
        await client.ChangeAsync("file:///job/secret.setup.json", 5, TestClient.Whole("{  }"));
        Assert.Contains("version 5, came behind version 5", (string?)(await client.NextAsync("window/logMessage"))["message"], StringComparison.Ordinal);
    }

    /// <summary>LSP 3.17, Position: a character behind the end of a line counts as its end; a line behind the last, as the end of the text (common practice).</summary>
    [Fact]
    public async Task What_lies_beyond_the_text_is_clamped_and_is_nothing_to_tell()
    {
        await using var client = await TestClient.InitializedAsync();
        await client.OpenAsync(Uri, "O1 (AB)\nM30");
        await client.ChangeAsync(Uri, 2, TestClient.Replace(0, 6, 0, 99, "C)"));
        await client.ChangeAsync(Uri, 3, TestClient.Insert(99, 0, "\n"));
        Assert.Equal("O1 ABC", await NameOfAsync(client, Uri));
        Assert.Empty(Logged(client));
    }

    static async Task<string?> NameOfAsync(TestClient client, string uri) =>
        (string?)(await client.RequestAsync("textDocument/documentSymbol", $$"""{"textDocument":{"uri":"{{uri}}"} }"""))![0]!["name"];

    static string[] Logged(TestClient client) => client.ErrorLog.ToString().Split('\n', StringSplitOptions.RemoveEmptyEntries);
}
