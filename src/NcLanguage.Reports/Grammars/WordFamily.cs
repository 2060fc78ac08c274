using System.Collections.Immutable;
using NcLanguage.Control.Codes;

namespace NcLanguage.Reports.Grammars;

/// <summary>One family of words, with its name in each editor's colours.</summary>
/// <param name="Kind">Which.</param>
/// <param name="Scope">In TextMate grammars, without the language's own ending.</param>
/// <param name="Vim">The group of Vim's that it looks like.</param>
/// <param name="Emacs">The face of Emacs'.</param>
/// <param name="Kate">The style of Kate's.</param>
sealed record WordFamily(WordKind Kind, string Scope, string Vim, string Emacs, string Kate)
{
    /// <summary>All families, in the order of <see cref="WordKind"/>.</summary>
    public static ImmutableArray<WordFamily> All { get; } =
    [
        new(WordKind.Rapid, "keyword.control.motion.rapid", "Special", "builtin", "dsExtension"),
        new(WordKind.Cut, "keyword.other.motion.feed", "Statement", "keyword", "dsKeyword"),
        new(WordKind.Dwell, "keyword.other.dwell", "Statement", "keyword", "dsKeyword"),
        new(WordKind.Cycle, "support.function.cycle", "Function", "function-name", "dsFunction"),
        new(WordKind.CycleEnd, "keyword.other.cycle.cancel", "Statement", "keyword", "dsKeyword"),
        new(WordKind.Mode, "keyword.other.mode", "PreProc", "preprocessor", "dsPreprocessor"),
        new(WordKind.ReturnLevel, "keyword.other.return-level", "Statement", "keyword", "dsKeyword"),
        new(WordKind.Compensation, "keyword.other.compensation", "Statement", "keyword", "dsKeyword"),
        new(WordKind.Offset, "keyword.other.offset", "Statement", "keyword", "dsKeyword"),
        new(WordKind.Home, "keyword.other.home", "Statement", "keyword", "dsKeyword"),
        new(WordKind.Call, "keyword.control.call", "Exception", "keyword", "dsControlFlow"),
        new(WordKind.Stop, "keyword.control.stop", "Exception", "keyword", "dsControlFlow"),
        new(WordKind.Spindle, "support.class.spindle", "Type", "type", "dsBuiltIn"),
        new(WordKind.Coolant, "support.class.coolant", "Type", "type", "dsBuiltIn"),
        new(WordKind.ToolChange, "support.class.tool-change", "Type", "type", "dsBuiltIn"),
        new(WordKind.Preparatory, "keyword.other.preparatory", "Statement", "keyword", "dsKeyword"),
        new(WordKind.Miscellaneous, "support.class.miscellaneous", "Type", "type", "dsBuiltIn"),
        new(WordKind.Axis, "variable.parameter.axis", "Identifier", "variable-name", "dsDataType"),
        new(WordKind.Arc, "variable.parameter.arc", "Identifier", "variable-name", "dsDataType"),
        new(WordKind.FeedSpeed, "support.class.feed-speed", "Type", "type", "dsBuiltIn"),
        new(WordKind.Tool, "support.class.tool", "Type", "type", "dsBuiltIn"),
        new(WordKind.Parameter, "variable.parameter.word", "Identifier", "variable-name", "dsDataType"),
    ];

    /// <summary>Its name within a grammar: "returnLevel".</summary>
    public string Name => char.ToLowerInvariant(Kind.ToString()[0]) + Kind.ToString()[1..];

    /// <summary>The letters of the family, A to Z; "" for a family of codes.</summary>
    public string Letters => string.Concat(AddressTable.All.Where(row => row.Letter is not ('G' or 'M' or 'N' or 'O') && WordKinds.Of(row) == Kind).Select(row => row.Letter));

    /// <summary>The families with codes, those that take every other code last.</summary>
    public static IEnumerable<WordFamily> OfCodes => All.Where(family => family.Kind < WordKind.Axis)
        .OrderBy(family => family.Kind is WordKind.Preparatory or WordKind.Miscellaneous);

    /// <summary>The families with letters.</summary>
    public static IEnumerable<WordFamily> OfLetters => All.Where(family => family.Kind >= WordKind.Axis);

    /// <summary>The numbers of the family's codes with a letter as they are written, without leading zeros: 0, 38.2.</summary>
    public IEnumerable<string> Numbers(char letter) => CodeTable.All.Where(row => row.Letter == letter && WordKinds.Of(row) == Kind)
        .Select(row => row.Text[1..]);

    /// <summary>The keywords of statements.</summary>
    /// <param name="behindO">Those that stand behind an O word.</param>
    public static IEnumerable<string> Statements(bool behindO) => StatementTable.All.Where(row => row.BehindO == behindO).Select(row => row.Keyword).Distinct();

    /// <summary>The functions of expressions, without operators.</summary>
    public static IEnumerable<string> Functions => FunctionTable.All.Where(row => !row.IsOperator).Select(row => row.Text);

    /// <summary>The operators that are words.</summary>
    public static IEnumerable<string> WordOperators => FunctionTable.All.Where(row => row.IsOperator && char.IsLetter(row.Text[0])).Select(row => row.Text);
}
