using System.Text;
using NcLanguage.Checks.Analysis;
using NcLanguage.Machine.Profiles;

namespace NcLanguage.Editing.Tests.Support;

/// <summary>A program with the cursor where | stands.</summary>
static class Typist
{
    /// <summary>A plate of aluminium, 12 mm thick, with four holes and HSS tools: spot drill, drill 6.8 mm, tap M8, mill.</summary>
    public const string Plate = """
        { "units": "mm", "frame": "G54", "clearance": 2, "material": "aluminium", "stock": { "min": [0, 0, -12], "max": [120, 60, 0] },
          "obstacles": [ { "name": "clamp A", "min": [25, 0, 0], "max": [45, 20, 25] } ],
          "tools": [
            { "number": 4, "kind": "spot-drill", "diameter": 10, "pointAngle": 90, "flutes": 2, "length": 95, "material": "HSS", "lengthOffset": 14 },
            { "number": 5, "kind": "drill", "diameter": 6.8, "pointAngle": 118, "flutes": 2, "length": 110, "material": "HSS" },
            { "number": 6, "kind": "tap", "diameter": 8, "pitch": 1.25, "flutes": 3, "length": 100, "material": "HSS" },
            { "number": 7, "kind": "end-mill", "diameter": 12, "flutes": 3, "length": 90, "material": "HSS", "radiusOffset": 27 } ],
          "holes": [
            { "x": 10, "y": 12, "diameter": 6.8, "depth": 9, "thread": "M8" }, { "x": 40, "y": 12, "diameter": 6.8, "depth": 9, "thread": "M8" },
            { "x": 40, "y": 40, "diameter": 6.8, "depth": 7.5 }, { "x": 90, "y": 40, "diameter": 10, "depth": 5 } ] }
        """;

    /// <summary>What makes the drill ready: speed 2,000, feed 200, Z50 over X0 Y0.</summary>
    public const string Drill = "G21 G17 G90 G54 G94\nT5 M6\nG0 X0 Y0\nG43 H5 Z50 S2000 M3 F200\n";

    public static (string Text, int Line, int Column) Parse(string marked)
    {
        marked = marked.ReplaceLineEndings("\n");
        var at = marked.IndexOf('|', StringComparison.Ordinal);
        Assert.True(at >= 0 && marked.IndexOf('|', at + 1) < 0, "The program needs one cursor.");
        return (marked.Remove(at, 1), marked[..at].Count(c => c == '\n'), Encoding.UTF8.GetByteCount(marked[(marked[..at].LastIndexOf('\n') + 1)..at]));
    }

    public static CompletionAnswer At(string marked, string? setup = null, MachineProfile? machine = null, AnalysisOptions? options = null, bool snippets = true)
    {
        var (text, line, column) = Parse(marked);
        return Completion.At(Editor.Analyse(text, setup, machine, options), line, column, snippets);
    }

    public static string[] Labels(string marked, string? setup = null, MachineProfile? machine = null, AnalysisOptions? options = null) =>
        [.. At(marked, setup, machine, options).Entries.Select(entry => entry.Label)];

    /// <summary>The entry with a label; fails where there is none.</summary>
    public static CompletionEntry Entry(this CompletionAnswer answer, string label)
    {
        Assert.Contains(label, answer.Entries.Select(entry => entry.Label));
        return answer.Entries.First(entry => entry.Label == label);
    }

    /// <summary>The program with an entry put in; places to fill in keep what they hold.</summary>
    public static string Accept(string marked, string label, string? setup = null, MachineProfile? machine = null)
    {
        var (text, line, _) = Parse(marked);
        var answer = At(marked, setup, machine);
        var entry = answer.Entry(label);
        var lines = text.Split('\n');
        var bytes = Encoding.UTF8.GetBytes(lines[line]);
        var newText = entry.IsSnippet ? Filled(entry.NewText) : entry.NewText;
        lines[line] = Encoding.UTF8.GetString(bytes[..answer.StartColumn]) + newText + Encoding.UTF8.GetString(bytes[answer.EndColumn..]);
        return string.Join('\n', lines);
    }

    /// <summary>A snippet as it stands once it is accepted (LSP 3.17, snippet syntax).</summary>
    public static string Filled(string snippet)
    {
        var text = new StringBuilder();
        for (var i = 0; i < snippet.Length; i++)
        {
            if (snippet[i] == '\\')
                text.Append(snippet[++i]);
            else if (snippet[i] == '$' && snippet[i + 1] == '{')
                i = snippet.IndexOf(':', i);
            else if (snippet[i] != '}')
                text.Append(snippet[i]);
        }
        return text.ToString();
    }
}
