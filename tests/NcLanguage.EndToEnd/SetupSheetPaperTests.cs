using System.Globalization;
using System.Text.RegularExpressions;
using NcLanguage.EndToEnd.Support;

namespace NcLanguage.EndToEnd;

/// <summary>The setup sheet printed by a real browser on both common papers: the pages are counted, each has its foot, the head of a long table stands on
/// every page it covers, and no heading is left alone at the end of one.</summary>
public sealed partial class SetupSheetPaperTests
{
    static readonly TimeSpan Limit = TimeSpan.FromMinutes(2);

    [EditorTheory(Editor.Printer)]
    [InlineData("A4", "595 x 842")]
    [InlineData("letter", "612 x 792")]
    public async Task The_demonstration_fits_its_pages(string paper, string size)
    {
        using var folder = new ScratchFolder();
        await CommandLine.OutputAsync(ServerCommand.With("demo", folder.At("demo")), Limit);
        foreach (var program in new[] { "cover-plate.nc", "cover-plate-faulty.nc" })
        {
            var pages = await PrintAsync(folder, folder.At("demo", program), paper, size);
            Assert.InRange(pages.Count, 3, 8);
            Assert.All(pages, (text, i) => Assert.Contains($"Page {i + 1} of {pages.Count}", text, StringComparison.Ordinal));
            Assert.All(pages, text => Assert.Contains($"{program}: setup sheet. A check is no proof.", text, StringComparison.Ordinal));
            Assert.All(pages, text => Assert.DoesNotContain(BodyOf(text)[^1], Headings));
            var all = string.Join('\n', pages);
            Assert.All(Headings, heading => Assert.Contains(heading, all, StringComparison.Ordinal));
            // All that is drawn and all to sign stand on one page each.
            Assert.Single(pages, text => text.Contains("Front, X to the right", StringComparison.Ordinal) && text.Contains("Plan, X to the right", StringComparison.Ordinal)
                && text.Contains("clamp A", StringComparison.Ordinal) && text.Contains("clamp B", StringComparison.Ordinal));
            Assert.Single(pages, text => text.Contains("Set up by", StringComparison.Ordinal) && text.Contains("First part measured by", StringComparison.Ordinal));
        }
    }

    [EditorTheory(Editor.Printer)]
    [InlineData("A4", "595 x 842")]
    [InlineData("letter", "612 x 792")]
    public async Task A_long_table_has_its_head_on_every_page(string paper, string size)
    {
        using var folder = new ScratchFolder();
        var blocks = string.Concat(Enumerable.Range(1, 599).Select(i => FormattableString.Invariant($"X{i % 30 * 3} Y{i / 30 * 3}\n")));
        var program = folder.Write("sieve.nc", $"G21 G90 G17 G94 G54\nT1 M6\nG43 H1 G0 X0 Y0 Z40\nS1000 M3\nG99 G81 X0 Y0 Z-5 R2 F120\n{blocks}G80\nM30\n");
        var pages = await PrintAsync(folder, program, paper, size);
        var covered = pages.Where(text => BodyOf(text).Count(line => HoleRow().IsMatch(line)) > 3).ToList();
        Assert.InRange(covered.Count, 8, 20);
        Assert.All(covered, text => Assert.Matches(HoleHead(), text));
        Assert.Equal(600, pages.Sum(text => BodyOf(text).Count(line => HoleRow().IsMatch(line))));
    }

    static string[] Headings { get; } =
    [
        "Open findings", "What was checked, and what was not", "Datum, stock and clamps", "Tools", "Operations", "Closest approaches", "Stops", "Signed",
        "How the control is taken to read the program", "Holes",
    ];

    /// <summary>The text of each page, in the layout of the paper.</summary>
    static async Task<List<string>> PrintAsync(ScratchFolder folder, string program, string paper, string size)
    {
        var (page, pdf) = (folder.At("sheet.html"), folder.At("sheet.pdf"));
        await CommandLine.OutputAsync(ServerCommand.With("sheet", program, "-o", page), Limit);
        // What somebody chooses in the browser's print dialog.
        var html = await File.ReadAllTextAsync(page);
        await File.WriteAllTextAsync(page, html.Replace("</head>", $"<style>@page {{ size: {paper}; }}</style></head>", StringComparison.Ordinal));
        await CommandLine.OutputAsync(
            [Editors.Chromium!, "--headless", "--no-sandbox", "--disable-gpu", "--no-pdf-header-footer", $"--user-data-dir={folder.At("profile")}", $"--print-to-pdf={pdf}", new Uri(page).AbsoluteUri], Limit);
        var text = await CommandLine.OutputAsync([Editors.PdfText!, "-layout", pdf, "-"], Limit);
        var measured = PageSize().Match(await CommandLine.OutputAsync([Path.Combine(Path.GetDirectoryName(Editors.PdfText!)!, "pdfinfo"), pdf], Limit));
        Assert.Equal(size, $"{Points(measured.Groups[1])} x {Points(measured.Groups[2])}");
        return [.. text.Split('\f').Where(part => part.Trim().Length > 0)];
    }

    static double Points(Group number) => Math.Round(double.Parse(number.Value, CultureInfo.InvariantCulture));

    /// <summary>The lines of a page without its foot.</summary>
    static List<string> BodyOf(string page) =>
        [.. page.Split('\n').Select(line => line.Trim()).Where(line => line.Length > 0 && !line.Contains("setup sheet. A check is no proof.", StringComparison.Ordinal))];

    [GeneratedRegex(@"^\d+ +\d+ +T1 +G81 ")]
    private static partial Regex HoleRow();

    [GeneratedRegex(@"no\. +line +tool +cycle +X +Y")]
    private static partial Regex HoleHead();

    [GeneratedRegex(@"Page size: +([\d.]+) x ([\d.]+)")]
    private static partial Regex PageSize();
}
