using System.Globalization;
using System.Runtime.Versioning;
using System.Text.Json;
using System.Text.Json.Nodes;
using System.Text.RegularExpressions;
using NcLanguage.EndToEnd.Support;

namespace NcLanguage.EndToEnd;

/// <summary>
/// How a program looks in the workbench, in a light, a dark and a high-contrast theme: whether kinds of words can be told apart and read, and
/// whether what opens fits a small window. The pictures in artifacts/e2e are for people to judge the rest.
/// </summary>
[SupportedOSPlatform("linux")]
[Collection(nameof(WorkbenchTests))]
public sealed partial class WorkbenchLooksTests(PackagedExtension extension)
{
    // WCAG 2.1, success criterion 1.4.3: text against what is behind it.
    const double LeastContrast = 4.5;

    [EditorTheory(Editor.Workbench)]
    [InlineData("light", "Default Light Modern")]
    [InlineData("dark", "Default Dark Modern")]
    [InlineData("contrast", "Default High Contrast")]
    public async Task Kinds_of_words_differ_and_can_be_read_and_boxes_fit_a_small_window(string name, string theme)
    {
        using var folder = new ScratchFolder();
        var demo = await DemoJob.WriteAsync(folder.At("demo"));
        var (cycleLine, _, cycle) = demo.Cycle;
        var fix = demo.Fixable;
        var setupLine = Array.FindIndex(await File.ReadAllLinesAsync(Path.Combine(demo.Folder, "nc.setup.json")), line => line.Contains("\"clearance\"", StringComparison.Ordinal)) + 1;
        var seen = await Workbench.DriveAsync(folder, await extension.FileAsync(), new JsonObject
        {
            ["folder"] = demo.Folder,
            ["file"] = demo.Program,
            ["restricted"] = false,
            ["machineSettings"] = new JsonObject { ["nclanguage.serverPath"] = ServerCommand.Executable },
            ["userSettings"] = new JsonObject { ["workbench.colorTheme"] = theme },
            ["view"] = new JsonObject { ["width"] = 1000, ["height"] = 650 },
            ["steps"] = new JsonArray(
                new JsonObject { ["do"] = "squiggle", ["severity"] = "error", ["line"] = fix.Line },
                new JsonObject
                {
                    ["do"] = "colours",
                    ["differ"] = new JsonArray("comment", "mode", "rapid", "cycle", "axis", "number", "tool change"),
                    ["words"] = new JsonArray(
                        Word("comment", LineWith(demo, "(SPOT"), "SPOT"),
                        Word("mode", LineWith(demo, "G21"), "G21"),
                        Word("rapid", LineWith(demo, " G0 "), "G0"),
                        Word("cycle", cycleLine, cycle),
                        Word("axis", cycleLine, "X"),
                        Word("number", cycleLine, "12"),
                        Word("feed", cycleLine, "F"),
                        Word("tool change", LineWith(demo, "M6"), "M6")),
                },
                new JsonObject { ["do"] = "hover", ["line"] = cycleLine, ["text"] = cycle, ["says"] = $"{cycle} drilling" },
                new JsonObject { ["do"] = "overhang", ["selector"] = ".monaco-hover:not(.hidden)" },
                Workbench.Screenshot($"vscode-{name}-small-hover.png"),
                new JsonObject { ["do"] = "fixMenu", ["line"] = fix.Line, ["column"] = fix.Column },
                new JsonObject { ["do"] = "overhang", ["selector"] = ".action-widget" },
                Workbench.Screenshot($"vscode-{name}-small-fixes.png"),
                new JsonObject { ["do"] = "resize", ["width"] = 1440, ["height"] = 900 },
                new JsonObject { ["do"] = "problems" },
                Workbench.Screenshot($"vscode-{name}-program.png"),
                new JsonObject { ["do"] = "panel" },
                new JsonObject { ["do"] = "motionView" },
                new JsonObject { ["do"] = "motionFollows", ["line"] = fix.Line, ["text"] = demo.Lines[fix.Line - 1] },
                new JsonObject { ["do"] = "motionGround" },
                Workbench.Screenshot($"vscode-{name}-motion.png"),
                new JsonObject { ["do"] = "open", ["name"] = "nc.setup.json" },
                new JsonObject { ["do"] = "hover", ["line"] = setupLine, ["text"] = "clearance" },
                Workbench.Screenshot($"vscode-{name}-setup.png"),
                new JsonObject { ["do"] = "walkthrough", ["title"] = "Check a CNC program before it runs" },
                Workbench.Screenshot($"vscode-{name}-walkthrough.png")),
        });

        var paper = Luminance(seen.GetProperty("paper").GetString()!);
        var colours = seen.GetProperty("colours").EnumerateObject().ToDictionary(one => one.Name, one => one.Value.GetString()!);
        Assert.All(colours, one => Assert.True(
            Contrast(Luminance(one.Value), paper) >= LeastContrast,
            $"{one.Key}: {one.Value} has contrast {Contrast(Luminance(one.Value), paper):0.0} in {theme}"));
        // F, S, T and M are one family (ISO 6983-1: feed, spindle speed, tool and miscellaneous functions); all else differs.
        Assert.Equal(colours["tool change"], colours["feed"]);
        colours.Remove("feed");
        Assert.Equal(colours.Count, colours.Values.Distinct().Count());

        Assert.Equal(name == "light", Luminance(seen.GetProperty("motionGround").GetString()!) > 0.5);

        var overhang = seen.GetProperty("overhang").EnumerateArray().Select(value => value.GetDouble()).ToList();
        Assert.True(overhang.Count >= 2);
        Assert.All(overhang, pixels => Assert.Equal(0, pixels, 1.0));
    }

    static JsonObject Word(string name, int line, string text) => new() { ["name"] = name, ["line"] = line, ["text"] = text };

    static int LineWith(DemoJob demo, string text) => demo.Lines.ToList().FindIndex(line => line.Contains(text, StringComparison.Ordinal)) + 1;

    static double Contrast(double one, double other) => (Math.Max(one, other) + 0.05) / (Math.Min(one, other) + 0.05);

    /// <summary>Relative luminance of "rgb(r, g, b)", as WCAG 2.1 defines it for sRGB.</summary>
    static double Luminance(string colour)
    {
        var parts = Numbers().Matches(colour).Take(3)
            .Select(match => double.Parse(match.Value, CultureInfo.InvariantCulture) / 255)
            .Select(part => part <= 0.03928 ? part / 12.92 : Math.Pow((part + 0.055) / 1.055, 2.4))
            .ToList();
        return (0.2126 * parts[0]) + (0.7152 * parts[1]) + (0.0722 * parts[2]);
    }

    [GeneratedRegex(@"\d+(?:\.\d+)?")]
    private static partial Regex Numbers();
}
