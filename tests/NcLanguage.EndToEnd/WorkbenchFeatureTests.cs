using System.Runtime.Versioning;
using System.Text.Json;
using System.Text.Json.Nodes;
using NcLanguage.EndToEnd.Support;

namespace NcLanguage.EndToEnd;

/// <summary>What people do while they write, in the real VS Code workbench: completing, renaming, watching the motion, reading a rule's page.</summary>
[SupportedOSPlatform("linux")]
[Collection(nameof(WorkbenchTests))]
public sealed class WorkbenchFeatureTests(PackagedExtension extension)
{
    static readonly string[] Slots =
    [
        "%",
        "O0420 (LINK PLATE)",
        "N10 G21 G17 G90 G94 G40 G49 G80",
        "N20 T2 M6",
        "N30 G54 G0 X0 Y0 S3000 M3",
        "N40 G43 H2 Z30 M8",
        "N50 #130=1",
        "N60 G0 X[10*#130] Y5",
        "N70 G1 Z-2 F200",
        "N80 G1 X50 F300",
        "N90 G0 Z5",
        "N100 #130=#130+1",
        "N110 IF [#130 LT 3] GOTO 60",
        "",
        "N120 M5 M9",
        "N130 M30",
        "%",
    ];

    [EditorFact(Editor.Workbench)]
    public async Task Rapids_and_cuts_have_their_colours_codes_are_completed_and_a_block_number_is_renamed_with_its_jump()
    {
        using var folder = new ScratchFolder();
        var seen = await DriveAsync(folder, "link-plate.nc", Slots,
            // Once the server has told what it found, it has coloured as well.
            new JsonObject { ["do"] = "squiggle", ["severity"] = "warning", ["line"] = 9 },
            new JsonObject
            {
                ["do"] = "colours",
                ["differ"] = new JsonArray("rapid", "cut"),
                ["words"] = new JsonArray(Word("rapid", 8, "G0"), Word("cut", 9, "G1"), Word("later rapid", 11, "G0")),
            },
            new JsonObject { ["do"] = "rename", ["line"] = 8, ["column"] = 2, ["to"] = "65" },
            new JsonObject { ["do"] = "accept", ["line"] = 14, ["column"] = 1, ["text"] = "G8", ["label"] = "G82" },
            Workbench.Screenshot("vscode-after-completion.png"),
            new JsonObject { ["do"] = "save" });

        var colours = seen.GetProperty("colours");
        Assert.NotEqual(colours.GetProperty("rapid").GetString(), colours.GetProperty("cut").GetString());
        Assert.Equal(colours.GetProperty("rapid").GetString(), colours.GetProperty("later rapid").GetString());
        Assert.Equal("60", seen.GetProperty("renamedFrom").GetString());
        Assert.Contains("needs", seen.GetProperty("acceptedRow").GetString(), StringComparison.Ordinal);
        Assert.Contains("dwell", seen.GetProperty("acceptedDetail").GetString(), StringComparison.OrdinalIgnoreCase);
        var wanted = (string[])Slots.Clone();
        (wanted[7], wanted[12], wanted[13]) = ("N65 G0 X[10*#130] Y5", "N110 IF [#130 LT 3] GOTO 65", "G82");
        Assert.Equal(wanted, (await File.ReadAllLinesAsync(folder.At("job", "link-plate.nc"))).Select(line => line.TrimEnd()));
    }

    [EditorFact(Editor.Workbench)]
    public async Task The_motion_view_follows_the_cursor_and_leads_it_and_is_drawn_anew_after_typing()
    {
        using var folder = new ScratchFolder();
        var seen = await DriveAsync(folder, "link-plate.nc", Slots,
            new JsonObject { ["do"] = "squiggle", ["severity"] = "warning", ["line"] = 9 },
            new JsonObject { ["do"] = "motionView" },
            new JsonObject { ["do"] = "motionFollows", ["line"] = 10, ["text"] = "N80" },
            new JsonObject { ["do"] = "motionLeads", ["line"] = 11 },
            new JsonObject { ["do"] = "motionRedraws", ["line"] = 9, ["column"] = 11, ["text"] = ".5", ["shown"] = "Z-2.5" });
        Assert.Contains("link-plate.nc", seen.GetProperty("motionTab").GetString(), StringComparison.Ordinal);
        Assert.Equal("line 10: N80 G1 X50 F300", seen.GetProperty("motionFollowed").GetString());
        Assert.Equal(11, seen.GetProperty("cursorLine").GetInt32());
        Assert.Equal("line 9: N70 G1 Z-2.5 F200", seen.GetProperty("motionRedrawn").GetString());
    }

    [EditorFact(Editor.Workbench)]
    public async Task The_number_behind_a_finding_opens_the_page_of_its_rule()
    {
        using var folder = new ScratchFolder();
        var seen = await DriveAsync(folder, "part.nc", ["G21 G90 G17 G54", "G999", "M30"],
            new JsonObject { ["do"] = "squiggle", ["severity"] = "error", ["line"] = 2 },
            new JsonObject { ["do"] = "rulePage", ["line"] = 2, ["text"] = "G999", ["code"] = "NC1" },
            Workbench.Screenshot("vscode-rule-page.png"));
        Assert.Contains("At the machine", seen.GetProperty("rulePage").GetString(), StringComparison.Ordinal);
    }

