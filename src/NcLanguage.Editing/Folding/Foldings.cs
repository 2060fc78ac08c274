using NcLanguage.Checks.Analysis;
using NcLanguage.Syntax.Lexing;

namespace NcLanguage.Editing;

/// <summary>A stretch of lines (0-based, both included) that can be folded away below its first.</summary>
public readonly record struct Folding(int FirstLine, int LastLine, bool IsComment);

/// <summary>What can be folded: programs, tools, operations, loops and conditions, comments over several lines.</summary>
public static class Foldings
{
    /// <exception cref="OperationCanceledException">The token was cancelled.</exception>
    public static IReadOnlyList<Folding> Of(ProgramAnalysis analysis, CancellationToken cancel = default)
    {
        ArgumentNullException.ThrowIfNull(analysis);
        var found = new HashSet<(int, int)>();
        var foldings = new List<Folding>();
        Add(Outline.Of(analysis, cancel: cancel));
        foreach (var (first, last) in new Symbols(analysis).Flow.Structures())
            Take(first, last, false);
        AddComments();
        return foldings;

        void Add(IEnumerable<OutlineItem> items)
        {
            foreach (var item in items)
            {
                Take(item.FirstLine, item.LastLine, false);
                Add(item.Children);
            }
        }

        void Take(int first, int last, bool isComment)
        {
            if (last > first && found.Add((first, last)))
                foldings.Add(new Folding(first, last, isComment));
        }

        void AddComments()
        {
            var start = -1;
            var buffer = new BlockBuffer();
            for (var chunk = 0; chunk < analysis.Text.Chunks.Length; chunk++)
            {
                cancel.ThrowIfCancellationRequested();
                if (start < 0 && !MayHoldComment(analysis.Text.Chunks[chunk].Bytes))
                    continue;
                var blocks = buffer.Read(analysis.Text.Chunks[chunk]);
                var firstLine = analysis.Text.FirstLineOf(chunk);
                for (var at = 0; at < blocks.Count; at++)
                {
                    if (IsComment(blocks[at]))
                    {
                        start = start < 0 ? firstLine + at : start;
                        continue;
                    }
                    if (start >= 0)
                        Take(start, firstLine + at - 1, true);
                    start = -1;
                }
            }
            if (start >= 0)
                Take(start, analysis.Text.LineCount - 1, true);
        }
    }

    /// <summary>Both ways to begin a comment; without them nothing has to be lexed.</summary>
    static bool MayHoldComment(ReadOnlySpan<byte> chunk) => chunk.IndexOfAny((byte)'(', (byte)';') >= 0;

    static bool IsComment(in Block block)
    {
        foreach (ref readonly var token in block.Tokens)
            if (!token.IsComment)
                return false;
        return block.Tokens.Length > 0;
    }
}
