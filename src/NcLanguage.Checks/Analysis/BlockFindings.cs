using System.Runtime.InteropServices;
using NcLanguage.Syntax.Text;

namespace NcLanguage.Checks.Analysis;

/// <summary>What rules tell of a program's blocks and their text, in one row. Behind a key most of it is as it was: only what chunks that changed tell is fetched from them.</summary>
sealed class BlockFindings
{
    readonly ChunkText[] _texts;
    readonly PartResult[]? _parts;
    readonly string? _plain;
    readonly int _lines;

    /// <summary>For each chunk, where in the row its findings end.</summary>
    readonly int[] _ends;

    /// <param name="run">The run that they are of.</param>
    /// <param name="texts">What the text of the run's chunks tells.</param>
    /// <param name="parts">The results of the chunks; null where the run leaves the order of the text.</param>
    /// <param name="before">That of the version before; null where there is none.</param>
    public BlockFindings(ProgramRun run, ChunkText[] texts, PartResult[]? parts, BlockFindings? before)
    {
        (_texts, _parts, _plain, _lines) = (texts, parts, run.PlainCoordinates, run.Text.LineCount);
        Kinds = run.TextFacts.All.Findings | (parts is null ? FindingKinds.None : run.PartFacts.All.Findings);
        var (same, sameAtEnd) = before is null || before._plain != _plain || before._parts is null != parts is null ? (0, 0) : SharedWith(before);
        var first = same > 0 ? before!._ends[same - 1] : 0;
        var others = new List<Finding>();
        var ends = new int[texts.Length - same - sameAtEnd];
        for (var i = 0; i < ends.Length; i++)
        {
            Add(run, same + i, others);
            ends[i] = first + others.Count;
        }
        var behind = before is null ? [] : before._ends.AsSpan(before._ends.Length - sameAtEnd);
        var beginOfBehind = sameAtEnd > 0 ? before!._ends[^(sameAtEnd + 1)] : before?.All.Length ?? 0;
        if (before is not null && before._ends.Length == texts.Length && before._ends.AsSpan(same, ends.Length).SequenceEqual(ends) && before.All.AsSpan(first..beginOfBehind).SequenceEqual(CollectionsMarshal.AsSpan(others)))
        {
            // As behind most keys.
            (_ends, All) = (before._ends, before.All);
            return;
        }
        _ends = [.. before is null ? [] : before._ends.AsSpan(0, same), .. ends, .. behind];
        var shift = first + others.Count - beginOfBehind;
        foreach (ref var end in _ends.AsSpan(same + ends.Length))
            end += shift;
        All = [.. before is null ? [] : before.All.AsSpan(0, first), .. others, .. before is null ? [] : before.All.AsSpan(beginOfBehind)];
    }

    /// <summary>All, in the order of the text; of a run that leaves it those that the text alone tells. Not to be changed: versions share it.</summary>
    public Finding[] All { get; }

    /// <summary>What kinds there are of them.</summary>
    public FindingKinds Kinds { get; }

    /// <summary>How many chunks, at the beginning and of the others at the end, tell the same at the same lines.</summary>
    (int AtBeginning, int AtEnd) SharedWith(BlockFindings before)
    {
        var (same, sameAtEnd) = SharedEnds.Of<ChunkText>(before._texts, _texts);
        if (_parts is not null)
        {
            var (parts, partsAtEnd) = SharedEnds.Of<PartResult>(before._parts, _parts);
            // Where all is the same at the beginning there is nothing left to be so at the end.
            sameAtEnd = Math.Min(same == _texts.Length ? _texts.Length : sameAtEnd, parts == _parts.Length ? parts : partsAtEnd);
            same = Math.Min(same, parts);
            sameAtEnd = Math.Min(sameAtEnd, _texts.Length - same);
        }
        // The chunk before those at the end tells where theirs begin.
        return (same, before._lines == _lines && sameAtEnd < before._texts.Length ? sameAtEnd : 0);
    }

    void Add(ProgramRun run, int chunk, List<Finding> findings)
    {
        var first = findings.Count;
        if (run.TextFacts[chunk].Findings != FindingKinds.None)
            findings.AddRange(_texts[chunk].FindingsAt(run.Text.FirstLineOf(chunk)));
        if (_parts is not null && run.PartFacts[chunk].Findings != FindingKinds.None)
            findings.AddRange(_parts[chunk].FindingsAt(run.Text.FirstLineOf(chunk), _plain));
        if (findings.Count - first > 1)
            findings.Sort(first, findings.Count - first, FindingAssembly.Comparer);
    }
}
