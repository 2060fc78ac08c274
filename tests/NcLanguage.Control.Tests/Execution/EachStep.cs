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
    /// <returns>How many were, and how many of those were carried out from the words that were kept of them.</returns>
    public static (int All, int FromWords) SameAsWorkedOut(string text, MachineProfile machine, Setup setup, Func<Step, bool> isLikeTheLast)
    {
        var executor = new BlockExecutor(machine, setup);
        var state = executor.Start();
        var (step, alone, first, second, room) = (new Step(), new Step(), new Step(), new Step(), new Step());
        step.Leave(state);
        first.Leave(state);
        using var again = FromTraces(executor, text, state).GetEnumerator();
        var source = SourceText.From(text);
        var (all, fromWords) = (0, 0);
        for (var line = 0; line < source.LineCount; line++)
        {
            var block = source.BlockAt(line);
            executor.Run(block, ref state, alone);
            executor.RunNext(block, step);
            executor.RunBehind(first, block, second);
            var told = executor.Told(block, second, room);
            Same(alone, step);
            Same(alone, told);
            Assert.True(again.MoveNext());
            Same(alone, again.Current.Step, knowsNumber: false);
            Assert.Equal(isLikeTheLast(step), isLikeTheLast(told));
            Assert.False(isLikeTheLast(alone));
            all += isLikeTheLast(step) ? 1 : 0;
            fromWords += again.Current.WentOn && isLikeTheLast(step) ? 1 : 0;
            (first, second) = (second, first);
        }
        return (all, fromWords);
    }

    /// <summary>Runs a text of which the words are known that could be plain moves, and tells steps that were carried out like the one before from their traces alone.</summary>
    static IEnumerable<(Step Step, bool WentOn)> FromTraces(BlockExecutor executor, string text, ControlState start)
    {
        var (reader, buffer, before) = (new PlainBlocks.Reader(), new BlockBuffer(), new Step());
        before.Leave(start);
        // Read from another copy of the text: blocks that a chunk knows already are not read as asked.
        var (source, copy) = (SourceText.From(text), SourceText.From(text));
        for (var chunk = 0; chunk < source.Chunks.Length; chunk++)
        {
            var blocks = buffer.ReadAsAsked(source.Chunks[chunk]);
            var words = reader.Read(copy.Chunks[chunk].Blocks);
            var traces = new PlainTrace[blocks.Count];
            for (var line = 0; line < blocks.Count;)
            {
                var last = new Step();
                var next = words is null ? line : executor.GoOn(before, words, line, traces, last);
                if (next > line)
                {
                    for (var toldBefore = before; line < next; line++)
                    {
                        Assert.Equal(words!.IsBlank(line), blocks[line].Tokens.Length == 0);
                        // A blank line has no step of its own.
                        if (words.IsBlank(line))
                        {
                            yield return (Alone(executor, blocks[line], toldBefore), false);
                            continue;
                        }
                        var (told, read) = (new Step(), new BlockWords());
                        read.Become(words[line]);
                        executor.TellAgain(toldBefore, blocks[line], traces[line], read, told);
                        yield return (told, true);
                        toldBefore = told;
                    }
                    before = last;
                    continue;
                }
                var step = new Step();
                executor.RunBehind(before, blocks[line], step);
                var room = new Step();
                yield return (executor.Told(blocks[line], step, room), false);
                before = step;
                line++;
            }
        }
    }

    static Step Alone(BlockExecutor executor, in Block block, Step before)
    {
        var (step, state) = (new Step(), before.After);
        executor.Run(block, ref state, step);
        return step;
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
