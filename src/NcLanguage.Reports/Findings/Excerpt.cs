using System.Globalization;
using System.Text;

namespace NcLanguage.Reports.Findings;

/// <summary>A line, or the part of a long one around a place, made fit to be shown: no control characters, tabs as one blank.</summary>
/// <param name="Text">What to show.</param>
/// <param name="MarkStart">Characters of <paramref name="Text"/> before the marked place.</param>
/// <param name="MarkLength">Characters that are marked; at least 1, so that an empty place shows too.</param>
public readonly record struct Excerpt(string Text, int MarkStart, int MarkLength)
{
    const int Widest = 120;
    const int Lead = 40;

    /// <summary>The excerpt around bytes <paramref name="start"/> to <paramref name="end"/> of a line; a byte that is no UTF-8 shows as the replacement character.</summary>
    public static Excerpt Of(ReadOnlySpan<byte> line, int start, int end)
    {
        start = Math.Clamp(start, 0, line.Length);
        end = Math.Clamp(end, start, line.Length);
        var from = line.Length <= Widest || start <= Lead ? 0 : CharacterStart(line, start - Lead);
        var to = CharacterStart(line, Math.Min(line.Length, from + Widest));
        var before = Shown(line[from..start]);
        var marked = Shown(line[start..Math.Max(start, Math.Min(end, to))]);
        var after = Shown(line[Math.Min(Math.Max(start, Math.Min(end, to)), line.Length)..Math.Max(to, Math.Min(end, to))]);
        var lead = from > 0 ? "…" : "";
        return new Excerpt(lead + before + marked + after + (to < line.Length ? "…" : ""), Width(lead + before), Math.Max(1, Width(marked)));
    }

    static int CharacterStart(ReadOnlySpan<byte> line, int at)
    {
        while (at > 0 && at < line.Length && (line[at] & 0xC0) == 0x80)
            at--;
        return at;
    }

    static string Shown(ReadOnlySpan<byte> bytes)
    {
        var text = Encoding.UTF8.GetString(bytes);
        return text.AsSpan().IndexOfAnyExceptInRange(' ', '~') < 0 ? text : string.Concat(text.EnumerateRunes().Select(Shown));
    }

    static string Shown(Rune rune) => Rune.GetUnicodeCategory(rune) switch
    {
        _ when rune.Value == '\t' => " ",
        UnicodeCategory.Control or UnicodeCategory.Format or UnicodeCategory.LineSeparator or UnicodeCategory.ParagraphSeparator => "\uFFFD",
        _ => rune.ToString(),
    };

    // Combining marks and wide characters are rare in programs: a character counts as one place.
    static int Width(string text)
    {
        var width = 0;
        foreach (var _ in text.EnumerateRunes())
            width++;
        return width;
    }
}
