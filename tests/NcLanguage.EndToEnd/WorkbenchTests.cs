using System.Runtime.Versioning;
using System.Text.Json;
using System.Text.Json.Nodes;
using NcLanguage.EndToEnd.Lsp;
using NcLanguage.EndToEnd.Support;

namespace NcLanguage.EndToEnd;

/// <summary>The packaged VS Code extension in the real VS Code workbench, in a headless browser, on the demonstration job.</summary>
[SupportedOSPlatform("linux")]
public sealed class WorkbenchTests : IClassFixture<PackagedExtension>
{
    private static readonly TimeSpan Limit = TimeSpan.FromMinutes(4);

    private readonly PackagedExtension extension;

    public WorkbenchTests(PackagedExtension extension)
    {
        this.extension = extension;
    }

    [EditorFact(Editor.Workbench)]
    public async Task The_workbench_shows_a_finding_a_hover_and_a_hint_and_takes_a_fix()
    {
        using var folder = new ScratchFolder();
        var demo = await DemoJob.WriteAsync(folder.At("demo"));
        // A folder must not choose what is run: were this setting followed, the marker would appear and the server not.
        var marker = folder.At("folder-was-followed");
        var rogue = folder.Write("rogue.sh", $"#!/bin/sh\ntouch '{marker}'\n");
        File.SetUnixFileMode(rogue, UnixFileMode.UserRead | UnixFileMode.UserExecute);
        folder.Write("demo/.vscode/settings.json", new JsonObject { ["nclanguage.serverPath"] = rogue }.ToJsonString());
        var wanted = demo.Fixable;
        var (hoverLine, _, hoverWord) = demo.Cycle;
        var (hintLine, hint) = await FirstHintAsync(demo);

        var seen = await DriveAsync(folder, demo.Folder, demo.Program, restricted: false, ServerCommand.Executable,
            new JsonObject { ["do"] = "squiggle", ["severity"] = "error", ["line"] = wanted.Line },
            new JsonObject { ["do"] = "problems" },
            new JsonObject { ["do"] = "hint", ["line"] = hintLine, ["source"] = demo.Lines[hintLine - 1] },
            new JsonObject { ["do"] = "hover", ["line"] = hoverLine, ["text"] = hoverWord },
            Screenshot("vscode-findings-hover-hints.png"),
            new JsonObject { ["do"] = "fix", ["line"] = wanted.Line, ["column"] = wanted.Column, ["title"] = wanted.Fixes[0] },
            new JsonObject { ["do"] = "save" },
            Screenshot("vscode-after-the-fix.png"));

        Assert.Contains(seen.GetProperty("problems").EnumerateArray(), row => row.GetString()!.Contains(wanted.Message, StringComparison.Ordinal));
        Assert.Contains(hoverWord, seen.GetProperty("hover").GetString(), StringComparison.Ordinal);
        Assert.Contains(hint, seen.GetProperty("hint").GetString(), StringComparison.Ordinal);
        await Fixed.AssertAsync(demo, wanted);
        Assert.False(File.Exists(marker), "The folder's own settings chose the program that was run.");
    }

    [EditorFact(Editor.Workbench)]
    public async Task In_a_folder_that_is_not_trusted_programs_are_checked_all_the_same()
    {
        using var folder = new ScratchFolder();
        var demo = await DemoJob.WriteAsync(folder.At("demo"));
        var seen = await DriveAsync(folder, demo.Folder, demo.Program, restricted: true, ServerCommand.Executable,
            new JsonObject { ["do"] = "restrictedMode" },
            new JsonObject { ["do"] = "squiggle", ["severity"] = "error", ["line"] = demo.Fixable.Line });
        Assert.True(seen.GetProperty("restrictedMode").GetBoolean());
        Assert.True(seen.GetProperty("squiggles").GetInt32() > 0);
    }

    [EditorFact(Editor.Workbench)]
    public async Task A_server_that_is_not_found_is_said_with_a_way_to_set_it()
    {
        using var folder = new ScratchFolder();
        var demo = await DemoJob.WriteAsync(folder.At("demo"));
        var nowhere = folder.At("nowhere", "nclanguage");
        var seen = await DriveAsync(folder, demo.Folder, demo.Program, restricted: false, nowhere,
            new JsonObject { ["do"] = "message" },
            Screenshot("vscode-server-not-found.png"),
            new JsonObject { ["do"] = "messageButton", ["title"] = "Open Setting", ["setting"] = "Server Path" });
        Assert.Contains(nowhere, seen.GetProperty("message").GetString(), StringComparison.Ordinal);
        Assert.Contains("nclanguage executable", seen.GetProperty("setting").GetString(), StringComparison.Ordinal);
    }

