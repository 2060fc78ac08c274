using System.Text.Json.Nodes;

namespace NcLanguage.Server.Tests;

/// <summary>What an editor shows of a program has no character in it that turns the direction of reading or that a terminal obeys: it is written out.</summary>
public sealed class ShownTextTests
{
    const string Uri = "file:///odd.nc";

    [Fact]
    public async Task Findings_and_titles_of_fixes_are_fit_for_a_line()
    {
        await using var client = await TestClient.InitializedAsync("""{"textDocument":{"publishDiagnostics":{"relatedInformation":true}}}""");
        await client.OpenAsync(Uri, "G21 G90 G17 G54\n(\u202eX)\nG1 X1 \u001b[31m F@\n\u202eG1 X2\u2066\nM98 P\u001b\n#<\u202ea\u001b> = 1\nG1 X#<\u202ea\u001b>\n");
        var findings = (await client.NextAsync("textDocument/publishDiagnostics"))["diagnostics"]!.AsArray();
        Assert.NotEmpty(findings);
        Assert.All(findings, finding =>
        {
            AssertPlain((string)finding!["message"]!);
            foreach (var related in finding["relatedInformation"]?.AsArray() ?? [])
                AssertPlain((string)related!["message"]!);
        });
        Assert.Contains(findings, finding => ((string)finding!["message"]!).Contains("\\x", StringComparison.Ordinal));
        var all = new JsonObject
        {
            ["textDocument"] = new JsonObject { ["uri"] = Uri },
            ["range"] = new JsonObject { ["start"] = new JsonObject { ["line"] = 0, ["character"] = 0 }, ["end"] = new JsonObject { ["line"] = 7, ["character"] = 0 } },
            ["context"] = new JsonObject { ["diagnostics"] = new JsonArray() },
        };
        Assert.All((await client.RequestAsync("textDocument/codeAction", all.ToJsonString()))!.AsArray(), action => AssertPlain((string)action!["title"]!));
    }

    static void AssertPlain(string text) => Assert.DoesNotContain(text, sign => char.IsControl(sign) || sign is '\u061c' or '\u200e' or '\u200f' or (>= '\u202a' and <= '\u202e') or (>= '\u2066' and <= '\u2069'));
}
