using System.Collections.Immutable;
using NcLanguage.Checks;
using NcLanguage.Checks.Analysis;

namespace NcLanguage.Reports.Findings;

/// <summary>Makes an analysis's findings ready to be told.</summary>
public static class FindingReader
{
    public static ReportedFile Read(string path, ProgramAnalysis analysis)
    {
        ArgumentNullException.ThrowIfNull(analysis);
        var columns = new ColumnCounter(analysis.Text);
        return new ReportedFile(path, [.. analysis.Findings.Select(finding => Read(finding, analysis, columns))])
        {
            Blocks = analysis.Main.BlocksRun,
            Machine = analysis.Machine.Name,
            NotChecked = [.. NotChecked.Of(analysis.Setup)],
        };
    }

    static ReportedFinding Read(Finding finding, ProgramAnalysis analysis, ColumnCounter columns) => new()
    {
        Id = finding.Id,
        Name = finding.Name,
        Severity = finding.Severity,
        Place = columns.Place(finding.Line, finding.StartColumn, finding.EndColumn),
        Message = finding.Message,
        Excerpt = Excerpt.Of(analysis.Text.Line(finding.Line), finding.StartColumn, finding.EndColumn),
        Fixes = finding.Rule.Info.FixSafety == FixSafety.None ? [] : [.. analysis.FixesOf(finding).Select(fix => Read(fix, columns))],
        Related = [.. analysis.Related(finding).Select(related => new ReportedRelated(
            columns.Place(related.Line, related.StartColumn, related.EndColumn), related.Message))],
    };

    static ReportedFix Read(Fix fix, ColumnCounter columns) => new(
        fix.Title, fix.Safety,
        [.. fix.Edits.Select(edit => new ReportedEdit(columns.Place(edit.Line, edit.StartColumn, edit.EndColumn), edit.NewText))]);
}
