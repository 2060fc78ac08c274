using System.Runtime.Versioning;
using System.Text.Json;
using System.Text.Json.Nodes;
using NcLanguage.EndToEnd.Lsp;
using NcLanguage.EndToEnd.Support;

namespace NcLanguage.EndToEnd;

/// <summary>The packaged VS Code extension in the real VS Code workbench, in a headless browser, on the demonstration job.</summary>
[SupportedOSPlatform("linux")]
[Collection(nameof(WorkbenchTests))]
public sealed class WorkbenchTests
{
    readonly PackagedExtension extension;

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
            new JsonObject { ["do"] = "outline", ["text"] = hoverWord },
            new JsonObject { ["do"] = "hint", ["line"] = hintLine, ["source"] = demo.Lines[hintLine - 1] },
            new JsonObject { ["do"] = "hover", ["line"] = hoverLine, ["text"] = hoverWord, ["says"] = $"{hoverWord} drilling" },
            Workbench.Screenshot("vscode-findings-hover-hints.png"),
            new JsonObject { ["do"] = "fix", ["line"] = wanted.Line, ["column"] = wanted.Column, ["title"] = wanted.Fixes[0] },
            new JsonObject { ["do"] = "save" },
            Workbench.Screenshot("vscode-after-the-fix.png"));

        Assert.Contains(seen.GetProperty("problems").EnumerateArray(), row => row.GetString()!.Contains(wanted.Message, StringComparison.Ordinal));
        Assert.Contains(seen.GetProperty("outline").EnumerateArray(), row => row.GetString()!.Contains(hoverWord, StringComparison.Ordinal));
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
        // Nothing that the folder names is run or followed there: no server, no other setup, no other machine.
        var marker = folder.At("folder-was-followed");
        var rogue = folder.Write("rogue.sh", $"#!/bin/sh\ntouch '{marker}'\n");
        File.SetUnixFileMode(rogue, UnixFileMode.UserRead | UnixFileMode.UserExecute);
        var settings = new JsonObject { ["nclanguage.serverPath"] = rogue, ["nclanguage.setup"] = folder.Write("else.setup.json", "{}"), ["nclanguage.machine"] = "training-mill" };
        folder.Write("demo/.vscode/settings.json", settings.ToJsonString());
        var seen = await DriveAsync(folder, demo.Folder, demo.Program, restricted: true, ServerCommand.Executable,
            new JsonObject { ["do"] = "restrictedMode" },
            new JsonObject { ["do"] = "squiggle", ["severity"] = "error", ["line"] = demo.Fixable.Line },
            new JsonObject { ["do"] = "setupStatus", ["text"] = "nc.setup.json" });
        Assert.True(seen.GetProperty("restrictedMode").GetBoolean());
        Assert.True(seen.GetProperty("squiggles").GetInt32() > 0);
        var status = Assert.Single(seen.GetProperty("setupStatus").EnumerateArray()).GetString()!;
        Assert.Contains("Setup: nc.setup.json.", status, StringComparison.Ordinal);
        Assert.DoesNotContain("training-mill", status, StringComparison.Ordinal);
        Assert.False(File.Exists(marker), "The folder's own settings chose the program that was run.");
    }

    [EditorFact(Editor.Workbench)]
    public async Task A_server_that_is_not_found_is_said_with_a_way_to_set_it()
    {
        using var folder = new ScratchFolder();
        var demo = await DemoJob.WriteAsync(folder.At("demo"));
        var nowhere = folder.At("nowhere", "nclanguage");
        var seen = await DriveAsync(folder, demo.Folder, demo.Program, restricted: false, nowhere,
            new JsonObject { ["do"] = "message" },
            Workbench.Screenshot("vscode-server-not-found.png"),
            new JsonObject { ["do"] = "messageButton", ["title"] = "Open Setting", ["setting"] = "Server Path" });
        Assert.Contains(nowhere, seen.GetProperty("message").GetString(), StringComparison.Ordinal);
        Assert.Contains("nclanguage executable", seen.GetProperty("setting").GetString(), StringComparison.Ordinal);
    }

    [EditorFact(Editor.Workbench)]
    public async Task A_setup_file_may_hold_comments_and_each_mistake_in_it_is_told_once_with_its_fix()
    {
        using var folder = new ScratchFolder();
        var demo = await DemoJob.WriteAsync(folder.At("demo"));
        var setup = folder.Write("demo/other.setup.json", """
            {
              // The vice stands as in the drawing.
              "units": "furlong",
              "tools": [{ "number": 2, "kind": "dril" }],
            }

            """);
        var seen = await DriveAsync(folder, demo.Folder, setup, restricted: false, ServerCommand.Executable,
            new JsonObject { ["do"] = "squiggle", ["severity"] = "error", ["line"] = 3 },
            new JsonObject { ["do"] = "squiggle", ["severity"] = "error", ["line"] = 4 },
            new JsonObject { ["do"] = "problems", ["files"] = "**/*.nc", ["says"] = demo.Fixable.Message, ["as"] = "ofPrograms" },
            new JsonObject { ["do"] = "problems", ["files"] = "**/*.setup.json", ["says"] = "furlong" },
            new JsonObject { ["do"] = "complete", ["line"] = 3, ["column"] = 13 },
            Workbench.Screenshot("vscode-setup-file.png"),
            new JsonObject { ["do"] = "fix", ["line"] = 4, ["column"] = 38, ["title"] = "Write \"drill\"" },
            new JsonObject { ["do"] = "save" });
        var told = seen.GetProperty("problems").EnumerateArray().Select(row => row.GetString()!).Where(row => row.Contains("[Ln", StringComparison.Ordinal)).ToList();
        Assert.Equal(2, told.Count);
        Assert.All(told, row => Assert.Contains("NC8002", row, StringComparison.Ordinal));
        // The programs of the folder are checked as well, though none is open.
        Assert.Contains(seen.GetProperty("ofPrograms").EnumerateArray(), row => row.GetString()!.Contains(demo.Fixable.Message, StringComparison.Ordinal));
        var offered = seen.GetProperty("completions").EnumerateArray().Select(row => row.GetString()!.Trim('"')).ToList();
        Assert.Contains("mm", offered);
        Assert.Contains("inch", offered);
        Assert.Contains("\"kind\": \"drill\"", await File.ReadAllTextAsync(setup), StringComparison.Ordinal);
    }

    [NativeFact(Editor.Workbench)]
    public async Task The_package_for_this_platform_brings_its_own_server()
    {
        using var folder = new ScratchFolder();
        var demo = await DemoJob.WriteAsync(folder.At("demo"));
        // No setting names a server, and the PATH has none.
        Assert.DoesNotContain((Environment.GetEnvironmentVariable("PATH") ?? "").Split(Path.PathSeparator), entry => File.Exists(Path.Combine(entry, "nclanguage")));
        var seen = await DriveAsync(folder, demo.Folder, demo.Program, restricted: false, server: null,
            new JsonObject { ["do"] = "squiggle", ["severity"] = "error", ["line"] = demo.Fixable.Line },
            new JsonObject { ["do"] = "problems" });
        Assert.Contains(seen.GetProperty("problems").EnumerateArray(), row => row.GetString()!.Contains(demo.Fixable.Message, StringComparison.Ordinal));
    }

    [EditorFact(Editor.Workbench)]
    public async Task The_extension_s_own_tests_pass()
    {
        string[] files = ["src/server-path", "src/reference", "src/setup-status", "completion-schema", "manifest"];
        var told = await CommandLine.OutputAsync(
            ["node", "--test", "--test-reporter=tap", .. files.Select(name => Repository.At("editor-clients", "vscode", name.StartsWith("src/", StringComparison.Ordinal) ? name + ".test.js" : name + ".test.mjs"))],
            TimeSpan.FromMinutes(3));
        Assert.Contains("# pass 15", told, StringComparison.Ordinal);
    }

    /// <summary>The first hint's line (from 1) and the beginning of its text: the editor shortens long ones.</summary>
    static async Task<(int Line, string Text)> FirstHintAsync(DemoJob demo)
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

    /// <summary>Opens the folder in the workbench, with the extension that is told which server to start; with none, the one that has its own.</summary>
    async Task<JsonElement> DriveAsync(ScratchFolder scratch, string folder, string file, bool restricted, string? server, params JsonNode[] steps) =>
        await Workbench.DriveAsync(scratch, server is null ? await extension.BundledAsync() : await extension.FileAsync(), new JsonObject
        {
            ["folder"] = folder,
            ["file"] = file,
            ["restricted"] = restricted,
            ["machineSettings"] = server is null ? new JsonObject() : new JsonObject { ["nclanguage.serverPath"] = server },
            ["steps"] = new JsonArray(steps),
        });
}
