using System.Globalization;
using NcLanguage.Checks;
using NcLanguage.Cli.Common;
using NcLanguage.Reports.Findings;
using Spectre.Console;

namespace NcLanguage.Cli.Check;

/// <summary>Findings for a setter to read at a terminal.</summary>
/// <param name="fixes">What became of the fixes that are certain.</param>
sealed class CheckText(Screen screen, FixUse fixes) : ICheckWriter
{
    /// <summary>Nobody reads more of one file; the other formats tell all.</summary>
    const int MostPerFile = 200;

    const int Indent = 4;

    public void Write(ReportedFile file)
    {
        if (!file.HasNews)
            return;
        screen.WriteLine(file.Path, Styles.Heading);
        if (file.Blocks == 0)
            screen.WriteParagraph("There is no block in this file: nothing was checked.", Indent);
        if (file.Remark is { } remark)
            screen.WriteParagraph(remark, Indent);
        foreach (var applied in file.Fixed)
            WriteFixed(applied);
        foreach (var left in file.NotFixed)
            screen.WriteParagraph($"line {left.Line}  not fixed: \"{left.Title}\" does not mend what {left.Finding} tells here.", 0);
        if (fixes == FixUse.Preview && !file.Fixed.IsEmpty)
            screen.WriteParagraph("Nothing is written. What follows is what the program would still have, by its lines then.", 0);
        screen.WriteLine();
        var isCut = file.Findings.Length > MostPerFile;
        // Where not all are told the errors come first, each kind in the order of the lines.
        foreach (var finding in isCut ? file.Findings.OrderBy(finding => finding.Severity).Take(MostPerFile) : file.Findings)
            WriteFinding(finding);
        if (isCut)
        {
            screen.WriteLine(string.Create(CultureInfo.InvariantCulture, $"… and {file.Findings.Length - MostPerFile:N0} more in this file, errors told first; --format json tells all."));
            screen.WriteLine();
        }
        // Others are still checked: whoever reads along may have seen enough by now.
        screen.Flush();
    }

    void WriteFixed(AppliedFix applied)
    {
        screen.WriteLine($"line {applied.Line}  {(fixes == FixUse.Preview ? "would be fixed" : "fixed")}: {applied.Title}", Styles.Fix);
        foreach (var line in applied.Before)
            screen.WriteLine($"{new string(' ', Indent)}was  {line}", Styles.Faint);
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
            screen.WriteParagraph($"See line {related.Place.Line}: {related.Message}", Indent, Styles.Faint);
        foreach (var fix in finding.Fixes)
            screen.WriteParagraph($"{(fix.Safety == FixSafety.Safe ? "Fix" : "Possible fix")}: {fix.Title}", Indent, Styles.Fix);
        screen.WriteLine();
    }

    void WriteExcerpt(Excerpt excerpt, Style style)
    {
        if (string.IsNullOrWhiteSpace(excerpt.Text))
            return;
        var indent = new string(' ', Indent);
        screen.WriteLine(indent + excerpt.Text, Styles.Heading);
        screen.Write(indent + new string(' ', excerpt.MarkStart));
        screen.WriteLine(new string('^', excerpt.MarkLength), style);
    }

    static Style StyleOf(Severity severity) => severity switch
    {
        Severity.Error => Styles.Wrong,
        Severity.Warning => Styles.Warning,
        _ => Styles.Note,
    };

    public void End(CheckTotals totals)
    {
        // Where nothing was checked there is nothing to sum up: standard error says why.
        if (totals is { Programs: 0, NotRead.Count: > 0, Errors: 0, Warnings: 0, Notes: 0 })
            return;
        screen.WriteLine(
            $"{Count(totals.Programs, "program")}, {Count(totals.Blocks, "block")}: {Count(totals.Errors, "error")}, "
            + $"{Count(totals.Warnings, "warning")}, {Count(totals.Notes, "note")}.",
            Styles.Heading);
        if (totals.LeftOut is { } leftOut)
            screen.WriteLine($"The check was stopped: {Count(leftOut, "program")} not checked.");
        // Where they were made, what is left is told with the programs.
        if (totals.Mendable > 0 && fixes == FixUse.None)
            screen.WriteLine($"{Count(totals.Mendable, "finding")} can be mended by check --fix (--fix --preview shows how).");
        foreach (var (clause, programs) in totals.NotChecked)
            screen.WriteParagraph($"Not checked: {clause}{(programs == totals.Programs ? "" : $", in {Count(programs, "program")}")}.", 0);
        screen.WriteParagraph(Caution.Text, 0);
    }

    static string Count(long count, string one) => count == 1 ? $"1 {one}" : $"{count} {one}s";
}
