using System.Runtime.Versioning;
using System.Text.Json;
using System.Text.Json.Nodes;
using NcLanguage.EndToEnd.Support;

namespace NcLanguage.EndToEnd;

/// <summary>Programs, setups and file names that hold markup, on every page that is made of them, in Chromium: it is shown as text, and nothing is run or fetched.</summary>
[SupportedOSPlatform("linux")]
public sealed class HostilePageTests
{
    static readonly TimeSpan Limit = TimeSpan.FromMinutes(2);

    const string Script = "</script><script>owned=1;alert(1)</script>";
    const string Image = "<img src=x onerror=owned=2>";
    const string Breaking = "\"'><svg onload=owned=3>";

    const string Program = $"O0001 ({Script})\nG21 G90 G17 G54 ({Image})\n(TOOL {Breaking})\nT1 M6 ({Script})\nS900 M3\nG43 H1 G0 X0 Y0 Z30\nG99 G81 X10 Y10 Z-5 R2 F100 ({Image})\nX30 Y10\nG80\nM0 ({Breaking})\nM30 (]]>{Script})\n";

    [EditorFact(Editor.Browser)]
    public async Task What_a_program_and_its_setup_say_is_shown_and_never_run()
    {
        using var folder = new ScratchFolder();
        var program = folder.Write($"<img src=x onerror=owned=4>.nc", Program);
        folder.Write("nc.setup.json", new JsonObject
        {
            ["frame"] = "G54",
            ["material"] = Image,
            ["stock"] = new JsonObject { ["min"] = new JsonArray(0, 0, -20), ["max"] = new JsonArray(60, 40, 0) },
            ["obstacles"] = new JsonArray(new JsonObject { ["name"] = Script, ["min"] = new JsonArray(15, 5, 0), ["max"] = new JsonArray(25, 15, 20) }),
            ["supports"] = new JsonArray(new JsonObject { ["name"] = Breaking, ["min"] = new JsonArray(0, 0, -30), ["max"] = new JsonArray(60, 8, -20) }),
            ["tools"] = new JsonArray(new JsonObject { ["number"] = 1, ["kind"] = "drill", ["diameter"] = 6, ["lengthOffset"] = 1, ["length"] = 90, ["material"] = Image }),
        }.ToJsonString());
        string[] pages = [folder.At("view.html"), folder.At("view.svg"), folder.At("sheet.html")];
        foreach (var page in pages)
            await CommandLine.OutputAsync(ServerCommand.With(page.Contains("sheet", StringComparison.Ordinal) ? "sheet" : "view", program, "-o", page), Limit);

        var job = folder.Write("job.json", new JsonObject { ["pages"] = new JsonArray([.. pages.Select(page => (JsonNode)page)]) }.ToJsonString());
        var environment = new Dictionary<string, string> { ["NCLANGUAGE_E2E_WORKBENCH"] = Editors.Workbench!, ["NCLANGUAGE_E2E_CHROMIUM"] = Editors.Chromium! };
        var run = await CommandLine.RunAsync(["node", Repository.At("tests", "NcLanguage.EndToEnd", "page", "hostile.mjs"), job], Limit, environment);
        Assert.True(run.ExitCode == 0, $"The driver ended with {run.ExitCode}:\n{run.Output}{run.Errors}");
        var all = JsonElement.Parse(run.Output).EnumerateArray().ToList();
        Assert.Equal(pages.Length, all.Count);
        Assert.All(all, (seen, i) =>
        {
            Assert.Equal(0, seen.GetProperty("dialogs").GetInt32());
            Assert.Equal(JsonValueKind.Null, seen.GetProperty("owned").ValueKind);
            Assert.Equal(0, seen.GetProperty("images").GetInt32());
            Assert.Equal(0, seen.GetProperty("handlers").GetInt32());
            Assert.Empty(seen.GetProperty("errors").EnumerateArray());
            // The page itself, and nothing else, is read.
            Assert.Equal([new Uri(pages[i]).AbsoluteUri], seen.GetProperty("requests").EnumerateArray().Select(request => request.GetString()!));
            Assert.Empty(seen.GetProperty("addresses").EnumerateArray());
        });
        // Shown as it stands: the sheet has the program's head and the clamp, the view the clamp it meets.
        Assert.Contains("<script>owned=1;alert(1)</script>", all[2].GetProperty("text").GetString(), StringComparison.Ordinal);
        Assert.Contains("<img src=x onerror=owned=4>.nc", all[2].GetProperty("text").GetString(), StringComparison.Ordinal);
        Assert.Contains("<script>owned=1;alert(1)</script>", all[0].GetProperty("text").GetString(), StringComparison.Ordinal);
    }
}
