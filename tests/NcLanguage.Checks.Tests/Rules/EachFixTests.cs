using NcLanguage.Checks.Analysis;

namespace NcLanguage.Checks.Tests.Rules;

/// <summary>Whatever fix is taken, whether of an example's own rule or of another that speaks there too, no new error or warning comes with it.</summary>
public sealed class EachFixTests
{
    public static TheoryData<string> ProgramRules => RuleExampleTests.ProgramRules;

    [Theory]
    [MemberData(nameof(ProgramRules))]
    public void A_fix_brings_no_new_error_or_warning(string name)
    {
        var info = RuleList.Find(name)!.Info;
        var text = MarkedProgram.Parse(info.Example, name).Text;
        var analysis = Examples.Analyse(text, info);
        var brought = new List<string>();
        foreach (var finding in analysis.Findings)
            foreach (var fix in analysis.FixesOf(finding))
            {
                var mended = Examples.Analyse(TextEdits.Apply(analysis.Text, fix.Edits).ToString(), info);
                foreach (var fault in Counts(mended).Where(fault => fault.Value > Counts(analysis).GetValueOrDefault(fault.Key)))
                    brought.Add($"{finding.Name}, \"{fix.Title}\" brings {fault.Key}:\n{Examples.Show(mended)}\n{mended.Text}");
            }
        Assert.True(brought.Count == 0, string.Join("\n\n", brought));
    }

    static Dictionary<string, int> Counts(ProgramAnalysis analysis) => analysis.Findings
        .Where(finding => finding.Severity != Severity.Note)
        .GroupBy(finding => finding.Name).ToDictionary(group => group.Key, group => group.Count());
}
