using System.Text;
using System.Text.Json;
using System.Text.Json.Nodes;
using NcLanguage.Server.Protocol;

namespace NcLanguage.Server.Tests.Protocol;

/// <summary>Findings are written as JSON by hand, most of it once: what comes of it is what a general-purpose reader takes for the members of LSP 3.17, "Diagnostic".
/// Outside reference: System.Text.Json.</summary>
public sealed class DiagnosticJsonTests
{
    static readonly TextRange Range = new(new Position(0, uint.MaxValue), new Position(1_234_567, 8));

    static JsonNode Written(Diagnostic[] diagnostics) =>
        JsonNode.Parse(JsonSerializer.Serialize(new PublishDiagnosticsParams("file:///a.nc", 3, diagnostics), ProtocolJson.Default.PublishDiagnosticsParams))!["diagnostics"]!;

    [Theory]
    [InlineData("The tool goes down.")]
    [InlineData("\"quoted\" \\ and </script> & more")]
    [InlineData("Ø 深 😀 \u0001 \u007f \u2028 \ud83d")]
    [InlineData("")]
    public void Every_member_stands_where_the_protocol_has_it(string message)
    {
        var related = new DiagnosticRelatedInformation(Range, new RelatedText("file:///b \"c\".nc", message));
        var whole = new Diagnostic(Range, new DiagnosticText(message, DiagnosticSeverity.Warning, "NC1", new CodeDescription("file:///x.md"), "me", "a-name"), [related, related]);
        var bare = new Diagnostic(default, new DiagnosticText(message));

        var json = Written([whole, bare, whole]);

        // A lone surrogate is no text: it is written as the sign for one that is missing.
        var expected = message.Replace('\ud83d', '\ufffd').Replace("\ufffd\ude00", "😀", StringComparison.Ordinal);
        Assert.Equal(3, json.AsArray().Count);
        foreach (var at in (int[])[0, 2])
        {
            Assert.Equal(
                ["code", "codeDescription", "data", "message", "range", "relatedInformation", "severity", "source"], json[at]!.AsObject().Select(member => member.Key).Order(StringComparer.Ordinal));
            Assert.Equal((0, uint.MaxValue, 1_234_567, 8), Places(json[at]!["range"]!));
            Assert.Equal((expected, 2, "NC1", "me", "a-name"), ((string?)json[at]!["message"], (int)json[at]!["severity"]!, (string?)json[at]!["code"], (string?)json[at]!["source"], (string?)json[at]!["data"]));
            Assert.Equal("file:///x.md", (string?)json[at]!["codeDescription"]!["href"]);
            Assert.Equal(2, json[at]!["relatedInformation"]!.AsArray().Count);
            Assert.Equal(("file:///b \"c\".nc", expected), ((string?)json[at]!["relatedInformation"]![1]!["location"]!["uri"], (string?)json[at]!["relatedInformation"]![1]!["message"]));
            Assert.Equal((0, uint.MaxValue, 1_234_567, 8), Places(json[at]!["relatedInformation"]![1]!["location"]!["range"]!));
        }
        Assert.Equal(["message", "range"], json[1]!.AsObject().Select(member => member.Key).Order(StringComparer.Ordinal));
        Assert.Equal((0, 0u, 0, 0), Places(json[1]!["range"]!));
    }

    [Fact]
    public void One_that_comes_back_from_the_client_is_the_one_that_was_sent()
    {
        var sent = new Diagnostic(Range, new DiagnosticText("A \"b\"", DiagnosticSeverity.Error, "NC1", data: "a-name"), [new DiagnosticRelatedInformation(Range, new RelatedText("file:///b.nc", "there"))]);
        var json = Written([sent])[0]!.AsObject();
        // A client may add members of its own.
        json["tags"] = new JsonArray(1);

        var back = json.Deserialize(ProtocolJson.Default.Diagnostic)!;

        Assert.Equal((sent.Range, "A \"b\"", DiagnosticSeverity.Error, "NC1", "a-name"), (back.Range, back.Text.Message, back.Text.Severity, back.Text.Code, back.Text.Data));
        Assert.Equal((Range, "file:///b.nc", "there"), Assert.Single(back.RelatedInformation!) is var related ? (related.Range, related.Text.Uri, related.Text.Message) : default);
        json.Remove("tags");
        Assert.True(JsonNode.DeepEquals(json, Written([back])[0]));
    }

    [Theory]
    [InlineData("7", "A diagnostic is an object with a range.")]
    [InlineData("[]", "A diagnostic is an object with a range.")]
    [InlineData("{}", "A diagnostic is an object with a range.")]
    [InlineData("""{"message":"a"}""", "A diagnostic is an object with a range.")]
    [InlineData("""{"range":{"start":{"line":0,"character":0},"end":{"line":0,"character":0}}}""", "A diagnostic has a message.")]
    [InlineData("""{"range":7,"message":"a"}""", "not as the protocol has it: range.")]
    [InlineData("""{"range":null,"message":"a"}""", "not as the protocol has it: range.")]
    [InlineData("""{"range":{"start":{"line":-1,"character":0},"end":{"line":0,"character":0}},"message":"a"}""", "not as the protocol has it: range.start.line.")]
    [InlineData("""{"range":{"start":{"line":0,"character":0},"end":{"line":0,"character":0}},"message":7}""", "not as the protocol has it: message.")]
    [InlineData("""{"range":{"start":{"line":0,"character":0},"end":{"line":0,"character":0}},"message":"a","relatedInformation":7}""", "not as the protocol has it: relatedInformation.")]
    public void What_is_none_is_refused_and_told_where(string json, string expected)
    {
        var action = Encoding.UTF8.GetBytes($$$"""{"title":"t","diagnostics":[{"range":{"start":{"line":0,"character":0},"end":{"line":0,"character":0} },"message":"a"},{{{json}}}]}""");

        var refused = Assert.Throws<JsonException>(() => JsonSerializer.Deserialize(action, ProtocolJson.Default.CodeAction));

        Assert.Contains(expected, refused.Message, StringComparison.Ordinal);
        Assert.Equal("$.diagnostics[1]", refused.Path);
    }

    static (int, uint, int, int) Places(JsonNode range) =>
        ((int)range["start"]!["line"]!, (uint)range["start"]!["character"]!, (int)range["end"]!["line"]!, (int)range["end"]!["character"]!);
}
