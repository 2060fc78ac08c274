using System.Text.Json;
using System.Text.Json.Nodes;

namespace NcLanguage.EndToEnd.Support;

/// <summary>The VS Code workbench in a headless browser: takes steps there, as code-server/steps.mjs has them, and tells what was seen.</summary>
static class Workbench
{
    static readonly TimeSpan Limit = TimeSpan.FromMinutes(15);

    /// <summary>The step that takes a picture into artifacts/e2e, for people to look at.</summary>
    public static JsonObject Screenshot(string name) => new() { ["do"] = "screenshot", ["path"] = InArtifacts(name) };

    /// <summary>Runs a job (folder, file, settings, steps) in a fresh workbench with this extension.</summary>
    public static async Task<JsonElement> DriveAsync(ScratchFolder scratch, string vsix, JsonObject job)
    {
        var failure = InArtifacts("vscode-failure.png");
        File.Delete(failure);
        job["workbench"] = Editors.Workbench;
        job["chromium"] = Editors.Chromium;
        job["scratch"] = scratch.At("workbench");
        job["vsix"] = vsix;
        job["failureScreenshot"] = failure;
        var driver = Repository.At("tests", "NcLanguage.EndToEnd", "code-server", "drive.mjs");
        var run = await CommandLine.RunAsync(["node", driver, scratch.Write("job.json", job.ToJsonString())], Limit);
        Assert.True(run.ExitCode == 0 && run.Output.Length > 0, $"The driver ended with {run.ExitCode}:\n{run.Output}{run.Errors}");
        var seen = JsonElement.Parse(run.Output);
        if (seen.TryGetProperty("failure", out var problem))
            Assert.Fail($"{problem.GetString()}\nSeen until then: {seen}\nThe last view: {failure}");
        return seen;
    }

    static string InArtifacts(string name)
    {
        var path = Repository.At("artifacts", "e2e", name);
        Directory.CreateDirectory(Path.GetDirectoryName(path)!);
        return path;
    }
}
