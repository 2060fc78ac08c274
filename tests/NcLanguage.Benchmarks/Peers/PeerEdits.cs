using System.Text.Json.Nodes;

namespace NcLanguage.Benchmarks.Peers;

/// <summary>A change of a text: the range, columns in ASCII characters, and what stands there afterwards.</summary>
readonly record struct PeerEdit(int Line, int Column, int EndLine, int EndColumn, string Text)
{
    public JsonObject Change => new() { ["range"] = Range(Line, Column, EndLine, EndColumn), ["text"] = Text };

    /// <summary>What takes the change back.</summary>
    public PeerEdit Undo(string[] lines)
    {
        var added = Text.Count('\n');
        var lastColumn = added == 0 ? Column + Text.Length : Text.Length - Text.LastIndexOf('\n') - 1;
        var before = Line == EndLine
            ? lines[Line][Column..EndColumn]
            : string.Join('\n', [lines[Line][Column..], .. lines[(Line + 1)..EndLine], lines[EndLine][..EndColumn]]);
        return new PeerEdit(Line, Column, Line + added, lastColumn, before);
    }

    public static JsonObject Range(int line, int column, int endLine, int endColumn) => new()
    {
        ["start"] = new JsonObject { ["line"] = line, ["character"] = column },
        ["end"] = new JsonObject { ["line"] = endLine, ["character"] = endColumn },
    };
}

/// <summary>The edits that are tried on a text. Each makes a fault or another meaning, so that every server has something to tell, and is taken back.</summary>
static class PeerEdits
{
    /// <summary>A key struck, at three places.</summary>
    public const string Key = "key";

    public const string Paste = "paste";

    public const string Following = "following";

    /// <summary>Beginning, middle and end.</summary>
    static readonly double[] Shares = [0, 0.5, 1];

    /// <summary>All edits, the weightiest first, each under the name of the row it is counted in.</summary>
    public static IEnumerable<(string Row, PeerEdit Edit)> Of(PeerServer server, string[] lines)
    {
        var places = Shares.Select(share => LineAt(lines, share)).ToArray();
        foreach (var line in places)
            yield return (Key, new PeerEdit(line, Middle(lines[line]), line, Middle(lines[line]), "@"));
        yield return (Paste, new PeerEdit(Between(lines, places[1]), 0, Between(lines, places[1]), 0, server.Paste(1000)));
        if (server.IsOurs)
            foreach (var edit in ThatChangeWhatFollows(lines))
                yield return (Following, edit);
        foreach (var line in (int[])[places[1], places[0], places[2]])
        {
            yield return (Key, new PeerEdit(line, Middle(lines[line]), line, Middle(lines[line]), "\n"));
            yield return (Key, new PeerEdit(line, 0, line + 1, 0, ""));
        }
        foreach (var line in (int[])[places[0], places[2]])
            yield return (Paste, new PeerEdit(Between(lines, line), 0, Between(lines, line), 0, server.Paste(1000)));
    }

    /// <summary>Where a hover is asked for: a name, or an address, at or behind a line.</summary>
    public static (int Line, int Column) Word(string[] lines, int from)
    {
        for (var line = from; ; line++)
            if (lines[line].IndexOf(" x", StringComparison.OrdinalIgnoreCase) is >= 0 and var blank)
                return (line, blank + 1);
    }

    /// <summary>Distances in the place of positions from the first block on, another speed, another feed, a block number more.</summary>
    static IEnumerable<PeerEdit> ThatChangeWhatFollows(string[] lines)
    {
        yield return Replace("G90", "G91");
        yield return Replace("S", "S1");
        yield return Replace(" F", " F1");
        yield return new PeerEdit(4, 0, 4, 0, "N7 ");

        PeerEdit Replace(string word, string by)
        {
            var line = Array.FindIndex(lines, text => text.Contains(word, StringComparison.Ordinal));
            var column = lines[line].IndexOf(word, StringComparison.Ordinal);
            return new PeerEdit(line, column, line, column + word.Length, by);
        }
    }

    /// <summary>The first line at or behind a share of the text whose middle stands in a word or number.</summary>
    static int LineAt(string[] lines, double share)
    {
        var line = Math.Min((int)(share * lines.Length), lines.Length - 60) + 12;
        while (lines[line].Length < 16 || !char.IsLetterOrDigit(lines[line][Middle(lines[line])]) || !char.IsLetterOrDigit(lines[line][Middle(lines[line]) - 1]))
            line++;
        return line;
    }

    static int Middle(string line)
    {
        for (var at = line.Length / 2; at < line.Length; at++)
            if (char.IsLetterOrDigit(line[at]) && char.IsLetterOrDigit(line[at - 1]))
                return at;
        return line.Length / 2;
    }

    /// <summary>The line behind the next blank one, where there are blank ones: there whole functions can be pasted.</summary>
    static int Between(string[] lines, int line)
    {
        var blank = Array.FindIndex(lines, line, Math.Min(20, lines.Length - line - 1), text => text.Length == 0);
        return blank < 0 ? line : blank + 1;
    }
}
