using System.Globalization;
using System.Runtime.Versioning;
using System.Text;
using System.Text.Json;
using System.Text.Json.Nodes;
using NcLanguage.EndToEnd.Support;

namespace NcLanguage.EndToEnd;

/// <summary>The motion view as a page, in Chromium: stepping, keys, words, looks, and talk with the page around it. Pictures of it are in artifacts/e2e.</summary>
[SupportedOSPlatform("linux")]
public sealed class MotionPageTests
{
    static readonly TimeSpan Limit = TimeSpan.FromMinutes(2);

    [EditorFact(Editor.Browser)]
    public async Task The_page_of_the_demonstration_is_used_by_keys_and_read_aloud()
    {
        using var folder = new ScratchFolder();
        var demo = await DemoJob.WriteAsync(folder.At("demo"));
        var program = Path.Combine(demo.Folder, "cover-plate-faulty.nc");
        var seen = await UseAsync(folder, program, line: 35);
        var blocks = await TracedAsync(program);
        Assert.Equal(0, seen.GetProperty("begin").GetProperty("slider").GetInt32());
        Assert.Equal(blocks.Count, seen.GetProperty("steps").GetInt32());
        Assert.Equal("Before the first block", Text(seen, "begin", "heading"));

        // Blocks come in the order of the trace, with their lines.
        Assert.Equal(blocks[2].Block, Text(seen, "threeOn", "block"));
        Assert.Equal($"line {blocks[2].Line}:  {blocks[2].Block}", Text(seen, "threeOn", "line"));
        Assert.Equal(blocks[1].Block, Text(seen, "oneBack", "block"));
        Assert.Equal(blocks[^1].Block, Text(seen, "end", "block"));
        Assert.Equal(0, seen.GetProperty("home").GetProperty("slider").GetInt32());
        Assert.Equal(blocks[0].Block, Text(seen, "onSlider", "block"));
        Assert.Contains($"line {blocks[0].Line}: {blocks[0].Block}", Text(seen, "onSlider", "spokenSlider"), StringComparison.Ordinal);
        // The first tool change; from the end back, the tapping cycle.
        Assert.Contains("T1 M6", Text(seen, "nextPart", "block"), StringComparison.Ordinal);
        Assert.Contains("G84", Text(seen, "partBefore", "block"), StringComparison.Ordinal);

        // The README of the demonstration names line 31 for the hole under clamp A.
        Assert.Equal("31", Text(seen, "contact", "facts", "Line"));
        Assert.Equal("meets clamp A, 4.5 mm deep", Text(seen, "contact", "facts", "Clearance"));
        Assert.Contains("meets clamp A, 4.5 mm deep", seen.GetProperty("spoken").GetString(), StringComparison.Ordinal);
        Assert.Contains("line 31", seen.GetProperty("spoken").GetString(), StringComparison.Ordinal);
        Assert.Equal("13", Text(seen, "secondHole", "facts", "Line"));
        Assert.Equal("X12 Y78 Z-2 mm", Text(seen, "secondHole", "facts", "Place"));
        Assert.Contains("T1 spot drill, 10 mm, 90°", Text(seen, "secondHole", "facts", "Tool"), StringComparison.Ordinal);

        Assert.Equal("true", seen.GetProperty("pressed").GetString());
        Assert.InRange(seen.GetProperty("ran").GetInt32(), 2, blocks.Count);
        Assert.True(seen.GetProperty("zoomed").GetBoolean());
        Assert.True(seen.GetProperty("kept").GetBoolean());
        Assert.Equal("rgb(255, 255, 255) 255,255,255,255", Text(seen, "ground", "light"));
        Assert.Equal("rgb(21, 24, 26) 21,24,26,255", Text(seen, "ground", "dark"));
        Assert.All(seen.GetProperty("colours").EnumerateArray(), count => Assert.InRange(count.GetInt32(), 20, int.MaxValue));
        Assert.All(seen.GetProperty("overhang").EnumerateArray(), pixels => Assert.InRange(pixels.GetInt32(), int.MinValue, 0));

        // No name of a clamp stands where the ring of a contact lies. Two contacts, in the plan and from the front at least.
        Assert.InRange(seen.GetProperty("ringsSeen").GetInt32(), 4, int.MaxValue);
        Assert.Empty(seen.GetProperty("underContact").EnumerateArray().Select(name => name.GetString()));

        Assert.InRange(seen.GetProperty("covered").GetDouble(), double.MinValue, 0);
        Assert.InRange(seen.GetProperty("columnsOut").GetInt32(), int.MinValue, 0);
        Assert.Contains("repeating-linear-gradient", Text(seen, "hatchInForcedColours"), StringComparison.Ordinal);
        Assert.Equal("1", Text(seen, "keyOnPaper", "rows"));
        Assert.Equal("exact", Text(seen, "keyOnPaper", "adjust"));

        // What a screen reader comes upon: names for all that can be used.
        var tree = seen.GetProperty("tree").GetString()!;
        Assert.All(
            new[] { "heading \"cover-plate-faulty.nc\"", "slider \"Block of the run\"", "button \"Run\"", "button \"One block on\"", "checkbox \"rapids\"", "combobox \"Colours", "heading \"Contacts: 2\"",
                "columnheader \"X, mm\"", "img \"Plan: X to the right, Y up", "heading \"Holes: 35\"" },
            name => Assert.Contains(name, tree, StringComparison.Ordinal));

        // The editor's line 35, from 0, is line 36; a step of the page's own is told, the editor's own line is not told back.
        Assert.Equal("36", Text(seen, "followed", "facts", "Line"));
        Assert.Equal(0, seen.GetProperty("echoes").GetInt32());
        Assert.Equal([36], seen.GetProperty("sent").EnumerateArray().Select(line => line.GetInt32()));
    }

