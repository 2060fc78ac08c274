using System.Text.RegularExpressions;
using NcLanguage.Checks.Analysis;
using NcLanguage.Syntax.Text;

namespace NcLanguage.Checks.Tests.Rules;

/// <summary>Each rule's own two programs are its test: the first yields exactly the marked findings, its fix mends it, the second is silent.</summary>
public sealed partial class RuleExampleTests
{
    public static TheoryData<string> ProgramRules => [.. RuleList.All.Where(rule => rule is not SetupRule).Select(rule => rule.Info.Name)];

    public static TheoryData<string> AllRules => [.. RuleList.All.Select(rule => rule.Info.Name)];

    [Theory]
    [MemberData(nameof(ProgramRules))]
    public void The_example_yields_exactly_the_marked_findings(string name)
    {
        var rule = RuleList.Find(name)!;
        var marked = MarkedProgram.Parse(rule.Info.Example, name);
        Assert.Contains(marked.Expected, expected => expected.Name == name);
        var analysis = Examples.Analyse(marked.Text, rule.Info);
        var found = analysis.Findings.Select(f => new ExpectedFinding(f.Name, f.Line, f.StartColumn, f.EndColumn)).ToList();
        Assert.True(
            found.OrderBy(f => f.Line).ThenBy(f => f.Name, StringComparer.Ordinal)
                .SequenceEqual(marked.Expected.OrderBy(f => f.Line).ThenBy(f => f.Name, StringComparer.Ordinal)),
            $"Expected {string.Join(", ", marked.Expected)}; found:\n{Examples.Show(analysis)}");
    }

    [Theory]
    [MemberData(nameof(ProgramRules))]
    public void The_right_program_is_silent(string name)
    {
        var rule = RuleList.Find(name)!;
        var info = rule.Info.InsteadSetup is { } setup ? rule.Info with { Setup = setup } : rule.Info;
        var analysis = Examples.Analyse(info.Instead.ReplaceLineEndings("\n"), info);
        Assert.True(analysis.Findings.IsEmpty, Examples.Show(analysis));
    }

    [Theory]
    [MemberData(nameof(ProgramRules))]
    public void The_fix_mends_the_example_and_adds_nothing(string name)
    {
        var rule = RuleList.Find(name)!;
        var marked = MarkedProgram.Parse(rule.Info.Example, name);
        var analysis = Examples.Analyse(marked.Text, rule.Info);
        var offered = analysis.Findings.Where(f => f.Name == name).SelectMany(analysis.FixesOf).ToList();
        if (rule.Info.FixSafety == FixSafety.None)
        {
            Assert.Empty(offered);
            return;
        }
        Assert.NotEmpty(offered);
        Assert.All(offered, fix => Assert.True(fix.Safety >= rule.Info.FixSafety, "A fix is more trusting than its rule says."));
        // Fixes until nothing changes: each pass takes the first offer of the first finding left.
        for (var pass = 0; pass < 20; pass++)
        {
            var fix = analysis.Findings.Where(f => f.Name == name).SelectMany(f => analysis.FixesOf(f).Take(1)).FirstOrDefault();
            if (fix is null)
                break;
            analysis = Examples.Analyse(TextEdits.Apply(analysis.Text, fix.Edits).ToString(), rule.Info);
        }
        Assert.DoesNotContain(analysis.Findings, f => f.Name == name);
        var before = marked.Expected.Select(f => f.Name).ToHashSet();
        Assert.True(analysis.Findings.All(f => before.Contains(f.Name)), "The fix brought new findings:\n" + Examples.Show(analysis) + "\n" + analysis.Text);
    }

    [Theory]
    [MemberData(nameof(AllRules))]
    public void What_is_said_about_a_rule_is_complete(string name)
    {
        var info = RuleList.Find(name)!.Info;
        Assert.Matches(IdShape(), info.Id);
        Assert.Matches(NameShape(), info.Name);
        Assert.False(info.Title.EndsWith('.'), "A title has no full stop.");
        Assert.InRange(info.Title.Length, 8, 80);
        foreach (var sentence in new[] { info.Finds, info.AtTheMachine, info.NotFound, info.Source })
            Assert.EndsWith(".", sentence, StringComparison.Ordinal);
        Assert.Equal(info.FixSafety != FixSafety.None, info.Fix.Length > 0);
    }

    [Fact]
    public void Numbers_and_names_are_given_once()
    {
        Assert.Equal(RuleList.All.Length, RuleList.All.Select(rule => rule.Info.Id).Distinct().Count());
        Assert.Equal(RuleList.All.Length, RuleList.All.Select(rule => rule.Info.Name).Distinct().Count());
    }

    [GeneratedRegex("^NC[1-8][0-9]{3}$")]
    private static partial Regex IdShape();

    [GeneratedRegex("^[a-z]+(-[a-z]+)*$")]
    private static partial Regex NameShape();
}
