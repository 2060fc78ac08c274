using NcLanguage.Control.Flow;
using NcLanguage.Syntax.Lexing;
using NcLanguage.Syntax.Text;

namespace NcLanguage.Checks.Analysis;

/// <summary>What the chunks of one version of a text tell by themselves: taken over from the version before where they are the same, read when first asked for
/// where they are not. Used by the thread that makes a run.</summary>
sealed class TextsOfChunks(SourceText text, Job job, Rule[] textRules, CancellationToken cancel)
{
    readonly ChunkText?[] _known = new ChunkText?[text.Chunks.Length];
    readonly BlockBuffer _buffer = new();

    public SourceText Text => text;

    public Job Job => job;

    /// <summary>Takes over so many chunks at the beginning and at the end.</summary>
    public void Take(ReadOnlySpan<ChunkText> others, int same, int sameAtEnd)
    {
        others[..same].CopyTo(_known!);
        others[^sameAtEnd..].CopyTo(_known.AsSpan(_known.Length - sameAtEnd)!);
    }

    /// <summary>Whether one of those known by now leads the run elsewhere.</summary>
    public bool Steer()
    {
        foreach (var chunk in _known)
            if (chunk is { Marks.Steers: true })
                return true;
        return false;
    }

    /// <summary>The blocks of a chunk, which hold until the next call, and what they tell.</summary>
    public BlockList Read(int chunk, out ChunkText told)
    {
        cancel.ThrowIfCancellationRequested();
        var blocks = _buffer.Read(text.Chunks[chunk]);
        told = Told(chunk, blocks);
        return blocks;
    }

    /// <summary>What a chunk tells whose blocks are at hand.</summary>
    public ChunkText Told(int chunk, BlockList blocks) => _known[chunk] ??= ChunkText.Of(text.Chunks[chunk], blocks, job, textRules);

    /// <summary>The marks of one chunk after the other, each read when its turn comes.</summary>
    public IEnumerable<ChunkMarks> Marks()
    {
        for (var i = 0; i < _known.Length; i++)
            yield return Of(i).Marks;
    }

    public ChunkText[] All()
    {
        for (var i = 0; i < _known.Length; i++)
            Of(i);
        return _known!;
    }

    ChunkText Of(int chunk)
    {
        if (_known[chunk] is null)
            Read(chunk, out _);
        return _known[chunk]!;
    }
}
