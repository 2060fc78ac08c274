using System.Collections.Immutable;
using NcLanguage.Control.Codes;
using NcLanguage.Control.Flow;

namespace NcLanguage.Reports.Grammars;

/// <summary>Colouring by the text alone, for editors, made from the tables of codes, addresses, statements and functions.</summary>
public static class Grammar
{
    /// <summary>What the language is called where people choose one.</summary>
    internal const string Language = "NC program";

    /// <summary>The editors that a grammar can be had for.</summary>
    public static ImmutableArray<string> Kinds { get; } = ["textmate", "vim", "emacs", "kate"];

    /// <summary>Endings of programs, without the point.</summary>
    internal static IEnumerable<string> Endings => SiblingPrograms.Extensions.Select(extension => extension[1..]);

    /// <summary>The whole file, with line feeds, or null for a kind that is not among <see cref="Kinds"/>.</summary>
    public static string? For(string kind) => kind switch
    {
        "textmate" => TextMateGrammar.Text(),
        "vim" => VimGrammar.Text(),
        "emacs" => EmacsGrammar.Text(),
        "kate" => KateGrammar.Text(),
        _ => null,
    };

    /// <summary>Whether the family takes every code of the letter that no other family has.</summary>
    internal static bool TakesTheRest(WordFamily family, char letter) =>
        family.Kind == (letter == 'G' ? WordKind.Preparatory : WordKind.Miscellaneous);

    /// <summary>The line that says where a file comes from.</summary>
    internal static string Written(string kind) => $"Written by `nclanguage grammar {kind}` from the table of codes: change that, not this.";
}
