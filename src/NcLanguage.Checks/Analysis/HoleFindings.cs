namespace NcLanguage.Checks.Analysis;

/// <summary>What a rule tells of one hole after another of an uninterrupted run has one cause, mostly the depth: it is told at the first of them, with the number
/// of the others.</summary>
static class HoleFindings
{
    /// <summary>The text of a finding that is told of a hole; its value is how many holes of its block it is true of.</summary>
    public const string Mark = "hole";

    /// <summary>The text of a finding that tells what a block's way to its holes costs; its value is the seconds.</summary>
    public const string SecondsMark = "hole seconds";

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
            if (!IsMarked(finding) || finding.IsElsewhere || finding.IsOfOtherSkip || !IsMore(finding, kept))
                findings[kept++] = finding;
        }
        findings.RemoveRange(kept, findings.Count - kept);
        foreach (var first in open.Values)
            Say(findings, first);

        // How long the runs of a block take is no sum over its holes.
        bool IsMarked(Finding finding) => finding.Text == Mark || (finding.Text == SecondsMark && !(run.Flow?.RunsOf(finding.Line) > 1));

        // True for a finding that the first of its run stands for.
        bool IsMore(Finding finding, int place)
        {
            table ??= HoleTable.Of(run);
            var (hole, count) = table.At(finding.Line);
            if (count == 0)
                return false;
            if (open.TryGetValue(finding.Rule, out var first))
            {
                if (hole >= first.First && hole < first.End)
                {
                    open[finding.Rule] = first with { Findings = first.Findings + 1, Sum = first.Sum + finding.Value };
                    return true;
                }
                Say(findings, first);
            }
            var (start, end) = table.RunOf(hole);
            open[finding.Rule] = new Open(place, start, end, 1, finding.Value);
            return false;
        }
    }

    static void Say(List<Finding> findings, in Open open)
    {
        var finding = findings[open.Index];
        if (finding.Text == Mark && open.Sum > 1)
            findings[open.Index] = finding with { Message = $"{finding.Message} The same goes for {Checks.Say.Count((int)open.Sum - 1, "more hole")} of this run." };
        else if (finding.Text == SecondsMark && open.Findings > 1)
            findings[open.Index] = finding with
            {
                Value = open.Sum,
                Message = $"{finding.Message.TrimEnd('.')}, and with that of {Checks.Say.Count(open.Findings - 1, "more block")} of this run {Checks.Say.Seconds(open.Sum)}.",
            };
    }

    /// <summary>The first finding of a rule in a run of holes.</summary>
    /// <param name="Index">Its place in the list.</param>
    /// <param name="First">Index of the run's first hole.</param>
    /// <param name="End">Index of the one after its last.</param>
    /// <param name="Findings">How many findings of the rule there are of the run so far.</param>
    /// <param name="Sum">Sum of their values.</param>
    readonly record struct Open(int Index, int First, int End, int Findings, double Sum);
}
