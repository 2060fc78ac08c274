using System.Text.Json;
using NcLanguage.Server.Protocol;

namespace NcLanguage.Server.Tests.Protocol;

/// <summary>RFC 8259 §6 knows one kind of number; LSP 3.17 wants whole ones at places ("integer", "uinteger").</summary>
public sealed class WholeNumberTests
{
    [Theory]
    [InlineData("3", 3u)]
    [InlineData("3.0", 3u)]
    [InlineData("3.000e0", 3u)]
    [InlineData("30e-1", 3u)]
    [InlineData("4294967295", uint.MaxValue)]
    [InlineData("4294967295.0", uint.MaxValue)]
    [InlineData("-0.0", 0u)]
    public void A_whole_number_may_be_written_with_a_point(string written, uint expected) =>
        Assert.Equal(expected, JsonSerializer.Deserialize($$"""{"line":{{written}},"character":0}""", ProtocolJson.Default.Position).Line);

    [Theory]
    [InlineData("2.0", 2)]
    [InlineData("-2147483648.0", int.MinValue)]
    public void So_may_a_version(string written, int expected) =>
        Assert.Equal(expected, JsonSerializer.Deserialize($$"""{"uri":"file:///a.nc","version":{{written}}}""", ProtocolJson.Default.VersionedTextDocumentIdentifier)!.Version);

    [Theory]
    [InlineData("3.5")]
    [InlineData("-1")]
    [InlineData("-1.0")]
    [InlineData("4294967296.0")]
    [InlineData("1e300")]
    [InlineData("1e999")]
    [InlineData("\"3\"")]
    [InlineData("null")]
    [InlineData("true")]
    public void What_is_no_whole_number_is_refused_at_its_place(string written)
    {
        var refused = Assert.Throws<JsonException>(() => JsonSerializer.Deserialize($$"""{"line":{{written}},"character":0}""", ProtocolJson.Default.Position));
        Assert.Equal("$.line", refused.Path);
    }

    [Fact]
    public async Task A_change_at_such_a_place_is_made()
    {
        const string Uri = "file:///a.nc";
        await using var client = await TestClient.InitializedAsync();
        await client.OpenAsync(Uri, "G21 G90\nM30\n");
        await client.NotifyAsync("textDocument/didChange", """{"textDocument":{"uri":"file:///a.nc","version":2.0},"contentChanges":[{"range":{"start":{"line":1.0,"character":0.0},"end":{"line":1.0,"character":0.0}},"text":"G1 F@\n"}]}""");
        for (var sent = await client.NextAsync("textDocument/publishDiagnostics"); ; sent = await client.NextAsync("textDocument/publishDiagnostics"))
            if ((int?)sent["version"] == 2)
            {
                Assert.Contains(sent["diagnostics"]!.AsArray(), finding => (int)finding!["range"]!["start"]!["line"]! == 1);
                return;
            }
    }
}
