namespace NcLanguage.Checks.Analysis;

/// <summary>What a rule tells of one hole after another of an uninterrupted run has one cause, mostly the depth: it is told at the first of them, with the number
/// of the others.</summary>
static class HoleFindings
{
    /// <summary>The text of a finding that is told of a hole; its value is how many holes of its block it is true of.</summary>
    public const string Mark = "hole";

    /// <summary>Joins them. What a comment has silenced is gone by then: it takes no others with it.</summary>
    /// <param name="findings">Those of each rule in the order of the text.</param>
    public static void Join(ProgramRun run, List<Finding> findings)
    {
        HoleTable? table = null;
        Dictionary<Rule, Open> open = [];
        var kept = 0;
        for (var i = 0; i < findings.Count; i++)
        {
            var finding = findings[i];
            if (finding.Text != Mark || finding.IsElsewhere || finding.WhenSkipping || !IsMore(finding, kept))
                findings[kept++] = finding;
        }
        findings.RemoveRange(kept, findings.Count - kept);
        foreach (var (index, _, _, holes) in open.Values)
            Say(findings, index, holes);

        // True for a finding that the first of its run stands for.
        bool IsMore(Finding finding, int place)
        {
            table ??= HoleTable.Of(run);
            var (hole, count) = table.At(finding.Line);
            if (count == 0)
                return false;
            var holes = (int)finding.Value;
            if (open.TryGetValue(finding.Rule, out var first))
            {
                if (hole >= first.First && hole < first.End)
                {
                    open[finding.Rule] = first with { Holes = first.Holes + holes };
                    return true;
                }
                Say(findings, first.Index, first.Holes);
            }
            var (start, end) = table.RunOf(hole);
            open[finding.Rule] = new Open(place, start, end, holes);
            return false;
        }
    }

    static void Say(List<Finding> findings, int index, int holes)
    {
        if (holes > 1)
            findings[index] = findings[index] with { Message = $"{findings[index].Message} The same goes for {Checks.Say.Count(holes - 1, "more hole")} of this run." };
    }

    /// <summary>The first finding of a rule in a run of holes.</summary>
    /// <param name="Index">Its place in the list.</param>
    /// <param name="First">Index of the run's first hole.</param>
    /// <param name="End">Index of the one after its last.</param>
    /// <param name="Holes">How many holes it is true of so far.</param>
    readonly record struct Open(int Index, int First, int End, int Holes);
}
