using System.Text;
using NcLanguage.Server.Logging;

namespace NcLanguage.Server.Tests.Torture;

/// <summary>Names that a client sends are as long as it likes: answers and the log repeat no more than the two ends of them.</summary>
public sealed class LongNameTests
{
    const int Length = 100_000;

    [Theory]
    [InlineData("", 0)]
    [InlineData("x", 200)]
    [InlineData("\U0001F529", 100)]
    public void A_short_name_is_told_whole(string piece, int times)
    {
        var name = string.Concat(Enumerable.Repeat(piece, times));
        Assert.Equal(name, Excerpt.OfName(name));
    }

    /// <summary>Whichever unit the cut falls on; a half of a pair has no UTF-8 (RFC 3629 section 3).</summary>
    [Theory]
    [InlineData("")]
    [InlineData("a")]
    [InlineData("ab")]
    public void A_long_name_is_cut_in_its_middle_and_no_pair_in_two(string before)
    {
        for (var after = 0; after < 3; after++)
        {
            var name = before + string.Concat(Enumerable.Repeat("\U0001F529", 300)) + new string('z', after);
            var cut = Excerpt.OfName(name);
            Assert.InRange(cut.Length, 196, 200);
            var strict = new UTF8Encoding(encoderShouldEmitUTF8Identifier: false, throwOnInvalidBytes: true);
            Assert.Equal(cut, strict.GetString(strict.GetBytes(cut)));
            var ends = cut.Split('…');
            Assert.Equal(2, ends.Length);
            Assert.StartsWith(ends[0], name, StringComparison.Ordinal);
            Assert.EndsWith(ends[1], name, StringComparison.Ordinal);
        }
    }

    [Theory]
    [InlineData("{0}", "{}", -32601)]
    [InlineData("textDocument/documentSymbol", """{"textDocument":{"uri":"file:///{0}.nc"}}""", -32602)]
    [InlineData("textDocument/hover", """{"textDocument":{"uri":"{0}"},"position":{"line":0,"character":0}}""", -32602)]
    [InlineData("workspace/executeCommand", """{"command":"{0}"}""", -32602)]
    [InlineData("workspace/executeCommand", """{"command":"nclanguage.openMotionView","arguments":["file:///{0}"]}""", -32602)]
    [InlineData("codeAction/resolve", """{"title":"x","edit":{"changes":{"{0}":7}}}""", -32602)]
    public async Task An_answer_repeats_the_ends_of_a_name(string method, string parameters, int code)
    {
        await using var client = await TestClient.InitializedAsync();
        var name = "first" + string.Concat(Enumerable.Repeat("\U0001F529", Length / 2)) + "last";
        var answer = await client.AskAsync(method.Replace("{0}", name, StringComparison.Ordinal), parameters.Replace("{0}", name, StringComparison.Ordinal));
        Assert.Equal(code, (int)answer["error"]!["code"]!);
        var message = (string)answer["error"]!["message"]!;
        Assert.InRange(message.Length, 1, 400);
        Assert.DoesNotContain('\uFFFD', message);
    }

    [Theory]
    [InlineData("false")]
    [InlineData("true")]
    public async Task So_does_the_log(string details)
    {
        await using var client = await TestClient.InitializedAsync(more: $$""","initializationOptions":{"logDetails":{{details}} }""", pages: new WordyPages());
        var uri = $"file:///{new string('x', Length)}.nc";
        await client.ChangeAsync(uri, 2, """{"text":""}""");
        var refused = (string)(await client.NextAsync("window/logMessage"))["message"]!;
        await client.OpenAsync(uri, "G0 X1");
        Assert.Equal(-32603, await client.ErrorOfAsync("nclanguage/setupSheet", $$"""{"textDocument":{"uri":"{{uri}}"} }"""));
        var failed = (string)(await client.NextAsync("window/logMessage"))["message"]!;
        Assert.InRange(refused.Length, 1, 400);
        Assert.InRange(failed.Length, 1, 1000);
        Assert.Contains(", version 1, by InvalidCastException", failed, StringComparison.Ordinal);
        Assert.Equal(details == "true", refused.Contains("xxx", StringComparison.Ordinal));
        Assert.InRange(client.ErrorLog.ToString().Split('\n').Max(line => line.Length), 1, "nclanguage: ".Length + 1000);
    }

    /// <summary>The name goes on to the system, which repeats it.</summary>
    [Fact]
    public async Task So_does_what_the_system_says_of_a_name()
    {
        await using var client = await TestClient.InitializedAsync(pages: new WordyPages());
        var uri = $"file:///{new string('x', Length)}.nc";
        await client.OpenAsync(uri, "G0 X1");
        var answer = await client.AskAsync("workspace/executeCommand", $$"""{"command":"nclanguage.openMotionView","arguments":["{{uri}}"]}""");
        Assert.Equal(-32803, (int)answer["error"]!["code"]!);
        Assert.InRange(((string)answer["error"]!["message"]!).Length, 1, 1000);
    }

    /// <summary>A page of a setup is that of the program beside it, which is named by the setup's own name.</summary>
    [Fact]
    public async Task So_does_what_is_said_of_the_program_of_a_setup()
    {
        await using var client = await TestClient.InitializedAsync(pages: new WordyPages());
        var uri = $"file:///{new string('x', Length)}.setup.json";
        await client.OpenAsync(uri, "{ }");
        var answer = await client.AskAsync("nclanguage/motionView", $$"""{"textDocument":{"uri":"{{uri}}"} }""");
        Assert.Equal(-32803, (int)answer["error"]!["code"]!);
        Assert.InRange(((string)answer["error"]!["message"]!).Length, 1, 500);
    }

    [Fact]
    public async Task What_is_shown_to_the_user_is_cut_too()
    {
        await using var client = await TestClient.InitializedAsync(more: $$""","initializationOptions":{"readings":["{{new string('x', Length)}}=1"]}""");
        await client.OpenAsync("file:///part.nc", "G0 X1");
        Assert.InRange(((string)(await client.NextAsync("window/showMessage"))["message"]!).Length, 1, 1000);
    }

    sealed class WordyPages : IPages
    {
        public string MotionView(PageInput input, string? nonce, CancellationToken cancel) => "";

        public string SetupSheet(PageInput input, CancellationToken cancel) => throw new InvalidCastException(new string('m', Length));

        public string Write(string name, string page) => throw new PathTooLongException($"The path '{name}' is too long.");
    }
}
