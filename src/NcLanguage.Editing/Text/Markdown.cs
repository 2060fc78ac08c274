using System.Text;

namespace NcLanguage.Editing;

/// <summary>Text that did not come from the product, put into Markdown so that it reads as it stands.</summary>
static class Markdown
{
    const int Longest = 60;

    /// <summary>A name from a setup or machine file.</summary>
    public static string Plain(string text)
    {
        var result = new StringBuilder();
        var before = ' ';
        foreach (var rune in text.EnumerateRunes())
        {
            if (result.Length >= Longest)
                return result.Append('…').ToString();
            if (Rune.IsControl(rune) || Rune.IsWhiteSpace(rune))
                result.Append(' ');
            // Editors make links of what looks like an address: it must not.
            else if (rune.IsAscii && (@"\`*_{}[]<>#|~&!@".Contains((char)rune.Value, StringComparison.Ordinal) || (rune.Value == '.' && before is 'w' or 'W')))
                result.Append('\\').Append((char)rune.Value);
            else
                result.Append(rune);
            before = rune.IsBmp ? (char)rune.Value : ' ';
        }
        return result.Replace("://", @"\://").ToString().Trim();
    }

    /// <summary>A piece of a program: bold where it is a plain word, else as code, so that no character of it is taken for Markdown.</summary>
    public static string Word(string text)
    {
        foreach (var c in text)
            if (!char.IsAsciiLetterOrDigit(c) && c is not ('.' or '+' or '-' or ':' or '%' or '/'))
                return Code(text);
        return $"**{text}**";
    }

    static string Code(string text)
    {
        var fence = "`";
        while (text.Contains(fence, StringComparison.Ordinal))
            fence += '`';
        return fence.Length == 1 ? $"`{text}`" : $"{fence} {text} {fence}";
    }
}
