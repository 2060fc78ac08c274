using NcLanguage.Checks.Rules;

namespace NcLanguage.Checks.Analysis;

/// <summary>A program that is not there is one slip, however often it is called: it is told at the first call, with the number of the others.</summary>
static class MissingPrograms
{
    /// <summary>Joins what is told of the same program at several blocks.</summary>
    /// <param name="findings">Those of each run in its order.</param>
    public static void Join(List<Finding> findings)
    {
        if (!findings.Exists(IsOfMissing))
            return;
        var calls = findings.FindAll(IsOfMissing).GroupBy(finding => finding.Message).Where(group => group.Skip(1).Any()).ToList();
        foreach (var group in calls)
        {
            var first = group.MinBy(finding => finding.Line)!;
            var others = group.Where(finding => finding.Line != first.Line).Select(finding => finding.Line).ToHashSet();
            findings.RemoveAll(finding => IsOfMissing(finding) && finding.Message == group.Key && others.Contains(finding.Line));
            if (others.Count > 0)
                findings[findings.IndexOf(first)] = first with
                {
                    Message = $"{first.Message} It is called again in {Say.Count(others.Count, "block")}{(others.Count == 1 ? ", in" : ", the last in")} line {others.Max() + 1}.",
                };
        }
    }

    // Where the fault lies in another file, or shows only with the block skip switch the other way, it is another matter.
    static bool IsOfMissing(Finding finding) => finding is { Rule: SubprogramMissing, Fault: null, IsElsewhere: false, IsOfOtherSkip: false };
}
