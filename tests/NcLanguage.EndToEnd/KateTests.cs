using System.Globalization;
using System.Runtime.Versioning;
using NcLanguage.EndToEnd.Support;

namespace NcLanguage.EndToEnd;

/// <summary>The Kate settings in a real Kate on a screen of its own, by the commands of their page, on the demonstration job. What Kate shows is read from a picture of it.</summary>
[SupportedOSPlatform("linux")]
public sealed class KateTests
{
    const string Error = "#FFE5E5";

    [EditorFact(Editor.Kate)]
    public async Task Kate_shows_colours_and_marks_lines_with_an_error_but_none_in_the_sound_program_and_in_setup_files_too()
    {
        Assert.True(Editors.Missing(Editor.Kate) is null, Editors.Missing(Editor.Kate));
        using var folder = new ScratchFolder();
        var demo = await DemoJob.WriteAsync(folder.At("demo"));
        var home = folder.At("home");
        Directory.CreateDirectory(home);
        var environment = new Dictionary<string, string>
        {
            ["HOME"] = home, ["PATH"] = ClientPage.PathWithServer(folder), ["XDG_RUNTIME_DIR"] = folder.At("run"), ["XDG_CONFIG_HOME"] = Path.Combine(home, ".config"),
            ["XDG_DATA_HOME"] = Path.Combine(home, ".local", "share"), ["XDG_CACHE_HOME"] = Path.Combine(home, ".cache"),
        };
        var commands = ClientPage.Code("kate", "sh");
        var install = await CommandLine.RunAsync(["bash", "-ec", commands[commands.IndexOf('\n', StringComparison.Ordinal)..]], TimeSpan.FromMinutes(1), environment);
        Assert.True(install.ExitCode == 0, install.Output + install.Errors);
        // What is switched on, and allowed, in the windows that the page names.
        await File.WriteAllTextAsync(Path.Combine(home, ".config", "katerc"),
            $"[General]\nStartup Session=manual\n\n[Kate Plugins]\nlspclientplugin=true\n\n[lspclient]\nAllowedServerCommandLines={folder.At("bin", "nclanguage")} serve\n");

        var faulty = await ColoursAsync(demo.Program, demo.Fixable.Line, "kate-faulty.png", environment);
        Assert.True(faulty.GetValueOrDefault(Error) > 1000, Told(faulty));
        // Comments, block numbers, numbers and letters of axes, in the colours of Kate's own light theme.
        Assert.All(["#898887", "#CA60CA", "#B08000", "#0057AE"], colour => Assert.True(faulty.GetValueOrDefault(colour) > 20, $"{colour}: {Told(faulty)}"));

        var sound = await ColoursAsync(Path.Combine(demo.Folder, "cover-plate.nc"), 1, "kate-sound.png", environment);
        Assert.True(sound.GetValueOrDefault("#CA60CA") > 20, Told(sound));
        Assert.Equal(0, sound.GetValueOrDefault(Error));

        var setup = folder.Write("demo/other.setup.json", "{\n  // The vice stands as in the drawing.\n  \"units\": \"furlong\",\n  \"stock\": { \"min\": [0, 0, -12.5], \"max\": [120.25, 60.75, 0] },\n}\n");
        var told = await ColoursAsync(setup, 1, "kate-setup.png", environment);
        Assert.True(told.GetValueOrDefault(Error) > 1000, Told(told));
        // Comments, names, numbers and texts.
        Assert.All(["#898887", "#0057AE", "#B08000", "#BF0303"], colour => Assert.True(told.GetValueOrDefault(colour) > 5, $"{colour}: {Told(told)}"));
    }

    static async Task<Dictionary<string, int>> ColoursAsync(string program, int line, string picture, Dictionary<string, string> environment)
    {
        var path = Repository.At("artifacts", "e2e", picture);
        Directory.CreateDirectory(Path.GetDirectoryName(path)!);
        var run = await CommandLine.RunAsync(
            [
                "xvfb-run", "-a", "-s", "-screen 0 1400x900x24", "dbus-run-session", "--", "bash", Repository.At("tests", "NcLanguage.EndToEnd", "kate", "drive.sh"),
                program, line.ToString(CultureInfo.InvariantCulture), path,
            ],
            TimeSpan.FromMinutes(4), environment);
        var colours = run.Output.Split('\n', StringSplitOptions.RemoveEmptyEntries).Select(row => row.Split(' ')).Where(row => row is [_, ['#', ..]])
            .GroupBy(row => row[1]).ToDictionary(group => group.Key, group => group.Sum(row => int.Parse(row[0], CultureInfo.InvariantCulture)));
        Assert.True(colours.Count > 10, $"No picture of Kate: {run.Output}{run.Errors}");
        return colours;
    }

    static string Told(Dictionary<string, int> colours) => string.Join(' ', colours.OrderByDescending(one => one.Value).Take(12).Select(one => $"{one.Key}:{one.Value}"));
}
