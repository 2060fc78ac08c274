using NcLanguage.Checks.Analysis;
using NcLanguage.Control.State;

namespace NcLanguage.Editing;

/// <summary>What the runs noted about one block.</summary>
readonly record struct BlockFacts(bool ChangesTool, bool SetsCycle, bool Cuts, int Holes, float Seconds)
{
    /// <summary>One entry a line of the text.</summary>
    public static BlockFacts[] Of(ProgramRun run)
    {
        var facts = new BlockFacts[run.Text.LineCount];
        for (var chunk = 0; chunk < run.Results.Length; chunk++)
        {
            var first = run.Text.FirstLineOf(chunk);
            var result = run.Results[chunk];
            for (var line = 0; line < result.Sets.Length; line++)
            {
                var sets = result.Sets[line];
                facts[first + line] = new BlockFacts(
                    (sets & Slot.Tool) != 0, (sets & Slot.Cycle) != 0, (sets & Slot.Cut) != 0, 0, result.LineSeconds[line]);
            }
            foreach (ref readonly var hole in result.Holes.AsSpan())
                facts[first + hole.Line] = facts[first + hole.Line] with { Holes = facts[first + hole.Line].Holes + 1 };
        }
        return facts;
    }
}
