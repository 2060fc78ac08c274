using NcLanguage.Syntax.Lexing;
using NcLanguage.Syntax.Text;

namespace NcLanguage.Editing;

/// <summary>The programs of a text by their numbers, without running anything.</summary>
public static class ProgramNames
{
    /// <summary>Each with its comment, if it has one, and its line (0-based).</summary>
    public static IEnumerable<(string Name, int Line)> In(SourceText text)
    {
        ArgumentNullException.ThrowIfNull(text);
        var line = -1;
        foreach (var use in SymbolReader.In(text))
        {
            // The first number of a block counts; those behind it name nothing.
            if (use is not { Symbol.Kind: NamedKind.Program, Role: UseRole.Definition } || use.Line == line)
                continue;
            line = use.Line;
            if (Begins(text, line))
                yield return (NameOf(text, use), line);
        }
    }

    // The O word of a loop or condition names no program.
    static bool Begins(SourceText text, int line)
    {
        foreach (ref readonly var token in text.BlockAt(line).Tokens)
            if (token.Kind == TokenKind.Statement)
                return token.Statement == StatementKind.Sub;
        return true;
    }

    /// <summary>O1200 with the comment behind it.</summary>
    internal static string NameOf(SourceText text, SymbolUse use)
    {
        var name = "O" + use.Symbol.Number.ToString(System.Globalization.CultureInfo.InvariantCulture);
        return Titles.In(text.BlockAt(use.Line)) is { } title ? $"{name} {title}" : name;
    }
}
