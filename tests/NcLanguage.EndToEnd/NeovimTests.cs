using System.Text.Json;
using System.Text.Json.Nodes;
using NcLanguage.EndToEnd.Support;

namespace NcLanguage.EndToEnd;

/// <summary>The Neovim client in a real, headless Neovim on the demonstration job.</summary>
public sealed class NeovimTests
{
    [EditorFact(Editor.Neovim)]
    public async Task Neovim_shows_findings_a_hover_hints_and_colours_completes_renames_and_takes_a_fix()
    {
        Assert.True(Editors.Missing(Editor.Neovim) is null, Editors.Missing(Editor.Neovim));
        // What the test runs is what the page tells people to write.
        Assert.StartsWith("require('nclanguage').setup", ClientPage.Code("neovim", "lua"), StringComparison.Ordinal);
        using var folder = new ScratchFolder();
        var demo = await DemoJob.WriteAsync(folder.At("demo"));
        var wanted = demo.Fixable;
        var (hoverLine, hoverColumn, hoverWord) = demo.Cycle;
        var result = folder.At("seen.json");
        var setup = folder.Write("demo/other.setup.json", "{\n  // The vice stands as in the drawing.\n  \"units\": \"furlong\",\n}\n");
        var job = folder.Write("job.json", new JsonObject
        {
            ["client"] = Repository.At("editor-clients", "neovim"),
            ["command"] = new JsonArray([.. ServerCommand.With("serve").Select(word => (JsonNode)word)]),
            ["file"] = demo.Program,
            ["setup"] = setup,
            ["result"] = result,
            ["hoverLine"] = hoverLine,
            ["hoverColumn"] = hoverColumn,
            ["hoverWord"] = hoverWord,
            ["fixLine"] = wanted.Line,
            ["fixColumn"] = wanted.Column,
            ["fixTitle"] = wanted.Fixes[0],
        }.ToJsonString());

        var run = await CommandLine.RunAsync(
            [Editors.Neovim!, "--headless", "-u", "NONE", "-i", "NONE", "-n", $"+luafile {Repository.At("tests", "NcLanguage.EndToEnd", "neovim", "drive.lua")}"],
            TimeSpan.FromMinutes(4),
            new Dictionary<string, string> { ["NCLANGUAGE_E2E_JOB"] = job });
        Assert.True(run.ExitCode == 0 && File.Exists(result), $"nvim ended with {run.ExitCode}:\n{run.Output}{run.Errors}");
        using var document = JsonDocument.Parse(await File.ReadAllTextAsync(result));
        var seen = document.RootElement;
        Assert.True(seen.TryGetProperty("finished", out _), seen.ToString());

        Assert.Equal("nc", seen.GetProperty("filetype").GetString());
        Assert.Contains(seen.GetProperty("errors").EnumerateArray(), e =>
            e.GetProperty("line").GetInt32() == wanted.Line && e.GetProperty("message").GetString() == wanted.Message);
        Assert.Contains(hoverWord, seen.GetProperty("hover").GetString(), StringComparison.Ordinal);
        Assert.Contains(hoverWord, seen.GetProperty("completions").EnumerateArray().Select(word => word.GetString()));
        Assert.Contains(hoverWord + " ", seen.GetProperty("signature").GetString(), StringComparison.Ordinal);
        Assert.NotEmpty(seen.GetProperty("hints").EnumerateArray());
        Assert.Equal("ncCycle", seen.GetProperty("group").GetString());
        Assert.StartsWith("N61 ", seen.GetProperty("renamed").GetString(), StringComparison.Ordinal);
        Assert.Contains(wanted.Fixes[0], seen.GetProperty("fixes").EnumerateArray().Select(f => f.GetString()));
        var mistake = Assert.Single(seen.GetProperty("setup").EnumerateArray());
        Assert.Equal(3, mistake.GetProperty("line").GetInt32());
        Assert.Contains("furlong", mistake.GetProperty("message").GetString(), StringComparison.Ordinal);
        Assert.Equal(1, seen.GetProperty("clients").GetInt32());
        await Fixed.AssertAsync(demo, wanted);
    }
}
