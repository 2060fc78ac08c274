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
        var calls = findings.Where(IsOfMissing).GroupBy(finding => finding.Message).ToDictionary(group => group.Key, Calls.Of);
        findings.RemoveAll(finding => IsOfMissing(finding) && finding.Line != calls[finding.Message].First.Line);
        for (var i = 0; i < findings.Count; i++)
            if (IsOfMissing(findings[i]) && calls[findings[i].Message] is { Others: > 0 } call && ReferenceEquals(findings[i], call.First))
                findings[i] = call.First with
                {
                    Message = $"{call.First.Message} It is called again in {Say.Count(call.Others, "block")}{(call.Others == 1 ? ", in" : ", the last in")} line {call.Last + 1}.",
                };
    }

    /// <summary>The calls of one program that is not there.</summary>
    /// <param name="Others">Other lines that call it.</param>
    /// <param name="Last">The last line that does.</param>
    sealed record Calls(Finding First, int Others, int Last)
    {
        public static Calls Of(IEnumerable<Finding> calls)
        {
            var lines = calls.Select(finding => finding.Line).ToHashSet();
            return new(calls.MinBy(finding => finding.Line)!, lines.Count - 1, lines.Max());
        }
    }

    // Where the fault lies in another file, or shows only with the block skip switch the other way, it is another matter.
    static bool IsOfMissing(Finding finding) => finding is { Rule: SubprogramMissing, Fault: null, IsElsewhere: false, IsOfOtherSkip: false };
}
