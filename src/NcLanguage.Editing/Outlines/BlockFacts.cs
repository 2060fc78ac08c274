using NcLanguage.Checks.Analysis;
using NcLanguage.Control.State;

namespace NcLanguage.Editing;

/// <summary>What the run noted about one block, over all its runs.</summary>
/// <param name="Holes">How many it drills.</param>
/// <param name="Cycle">The cycle of its first hole; 0 for none.</param>
/// <param name="Seconds">Known seconds of its moves.</param>
/// <param name="IsUntimed">Whether the time of some of its moves is not known.</param>
readonly record struct BlockFacts(bool ChangesTool, bool SetsCycle, bool Cuts, bool IsUntimed, int Tool, int Holes, int Cycle, float Seconds)
{
    /// <summary>One entry a line of the text.</summary>
    public static BlockFacts[] Of(ProgramRun run)
    {
        var facts = new BlockFacts[run.Text.LineCount];
        for (var part = 0; part < run.Results.Length; part++)
        {
            var result = run.Results[part];
            for (var at = 0; at < result.Sets.Length; at++)
            {
                ref var fact = ref facts[run.LineOf(part, at)];
                var sets = result.Sets[at];
                fact = fact with
                {
                    SetsCycle = fact.SetsCycle || (sets & Slot.Cycle) != 0,
                    Cuts = fact.Cuts || (sets & Slot.Cut) != 0,
                    Seconds = fact.Seconds + result.StepSeconds[at],
                };
            }
            foreach (var hole in result.Holes)
            {
                ref var fact = ref facts[run.LineOf(part, hole.Line)];
                fact = fact with { Holes = fact.Holes + 1, Cycle = hole.Hole.Cycle };
            }
            foreach (var at in result.UntimedSteps)
                facts[run.LineOf(part, at)] = facts[run.LineOf(part, at)] with { IsUntimed = true };
            foreach (var tool in result.Tools)
                facts[run.LineOf(part, tool.Line)] = facts[run.LineOf(part, tool.Line)] with { ChangesTool = true, Tool = tool.Tool };
        }
        return facts;
    }
}
