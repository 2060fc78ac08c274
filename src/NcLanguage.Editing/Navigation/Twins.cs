using NcLanguage.Checks.Analysis;
using NcLanguage.Syntax.Text;

namespace NcLanguage.Editing;

/// <summary>Numbers that belong together and are changed together: those of a loop's begin and end, and a tool's T with the H and D that it cuts with.</summary>
public static class Twins
{
    /// <summary>Lines looked at from a tool change on.</summary>
    const int LinesOfTool = 20_000;

    /// <summary>All of them, the one at the place included; none where it stands alone or the others are written another way.</summary>
    /// <param name="analysis">The program.</param>
    /// <param name="line">From 0.</param>
    /// <param name="column">Byte column from 0.</param>
    public static IReadOnlyList<SymbolUse> At(ProgramAnalysis analysis, int line, int column)
    {
        var symbols = new Symbols(analysis);
        if (symbols.At(line, column) is not { } place)
            return [];
        var twins = place.Symbol.Kind switch
        {
            NamedKind.Loop => symbols.UsesOf(place),
            NamedKind.Program when analysis.Main.BlockAt(line).HasStatement => Structure(symbols, place),
            NamedKind.Tool or NamedKind.LengthOffset or NamedKind.RadiusOffset => OfTool(analysis, symbols, place),
            _ => [],
        };
        SymbolUse[] alike = [.. twins.Where(use => Written(analysis.Text, use).SequenceEqual(Written(analysis.Text, place))).OrderBy(use => use.Line)];
        return alike.Length > 1 ? alike : [];
    }

    static ReadOnlySpan<byte> Written(SourceText text, SymbolUse use) => text.Line(use.Line)[use.Start..use.End];

    static IEnumerable<SymbolUse> Structure(Symbols symbols, SymbolUse place)
    {
        foreach (var (first, last) in symbols.Flow.Structures())
            if (place.Line >= first && place.Line <= last && symbols.Uses(place.Symbol, first, last + 1, default) is var uses && uses.Contains(place))
                return uses;
        return [];
    }

    static IEnumerable<SymbolUse> OfTool(ProgramAnalysis analysis, Symbols symbols, SymbolUse place)
    {
        var number = place.Symbol.Number;
        var changes = ToolChanges.Of(analysis.Main).Select(change => (Line: change.Key, Tool: change.Value)).ToList();
        var own = place.Symbol.Kind == NamedKind.Tool
            ? changes.FindIndex(change => change.Line >= place.Line && change.Tool == number)
            : changes.FindLastIndex(change => change.Line <= place.Line);
        if (own < 0 || changes[own].Tool != number)
            return [];
        var above = own == 0 ? 0 : changes[own - 1].Line + 1;
        var end = Math.Min(own + 1 < changes.Count ? changes[own + 1].Line : analysis.Text.LineCount, changes[own].Line + LinesOfTool);
        var tool = symbols.Uses(new ProgramSymbol(NamedKind.Tool, number), above, changes[own].Line + 1, default);
        return tool.TakeLast(1)
            .Concat(symbols.Uses(new ProgramSymbol(NamedKind.LengthOffset, number), changes[own].Line, end, default))
            .Concat(symbols.Uses(new ProgramSymbol(NamedKind.RadiusOffset, number), changes[own].Line, end, default));
    }
}
