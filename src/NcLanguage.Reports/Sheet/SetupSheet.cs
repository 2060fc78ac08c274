using System.Globalization;
using System.Text;
using NcLanguage.Checks.Analysis;
using NcLanguage.Reports.Drawing;

namespace NcLanguage.Reports.Sheet;

/// <summary>The setup sheet: one page that fetches nothing and holds no script, for the screen and for A4 and Letter paper.</summary>
public static class SetupSheet
{
    /// <exception cref="OperationCanceledException">The token was cancelled.</exception>
    public static string Html(SheetInput input, CancellationToken cancel)
    {
        ArgumentNullException.ThrowIfNull(input);
        var analysis = input.Analysis;
        var run = SheetRun.Of(analysis, cancel);
        var holes = HoleTable.Of(analysis.Main);
        var page = new SheetHtml();
        Begin(page, SheetHead.Name(input.Path));
        SheetHead.Write(page, input, run);
        page.Section("open", "Open findings", () => SheetChecks.WriteFindings(page, input));
        page.Section("scope", "What was checked, and what was not", () => SheetChecks.WriteScope(page, analysis, run.Say.Lengths));
        page.Section("table", "Datum, stock and clamps", () => SheetTable.Write(page, analysis, run, holes));
        page.Section("tooling", "Tools", () => SheetTools.Write(page, analysis.Setup, run));
        page.Section("work", "Operations", () => SheetWork.WriteOperations(page, analysis, run));
        page.Section("near", "Closest approaches", () => SheetWork.WriteApproaches(page, analysis.Main, run));
        page.Section("waits", "Stops", () => SheetWork.WriteStops(page, run));
        page.Section("signed", "Signed", () => WriteLinesToSign(page));
        page.Section("readings", "How the control is taken to read the program", () => SheetHead.WriteReadings(page, analysis.Machine));
        page.Section("drilled", "Holes", () => SheetWork.WriteHoles(page, holes, run.Say));
        page.Raw("</main>\n</body>\n</html>\n");
        return page.ToString().ReplaceLineEndings("\n");
    }

    static void Begin(SheetHtml page, string name)
    {
        page.Raw("<!DOCTYPE html>\n<html lang=\"en\">\n<head>\n<meta charset=\"utf-8\">\n");
        page.Raw("<meta http-equiv=\"Content-Security-Policy\" content=\"default-src 'none'; style-src 'unsafe-inline'\">\n");
        page.Raw("<meta name=\"viewport\" content=\"width=device-width, initial-scale=1\">\n<meta name=\"color-scheme\" content=\"light dark\">\n");
        page.Raw($"<title>{SheetHtml.Text(name)}: setup sheet</title>\n<style>\n{SheetStyle.Css}{DrawingStyle.Css}{Footer(name)}</style>\n</head>\n<body>\n<main>\n");
    }

    /// <summary>What stands at the foot of every page of paper.</summary>
    static string Footer(string name) =>
        $"@page {{ @bottom-left {{ content: \"{CssText(name)}: setup sheet. A check is no proof.\"; font: 8pt system-ui, sans-serif; }} }}\n";

    /// <summary>A text inside quotes of a style sheet: everything but letters and digits by its number.</summary>
    static string CssText(string text)
    {
        var css = new StringBuilder();
        foreach (var rune in text.EnumerateRunes())
            if (Rune.IsLetterOrDigit(rune))
                css.Append(rune);
            else
                css.Append(CultureInfo.InvariantCulture, $"\\{rune.Value:X6}");
        return css.ToString();
    }

    static void WriteLinesToSign(SheetHtml page)
    {
        page.Raw("<table id=\"sign\" class=\"whole\">\n<thead><tr><th scope=\"col\">what</th><th scope=\"col\">name</th><th scope=\"col\">date</th><th scope=\"col\">remarks</th></tr></thead>\n<tbody>\n");
        foreach (var what in new[] { "Set up by", "Checked by", "First part run by", "First part measured by" })
            page.Raw($"<tr><th scope=\"row\">{what}</th><td></td><td></td><td></td></tr>\n");
        page.Raw("</tbody>\n</table>\n");
    }
}
