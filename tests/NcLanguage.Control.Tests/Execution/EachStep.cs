using NcLanguage.Control.Execution;
using NcLanguage.Machine.Profiles;
using NcLanguage.Machine.Setups;
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
        var source = SourceText.From(text);
        var count = 0;
        for (var line = 0; line < source.LineCount; line++)
        {
            var block = source.BlockAt(line);
            executor.Run(block, ref state, alone);
            executor.RunNext(block, step);
            executor.RunBehind(first, block, second);
            var told = executor.Told(block, second, room);
            Same(alone, step);
            Same(alone, told);
            Assert.Equal(isLikeTheLast(step), isLikeTheLast(told));
            Assert.False(isLikeTheLast(alone));
            count += isLikeTheLast(step) ? 1 : 0;
            (first, second) = (second, first);
        }
        return count;
    }

    static void Same(Step expected, Step step)
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
            Assert.Equal(expected.Words[letter], step.Words[letter]);
            if (expected.Words.Has(letter))
                Assert.Equal(expected.Words.TokenOf(letter), step.Words.TokenOf(letter));
        }
    }
}
