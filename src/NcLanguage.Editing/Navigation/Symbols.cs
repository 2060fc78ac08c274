using NcLanguage.Checks.Analysis;
using NcLanguage.Control.Flow;
using NcLanguage.Control.State;

namespace NcLanguage.Editing;

/// <summary>The numbers and names of a program: what stands at a place, and where else it stands.</summary>
public sealed class Symbols
{
    readonly ProgramAnalysis _analysis;
    readonly List<SymbolUse> _inBlock = [];
    FlowText? _flow;

    public Symbols(ProgramAnalysis analysis)
    {
        ArgumentNullException.ThrowIfNull(analysis);
        _analysis = analysis;
    }

    /// <summary>How the text leads from block to block.</summary>
    internal FlowText Flow => _flow ??= _analysis.Main.Flow?.Text ?? FlowOf(_analysis.Main);

    /// <summary>What stands under a cursor (line and byte column from 0), its address letter included; null for anything without a symbol.</summary>
    public SymbolUse? At(int line, int column)
    {
        _inBlock.Clear();
        var block = _analysis.Main.BlockAt(line);
        SymbolReader.Read(block, line, _inBlock);
        SymbolUse? found = null;
        foreach (var use in _inBlock)
        {
            var wordStart = use.Start - 1;
            foreach (ref readonly var token in block.Tokens)
                if (token.ValueStart == use.Start && token.Kind != Syntax.Lexing.TokenKind.Assignment)
                    wordStart = token.Start;
            // Of two words without a blank between them the cursor stands on the second.
            if (use.Touches(column, wordStart))
                found = use;
        }
        return found;
    }

    /// <summary>All uses of what a place names, as far as it reaches in this text, in the order of the text.</summary>
    /// <exception cref="OperationCanceledException">The token was cancelled.</exception>
    public IReadOnlyList<SymbolUse> UsesOf(SymbolUse place, CancellationToken cancel = default)
    {
        if (place.Symbol.Kind == NamedKind.Loop)
            return Loop(place);
        var (first, end) = ScopeOf(place);
        return Uses(place.Symbol, first, end, cancel);
    }

    /// <summary>All uses of a symbol from a line up to another.</summary>
    internal IReadOnlyList<SymbolUse> Uses(ProgramSymbol symbol, int first, int end, CancellationToken cancel) =>
        [.. SymbolReader.In(_analysis.Text, first, end, cancel).Where(use => use.Symbol == symbol)];

    /// <summary>The lines, the end excluded, in which a symbol means the same: block numbers and a program's own variables (#1 to #33) end with their
    /// program or subroutine.</summary>
    public (int First, int End) ScopeOf(SymbolUse place) =>
        place.Symbol.Kind == NamedKind.BlockNumber || place.Symbol is { Kind: NamedKind.Variable, Number: <= Variables.LastLocal }
            ? Flow.LinesOfProgramAt(place.Line)
            : (0, _analysis.Text.LineCount);

    IReadOnlyList<SymbolUse> Loop(SymbolUse place)
    {
        var (line, _) = Flow.PartnerOf(place.Line);
        if (line < 0)
            return [place];
        var partner = Uses(place.Symbol, line, line + 1, default);
        return [.. partner.Append(place).OrderBy(use => use.Line)];
    }

    static FlowText FlowOf(ProgramRun run)
    {
        var marks = System.Collections.Immutable.ImmutableArray.CreateBuilder<ChunkMarks>(run.Texts.Length);
        foreach (var text in run.Texts)
            marks.Add(text.Marks);
        return new FlowText(run.Text, marks.MoveToImmutable());
    }
}
