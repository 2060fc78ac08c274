using System.Text;
using NcLanguage.Checks.Tests.Rules;
using NcLanguage.Machine.Loading;
using NcLanguage.Machine.Profiles;

namespace NcLanguage.Checks.Tests.SetupFiles;

/// <summary>The two setup files of each rule on setup files are its test, as the two programs are of the other rules.</summary>
public sealed class SetupRuleTests
{
    public static TheoryData<string> SetupRules => [.. RuleList.All.OfType<SetupRule>().Select(rule => rule.Info.Name)];

    [Theory]
    [MemberData(nameof(SetupRules))]
    public void The_example_yields_exactly_the_marked_findings(string name)
    {
        var marked = MarkedProgram.Parse(RuleList.Find(name)!.Info.Example, name);
        Assert.Equal(marked.Expected, Read(marked.Text).Select(f => new ExpectedFinding(f.Rule.Info.Name, f.Line - 1, f.Column - 1, f.EndColumn - 1)));
    }

    [Theory]
    [MemberData(nameof(SetupRules))]
    public void The_right_file_is_silent(string name) => Assert.Empty(Read(RuleList.Find(name)!.Info.Instead));

    [Theory]
    [MemberData(nameof(SetupRules))]
    public void The_fix_mends_the_example(string name)
    {
        var info = RuleList.Find(name)!.Info;
        var text = MarkedProgram.Parse(info.Example, name).Text;
        var finding = Assert.Single(Read(text));
        Assert.Equal(info.FixSafety != FixSafety.None, finding.Replacement is not null);
        if (finding.Replacement is null)
            return;
        var lines = text.Split('\n');
        lines[finding.Line - 1] = lines[finding.Line - 1][..(finding.Column - 1)] + finding.Replacement + lines[finding.Line - 1][(finding.EndColumn - 1)..];
        Assert.Empty(Read(string.Join('\n', lines)));
    }

    [Fact]
    public void Each_kind_of_problem_has_its_rule_with_the_same_severity()
    {
        foreach (var kind in ProblemKind.All)
        {
            var finding = SetupFindings.Of(new SetupProblem(kind, "job.setup.json", 3, 2, 3, 5, "Something is wrong."));
            Assert.IsType<SetupRule>(finding.Rule, exactMatch: false);
            Assert.Equal(kind.Name, finding.Rule.Info.Name);
            Assert.Equal(kind.Severity.ToString(), finding.Severity.ToString());
            Assert.Equal(("job.setup.json", 3, 2, 3, 5), (finding.Path, finding.Line, finding.Column, finding.EndLine, finding.EndColumn));
        }
        Assert.Equal(ProblemKind.All.Length, RuleList.All.OfType<SetupRule>().Count());
    }

    [Fact]
    public void A_machine_file_gives_the_same_findings()
    {
        var read = MachineFile.Read("shop.machine.json", Encoding.UTF8.GetBytes("""{ "base": "iso-mill", "colour": "green", "maxFeed": -1 }"""), MachineProfile.FindBuiltIn);
        Assert.Equal(["setup-unknown-key", "setup-value"], read.Problems.Select(SetupFindings.Of).Select(finding => finding.Rule.Info.Name));
    }

    static List<SetupFinding> Read(string text) =>
        [.. SetupFile.Read("job.setup.json", Encoding.UTF8.GetBytes(text)).Problems.Select(SetupFindings.Of)];
}
