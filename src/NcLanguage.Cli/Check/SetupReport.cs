using System.Collections.Immutable;
using System.Text;
using NcLanguage.Checks;
using NcLanguage.Machine.Files;
using NcLanguage.Machine.Loading;
using NcLanguage.Reports.Findings;
using NcLanguage.Syntax.Text;

namespace NcLanguage.Cli.Check;

/// <summary>Mistakes in setup and machine files, told under the path of their file.</summary>
static class SetupReport
{
    /// <summary>One file each, however many programs use it.</summary>
    /// <param name="problems">As the programs met them.</param>
    /// <param name="fullPaths">Whether the user named programs by full paths; else files below the current folder are named from there.</param>
    /// <param name="folders">Full paths of folders that the command line names. Of a file that a link leads to from elsewhere nothing is shown.</param>
    public static IEnumerable<ReportedFile> Of(IEnumerable<SetupProblem> problems, bool fullPaths, ImmutableArray<string> folders) =>
        problems.Distinct().GroupBy(problem => problem.Path).Select(group => Of(group.Key, [.. group], fullPaths, folders));

    static ReportedFile Of(string path, ImmutableArray<SetupProblem> problems, bool fullPaths, ImmutableArray<string> folders)
    {
        var bytes = new Fence(DiskFiles.Instance, [.. folders, Path.GetDirectoryName(path) ?? ""]).Read(path).Bytes;
        var text = SourceText.From(bytes.ToArray());
        // Of a file that only stands in the place of one of ours nothing is shown.
        var isOurs = SetupFile.BeginsAsObject(bytes.Span);
        var columns = new ColumnCounter(text);
        return new ReportedFile(
            Shown(path, fullPaths),
            [.. problems.OrderBy(problem => problem.Line).ThenBy(problem => problem.Column).Select(problem => Of(problem, text, columns, isOurs))]);
    }

    static ReportedFinding Of(SetupProblem problem, SourceText text, ColumnCounter columns, bool isShown)
    {
        var finding = SetupFindings.Of(problem);
        var line = Math.Clamp(problem.Line - 1, 0, text.LineCount - 1);
        var start = Bytes(text.LineText(line), problem.Column);
        var end = problem.EndLine == problem.Line ? Bytes(text.LineText(line), problem.EndColumn) : text.Line(line).Length;
        var place = columns.Place(line, start, end);
        return new ReportedFinding
        {
            Id = finding.Rule.Info.Id,
            Name = finding.Rule.Info.Name,
            Severity = finding.Severity,
            Place = place,
            Message = finding.Message,
            Excerpt = isShown ? Excerpt.Of(text.Line(line), start, end) : new Excerpt("", 0, 1),
            Fixes = finding.Replacement is { } replacement
                ? [new ReportedFix($"Write {replacement}", finding.Rule.Info.FixSafety, [new ReportedEdit(place, replacement)])]
                : [],
        };
    }

    // Problems count columns in UTF-16 code units.
    static int Bytes(string line, int column) => Encoding.UTF8.GetByteCount(line.AsSpan(0, Math.Clamp(column - 1, 0, line.Length)));

    static string Shown(string path, bool fullPaths)
    {
        var relative = Path.GetRelativePath(Environment.CurrentDirectory, path);
        return fullPaths || relative.StartsWith("..", StringComparison.Ordinal) ? path : relative;
    }
}
