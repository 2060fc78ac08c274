using NcLanguage.Checks.Analysis;

namespace NcLanguage.Checks.Rules;

/// <summary>Block numbers that the program of a block has not used.</summary>
static class FreeNumbers
{
    /// <summary>One between those of the blocks before and after where there is room, else one above all of the program.</summary>
    /// <param name="line">0-based.</param>
    public static int Nearest(ProgramRun run, int line)
    {
        var (used, before, after) = Neighbours(run, line);
        return Between(used, before, after) ?? AboveAll(used);
    }

    /// <summary>One that lets the numbers rise over the blocks before and after; null where there is no room for one.</summary>
    /// <param name="line">0-based.</param>
    public static int? Rising(ProgramRun run, int line)
    {
        var (used, before, after) = Neighbours(run, line);
        return after < 0 ? AboveAll(used) : Between(used, before, after);
    }

    /// <summary>The numbers of the line's own program, and those of the numbered blocks just before and after it; −1 where there is none.</summary>
    static (HashSet<int> Used, int Before, int After) Neighbours(ProgramRun run, int atLine)
    {
        var used = new HashSet<int>();
        var (before, after) = (-1, -1);
        for (var chunk = 0; chunk < run.Texts.Length; chunk++)
        {
            var offset = run.Text.FirstLineOf(chunk);
            foreach (var (number, line) in run.Texts[chunk].Numbers)
            {
                if (number < 0)
                {
                    if (offset + line > atLine)
                        return (used, before, after);
                    used.Clear();
                    before = -1;
                    continue;
                }
                used.Add(number);
                if (offset + line < atLine)
                    before = number;
                else if (offset + line > atLine && after < 0)
                    after = number;
            }
        }
        return (used, before, after);
    }

    static int? Between(HashSet<int> used, int before, int after)
    {
        for (var number = before + (after - before + 1) / 2; number > before && number < after; number++)
            if (!used.Contains(number))
                return number;
        for (var number = before + 1; number < after; number++)
            if (!used.Contains(number))
                return number;
        return null;
    }

    static int AboveAll(HashSet<int> used) => used.Max() / 10 * 10 + 10;
}
