using System.Collections.Immutable;

namespace NcLanguage.Checks.Analysis;

/// <summary>Findings as they are told.</summary>
/// <param name="Findings">In the order of the text.</param>
/// <param name="Explained">What is told with the finding that may be the cause of it: of each rule the first, the worst rules first.</param>
readonly record struct FindingsTold(ImmutableArray<Finding> Findings, ImmutableArray<RelatedPlace> Explained);

/// <summary>One slip that moves all of a program is one finding: what may come of it is counted and named in it, and not told by itself (<see cref="Rule.MayExplain"/>).</summary>
static class ExplainedFindings
{
    /// <summary>Takes them out and tells them with their cause. Where a comment has silenced the cause, they are told.</summary>
    public static ImmutableArray<RelatedPlace> TakeOut(List<Finding> findings)
    {
        var cause = findings.FindIndex(finding => finding.Rule.PutsFixesInDoubt && finding.Fault is null);
        if (cause < 0)
            return [];
        var rule = findings[cause].Rule;
        var explained = findings.FindAll(IsExplained);
        if (explained.Count == 0)
            return [];
        var ofRules = explained.OrderBy(finding => finding.Severity).ThenBy(finding => finding, FindingAssembly.Comparer).GroupBy(finding => finding.Rule).ToList();
        var names = Names(ofRules);
        findings[cause] = findings[cause] with
        {
            Message = $"{findings[cause].Message} {Others(explained.Count, "it", names)}.",
        };
        findings.RemoveAll(IsExplained);
        return [.. ofRules.Select(group => group.First()).Select(first => new RelatedPlace(first.Line, first.StartColumn, first.EndColumn, $"{first.Name}: {first.Message}"))];

        bool IsExplained(Finding finding) => finding.Fault is null && rule.MayExplain(finding.Rule);
    }

    /// <summary>How many findings are not told by themselves, and which, as a sentence without its point.</summary>
    /// <param name="cause">What they may come of.</param>
    public static string Others(int count, string cause, string names) => count == 1
        ? $"One more finding may come of {cause} and is not told by itself: {names}"
        : $"{Say.Number(count)} more findings may come of {cause} and are not told by themselves: {names}";

    /// <summary>The names of findings that are not told by themselves, the worst first, with how many there are of each.</summary>
    public static string Names(List<Finding> findings) => Names(findings.OrderBy(finding => finding.Severity).GroupBy(finding => finding.Rule));

    static string Names(IEnumerable<IGrouping<Rule, Finding>> ofRules) =>
        string.Join(", ", ofRules.Select(group => group.Count() is > 1 and var count ? $"{group.Key.Info.Name} ({Say.Number(count)})" : group.Key.Info.Name));
}
