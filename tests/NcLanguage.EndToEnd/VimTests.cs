using System.Runtime.Versioning;
using System.Text.Json;
using System.Text.Json.Nodes;
using NcLanguage.EndToEnd.Support;

namespace NcLanguage.EndToEnd;

/// <summary>The Vim client with ALE in a real Vim without a screen, with the settings of its page, on the demonstration job.</summary>
[SupportedOSPlatform("linux")]
public sealed class VimTests
{
    /// <summary>G999 is no code, so that there is a finding to wait for.</summary>
    static readonly string[] Jumps = ["G21 G90 G17 G54 G999", "#1=1", "N60 #1=#1+1", "IF [#1 LT 3] GOTO 60", "M30"];

    [EditorFact(Editor.Vim)]
    public async Task Vim_shows_colours_findings_and_a_hover_and_renames_a_block_number()
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
            ["jumps"] = folder.Write("demo/jumps.nc", string.Join('\n', Jumps) + "\n"),
            ["renameLine"] = 3,
            ["renameColumn"] = 2,
            ["renameTo"] = "65",
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
        Assert.Equal(Jumps.Select(line => line.Replace("60", "65", StringComparison.Ordinal)), seen.GetProperty("renamed").EnumerateArray().Select(line => line.GetString()));
        Assert.Equal("ncsetup", seen.GetProperty("setupFiletype").GetString());
        var mistake = Assert.Single(seen.GetProperty("setup").EnumerateArray());
        Assert.Equal(3, mistake.GetProperty("line").GetInt32());
        Assert.Contains("furlong", mistake.GetProperty("message").GetString(), StringComparison.Ordinal);
    }
}
