using NcLanguage.Checks.Rules;

namespace NcLanguage.Checks.Analysis;

/// <summary>A hole of the drawing that is made at another place is one slip: that the place lies outside the stock, or beyond the travel, comes of it. It is named there and not told by itself.</summary>
static class MisplacedFindings
{
    /// <summary>The text of a finding that tells of holes at other places: those of its block.</summary>
    public const string OfBlock = "misplaced in the block";

    /// <summary>The same, with one cause for all of an uninterrupted run of holes.</summary>
    public const string OfRun = "misplaced in the run";

    /// <summary>Takes them out and names them. What a comment has silenced is gone by then: it takes no others with it.</summary>
    public static void TakeOut(ProgramRun run, List<Finding> findings)
    {
        for (var i = findings.Count - 1; i >= 0; i--)
            if (findings[i] is { Rule: HoleMissing, Text: OfBlock or OfRun, Fault: null, IsElsewhere: false, IsOfOtherSkip: false })
                i -= TakeOutOf(i, run, findings);
    }

    /// <summary>Takes out those of one finding; gives how many stood before it.</summary>
    static int TakeOutOf(int index, ProgramRun run, List<Finding> findings)
    {
        var finding = findings[index];
        var (first, end) = finding.Text == OfRun && HoleTable.Of(run).At(finding.Line) is { Count: > 0 } holes ? HoleTable.Of(run).RunOf(holes.First) : (0, 0);
        var others = findings.FindAll(Follows);
        if (others.Count == 0)
            return 0;
        findings[index] = finding with { Message = $"{finding.Message} {ExplainedFindings.Others(others.Count, "it", ExplainedFindings.Names(others))}." };
        var before = findings[..index].Count(Follows);
        findings.RemoveAll(Follows);
        return before;

        bool Follows(Finding other) => other is { Rule: HoleOutsideStock or TravelExceeded, Fault: null, IsElsewhere: false, IsOfOtherSkip: false }
            && (other.Line == finding.Line || (end > first && HoleTable.Of(run).At(other.Line) is { Count: > 0 } its && its.First >= first && its.First < end));
    }
}
