using NcLanguage.Checks.Analysis;

namespace NcLanguage.Editing;

/// <summary>Where else what stands at a place stands: in this text, and for programs and shared variables in those beside it.</summary>
public static class References
{
    /// <param name="analysis">The program.</param>
    /// <param name="line">From 0.</param>
    /// <param name="column">Byte column from 0.</param>
    /// <param name="withDefinition">Whether places where it begins are told too.</param>
    /// <param name="path">The program's file; null for a text never saved.</param>
    /// <param name="folder">The programs beside it; null where there are none.</param>
    /// <param name="cancel">Stops the search.</param>
    public static IReadOnlyList<TextPlace> Of(
        ProgramAnalysis analysis, int line, int column, bool withDefinition, string? path, IProgramFolder? folder, CancellationToken cancel = default)
    {
        var symbols = new Symbols(analysis);
        if (symbols.At(line, column) is not { } place)
            return [];
        var places = new List<TextPlace>();
        if (place.Symbol.Kind == NamedKind.BlockNumber && new WaysBack(analysis, symbols, path, folder, cancel).UsesOf(place) is { } tied)
            return [.. tied.Where(use => withDefinition || use.Use.Role != UseRole.Definition).Select(use => new TextPlace(use.Path, use.Use.Line, use.Use.Start, use.Use.End))];
        foreach (var use in symbols.UsesOf(place, cancel))
            if (withDefinition || use.Role != UseRole.Definition)
                places.Add(new TextPlace(null, use.Line, use.Start, use.End));
        if (withDefinition)
            places.AddRange(Definition.InSetup(analysis, place.Symbol));
        if (path is not null && folder is not null)
            foreach (var (file, use) in new FolderUses(analysis, path, folder, cancel).Of(place.Symbol))
                if (withDefinition || use.Role != UseRole.Definition)
                    places.Add(new TextPlace(file.Path, use.Line, use.Start, use.End));
        return places;
    }

    /// <summary>What to light up with the cursor at a place: the uses of its number in this text; on a word that hangs on a code above it, the word and
    /// that code, which counts as written.</summary>
    public static IReadOnlyList<SymbolUse> Highlights(ProgramAnalysis analysis, int line, int column, CancellationToken cancel = default)
    {
        var symbols = new Symbols(analysis);
        if (symbols.At(line, column) is { } place)
            return place.Symbol.Kind == NamedKind.BlockNumber && new WaysBack(analysis, symbols, null, null, cancel).UsesOf(place) is { } tied
                ? [.. tied.Select(use => use.Use)]
                : symbols.UsesOf(place, cancel);
        if (SetBy.At(analysis, line, column) is not { } setter)
            return [];
        var none = new ProgramSymbol(default, -1);
        var word = setter.Word;
        return [new SymbolUse(none, setter.Line, setter.StartColumn, setter.EndColumn, UseRole.Write), new SymbolUse(none, line, word.Start, word.End, UseRole.Read)];
    }
}