    [EditorFact(Editor.Workbench)]
    public async Task A_setup_file_is_completed_with_its_own_words()
    {
        using var folder = new ScratchFolder();
        var seen = await DriveAsync(folder, "other.setup.json", ["{", "  \"units\": \"mm\",", "  ", "}"],
            new JsonObject { ["do"] = "accept", ["line"] = 3, ["column"] = 3, ["text"] = "\"cl", ["label"] = "clampHeight" },
            new JsonObject { ["do"] = "save" });
        Assert.Contains("clamp", seen.GetProperty("acceptedDetail").GetString(), StringComparison.OrdinalIgnoreCase);
        Assert.Contains("\"clampHeight\": ", await File.ReadAllTextAsync(folder.At("job", "other.setup.json")), StringComparison.Ordinal);
    }

    [EditorFact(Editor.Workbench)]
    public async Task The_status_bar_names_the_setup_and_begins_one_where_there_is_none()
    {
        using var folder = new ScratchFolder();
        var lone = folder.Write("lone/part.nc", "%\nG21 G90 G17 G55\nT7 M6\nG43 H17 Z50. M3 S1000\nG0 X0 Y0\nM30\n%\n");
        var seen = await Workbench.DriveAsync(folder, await extension.FileAsync(), new JsonObject
        {
            ["folder"] = folder.At("lone"),
            ["file"] = lone,
            ["restricted"] = false,
            ["machineSettings"] = new JsonObject { ["nclanguage.serverPath"] = ServerCommand.Executable },
            ["steps"] = new JsonArray(
                new JsonObject { ["do"] = "setupStatus", ["text"] = "No setup" },
                new JsonObject { ["do"] = "openSetup", ["button"] = "Begin a Setup", ["tab"] = "part.setup.json" },
                Workbench.Screenshot("vscode-new-setup.png"),
                new JsonObject { ["do"] = "save" },
                new JsonObject { ["do"] = "open", ["name"] = "part.nc" },
                new JsonObject { ["do"] = "setupStatus", ["text"] = "part.setup.json" }),
        });
        var status = seen.GetProperty("setupStatus").EnumerateArray().Select(one => one.GetString()!).ToList();
        Assert.Contains("clamps, stock and tools are not checked", status[0], StringComparison.Ordinal);
        Assert.Contains("Setup: part.setup.json.", status[1], StringComparison.Ordinal);
        Assert.Contains("\"frame\": \"G55\"", await File.ReadAllTextAsync(folder.At("lone", "part.setup.json")), StringComparison.Ordinal);
        Assert.Contains("{ \"number\": 7, \"lengthOffset\": 17 }", seen.GetProperty("setupText").GetString(), StringComparison.Ordinal);
    }

    [EditorFact(Editor.Workbench)]
    public async Task The_walkthrough_leads_from_the_program_to_the_sheet()
    {
        using var folder = new ScratchFolder();
        var seen = await DriveAsync(folder, "link-plate.nc", Slots,
            new JsonObject { ["do"] = "setupStatus", ["text"] = "nc.setup.json" },
            new JsonObject { ["do"] = "walkthrough", ["title"] = "Check a CNC program before it runs" },
            Workbench.Screenshot("vscode-walkthrough.png"),
            new JsonObject { ["do"] = "walkthroughStep", ["title"] = "Hand over the setup sheet" },
            Workbench.Screenshot("vscode-walkthrough-sheet.png"),
            new JsonObject { ["do"] = "walkthroughStep", ["title"] = "See the motion", ["button"] = "Show the Motion", ["tab"] = "Motion: link-plate.nc" });
        Assert.Equal(
            ["Open a program", "Read a finding", "Say what is on the table", "See the motion", "Hand over the setup sheet"],
            seen.GetProperty("walkthrough").EnumerateArray().Select(step => step.GetString()!));
    }

    static JsonObject Word(string name, int line, string text) => new() { ["name"] = name, ["line"] = line, ["text"] = text };

    /// <summary>Opens a file of a fresh folder, which has the setup of the demonstration, in the workbench.</summary>
    async Task<JsonElement> DriveAsync(ScratchFolder scratch, string name, string[] lines, params JsonNode[] steps)
    {
        await DemoJob.WriteAsync(scratch.At("demo"));
        foreach (var beside in (string[])["nc.setup.json", "mill.machine.json"])
            scratch.Write($"job/{beside}", await File.ReadAllTextAsync(scratch.At("demo", beside)));
        return await Workbench.DriveAsync(scratch, await extension.FileAsync(), new JsonObject
        {
            ["folder"] = scratch.At("job"),
            ["file"] = scratch.Write($"job/{name}", string.Join('\n', lines) + "\n"),
            ["restricted"] = false,
            ["machineSettings"] = new JsonObject { ["nclanguage.serverPath"] = ServerCommand.Executable },
            ["userSettings"] = new JsonObject { ["workbench.colorTheme"] = "Default Light Modern" },
            ["steps"] = new JsonArray(steps),
        });
    }
}
