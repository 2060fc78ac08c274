using System.Collections.Immutable;
using NcLanguage.Syntax.Text;

namespace NcLanguage.Checks.Analysis;

/// <summary>Puts the findings of the parts together: absolute lines, both ways of block skip, whole-file rules, comments that ask for silence.</summary>
static class FindingAssembly
{
    static readonly Rule[] FileRules = [.. RuleList.All.Where(rule => rule.ReadsFile)];

    public static ImmutableArray<Finding> Collect(AnalysisRuns runs, AnalysisOptions options)
    {
        var findings = new List<Finding>();
        AddOf(runs.Main, findings);
        var file = new FileContext(runs, options, findings);
        foreach (var rule in FileRules)
            rule.CheckFile(file);
        if (runs.OtherSkip is { } other)
            AddOtherSkip(other, findings);
        Allows.Apply(runs.Main, findings);
        findings.Sort(ByPlace);
        return [.. findings];
    }

    static void AddOf(ProgramRun run, List<Finding> findings)
    {
        for (var chunk = 0; chunk < run.Texts.Length; chunk++)
            AddAt(run.Text.FirstLineOf(chunk), run.Texts[chunk].Findings, findings);
        if (run.Flow is { } flow)
        {
            findings.AddRange(flow.Findings);
            return;
        }
        for (var chunk = 0; chunk < run.Results.Length; chunk++)
            AddAt(run.Text.FirstLineOf(chunk), run.Results[chunk].Findings, findings);
    }

    static void AddAt(int firstLine, Finding[] found, List<Finding> findings)
    {
        foreach (var finding in found)
            findings.Add(firstLine == 0 ? finding : finding with { Line = finding.Line + firstLine });
    }

    /// <summary>Adds what only goes wrong with the block skip switch the other way.</summary>
    static void AddOtherSkip(ProgramRun other, List<Finding> findings)
    {
        var known = findings.Select(finding => (finding.Rule, finding.Line, finding.StartColumn)).ToHashSet();
        var skipping = other.Job.Executor.SkipBlocks;
        var others = new List<Finding>();
        AddOf(other, others);
        foreach (var finding in others)
        {
            if (known.Contains((finding.Rule, finding.Line, finding.StartColumn)))
                continue;
            findings.Add(finding with
            {
                WhenSkipping = skipping,
                Message = finding.Message + (skipping ? " (When blocks with / are skipped.)" : " (When blocks with / run.)"),
            });
        }
    }

    static int ByPlace(Finding a, Finding b)
    {
        var line = a.Line.CompareTo(b.Line);
        if (line != 0)
            return line;
        var column = a.StartColumn.CompareTo(b.StartColumn);
        return column != 0 ? column : string.CompareOrdinal(a.Id, b.Id);
    }
}
