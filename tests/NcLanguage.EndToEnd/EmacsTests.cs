using System.Runtime.Versioning;
using System.Text.Json;
using System.Text.Json.Nodes;
using NcLanguage.EndToEnd.Support;

namespace NcLanguage.EndToEnd;

/// <summary>The Emacs client in a real Emacs without a window, with the settings of its page, on the demonstration job.</summary>
[SupportedOSPlatform("linux")]
public sealed class EmacsTests
{
    /// <summary>G999 is no code, so that there is a finding to wait for.</summary>
    const string Jumps = "G21 G90 G17 G54 G999\n#1=1\nN60 #1=#1+1\nIF [#1 LT 3] GOTO 60\nM30\n";

    [EditorFact(Editor.Emacs)]
    public async Task Emacs_shows_colours_findings_and_a_hover_completes_takes_a_fix_and_renames_a_block_number()
    {
        Assert.True(Editors.Missing(Editor.Emacs) is null, Editors.Missing(Editor.Emacs));
        using var folder = new ScratchFolder();
        var demo = await DemoJob.WriteAsync(folder.At("demo"));
        var wanted = demo.Fixable;
        var (hoverLine, hoverColumn, hoverWord) = demo.Cycle;
        var result = folder.At("seen.json");
        var rapid = demo.PlaceOf("G0 ");
        var comment = demo.PlaceOf("(SPOT");
        var job = folder.Write("job.json", new JsonObject
        {
            ["settings"] = folder.Write("init.el", ClientPage.Code("emacs", "elisp")),
            ["file"] = demo.Program,
            ["setup"] = folder.Write("demo/other.setup.json", "{\n  // The vice stands as in the drawing.\n  \"units\": \"furlong\",\n}\n"),
            ["result"] = result,
            ["jumps"] = folder.Write("demo/jumps.nc", Jumps),
            ["renameLine"] = 3,
            ["renameColumn"] = 2,
            ["renameTo"] = "65",
            ["coloured"] = new JsonArray(new JsonArray(rapid.Line, rapid.Column), new JsonArray(hoverLine, hoverColumn), new JsonArray(comment.Line, comment.Column)),
            ["hoverLine"] = hoverLine,
            ["hoverColumn"] = hoverColumn,
            ["completeLine"] = hoverLine,
            ["completeColumn"] = hoverColumn + 1,
            ["fixLine"] = wanted.Line,
            ["fixColumn"] = wanted.Column,
            ["fixTitle"] = wanted.Fixes[0],
        }.ToJsonString());

        var run = await CommandLine.RunAsync(
            [Editors.Emacs!, "-q", "--batch", "-l", Repository.At("tests", "NcLanguage.EndToEnd", "emacs", "drive.el")],
            TimeSpan.FromMinutes(4),
            new Dictionary<string, string> { ["NCLANGUAGE_E2E_JOB"] = job, ["PATH"] = ClientPage.PathWithServer(folder), ["HOME"] = folder.At("home") });
        Assert.True(run.ExitCode == 0 && File.Exists(result), $"emacs ended with {run.ExitCode}:\n{run.Output}{run.Errors}");
        var seen = JsonElement.Parse(await File.ReadAllTextAsync(result));
        Assert.True(seen.TryGetProperty("finished", out _), $"{seen}\n{run.Errors}");

        Assert.Equal("nc-mode", seen.GetProperty("mode").GetString());
        Assert.Contains(seen.GetProperty("findings").EnumerateArray(), found =>
            found.GetProperty("line").GetInt32() == wanted.Line && found.GetProperty("message").GetString()!.Contains(wanted.Message, StringComparison.Ordinal));
        var faces = seen.GetProperty("faces").EnumerateArray().Select(face => face.GetString()).ToList();
        Assert.Equal(3, faces.Distinct().Count());
        Assert.DoesNotContain("nil", faces);
        Assert.Equal("font-lock-comment-face", faces[2]);
        Assert.Contains(hoverWord, seen.GetProperty("hover").GetString(), StringComparison.Ordinal);
        // The words of a cycle and what a word does are both told, and a finding beside them.
        Assert.Equal("eldoc-documentation-compose", seen.GetProperty("tells").GetString());
        Assert.Contains(seen.GetProperty("completions").EnumerateArray(), offered => offered.GetString()!.StartsWith(hoverWord, StringComparison.Ordinal));
        Assert.Contains(wanted.Fixes[0], seen.GetProperty("fixes").EnumerateArray().Select(title => title.GetString()));
        Assert.Equal(Jumps.Replace("60", "65", StringComparison.Ordinal), seen.GetProperty("renamed").GetString());
        Assert.Equal("nc-setup-mode", seen.GetProperty("setupMode").GetString());
        var mistake = Assert.Single(seen.GetProperty("setup").EnumerateArray());
        Assert.Equal(3, mistake.GetProperty("line").GetInt32());
        Assert.Contains("furlong", mistake.GetProperty("message").GetString(), StringComparison.Ordinal);
        await Fixed.AssertAsync(demo, wanted);
    }
}
