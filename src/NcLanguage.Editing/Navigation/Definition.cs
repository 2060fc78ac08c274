using NcLanguage.Checks.Analysis;
using NcLanguage.Control.Flow;
using NcLanguage.Machine.Setups;

namespace NcLanguage.Editing;

/// <summary>Where what stands at a place comes from: the block a number leads to, the program a call runs, the block that gave a variable its value, the
/// tool's row in the setup, the code that a word hangs on.</summary>
public static class Definition
{
    /// <param name="analysis">The program.</param>
    /// <param name="line">From 0.</param>
    /// <param name="column">Byte column from 0.</param>
    /// <param name="path">The program's file; null for a text never saved.</param>
    /// <param name="folder">The programs beside it, which may call it; null where there are none.</param>
    /// <param name="cancel">Stops the search.</param>
    public static IReadOnlyList<TextPlace> Of(ProgramAnalysis analysis, int line, int column, string? path = null, IProgramFolder? folder = null, CancellationToken cancel = default)
    {
        var symbols = new Symbols(analysis);
        if (symbols.At(line, column) is not { } place)
            return SetBy.At(analysis, line, column) is { } setter ? [new TextPlace(null, setter.Line, setter.StartColumn, setter.EndColumn)] : [];
        return place.Symbol.Kind switch
        {
            NamedKind.BlockNumber => new WaysBack(analysis, symbols, path, folder, cancel).TargetsOf(place) ?? Block(analysis, symbols, place),
            NamedKind.Program => Program(analysis, symbols, place, cancel),
            NamedKind.Tool or NamedKind.LengthOffset or NamedKind.RadiusOffset => InSetup(analysis, place.Symbol),
            NamedKind.Loop => [.. symbols.UsesOf(place, cancel).Where(use => use.Role == UseRole.Definition).Select(Own)],
            _ => Assigned(analysis, symbols, place, cancel),
        };
    }

    /// <summary>The line of the setup file that gives a tool, an offset or a variable; none for anything else.</summary>
    internal static TextPlace[] InSetup(ProgramAnalysis analysis, ProgramSymbol symbol) => symbol.Kind switch
    {
        NamedKind.Tool => Row(analysis, analysis.Setup.FindTool(symbol.Number)?.Line),
        NamedKind.LengthOffset => Row(analysis, analysis.Setup.FindLengthOffset(symbol.Number)?.Line),
        NamedKind.RadiusOffset => Row(analysis, analysis.Setup.FindRadiusOffset(symbol.Number)?.Line),
        NamedKind.Variable or NamedKind.NamedVariable => Row(analysis, symbol.LineIn(analysis.Setup)),
        _ => [],
    };

    static TextPlace Own(SymbolUse use) => new(null, use.Line, use.Start, use.End);

    static TextPlace[] Block(ProgramAnalysis analysis, Symbols symbols, SymbolUse place)
    {
        var target = place.Role == UseRole.Definition ? place.Line : symbols.Flow.TargetOf(place.Line, place.Symbol.Number);
        return target < 0 ? [] : [.. Definitions(analysis, place.Symbol, target)];
    }

    static TextPlace[] Program(ProgramAnalysis analysis, Symbols symbols, SymbolUse place, CancellationToken cancel)
    {
        if (symbols.Flow.LinesOfProgram(place.Symbol.Number) is { } lines)
            return [.. Definitions(analysis, place.Symbol, lines.First)];
        // An O word of a loop or condition begins where its keyword says so.
        var inText = symbols.UsesOf(place, cancel).Where(use => use.Role == UseRole.Definition).Select(Own).ToArray();
        if (inText.Length > 0)
            return inText;
        return analysis.Main.Job.Programs?.Find(place.Symbol.Number) is { } file ? [Beginning(file, place.Symbol, cancel)] : [];
    }

    /// <summary>The program number of a file that is called: its own, or the first where its name alone says it; the start of a file without one.</summary>
    static TextPlace Beginning(CalledFile file, ProgramSymbol symbol, CancellationToken cancel)
    {
        SymbolUse? first = null;
        foreach (var use in SymbolReader.In(file.Text, cancel))
        {
            if (use is not { Symbol.Kind: NamedKind.Program, Role: UseRole.Definition })
                continue;
            if (use.Symbol == symbol)
                return new TextPlace(file.Path, use.Line, use.Start, use.End);
            first ??= use;
        }
        return first is { } begins ? new TextPlace(file.Path, begins.Line, begins.Start, begins.End) : new TextPlace(file.Path, 0, 0, 0);
    }

    static IEnumerable<TextPlace> Definitions(ProgramAnalysis analysis, ProgramSymbol symbol, int line) =>
        SymbolReader.In(analysis.Text, line, line + 1).Where(use => use.Symbol == symbol && use.Role == UseRole.Definition).Select(Own);

    /// <summary>The nearest setting above; where none stands above what the setup gives, and all settings below (a loop may have brought it).</summary>
    static TextPlace[] Assigned(ProgramAnalysis analysis, Symbols symbols, SymbolUse place, CancellationToken cancel)
    {
        var settings = symbols.UsesOf(place, cancel).Where(use => use.Role == UseRole.Write).ToList();
        var above = settings.FindLastIndex(use => use.Line < place.Line || (use.Line == place.Line && use.Start <= place.Start));
        return above >= 0 ? [Own(settings[above])] : [.. InSetup(analysis, place.Symbol), .. settings.Select(Own)];
    }

    static TextPlace[] Row(ProgramAnalysis analysis, int? line) =>
        line is > 0 and var row && analysis.Setup.Path is { } path ? [new TextPlace(path, row - 1, 0, 0)] : [];
}
