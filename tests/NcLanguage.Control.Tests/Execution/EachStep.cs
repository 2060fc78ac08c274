using NcLanguage.Control.Execution;
using NcLanguage.Control.State;
using NcLanguage.Machine.Profiles;
using NcLanguage.Machine.Setups;
using NcLanguage.Syntax.Lexing;
using NcLanguage.Syntax.Text;

namespace NcLanguage.Control.Tests.Execution;

/// <summary>Holds what comes of blocks that are carried out like those before them against what comes of each worked out by itself.</summary>
static class EachStep
{
    /// <summary>Runs a text block by block, each behind the one before, and holds every step against that of the same block run by itself.</summary>
    /// <param name="isLikeTheLast">Whether a step was carried out like the one before it.</param>
    /// <returns>How many were.</returns>
    public static int SameAsWorkedOut(string text, MachineProfile machine, Setup setup, Func<Step, bool> isLikeTheLast)
    {
        var executor = new BlockExecutor(machine, setup);
        var state = executor.Start();
        var (step, alone, first, second, room) = (new Step(), new Step(), new Step(), new Step(), new Step());
        step.Leave(state);
        first.Leave(state);
        var again = new FromTraces(executor, text, state);
        var source = SourceText.From(text);
        var count = 0;
        for (var line = 0; line < source.LineCount; line++)
        {
            var block = source.BlockAt(line);
            executor.Run(block, ref state, alone);
            executor.RunNext(block, step);
            executor.RunBehind(first, block, default, second);
            var told = executor.Told(block, second, room);
            Same(alone, step);
            Same(alone, told);
            Same(alone, again.Next(), knowsNumber: false);
            Assert.Equal(isLikeTheLast(step), isLikeTheLast(told));
            Assert.False(isLikeTheLast(alone));
            count += isLikeTheLast(step) ? 1 : 0;
            (first, second) = (second, first);
        }
        return count;
    }

    /// <summary>Runs a text of which the words are known that could be plain moves, and tells steps that were carried out like the one before from their traces alone.</summary>
    sealed class FromTraces(BlockExecutor executor, string text, in ControlState start)
    {
        readonly IEnumerator<(Chunk Chunk, PlainBlocks? Words, int Line)> _lines = Lines(SourceText.From(text), new PlainBlocks.Reader()).GetEnumerator();
        readonly BlockBuffer _buffer = new();
        Step _before = Left(start);
        Step _toldBefore = Left(start);
        BlockList? _blocks;

        public Step Next()
        {
            Assert.True(_lines.MoveNext());
            var (chunk, words, line) = _lines.Current;
            if (line == 0)
                _blocks = _buffer.ReadAsAsked(chunk);
            var block = _blocks![line];
            var step = new Step();
            executor.RunBehind(_before, block, words is null ? default : words[line], step);
            Assert.Equal(words?.IsBlank(line) ?? block.Tokens.Length == 0, block.Tokens.Length == 0);
            _before = step;
            if (!step.IsLikeTheLast)
                return _toldBefore = step;
            step.Keep(out var trace);
            var told = new Step();
            executor.TellAgain(_toldBefore, block, trace, step.Words, told);
            return _toldBefore = told;
        }

        // Read from another copy of the text: blocks that a chunk knows already are not read as asked.
        static IEnumerable<(Chunk, PlainBlocks?, int)> Lines(SourceText text, PlainBlocks.Reader reader)
        {
            var copy = SourceText.From(text.ToString());
            for (var i = 0; i < text.Chunks.Length; i++)
            {
                var words = reader.Read(copy.Chunks[i].Blocks);
                for (var line = 0; line < text.Chunks[i].LineCount; line++)
                    yield return (text.Chunks[i], words, line);
            }
        }

        static Step Left(in ControlState state)
        {
            var step = new Step();
            step.Leave(state);
            return step;
        }
    }

    /// <param name="knowsNumber">Whether it is known which number a block bears.</param>
    static void Same(Step expected, Step step, bool knowsNumber = true)
    {
        Assert.Equal(expected.Before, step.Before);
        Assert.Equal(expected.After, step.After);
        Assert.Equal(expected.Sets, step.Sets);
        Assert.Equal(expected.Events, step.Events);
        Assert.Equal(expected.ToFrame, step.ToFrame);
        Assert.Equal(expected.ToMachine, step.ToMachine);
        Assert.Equal(expected.Moves.Items, step.Moves.Items);
        Assert.Equal(expected.Holes.Items, step.Holes.Items);
        Assert.Equal(expected.Faults.Items, step.Faults.Items);
        Assert.Equal(expected.Transfer, step.Transfer);
        Assert.Equal(expected.Words.Codes, step.Words.Codes);
        for (var letter = 'A'; letter <= 'Z'; letter++)
        {
            if (letter != 'N' || knowsNumber)
                Assert.Equal(expected.Words[letter], step.Words[letter]);
            if (expected.Words.Has(letter))
                Assert.Equal(expected.Words.TokenOf(letter), step.Words.TokenOf(letter));
        }
    }
}
