using NcLanguage.Checks.Analysis;

namespace NcLanguage.Editing;

/// <summary>What is done from a tool change to the next, in the order of the run: what is called there is done with that tool.</summary>
/// <param name="Seconds">Known seconds.</param>
/// <param name="IsUntimed">Whether the time of some moves is not known.</param>
readonly record struct ToolWork(int Holes, double Seconds, bool IsUntimed)
{
    /// <summary>By the line (0-based) of the tool change, over all its runs; changes within files that are called are left out.</summary>
    public static Dictionary<int, ToolWork> Of(ProgramRun run)
    {
        const int Elsewhere = -1;
        var all = new Dictionary<int, ToolWork>();
        // Where nothing is called, what stands behind a tool change is all there is.
        if (run.Flow is null)
            return all;
        var line = Elsewhere;
        for (var part = 0; part < run.Results.Length; part++)
        {
            var result = run.Results[part];
            var (tool, hole, untimed) = (0, 0, 0);
            for (var at = 0; at < result.StepSeconds.Length; at++)
            {
                for (; tool < result.Tools.Length && result.Tools[tool].Line == at; tool++)
                    line = result.IsElsewhere ? Elsewhere : run.LineOf(part, at);
                var (holes, isUntimed) = (0, false);
                for (; hole < result.Holes.Length && result.Holes.LineOf(hole) == at; hole++)
                    holes++;
                for (; untimed < result.UntimedSteps.Length && result.UntimedSteps[untimed] == at; untimed++)
                    isUntimed = true;
                if (line == Elsewhere)
                    continue;
                if (holes == 0 && !isUntimed && result.StepSeconds[at] == 0 && all.ContainsKey(line))
                    continue;
                var work = all.GetValueOrDefault(line);
                all[line] = new ToolWork(work.Holes + holes, work.Seconds + result.StepSeconds[at], work.IsUntimed || isUntimed);
            }
        }
        return all;
    }
}
