using System.Globalization;
using System.Net;
using System.Text.RegularExpressions;
using NcLanguage.Checks;
using NcLanguage.Reports.Explain;
using NcLanguage.Reports.Reference;

namespace NcLanguage.Reports.Tests.Reference;

/// <summary>The pages made from the tables.</summary>
public sealed partial class ReferencePageTests
{
    public static TheoryData<PageFormat> Formats => [PageFormat.Html, PageFormat.Markdown];

    /// <summary>One page for each explanation and the list; told apart also where capitals do not count, and fit for every file system.</summary>
    [Theory]
    [MemberData(nameof(Formats))]
    public void Every_name_has_a_page_of_its_own(PageFormat format)
    {
        var pages = ReferencePages.All(format);
        Assert.Equal(Glossary.All.Length + 1, pages.Length);
        Assert.Equal(pages.Length, pages.Select(page => page.FileName).Distinct(StringComparer.OrdinalIgnoreCase).Count());
        Assert.All(pages, page => Assert.Matches(@"^[A-Za-z0-9.-]+\.(html|md)$", page.FileName));
        Assert.All(RuleList.All, rule => Assert.Contains(pages, page => page.FileName.StartsWith(rule.Info.Id + ".", StringComparison.Ordinal)));
        Assert.Contains(pages, page => page.FileName.StartsWith("G81.", StringComparison.Ordinal));
    }

    [Theory]
    [MemberData(nameof(Formats))]
    public void Every_page_tells_all_of_its_explanation(PageFormat format)
    {
        var pages = ReferencePages.All(format).ToDictionary(page => Path.GetFileNameWithoutExtension(page.FileName), page => Plain(page.Text, format));
        Assert.All(Glossary.All, entry =>
        {
            var page = pages[entry.Page];
            Assert.Contains(entry.Title, page, StringComparison.Ordinal);
            Assert.All(entry.Sections, section =>
            {
                Assert.Contains(section.Heading, page, StringComparison.Ordinal);
                Assert.Contains(section.Text, page, StringComparison.Ordinal);
            });
            Assert.Contains("A check is no proof", page, StringComparison.Ordinal);
            Assert.Contains(entry.Title, pages[ReferencePages.Index], StringComparison.Ordinal);
        });
    }

    /// <summary>What a row of a table has no room for goes on under its last column, not under its name.</summary>
    [Theory]
    [InlineData("G83", "Its words", 'h', "X  optional     hole along X")]
    [InlineData("setup-tools", "Its members", 'n', "number          needed")]
    public void Rows_hang_from_their_last_column(string page, string heading, char first, string row)
    {
        var section = Glossary.All.Single(entry => entry.Page == page).Sections.Single(section => section.Heading == heading);
        Assert.StartsWith(row, section.Text, StringComparison.Ordinal);
        Assert.All(section.Text.Split('\n'), line => Assert.Equal("  ", line[(section.Hang - 2)..section.Hang]));
        Assert.Equal(first, section.Text[section.Hang]);
        Assert.Contains($"<pre class=\"rows\" style=\"--hang: {section.Hang}ch\"><span>{row}", ReferencePages.All(PageFormat.Html).Single(one => one.FileName == page + ".html").Text, StringComparison.Ordinal);
    }

    /// <summary>The two programs of a rule stand on its page, block by block.</summary>
    [Theory]
    [MemberData(nameof(Formats))]
    public void A_rules_page_shows_its_two_examples(PageFormat format)
    {
        var pages = ReferencePages.All(format).ToDictionary(page => Path.GetFileNameWithoutExtension(page.FileName), page => Plain(page.Text, format).Split('\n'));
        Assert.All(RuleList.All, rule =>
        {
            var lines = pages[rule.Info.Id];
            Assert.All($"{rule.Info.Example}\n{rule.Info.Instead}".Split('\n').Where(block => !block.StartsWith('~')), block =>
                Assert.Contains(lines, line => line.Contains(block.TrimEnd(), StringComparison.Ordinal)));
        });
    }