    /// <summary>As in the program and in the trace: one inch is 25.4 mm, 10 in/min are 254 mm/min.</summary>
    [EditorFact(Editor.Browser)]
    public async Task A_program_in_inches_is_told_in_inches()
    {
        using var folder = new ScratchFolder();
        var program = folder.Write("inch.nc", "G20 G17 G90 G54 S900 M3 G0 X0 Y0\nZ1\nG1 X2.5 F10\nG99 G82 X1 Y0.5 Z-0.25 R0.1 P0.5 F8\nG80 M30\n");
        var seen = await UseAsync(folder, program, line: 3);
        Assert.Equal("X2.5 Y0 Z1 in", Text(seen, "threeOn", "facts", "Place"));
        Assert.Equal("X0 Y0 in, Z not known", Text(seen, "onSlider", "facts", "Place"));
        Assert.Equal("feed 10 in/min", Text(seen, "threeOn", "facts", "Moves"));
        Assert.Equal("F 10 in/min, S 900 1/min", Text(seen, "threeOn", "facts", "Feed, speed"));
        // 2.5 in at 10 in/min.
        Assert.StartsWith("15 s for this block", Text(seen, "threeOn", "facts", "Time"), StringComparison.Ordinal);
        Assert.Equal("G99, back to Z0.1 in; R Z0.1 in, bottom Z-0.25 in", Text(seen, "followed", "facts", "Levels"));
        Assert.Contains("columnheader \"X, in\"", seen.GetProperty("tree").GetString(), StringComparison.Ordinal);
        Assert.Contains("columnheader \"Feed, in/min\"", seen.GetProperty("tree").GetString(), StringComparison.Ordinal);
    }

    [EditorFact(Editor.Browser)]
    public async Task What_a_program_says_is_shown_and_never_run()
    {
        using var folder = new ScratchFolder();
        var program = folder.Write("hostile.nc", "G21 G90 G54\nG0 X1 Y2 Z3 (</script><script>alert(1)</script>)\nG1 X5 F100 (<img src=x onerror=alert(2)>)\nM30\n");
        var seen = await UseAsync(folder, program, line: 1);
        Assert.Equal(2, seen.GetProperty("scripts").GetInt32());
        Assert.Equal("G0 X1 Y2 Z3 (</script><script>alert(1)</script>)", seen.GetProperty("texts")[1].GetString());
        Assert.Equal("G1 X5 F100 (<img src=x onerror=alert(2)>)", Text(seen, "threeOn", "block"));
    }

