using System.Text;
using NcLanguage.Syntax.Lexing;

namespace NcLanguage.Editing;

/// <summary>The cursor in a comment: only a name of a rule behind (nc-allow can be helped with.</summary>
static class AllowPlace
{
    public static CursorPlace Of(ReadOnlySpan<byte> line, in Token comment, int column)
    {
        // ; begins no comment that silences anything.
        if (comment.Kind == TokenKind.LineComment)
            return default;
        var inside = line[(comment.Start + 1)..column];
        var mark = "nc-allow"u8;
        var text = inside.TrimStart(" \t"u8);
        if (text.Length <= mark.Length || !Ascii.EqualsIgnoreCase(text[..mark.Length], mark) || !CursorPlace.IsBlank(text[mark.Length]))
            return default;
        var name = text[mark.Length..].TrimStart(" \t"u8);
        foreach (var c in name)
            if (!CursorPlace.IsLetter(c) && !CursorPlace.IsDigit(c) && c != '-')
                return default;
        var end = column;
        while (end < line.Length && (CursorPlace.IsLetter(line[end]) || CursorPlace.IsDigit(line[end]) || line[end] == '-'))
            end++;
        return CursorPlace.Make(PlaceKind.RuleName, line, column - name.Length, column) with { End = end, GoesOn = end > column };
    }
}
