using NcLanguage.Control.State;

namespace NcLanguage.Checks.Analysis;

/// <summary>A run of the same text, from which a run under another reading takes what comes out alike: where the text leaves nothing to that reading, and both meet it in the same state.</summary>
/// <param name="run">The run; it gives nothing where it left the order of the text.</param>
/// <param name="isReadOtherwise">Whether blocks of one of its parts may do something else under the other reading, though they meet the same state.</param>
sealed class RunBeside(ProgramRun run, Func<int, bool> isReadOtherwise)
{
    /// <summary>What the chunks' texts tell: the same under any reading.</summary>
    public ReadOnlySpan<ChunkText> Texts => run.Texts;

    /// <summary>Whether a chunk's part serves as it is if only the state is the same.</summary>
    public bool MayServe(int chunk) => run.Flow is null && run.Results[chunk].LinesAhead == 0 && !isReadOtherwise(chunk);

    /// <summary>The part of a chunk met with a state; null where the chunk has to be run.</summary>
    public PartResult? At(int chunk, in ControlState entry) => MayServe(chunk) && run.Results[chunk] is var part && part.Entry == entry ? part : null;
}
