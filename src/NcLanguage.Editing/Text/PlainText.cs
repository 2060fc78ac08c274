using System.Text;

namespace NcLanguage.Editing;

/// <summary>Markdown as this room writes it (bold, code, fenced code, escaped signs, paragraphs) without its signs, for clients that show text as it comes.</summary>
public static class PlainText
{
    const string Fence = "```";

    /// <summary>The text without signs of Markdown; its lines stay. A sign that is not one of Markdown at its place stays as well.</summary>
    public static string Of(string markdown)
    {
        ArgumentNullException.ThrowIfNull(markdown);
        var text = new StringBuilder(markdown.Length);
        var isFenced = false;
        foreach (var line in markdown.AsSpan().EnumerateLines())
        {
            if (line.StartsWith(Fence))
            {
                isFenced = !isFenced;
                continue;
            }
            if (isFenced)
                text.Append(line);
            else
                AppendLine(text, line);
            text.Append('\n');
        }
        return text.ToString().Trim('\n');
    }

    static void AppendLine(StringBuilder text, ReadOnlySpan<char> line)
    {
        var isBold = false;
        for (var i = 0; i < line.Length;)
        {
            var rest = line[i..];
            if (rest[0] == '\\' && rest.Length > 1 && char.IsAscii(rest[1]) && (char.IsPunctuation(rest[1]) || char.IsSymbol(rest[1])))
            {
                text.Append(rest[1]);
                i += 2;
            }
            else if (rest[0] == '`')
            {
                i += AppendCode(text, rest);
            }
            else if (rest.StartsWith("**") && (isBold || rest[2..].Contains("**", StringComparison.Ordinal)))
            {
                isBold = !isBold;
                i += 2;
            }
            else
            {
                text.Append(rest[0]);
                i++;
            }
        }
    }

    /// <summary>A span of code without its marks, which are a row of equally many ` before and behind it; such a row alone is text. Gives what was taken.</summary>
    static int AppendCode(StringBuilder text, ReadOnlySpan<char> rest)
    {
        var mark = RowOf(rest);
        for (var i = mark; i < rest.Length; i++)
        {
            if (rest[i] != '`')
                continue;
            var row = RowOf(rest[i..]);
            if (row != mark)
            {
                i += row - 1;
                continue;
            }
            var code = rest[mark..i];
            // One blank each side keeps a ` of the code from its marks.
            if (code.Length > 2 && code[0] == ' ' && code[^1] == ' ' && code.Trim(' ').Length > 0)
                code = code[1..^1];
            text.Append(code);
            return i + mark;
        }
        text.Append('`', mark);
        return mark;
    }

    static int RowOf(ReadOnlySpan<char> text)
    {
        var other = text.IndexOfAnyExcept('`');
        return other < 0 ? text.Length : other;
    }
}
