using NcLanguage.Checks.Analysis;

namespace NcLanguage.Checks.Clearance;

/// <summary>Runs of holes that have blocks in common, because a loop or a call runs them more than once: what is written into one of these blocks is written for all.</summary>
static class SharedLines
{
    /// <summary>The runs of holes that hang together with the one that a hole belongs to, each by a block in common with another of them: index of its first hole and of the one after its last.</summary>
    public static List<(int First, int End)> RunsWith(HoleTable table, int hole)
    {
        var runs = new List<(int First, int End)>();
        var roots = new List<int>();
        var runOfLine = new Dictionary<int, int>();
        var own = 0;
        for (var first = 0; first < table.Count; first = runs[^1].End)
        {
            var run = runs.Count;
            runs.Add(table.RunOf(first));
            roots.Add(run);
            if (hole >= first && hole < runs[run].End)
                own = run;
            for (var i = first; i < runs[run].End; i++)
                if (!runOfLine.TryAdd(table.LineOf(i), run))
                    roots[RootOf(runOfLine[table.LineOf(i)])] = RootOf(run);
        }
        return [.. runs.Where((_, run) => RootOf(run) == RootOf(own))];

        // Each way that was gone is made shorter for those behind it.
        int RootOf(int run)
        {
            while (roots[run] != run)
                run = roots[run] = roots[roots[run]];
            return run;
        }
    }
}
