using System.Text;
using System.Text.Encodings.Web;
using System.Text.Json;
using System.Text.Json.Nodes;
using NcLanguage.Server.Protocol;
using NcLanguage.Server.Rpc;

namespace NcLanguage.Server.Tests.Protocol;

/// <summary>Large texts are taken out of their messages before the library reads those: what comes of them is what a general-purpose reader of JSON makes of the whole message.
/// Outside reference: System.Text.Json (RFC 8259 §7 for the escapes).</summary>
public sealed class LongTextTests
{
    static readonly JsonSerializerOptions Plain = new() { Encoder = JavaScriptEncoder.UnsafeRelaxedJsonEscaping };

    static byte[] Open(string text, string method = "textDocument/didOpen", bool isPlain = true) => Encoding.UTF8.GetBytes(
        $$$"""{"jsonrpc":"2.0","method":"{{{method}}}","params":{"textDocument":{"uri":"file:///a \"b\".nc","version":1,"text" : {{{JsonSerializer.Serialize(text, isPlain ? Plain : JsonSerializerOptions.Default)}}} } }}""");

    static readonly LongTexts Texts = new();

    static readonly JsonSerializerOptions Options = new(ProtocolJson.Default.Options) { Converters = { new Utf8TextConverter(Texts) } };

    static byte[]? Read(byte[] message) =>
        JsonNode.Parse(Texts.TakeFrom(message))!["params"].Deserialize<DidOpenTextDocumentParams>(Options)!.TextDocument.Text.ToBytes();

    static readonly string[] Pieces =
        ["G1 X10 Y20.5\n", "\r\n", "(depth \"3\")\n", "\\", "\t", "/M1\n", "Ø", "深", "😀", "\u0001", "\u0000", "\u0000text 0", "</script>", "\u007f", "%\n", "N10 ", "\b\f"];

    [Fact]
    public void Random_texts_come_as_they_were_sent()
    {
        var taken = 0;
        for (var seed = 0; seed < 300; seed++)
        {
            var random = new Random(seed);
            var text = new StringBuilder();
            while (text.Length < 30_000)
                text.Append(Pieces[random.Next(Pieces.Length)]);
            var message = Open(text.ToString(), isPlain: seed % 2 == 0);
            Assert.Equal(Encoding.UTF8.GetBytes(JsonNode.Parse(message)!["params"]!["textDocument"]!["text"]!.GetValue<string>()), Read(message));
            // One that begins like the sign is left where it is.
            var isTaken = new LongTexts().TakeFrom(message).Length < 200;
            Assert.Equal(!text.ToString().StartsWith("\0text ", StringComparison.Ordinal), isTaken);
            if (isTaken)
                taken++;
        }
        Assert.InRange(taken, 250, 299);
    }

    [Theory]
    [InlineData("\\ud83d\\ude00", "😀")]
    [InlineData("\\ud83d", "\ufffd")]
    [InlineData("\\ude00\\ud83d", "\ufffd\ufffd")]
    [InlineData("\\ud83d\\u0041", "\ufffdA")]
    [InlineData("\\ud83d\\n", "\ufffd\n")]
    [InlineData("\\/\\u00D8\\u00d8", "/ØØ")]
    public void Escapes_are_read_and_a_lone_surrogate_is_one_sign(string escaped, string expected)
    {
        string rest = new('X', 20_000);
        var message = Encoding.UTF8.GetBytes(Encoding.UTF8.GetString(Open(rest + "#")).Replace("#", escaped, StringComparison.Ordinal));
        Assert.Equal(rest + expected, Encoding.UTF8.GetString(Read(message)!));
    }

