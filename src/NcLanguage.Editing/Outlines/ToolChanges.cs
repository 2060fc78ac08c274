using NcLanguage.Checks.Analysis;

namespace NcLanguage.Editing;

/// <summary>Where a run changes the tool.</summary>
static class ToolChanges
{
    /// <summary>The lines (0-based) whose blocks change the tool, in order, each with the tool that the last of its runs took; −1 for one that is not known.</summary>
    public static SortedList<int, int> Of(ProgramRun run)
    {
        var taken = new Dictionary<int, int>();
        for (var part = 0; part < run.Results.Length; part++)
            foreach (var tool in run.Results[part].Tools)
                taken[run.LineOf(part, tool.Line)] = tool.Tool;
        return new SortedList<int, int>(taken);
    }
}