    [EditorFact(Editor.Workbench)]
    public async Task A_setup_file_may_hold_comments_and_its_values_are_checked_against_the_schema()
    {
        using var folder = new ScratchFolder();
        var demo = await DemoJob.WriteAsync(folder.At("demo"));
        var setup = folder.Write("demo/other.setup.json", """
            {
              // The vice stands as in the drawing.
              "units": "furlong",
            }

            """);
        var seen = await DriveAsync(folder, demo.Folder, setup, restricted: false, ServerCommand.Executable,
            new JsonObject { ["do"] = "squiggle", ["severity"] = "warning", ["line"] = 3 },
            new JsonObject { ["do"] = "problems" });
        // What the JSON support of the editor says of a value outside an enumeration, and would say of the rest.
        var problems = seen.GetProperty("problems").EnumerateArray().Select(row => row.GetString()!).ToList();
        Assert.Contains(problems, row => row.Contains("Value is not accepted", StringComparison.Ordinal));
        Assert.DoesNotContain(problems, row => row.Contains("omment", StringComparison.Ordinal) || row.Contains("omma", StringComparison.Ordinal));
    }

    [EditorFact(Editor.Workbench)]
    public async Task The_program_to_run_is_chosen_as_the_extension_says()
    {
        var told = await CommandLine.OutputAsync(["node", "--test", "--test-reporter=tap", Repository.At("editor-clients", "vscode", "src", "server-path.test.js")], TimeSpan.FromMinutes(1));
        Assert.Contains("# pass 4", told, StringComparison.Ordinal);
    }

    private static JsonObject Screenshot(string name)
    {
        var path = Repository.At("artifacts", "e2e", name);
        Directory.CreateDirectory(Path.GetDirectoryName(path)!);
        return new JsonObject { ["do"] = "screenshot", ["path"] = path };
    }

    /// <summary>The first hint's line (from 1) and the beginning of its text: the editor shortens long ones.</summary>
    private static async Task<(int Line, string Text)> FirstHintAsync(DemoJob demo)
    {
        await using var session = await LspSession.StartAsync(demo.Folder, "utf-16");
        await session.OpenAsync(demo.Program, await File.ReadAllTextAsync(demo.Program));
        var hint = (await session.HintsAsync(demo.Program, demo.Lines.Count))[0];
        var label = hint.GetProperty("label");
        var text = label.ValueKind == JsonValueKind.String
            ? label.GetString()!
            : string.Concat(label.EnumerateArray().Select(part => part.GetProperty("value").GetString()));
        return (hint.GetProperty("position").GetProperty("line").GetInt32() + 1, text[..Math.Min(text.Length, 20)]);
    }

    private async Task<JsonElement> DriveAsync(ScratchFolder scratch, string folder, string file, bool restricted, string server, params JsonNode[] steps)
    {
        var failure = Repository.At("artifacts", "e2e", "vscode-failure.png");
        Directory.CreateDirectory(Path.GetDirectoryName(failure)!);
        File.Delete(failure);
        var job = scratch.Write("job.json", new JsonObject
        {
            ["workbench"] = Editors.Workbench,
            ["chromium"] = Editors.Chromium,
            ["scratch"] = scratch.At("workbench"),
            ["vsix"] = await extension.FileAsync(),
            ["folder"] = folder,
            ["file"] = file,
            ["restricted"] = restricted,
            ["machineSettings"] = new JsonObject { ["nclanguage.serverPath"] = server },
            ["failureScreenshot"] = failure,
            ["steps"] = new JsonArray(steps),
        }.ToJsonString());
        var driver = Repository.At("tests", "NcLanguage.EndToEnd", "code-server", "drive.mjs");
        var run = await CommandLine.RunAsync(["node", driver, job], Limit);
        Assert.True(run.ExitCode == 0 && run.Output.Length > 0, $"The driver ended with {run.ExitCode}:\n{run.Output}{run.Errors}");
        var seen = JsonElement.Parse(run.Output);
        if (seen.TryGetProperty("failure", out var problem))
            Assert.Fail($"{problem.GetString()}\nSeen until then: {seen}\nThe last view: {failure}");
        return seen;
    }
}
