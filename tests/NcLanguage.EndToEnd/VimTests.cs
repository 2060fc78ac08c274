using System.Runtime.Versioning;
using System.Text.Json;
using System.Text.Json.Nodes;
using NcLanguage.EndToEnd.Support;

namespace NcLanguage.EndToEnd;

/// <summary>The Vim client with ALE in a real Vim without a screen, with the settings of its page, on the demonstration job.</summary>
[SupportedOSPlatform("linux")]
public sealed class VimTests
{
    [EditorFact(Editor.Vim)]
    public async Task Vim_shows_colours_findings_and_a_hover()
    {
        Assert.True(Editors.Missing(Editor.Vim) is null, Editors.Missing(Editor.Vim));
        using var folder = new ScratchFolder();
        var demo = await DemoJob.WriteAsync(folder.At("demo"));
        var wanted = demo.Fixable;
        var (hoverLine, hoverColumn, hoverWord) = demo.Cycle;
        var result = folder.At("seen.json");
        var rapid = demo.PlaceOf("G0 ");
        var comment = demo.PlaceOf("(SPOT");
        var job = folder.Write("job.json", new JsonObject
        {
            ["file"] = demo.Program,
            ["setup"] = folder.Write("demo/other.setup.json", "{\n  // The vice stands as in the drawing.\n  \"units\": \"furlong\",\n}\n"),
            ["result"] = result,
            ["coloured"] = new JsonArray(new JsonArray(rapid.Line, rapid.Column), new JsonArray(hoverLine, hoverColumn), new JsonArray(comment.Line, comment.Column)),
            ["hoverLine"] = hoverLine,
            ["hoverColumn"] = hoverColumn,
            ["hoverWord"] = hoverWord,
        }.ToJsonString());
        var settings = folder.Write("vimrc", ClientPage.Code("vim", "vim"));

        var run = await CommandLine.RunAsync(
            [Editors.Vim!, "-u", settings, "-i", "NONE", "-n", "-es", "-S", Repository.At("tests", "NcLanguage.EndToEnd", "vim", "drive.vim")],
            TimeSpan.FromMinutes(4),
            new Dictionary<string, string>
            {
                ["NCLANGUAGE_E2E_JOB"] = job, ["PATH"] = ClientPage.PathWithServer(folder), ["HOME"] = folder.At("home"), ["TERM"] = "xterm",
            });
        Assert.True(File.Exists(result), $"vim ended with {run.ExitCode}:\n{run.Output}{run.Errors}");
        var seen = JsonElement.Parse(await File.ReadAllTextAsync(result));
        Assert.True(seen.TryGetProperty("finished", out _), $"{seen}\n{run.Errors}");

        Assert.Equal("nc", seen.GetProperty("filetype").GetString());
        Assert.Contains(seen.GetProperty("findings").EnumerateArray(), found =>
            found.GetProperty("line").GetInt32() == wanted.Line && found.GetProperty("message").GetString() == wanted.Message);
        Assert.Equal(["ncRapid", "ncCycle", "ncComment"], seen.GetProperty("groups").EnumerateArray().Select(group => group.GetString()));
        Assert.Contains(hoverWord, seen.GetProperty("hover").GetString(), StringComparison.Ordinal);
        Assert.Equal("ncsetup", seen.GetProperty("setupFiletype").GetString());
        var mistake = Assert.Single(seen.GetProperty("setup").EnumerateArray());
        Assert.Equal(3, mistake.GetProperty("line").GetInt32());
        Assert.Contains("furlong", mistake.GetProperty("message").GetString(), StringComparison.Ordinal);
    }
}
