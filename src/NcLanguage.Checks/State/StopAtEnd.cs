using System.Collections.Immutable;
using NcLanguage.Checks.Analysis;
using NcLanguage.Control.State;

namespace NcLanguage.Checks.Rules;

/// <summary>What a fix that switches the spindle or the coolant on has to add where nothing switches it off again: the stop at the program's end.</summary>
static class StopAtEnd
{
    /// <summary>Lines from the end of the text that are looked through for the end of the program: what it calls may stand behind it.</summary>
    const int MostLookedAt = 2000;

    /// <summary>The edit that writes the stop before M2 or M30; empty where a block on the way says it, where no end is found, and where it does not fit into the end's block.</summary>
    /// <param name="run">The program.</param>
    /// <param name="line">Where the fix switches it on, from 0.</param>
    /// <param name="slot">What is switched.</param>
    /// <param name="stop">The number of the M code that switches it off.</param>
    public static ImmutableArray<Edit> Of(ProgramRun run, int line, Slot slot, int stop)
    {
        var (end, token) = End(run);
        if (end < 0 || !FitsInto(run, end, slot) || run.OrderOf(end) <= run.OrderOf(line) || run.OrderOf(Math.Max(0, run.LastSetterBefore(slot, end))) > run.OrderOf(line))
            return [];
        var block = run.BlockAt(end);
        return WordEdits.IndexOfCode(block, 'M', stop) >= 0 ? [] : [WordEdits.Before(end, block, token, $"M{stop}")];
    }

    /// <summary>Whether a stop may be written into the block on a line (0-based): not where it travels, which the stop would come before, nor where it switches the same itself.</summary>
    public static bool FitsInto(ProgramRun run, int line, Slot slot)
    {
        var step = run.StepAt(line);
        if ((step.Sets & slot) != 0)
            return false;
        foreach (ref readonly var move in step.Moves.Items)
            if (move.IsMotion)
                return false;
        return true;
    }

    static (int Line, int Token) End(ProgramRun run)
    {
        for (var line = run.Text.LineCount - 1; line >= Math.Max(0, run.Text.LineCount - MostLookedAt); line--)
        {
            var block = run.BlockAt(line);
            var token = Math.Max(WordEdits.IndexOfCode(block, 'M', 30), WordEdits.IndexOfCode(block, 'M', 2));
            if (token >= 0 && run.IsReached(line) && !run.StateBefore(line).Ended)
                return (line, token);
        }
        return (-1, -1);
    }
}