    /// <summary>RFC 8259 sections 7 and 8.2.</summary>
    [Theory]
    [InlineData("\\ud83d\\ude00", "😀")]
    [InlineData("\\uD83D", "\ufffd")]
    [InlineData("\\ude00\\ud83d", "\ufffd\ufffd")]
    [InlineData("\\ud83d\\ud83d\\ude00", "\ufffd😀")]
    [InlineData("\\ud83d\\u0041", "\ufffdA")]
    [InlineData("\\\\ud83d", "\\ud83d")]
    [InlineData("\\\\\\ud83d\\n", "\\\ufffd\n")]
    [InlineData("\\u00D8 Ø", "Ø Ø")]
    public void Half_of_a_pair_is_mended_wherever_it_stands_in_a_message(string escaped, string expected)
    {
        var message = Encoding.UTF8.GetBytes($"[\"{escaped}\"]");
        JsonText.MendHalves(message);
        Assert.Equal(expected, JsonNode.Parse(message)![0]!.GetValue<string>());
    }

    public static TheoryData<string, string> Odd => new()
    {
        { "a line end within a string", Encoding.UTF8.GetString(Open(new string('X', 20_000) + "#")).Replace("#", "\n", StringComparison.Ordinal) },
        { "an escape that is none", Encoding.UTF8.GetString(Open(new string('X', 20_000) + "#")).Replace("#", "\\x", StringComparison.Ordinal) },
        { "digits that are none", Encoding.UTF8.GetString(Open(new string('X', 20_000) + "#")).Replace("#", "\\u12+4", StringComparison.Ordinal) },
        { "an end within a string", Encoding.UTF8.GetString(Open(new string('X', 20_000)))[..15_000] + new string('X', 9_000) },
        { "another method", Encoding.UTF8.GetString(Open(new string('X', 20_000), "workspace/executeCommand")) },
        { "a short one", Encoding.UTF8.GetString(Open("G1 X1\n")) },
        { "the sign elsewhere", Encoding.UTF8.GetString(Open(new string('X', 20_000))).Replace("a \\\"b\\\"", "\\u0000text 0", StringComparison.Ordinal).Replace("file:///", "", StringComparison.Ordinal) },
    };

    [Theory]
    [MemberData(nameof(Odd))]
    public void What_is_odd_is_left_to_the_library(string what, string message)
    {
        var bytes = Encoding.UTF8.GetBytes(message);
        Assert.True(ReferenceEquals(bytes, new LongTexts().TakeFrom(bytes)), what);
    }

    [Fact]
    public void A_short_text_that_looks_like_the_sign_is_a_text()
    {
        Assert.Equal("\0text 0", Encoding.UTF8.GetString(Read(Open("\0text 0"))!));
        Assert.Equal("\0text 7", Encoding.UTF8.GetString(Read(Open("\0text 7"))!));
    }

    [Fact]
    public async Task Each_large_text_of_a_change_goes_to_its_place()
    {
        await using var client = await TestClient.InitializedAsync();
        string Lines(string word, int count) => string.Concat(Enumerable.Repeat(word + "\\n", count));
        await client.NotifyAsync("textDocument/didOpen", $$$"""{"textDocument":{"uri":"file:///long.nc","languageId":"nc","version":1,"text":"{{{Lines("(one)", 4000)}}}G1 X1"}}""");
        await client.NotifyAsync("textDocument/didChange", $$$"""
            {"textDocument":{"uri":"file:///long.nc","version":2},"contentChanges":[
              {"text":"{{{Lines("(two)", 3000)}}}"},
              {"range":{"start":{"line":10,"character":0},"end":{"line":10,"character":0}},"text":"{{{Lines("G4 P1", 3000)}}}"},
              {"range":{"start":{"line":0,"character":0},"end":{"line":1,"character":0}},"text":"%\n"}]}
            """);
        var hover = await client.RequestAsync("textDocument/hover", """{"textDocument":{"uri":"file:///long.nc"},"position":{"line":3009,"character":0}}""");
        Assert.Contains("G4", hover!.ToJsonString(), StringComparison.Ordinal);
        Assert.Null(await client.RequestAsync("textDocument/hover", """{"textDocument":{"uri":"file:///long.nc"},"position":{"line":3010,"character":2}}"""));
        Assert.Null(await client.RequestAsync("textDocument/hover", """{"textDocument":{"uri":"file:///long.nc"},"position":{"line":9,"character":2}}"""));
    }
}
