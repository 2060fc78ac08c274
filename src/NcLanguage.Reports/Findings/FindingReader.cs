using System.Collections.Immutable;
using NcLanguage.Checks;
using NcLanguage.Checks.Analysis;
using NcLanguage.Control.State;

namespace NcLanguage.Reports.Findings;

/// <summary>Makes an analysis's findings ready to be told.</summary>
public static class FindingReader
{
    /// <summary>Fixes are worked out for that many findings of one rule in one file. Finding a fix may take a look at the whole program, and nobody
    /// takes more of them one by one.</summary>
    public const int MostFixesOfRule = 1000;

    public static ReportedFile Read(string path, ProgramAnalysis analysis)
    {
        ArgumentNullException.ThrowIfNull(analysis);
        var columns = new ColumnCounter(analysis.Text);
        var ofRule = new Dictionary<Rule, int>();
        return new ReportedFile(path, [.. analysis.Findings.Select(finding => Read(finding, analysis, columns, IsWorkedOut(finding.Rule, ofRule)))])
        {
            Blocks = HasWords(analysis.Main) ? analysis.Main.Blocks : 0,
            Machine = analysis.Machine.Name,
            NotChecked = [.. NotChecked.Of(analysis)],
            FixesLeftOut = ofRule.Values.Sum(count => Math.Max(0, count - MostFixesOfRule)),
        };
    }

    /// <summary>False for a file of nothing but % and program numbers.</summary>
    static bool HasWords(ProgramRun run)
    {
        if (run.Exit.Started)
            return true;
        foreach (var result in run.Results)
            if (result.AllSets != Slot.None)
                return true;
        return false;
    }

    static bool IsWorkedOut(Rule rule, Dictionary<Rule, int> ofRule)
    {
        if (rule.Info.FixSafety == FixSafety.None)
            return false;
        ofRule[rule] = ofRule.GetValueOrDefault(rule) + 1;
        return ofRule[rule] <= MostFixesOfRule;
    }

    static ReportedFinding Read(Finding finding, ProgramAnalysis analysis, ColumnCounter columns, bool withFixes) => new()
    {
        Id = finding.Id,
        Name = finding.Name,
        Severity = finding.Severity,
        Place = columns.Place(finding.Line, finding.StartColumn, finding.EndColumn),
        Message = finding.Message,
        Excerpt = Excerpt.Of(analysis.Text.Line(finding.Line), finding.StartColumn, finding.EndColumn),
        Fixes = !withFixes ? [] : [.. analysis.FixesOf(finding).Select(fix => Read(fix, columns))],
        Related = [.. analysis.Related(finding).Select(related => new ReportedRelated(
            columns.Place(related.Line, related.StartColumn, related.EndColumn), related.Message))],
    };

    static ReportedFix Read(Fix fix, ColumnCounter columns) => new(
        fix.Title, fix.Safety,
        [.. fix.Edits.Select(edit => new ReportedEdit(columns.Place(edit.Line, edit.StartColumn, edit.EndColumn), edit.NewText))]);
}
