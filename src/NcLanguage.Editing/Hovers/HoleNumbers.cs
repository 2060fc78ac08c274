using NcLanguage.Checks.Analysis;

namespace NcLanguage.Editing;

/// <summary>Counts holes along a program.</summary>
static class HoleNumbers
{
    /// <summary>Holes drilled by the blocks above a line (0-based).</summary>
    public static int Before(ProgramRun run, int line)
    {
        var chunk = run.Text.ChunkOfLine(line);
        var count = 0;
        for (var i = 0; i < chunk; i++)
            count += run.Results[i].Holes.Length;
        foreach (var hole in run.Results[chunk].Holes)
            if (hole.Line < line - run.Text.FirstLineOf(chunk))
                count++;
        return count;
    }
}
