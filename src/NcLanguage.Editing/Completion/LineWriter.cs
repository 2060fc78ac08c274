using System.Text;
using NcLanguage.Checks;

namespace NcLanguage.Editing;

/// <summary>Writes whole blocks: with places to fill in where the editor has them, else with the numbers that are known, and bare letters for the rest.</summary>
sealed class LineWriter(Spot spot)
{
    readonly StringBuilder _text = new();
    readonly StringBuilder _shown = new();
    readonly string _end = LineEnding.Of(spot.Analysis.Text, spot.Line);
    int _next = 1;

    /// <summary>What is put in.</summary>
    public string NewText => _text.ToString();

    /// <summary>The same for people, with … for what is to be filled in.</summary>
    public string Shown => _shown.ToString();

    /// <summary>Adds words as they stand.</summary>
    public LineWriter Text(string text)
    {
        Space();
        Raw(spot.Style.Case(text));
        return this;
    }

    /// <summary>Adds a word whose number can be changed; null where none is known.</summary>
    public LineWriter Word(char letter, string? number)
    {
        Space();
        Raw(spot.Style.Case(letter.ToString()));
        return Hole(number ?? "");
    }

    /// <summary>Adds a place to fill in, with what it holds at first.</summary>
    public LineWriter Hole(string number)
    {
        _text.Append(spot.TakesSnippets ? $"${{{_next++}:{Escaped(number)}}}" : number);
        _shown.Append(number.Length > 0 ? number : "…");
        return this;
    }

    /// <summary>Adds signs right behind the last ones.</summary>
    public LineWriter Raw(string text)
    {
        _text.Append(spot.TakesSnippets ? Escaped(text) : text);
        _shown.Append(text);
        return this;
    }

    /// <summary>Ends the block.</summary>
    public LineWriter NewLine()
    {
        _text.Append(_end);
        _shown.Append('\n');
        return this;
    }

    /// <summary>The entry for what was written.</summary>
    public CompletionEntry Entry(string label, string detail, string? note = null) => new(label, CompletionKind.Lines, detail, NewText)
    {
        IsSnippet = spot.TakesSnippets, Documentation = $"```nc\n{Shown}\n```" + (note is null ? "" : "\n\n" + note),
    };

    void Space()
    {
        if (_shown.Length > 0 && _shown[^1] != '\n')
            Raw(" ");
    }

    static string Escaped(string text) =>
        text.Replace("\\", "\\\\", StringComparison.Ordinal).Replace("$", "\\$", StringComparison.Ordinal).Replace("}", "\\}", StringComparison.Ordinal);
}
