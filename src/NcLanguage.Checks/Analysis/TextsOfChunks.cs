using NcLanguage.Control.Execution;
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
    PlainBlocks.Reader? _words;

    /// <summary>Chunks of a text from which on its words are kept: to read what is smaller anew takes no time that anybody would notice.</summary>
    const int ChunksWithWords = 64;

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
        told = Told(chunk, blocks, KeepsWords ? _words ??= new() : null);
        return blocks;
    }

    /// <summary>What a chunk tells whose blocks are at hand.</summary>
    /// <param name="words">Reads what is to be kept of its words; null where nothing is.</param>
    public ChunkText Told(int chunk, BlockList blocks, PlainBlocks.Reader? words) => _known[chunk] ??= ChunkText.Of(text.Chunks[chunk], blocks, job, textRules, words);

    /// <summary>Whether the words of the chunks are worth keeping: nobody else runs this text, it is large, and more versions of it will follow.</summary>
    public bool KeepsWords => job.WithTwoHands && !job.Once && text.Chunks.Length >= ChunksWithWords;

    /// <summary>What is kept of the words of a chunk; null where nothing is.</summary>
    public PlainBlocks? WordsOf(int chunk) => _known[chunk]?.Words;

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

    // Where the run is led elsewhere, words would be kept in vain.
    ChunkText Of(int chunk)
    {
        cancel.ThrowIfCancellationRequested();
        return _known[chunk] ?? Told(chunk, _buffer.Read(text.Chunks[chunk]), words: null);
    }
}