    /// <summary>Every link leads to a page that is there, and no page fetches anything.</summary>
    [Theory]
    [MemberData(nameof(Formats))]
    public void Links_resolve(PageFormat format)
    {
        var pages = ReferencePages.All(format);
        var names = pages.Select(page => page.FileName).ToHashSet(StringComparer.Ordinal);
        var reached = new HashSet<string>();
        foreach (var page in pages)
        {
            var links = (format == PageFormat.Html ? HtmlLinks() : MarkdownLinks()).Matches(page.Text).Select(match => Uri.UnescapeDataString(match.Groups[1].Value)).ToList();
            Assert.NotEmpty(links);
            foreach (var link in links)
            {
                var (file, anchor) = link.Split('#') is [var before, var behind] ? (before, behind) : (link, "");
                var target = file.Length == 0 ? page.FileName : file;
                Assert.Contains(target, names);
                if (anchor.Length > 0)
                    Assert.Contains($"id=\"{anchor}\"", pages.Single(other => other.FileName == target).Text, StringComparison.Ordinal);
                reached.Add(target);
            }
            Assert.DoesNotMatch(@"https?:|<script|\bsrc=|@import|url\(", page.Text);
        }
        Assert.Equal(names.Order(), reached.Order());
    }

    [Fact]
    public void A_page_leads_to_what_it_speaks_of()
    {
        var page = ReferencePages.All(PageFormat.Markdown).Single(page => page.FileName == "NC3001.md").Text;
        Assert.Contains("- [G80](G80.md): cycle off\n", page, StringComparison.Ordinal);
        Assert.Contains("(NC6003.md)", page, StringComparison.Ordinal);
        Assert.DoesNotContain("(NC3001.md)", page, StringComparison.Ordinal);
    }

    /// <summary>WCAG 2.1, success criterion 1.4.3: text against its ground, at least 4.5 to 1, by day, by night and on paper.</summary>
    [Fact]
    public void Text_can_be_read()
    {
        var sheet = ReferencePages.All(PageFormat.Html)[0].Text;
        var schemes = Schemes().Matches(sheet).Select(match => Colours().Matches(match.Value).ToDictionary(colour => colour.Groups[1].Value, colour => Luminance(colour.Groups[2].Value))).ToList();
        Assert.Equal(3, schemes.Count);
        Assert.All(schemes, colours => Assert.All(new[] { "text", "faint", "link" }, text => Assert.All(new[] { "ground", "box" }, ground =>
            Assert.InRange(Contrast(colours[text], colours[ground]), 4.5, 21))));
        // No colour is given but through these names.
        Assert.Equal(Colours().Count(sheet), AnyColour().Count(sheet));
    }

    // The two ends of the scale and one pair on it, from WCAG's definition of the contrast ratio.
    [Theory]
    [InlineData("000000", "ffffff", 21)]
    [InlineData("777777", "ffffff", 4.48)]
    [InlineData("ffffff", "ffffff", 1)]
    public void Contrast_is_measured_right(string text, string ground, double expected) =>
        Assert.Equal(expected, Contrast(Luminance(text), Luminance(ground)), 0.01);

    /// <summary>The text as a reader sees it.</summary>
    static string Plain(string page, PageFormat format) => format == PageFormat.Html
        ? WebUtility.HtmlDecode(Tags().Replace(page, ""))
        : MarkdownEscapes().Replace(page, "$1");

    static double Contrast(double one, double other) => (Math.Max(one, other) + 0.05) / (Math.Min(one, other) + 0.05);

    static double Luminance(string colour)
    {
        var parts = Enumerable.Range(0, 3).Select(i => int.Parse(colour.AsSpan(2 * i, 2), NumberStyles.HexNumber, CultureInfo.InvariantCulture) / 255.0)
            .Select(part => part <= 0.04045 ? part / 12.92 : Math.Pow((part + 0.055) / 1.055, 2.4)).ToList();
        return (0.2126 * parts[0]) + (0.7152 * parts[1]) + (0.0722 * parts[2]);
    }

    [GeneratedRegex("href=\"([^\"]+)\"")]
    private static partial Regex HtmlLinks();

    [GeneratedRegex(@"\]\(([^)]+\.md)\)")]
    private static partial Regex MarkdownLinks();

    [GeneratedRegex("<[^>]+>")]
    private static partial Regex Tags();

    [GeneratedRegex(@"\\([\\`*_<\[\]&~#+>=-])")]
    private static partial Regex MarkdownEscapes();

    [GeneratedRegex(@":root \{[^}]+\}")]
    private static partial Regex Schemes();

    [GeneratedRegex("--([a-z]+): #([0-9a-f]{6})")]
    private static partial Regex Colours();

    [GeneratedRegex("#[0-9a-fA-F]{3,8};|rgb|hsl")]
    private static partial Regex AnyColour();
}
