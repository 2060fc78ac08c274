using NcLanguage.Checks.Analysis;
using NcLanguage.Control.State;

namespace NcLanguage.Checks.Clearance;

/// <summary>The words G98 (back to the initial level) and G99 (back to the R level).</summary>
static class ReturnWord
{
    public static string Of(ReturnLevel level) => level == ReturnLevel.Initial ? "G98" : "G99";

    /// <summary>True when the block on a line says itself where to return.</summary>
    public static bool IsIn(ProgramRun run, int line) => IndexIn(run, line) >= 0;

    /// <summary>Makes the block on a line say it: in place of the word it has, else before its cycle word, else at its head.</summary>
    public static Edit Write(ProgramRun run, int line, ReturnLevel level)
    {
        var block = run.BlockAt(line);
        var word = Of(level);
        var present = IndexIn(run, line);
        if (present >= 0)
            return WordEdits.Replace(line, block, present, word);
        var cycle = WordEdits.IndexOfCycle(block);
        return cycle >= 0 ? WordEdits.Before(line, block, cycle, word) : WordEdits.AtHead(line, block, word);
    }

    static int IndexIn(ProgramRun run, int line)
    {
        var block = run.BlockAt(line);
        var initial = WordEdits.IndexOfCode(block, 'G', 98);
        return initial >= 0 ? initial : WordEdits.IndexOfCode(block, 'G', 99);
    }
}
