using System.Text;
using NcLanguage.Checks.Analysis;
using NcLanguage.Machine.Loading;
using NcLanguage.Machine.Profiles;
using NcLanguage.Machine.Setups;
using NcLanguage.Syntax.Text;

namespace NcLanguage.Editing.Tests.Support;

/// <summary>A program as an editor would have it open, with the cursor where $0 stands.</summary>
static class Editor
{
    public const string Cursor = "$0";

    /// <summary>A plate with one clamp, 25 mm high, between X25 and X45, and a spot drill, a drill, a tap and a mill.</summary>
    public const string PlateSetup = """
        { "units": "mm", "frame": "G54", "clearance": 2, "stock": { "min": [0, 0, -12], "max": [120, 60, 0] },
          "obstacles": [ { "name": "clamp A", "min": [25, 0, 0], "max": [45, 20, 25] } ],
          "tools": [
            { "number": 4, "kind": "spot-drill", "diameter": 10, "pointAngle": 90, "flutes": 2, "length": 95, "lengthOffset": 4 },
            { "number": 5, "kind": "drill", "diameter": 12.7, "pointAngle": 118, "flutes": 2, "length": 110, "lengthOffset": 5 },
            { "number": 6, "kind": "tap", "diameter": 8, "pitch": 1.25, "flutes": 3, "length": 100, "lengthOffset": 6 } ] }
        """;

    public static Setup Setup(string json)
    {
        var read = SetupFile.Read("test.setup.json", Encoding.UTF8.GetBytes(json));
        Assert.Empty(read.Problems);
        return read.Setup;
    }

    public static ProgramAnalysis Analyse(string text, string? setup = null, MachineProfile? machine = null, AnalysisOptions? options = null) =>
        ProgramAnalysis.Create(SourceText.From(text.ReplaceLineEndings("\n")), setup is null ? Machine.Setups.Setup.None : Setup(setup),
            machine ?? MachineProfile.IsoMill with { IsChosen = true }, options);

    public static MachineProfile Reading(params string[] readings)
    {
        var machine = MachineProfile.IsoMill with { IsChosen = true };
        foreach (var reading in readings)
        {
            machine = ReadingOption.Apply(machine, reading, out var error);
            Assert.Null(error);
        }
        return machine;
    }

    /// <summary>The hover at the cursor.</summary>
    public static HoverAnswer? HoverAt(string marked, string? setup = null, MachineProfile? machine = null, AnalysisOptions? options = null)
    {
        marked = marked.ReplaceLineEndings("\n");
        var at = marked.IndexOf(Cursor, StringComparison.Ordinal);
        Assert.True(at >= 0 && marked.IndexOf(Cursor, at + 1, StringComparison.Ordinal) < 0, "The program needs one cursor.");
        var line = marked[..at].Count(c => c == '\n');
        var column = Encoding.UTF8.GetByteCount(marked[(marked[..at].LastIndexOf('\n') + 1)..at]);
        return Hover.At(Analyse(marked.Remove(at, Cursor.Length), setup, machine, options), line, column);
    }

    /// <summary>The hover's Markdown at the cursor, without the source at its end; fails where there is none.</summary>
    public static string Markdown(string marked, string? setup = null, MachineProfile? machine = null, AnalysisOptions? options = null)
    {
        var whole = WithSource(marked, setup, machine, options);
        return whole.LastIndexOf("\n\nSource: ", StringComparison.Ordinal) is > 0 and var source ? whole[..source] : whole;
    }

    /// <summary>The whole of the hover's Markdown at the cursor; fails where there is none.</summary>
    public static string WithSource(string marked, string? setup = null, MachineProfile? machine = null, AnalysisOptions? options = null)
    {
        var answer = HoverAt(marked, setup, machine, options);
        Assert.NotNull(answer);
        return answer.Markdown;
    }

    /// <summary>Demands exactly this Markdown at the cursor, the source left out.</summary>
    public static void Shows(string expected, string marked, string? setup = null, MachineProfile? machine = null) =>
        Assert.Equal(expected.ReplaceLineEndings("\n"), Markdown(marked, setup, machine));
}
