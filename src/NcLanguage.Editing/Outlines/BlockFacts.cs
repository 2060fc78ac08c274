using NcLanguage.Checks.Analysis;
using NcLanguage.Control.State;

namespace NcLanguage.Editing;

/// <summary>What the run noted about one block.</summary>
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
        for (var chunk = 0; chunk < run.Results.Length; chunk++)
        {
            var result = run.Results[chunk];
            var lines = facts.AsSpan(run.Text.FirstLineOf(chunk), result.Sets.Length);
            for (var line = 0; line < lines.Length; line++)
            {
                var sets = result.Sets[line];
                lines[line] = new BlockFacts(false, (sets & Slot.Cycle) != 0, (sets & Slot.Cut) != 0, false, 0, 0, 0, result.LineSeconds[line]);
            }
            foreach (ref readonly var hole in result.Holes.AsSpan())
                lines[hole.Line] = lines[hole.Line] with { Holes = lines[hole.Line].Holes + 1, Cycle = hole.Hole.Cycle };
            foreach (var line in result.UntimedLines)
                lines[line] = lines[line] with { IsUntimed = true };
            foreach (var tool in result.Tools)
                lines[tool.Line] = lines[tool.Line] with { ChangesTool = true, Tool = tool.Tool };
        }
        return facts;
    }
}
