using System.Text;
using NcLanguage.Checks.Analysis;
using NcLanguage.Control.State;

namespace NcLanguage.Editing;

/// <summary>The state in force in words, grouped by the lines that set it.</summary>
static class StateText
{
    /// <summary>A list of what is in force behind the block on a line (0-based).</summary>
    public static string InForce(ProgramAnalysis analysis, int line, in ControlState state)
    {
        var facts = ModalFacts.Of(analysis, line, state);
        var shown = new List<ModalFact>(facts.Count);
        foreach (var fact in facts)
            if (IsTold(fact, state))
                shown.Add(fact);
        var text = new StringBuilder("In force:\n");
        foreach (var group in shown.Where(fact => fact.IsKnown && fact.SetLine >= 0).GroupBy(fact => fact.SetLine).OrderBy(group => group.Key))
            AppendLine(text, group.Key == line ? "this block" : $"line {group.Key + 1}", group);
        AppendLine(text, "not set by the program", shown.Where(fact => fact.IsKnown && fact.SetLine < 0));
        AppendLine(text, Lengths.NotKnown, shown.Where(fact => !fact.IsKnown));
        if (NotFollowedText.Of(state) is { Length: > 0 } notFollowed)
            text.Append("- ").Append(notFollowed).Append('\n');
        return text.ToString().TrimEnd();
    }

    /// <summary>Parts of the state in one line, such as "G82, R level Z2 (line 5), F 120 mm/min (line 4)".</summary>
    public static string InOneLine(IEnumerable<ModalFact> facts) =>
        string.Join("; ", facts.GroupBy(fact => fact.SetLine).OrderBy(group => group.Key)
            .Select(group => $"{string.Join(", ", group.Select(fact => fact.Text))} {Setter(group.Key)}"));

    /// <summary>(line 5), or that the program did not set it.</summary>
    public static string Setter(int line) => line < 0 ? "(not set by the program)" : $"(line {line + 1})";

    static void AppendLine(StringBuilder text, string title, IEnumerable<ModalFact> facts)
    {
        var joined = string.Join(", ", facts.Select(fact => fact.Text));
        if (joined.Length > 0)
            text.Append("- ").Append(title).Append(": ").Append(joined).Append('\n');
    }

    // What goes without saying is left out: feed per minute, no compensation, a next tool that is the present one.
    static bool IsTold(in ModalFact fact, in ControlState state) => fact.Name switch
    {
        "feedMode" => state.FeedMode != FeedMode.PerMinute,
        "compensation" => state.Compensation != CompensationSide.Off,
        "selectedTool" => state.SelectedTool >= 0 && state.SelectedTool != state.Tool,
        _ => true,
    };
}