    /// <summary>The same as a short one does; how long it takes is measured by page/measure.mjs.</summary>
    [EditorFact(Editor.Browser)]
    public async Task A_program_of_100000_moves_is_stepped_through()
    {
        using var folder = new ScratchFolder();
        var text = new StringBuilder("G21 G17 G90 G54 S1000 M3\nG0 X0 Y0 Z2\n");
        for (var i = 0; i < 100_000; i++)
            text.Append(CultureInfo.InvariantCulture, $"G1 X{i % 500} Y{i / 500 * 2} Z-{i % 7} F1000\n");
        text.Append("M30\n");
        var seen = await UseAsync(folder, folder.Write("long.nc", text.ToString()), line: 70_001);
        Assert.Equal(100_003, seen.GetProperty("steps").GetInt32());
        Assert.Equal("G1 X0 Y0 Z-0 F1000", Text(seen, "threeOn", "block"));
        Assert.Equal("M30", Text(seen, "end", "block"));
        Assert.Equal("X499 Y398 Z-4 mm", Text(seen, "end", "facts", "Place"));
        Assert.Equal("70002", Text(seen, "followed", "facts", "Line"));
        Assert.Equal("X499 Y278 Z-6 mm", Text(seen, "followed", "facts", "Place"));
        Assert.All(seen.GetProperty("colours").EnumerateArray(), count => Assert.InRange(count.GetInt32(), 5, int.MaxValue));
    }

    static async Task<JsonElement> UseAsync(ScratchFolder folder, string program, int line)
    {
        var page = folder.At("page.html");
        await CommandLine.OutputAsync(ServerCommand.With("view", program, "-o", page), Limit);
        var frame = folder.Write("frame.html", """
            <!DOCTYPE html><meta charset="utf-8"><title>Around the page</title>
            <script>window.lines = []; addEventListener('message', (event) => 'line' in event.data && window.lines.push(event.data.line));</script>
            <iframe src="page.html" width="1200" height="800"></iframe>
            """);
        var pictures = Repository.At("artifacts", "e2e");
        Directory.CreateDirectory(pictures);
        var job = folder.Write("job.json", new JsonObject { ["page"] = page, ["frame"] = frame, ["line"] = line, ["pictures"] = pictures }.ToJsonString());
        var environment = new Dictionary<string, string> { ["NCLANGUAGE_E2E_WORKBENCH"] = Editors.Workbench!, ["NCLANGUAGE_E2E_CHROMIUM"] = Editors.Chromium! };
        var run = await CommandLine.RunAsync(["node", Repository.At("tests", "NcLanguage.EndToEnd", "page", "motion-view.mjs"), job], Limit, environment);
        Assert.True(run.ExitCode == 0 && run.Output.Length > 0, $"The driver ended with {run.ExitCode}:\n{run.Output}{run.Errors}");
        var seen = JsonElement.Parse(run.Output);
        if (seen.TryGetProperty("failure", out var failure))
            Assert.Fail($"{failure.GetString()}\nSeen until then: {seen}");
        Assert.Empty(seen.GetProperty("errors").EnumerateArray());
        Assert.Equal(0, seen.GetProperty("dialogs").GetInt32());
        // The page itself, and nothing else, is read.
        Assert.All(seen.GetProperty("requests").EnumerateArray(), request => Assert.EndsWith("/page.html", request.GetString(), StringComparison.Ordinal));
        return seen;
    }

    static async Task<List<(int Line, string Block)>> TracedAsync(string program)
    {
        var trace = JsonElement.Parse(await CommandLine.OutputAsync(ServerCommand.With("trace", program, "--format", "json"), Limit));
        return [.. trace.GetProperty("steps").EnumerateArray().Select(step => (step.GetProperty("line").GetInt32(), step.GetProperty("block").GetString()!))];
    }

    static string Text(JsonElement seen, params ReadOnlySpan<string> path)
    {
        foreach (var name in path)
            seen = seen.GetProperty(name);
        return seen.ToString();
    }
}
