using System.Text.Json.Nodes;

namespace NcLanguage.Benchmarks.Soak;

/// <summary>Types at random as somebody at work does: keys within a block, new and deleted lines, pasted stretches, and taking back what was done. Keeps the text
/// that the server should have.</summary>
sealed class Typist(string text, Random random)
{
    static readonly string[] s_blocks =
    [
        "G0 X12. Y30.", "G1 Z-2. F200", "G1 X45.5 Y20.25", "G2 X50 Y25 I5 J0", "G99 G81 X20 Y20 Z-4.5 R2 F180", "G80", "G91", "G90", "G20", "G21", "(NOTE é 中 \U0001F529)", "#101=#101+1",
        "IF [#101 LT 3] GOTO 20", "M98 P1200", "G41 D1", "G40", "T2 M6", "S900 M3", "G4 P500", "/G0 Z50", "N20", "%", "M30", "G17", "G18", "Q", "X", "WHILE [#101 LT 4] DO1", "END1",
    ];

    readonly List<string> _lines = [.. text.Split('\n')];
    readonly Stack<(int Line, string[] Now, string[] Before)> _done = new();
    readonly int _usual = text.Split('\n').Length;
    int _line;
    int _left;

    public string Text => string.Join('\n', _lines);

    public int LineCount => _lines.Count;

    /// <summary>Where the cursor stands.</summary>
    public (int Line, int Character) Cursor => (Math.Min(_line, _lines.Count - 1), _lines[Math.Min(_line, _lines.Count - 1)].Length);

    /// <summary>Does one edit, and gives it as the protocol's change.</summary>
    public JsonObject Next()
    {
        if (_left-- <= 0)
            (_line, _left) = (random.Next(_lines.Count), random.Next(5, 60));
        _line = Math.Clamp(_line, 0, _lines.Count - 1);
        var kind = random.Next(100);
        // The file stays about as long as it was.
        var isLong = _lines.Count > _usual * 1.2;
        if (kind < 12 && _done.Count > 0)
        {
            var (line, now, before) = _done.Pop();
            return Replace(line, now.Length, before);
        }
        if (kind < 62)
            return Do(_line, 1, [Typed(_lines[_line])]);
        if (kind < 80 && !isLong)
            return Do(_line, 1, [_lines[_line], Some()]);
        if (kind < 90 || isLong)
            return Do(_line, Math.Min(isLong ? 40 : 2, _lines.Count - _line), [Some()]);
        if (kind < 98)
            return Do(_line, 1, [.. Enumerable.Range(0, random.Next(2, 30)).Select(_ => Some())]);
        return Do(_line, Math.Min(random.Next(1, 50), _lines.Count - _line), [Some()]);
    }

    string Some() => s_blocks[random.Next(s_blocks.Length)];

    string Typed(string line)
    {
        var at = random.Next(line.Length + 1);
        if (at > 0 && at < line.Length && char.IsLowSurrogate(line[at]))
            at--;
        const string Keys = "GXYZFN0123456789.- ([)]#é";
        if (random.Next(3) > 0 || line.Length == 0 || at == line.Length)
            return line.Insert(at, Keys[random.Next(Keys.Length)].ToString());
        return line.Remove(at, char.IsHighSurrogate(line[at]) ? 2 : 1);
    }

    JsonObject Do(int line, int count, string[] now)
    {
        string[] before = [.. _lines.GetRange(line, count)];
        if (_done.Count > 500)
            _done.Clear();
        _done.Push((line, now, before));
        return Replace(line, count, now);
    }

    JsonObject Replace(int line, int count, string[] now)
    {
        var end = _lines[line + count - 1].Length;
        _lines.RemoveRange(line, count);
        _lines.InsertRange(line, now);
        return new JsonObject
        {
            ["range"] = new JsonObject { ["start"] = At(line, 0), ["end"] = At(line + count - 1, end) },
            ["text"] = string.Join('\n', now),
        };
    }

    public static JsonObject At(int line, int character) => new() { ["line"] = line, ["character"] = character };
}
