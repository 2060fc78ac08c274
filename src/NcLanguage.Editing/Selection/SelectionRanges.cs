using NcLanguage.Checks.Analysis;
using NcLanguage.Syntax.Lexing;

namespace NcLanguage.Editing;

/// <summary>What a growing selection takes step by step: the number, the word, the block, the loop or operation, the tool, the program, all.</summary>
public static class SelectionRanges
{
    /// <summary>From the narrowest to the widest, each within the next.</summary>
    /// <param name="analysis">The program.</param>
    /// <param name="outline">Its outline, made once for many places.</param>
    /// <param name="line">From 0.</param>
    /// <param name="column">Byte column from 0.</param>
    public static IReadOnlyList<TextStretch> At(ProgramAnalysis analysis, IReadOnlyList<OutlineItem> outline, int line, int column)
    {
        var text = analysis.Text;
        var stretches = new List<TextStretch>();
        foreach (ref readonly var token in analysis.Main.BlockAt(line).Tokens)
        {
            if (column < token.Start || column > token.End)
                continue;
            // Between two words without a blank the second counts.
            stretches.Clear();
            if (token.Kind is TokenKind.Word && column >= token.ValueStart)
                stretches.Add(new TextStretch(line, token.ValueStart, line, token.End));
            AddWider(stretches, new TextStretch(line, token.Start, line, token.End));
        }
        AddWider(stretches, new TextStretch(line, 0, line, text.Line(line).Length));
        var wider = new List<(int First, int Last)>();
        AddAround(outline, line, wider);
        var loops = new Symbols(analysis).Flow.Structures().Where(loop => loop.First <= line && line <= loop.Last).ToList();
        // An operation that begins before a loop and ends in it goes as far as the loop does: what stands around the block comes first.
        for (var i = 0; i < wider.Count; i++)
            foreach (var (first, last) in loops)
                if (Crosses(wider[i], (first, last)))
                    wider[i] = (Math.Min(wider[i].First, first), Math.Max(wider[i].Last, last));
        wider.AddRange(loops.Select(loop => (loop.First, loop.Last)));
        wider.Add((0, text.LineCount - 1));
        foreach (var (first, last) in wider.OrderBy(range => range.Last - range.First))
        {
            var next = new TextStretch(first, 0, last, text.Line(last).Length);
            if (Holds(next, stretches[^1]))
                AddWider(stretches, next);
        }
        return stretches;
    }

    /// <summary>Adds a stretch unless the one before is the same: a word alone in its block is the block.</summary>
    static void AddWider(List<TextStretch> stretches, TextStretch next)
    {
        if (stretches.Count == 0 || stretches[^1] != next)
            stretches.Add(next);
    }

    static void AddAround(IEnumerable<OutlineItem> items, int line, List<(int, int)> into)
    {
        foreach (var item in items)
        {
            if (line < item.FirstLine || line > item.LastLine)
                continue;
            into.Add((item.FirstLine, item.LastLine));
            AddAround(item.Children, line, into);
        }
    }

    static bool Crosses((int First, int Last) a, (int First, int Last) b) =>
        (a.First < b.First && a.Last < b.Last) || (a.First > b.First && a.Last > b.Last);

    static bool Holds(in TextStretch outer, in TextStretch inner) => outer.StartLine <= inner.StartLine && outer.EndLine >= inner.EndLine
        && (outer.StartLine < inner.StartLine || outer.StartColumn <= inner.StartColumn) && (outer.EndLine > inner.EndLine || outer.EndColumn >= inner.EndColumn);
}
