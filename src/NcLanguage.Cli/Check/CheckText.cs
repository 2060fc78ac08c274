using NcLanguage.Checks;
using NcLanguage.Cli.Common;
using NcLanguage.Reports.Findings;
using Spectre.Console;

namespace NcLanguage.Cli.Check;

/// <summary>Findings for a setter to read at a terminal.</summary>
sealed class CheckText(Screen screen)
{
    /// <summary>Nobody reads more of one file; the other formats tell all.</summary>
    const int MostPerFile = 200;

    const int Indent = 4;

    static readonly Style Heading = new(decoration: Decoration.Bold);
    static readonly Style Faint = new(decoration: Decoration.Dim);
    static readonly Style FixStyle = new(Color.Green);

    public void Write(CheckReport report)
    {
        foreach (var file in report.Files)
            WriteFile(file);
        WriteSummary(report);
    }

    void WriteFile(ReportedFile file)
    {
        if (file.Findings.IsEmpty && file.Fixed.IsEmpty && file.Blocks != 0)
            return;
        screen.WriteLine(file.Path, Heading);
        if (file.Blocks == 0)
            screen.WriteParagraph("There is no block in this file: nothing was checked.", Indent);
        foreach (var applied in file.Fixed)
            WriteFixed(applied);
        screen.WriteLine();
        var isCut = file.Findings.Length > MostPerFile;
        // Where not all are told the errors come first, each kind in the order of the lines.
        foreach (var finding in isCut ? file.Findings.OrderBy(finding => finding.Severity).Take(MostPerFile) : file.Findings)
            WriteFinding(finding);
        if (isCut)
            screen.WriteLine($"… and {file.Findings.Length - MostPerFile} more in this file, errors told first; --format json tells all.\n");
    }

    void WriteFixed(AppliedFix applied)
    {
        screen.WriteLine($"line {applied.Line}  fixed: {applied.Title}", FixStyle);
        foreach (var line in applied.Before)
            screen.WriteLine($"{new string(' ', Indent)}was  {line}", Faint);
        foreach (var line in applied.After)
            screen.WriteLine($"{new string(' ', Indent)}now  {line}");
    }

    void WriteFinding(ReportedFinding finding)
    {
        var style = StyleOf(finding.Severity);
        screen.Write($"line {finding.Place.Line}, column {finding.Place.Column}  ");
        screen.Write(CheckJson.Word(finding.Severity).ToUpperInvariant(), style);
        screen.WriteLine($"  {finding.Name} ({finding.Id})");
        WriteExcerpt(finding.Excerpt, style);
        screen.WriteParagraph(finding.Message, Indent);
        foreach (var related in finding.Related)
            screen.WriteParagraph($"See line {related.Place.Line}: {related.Message}", Indent, Faint);
        foreach (var fix in finding.Fixes)
            screen.WriteParagraph($"{(fix.Safety == FixSafety.Safe ? "Fix" : "Possible fix")}: {fix.Title}", Indent, FixStyle);
        screen.WriteLine();
    }

    void WriteExcerpt(Excerpt excerpt, Style style)
    {
        if (string.IsNullOrWhiteSpace(excerpt.Text))
            return;
        var indent = new string(' ', Indent);
        screen.WriteLine(indent + excerpt.Text, Heading);
        screen.Write(indent + new string(' ', excerpt.MarkStart));
        screen.WriteLine(new string('^', excerpt.MarkLength), style);
    }

    static Style StyleOf(Severity severity) => severity switch
    {
        Severity.Error => new Style(Color.Red, decoration: Decoration.Bold),
        Severity.Warning => new Style(Color.Yellow, decoration: Decoration.Bold),
        _ => new Style(Color.Blue),
    };

    void WriteSummary(CheckReport report)
    {
        var programs = report.Files.Where(file => file.Blocks is not null).ToList();
        var blocks = programs.Sum(file => (long)file.Blocks!.Value);
        screen.WriteLine(
            $"{Count(programs.Count, "program")}, {Count(blocks, "block")}: {Count(report.Errors, "error")}, "
            + $"{Count(report.Warnings, "warning")}, {Count(report.Notes, "note")}.",
            Heading);
        var certain = report.Files.Sum(file => file.Findings.Count(finding => finding.Fixes.Any(fix => fix.Safety == FixSafety.Safe)));
        if (certain > 0)
            screen.WriteLine($"{Count(certain, "finding")} can be mended by check --fix (--fix --preview shows how).");
        foreach (var clause in programs.SelectMany(file => file.NotChecked).GroupBy(clause => clause))
        {
            var where = programs.Count == 1 || clause.Count() == programs.Count ? "" : $", in {Count(clause.Count(), "program")}";
            screen.WriteParagraph($"Not checked: {clause.Key}{where}.", 0);
        }
        screen.WriteParagraph(Caution.Text, 0);
    }

    static string Count(long count, string one) => count == 1 ? $"1 {one}" : $"{count} {one}s";
}
