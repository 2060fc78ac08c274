using NcLanguage.Checks;
using NcLanguage.Syntax.Text;

namespace NcLanguage.Reports.Findings;

/// <summary>Findings as workflow commands of GitHub Actions, one a line, which it shows beside the lines of a change: what a log or a terminal would obey is written out.</summary>
public sealed class CheckAnnotations(TextWriter output) : ICheckWriter
{
    public void Write(ReportedFile file)
    {
        ArgumentNullException.ThrowIfNull(file);
        foreach (var finding in file.Findings)
        {
            var place = finding.Place;
            output.WriteLine(
                $"::{Command(finding.Severity)} file={Property(file.Path)},line={place.Line},endLine={place.Line},col={place.Column},"
                + $"endColumn={place.EndColumn},title={Property($"{finding.Id} {finding.Name}")}::{Data(ShownText.Of(finding.Message))}");
        }
        // Others are still checked.
        if (!file.Findings.IsEmpty)
            output.Flush();
    }

    /// <summary>Nothing: each line stands for itself.</summary>
    public void End(CheckTotals totals)
    {
    }

    static string Command(Severity severity) => severity == Severity.Note ? "notice" : CheckJson.Word(severity);

    static string Data(string text) => text
        .Replace("%", "%25", StringComparison.Ordinal)
        .Replace("\r", "%0D", StringComparison.Ordinal)
        .Replace("\n", "%0A", StringComparison.Ordinal);

    static string Property(string text) => Data(text)
        .Replace(":", "%3A", StringComparison.Ordinal)
        .Replace(",", "%2C", StringComparison.Ordinal);
}
