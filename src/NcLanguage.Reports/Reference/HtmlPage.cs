using System.Collections.Immutable;
using System.Net;
using System.Text;
using NcLanguage.Reports.Explain;

namespace NcLanguage.Reports.Reference;

/// <summary>A page for browsers: one file without script, which fetches nothing.</summary>
static class HtmlPage
{
    public static string Of(Explanation entry)
    {
        var heading = ReferencePages.Heading(entry);
        var page = Begin(heading);
        page.Append($"<nav><a href=\"{ReferencePages.Index}.html\">All names</a> › <a href=\"{ReferencePages.Index}.html#{GroupId(entry.Group)}\">{Text(entry.Group)}</a></nav>\n");
        page.Append($"<main>\n<h1>{Text(heading)}</h1>\n<p class=\"title\">{Text(entry.Title)}</p>\n");
        foreach (var section in entry.Sections)
        {
            page.Append($"<section>\n<h2>{Text(section.Heading)}</h2>\n");
            page.Append(section switch
            {
                { Hang: > 0 } => Rows(section),
                { IsVerbatim: true } => $"<pre>{Text(section.Text)}</pre>\n",
                _ => $"<p>{Text(section.Text)}</p>\n",
            });
            page.Append("</section>\n");
        }
        if (SeeAlso.Of(entry) is { IsEmpty: false } others)
        {
            page.Append("<section>\n<h2>See also</h2>\n");
            AppendNames(page, others);
            page.Append("</section>\n");
        }
        return End(page.Append("</main>\n"));
    }

    public static string List(ImmutableArray<Explanation> entries)
    {
        var page = Begin("What can be explained");
        var groups = entries.GroupBy(entry => entry.Group).ToList();
        page.Append("<main>\n<h1>What can be explained</h1>\n<nav aria-label=\"Groups\">\n<ul class=\"groups\">\n");
        foreach (var group in groups)
            page.Append($"<li><a href=\"#{GroupId(group.Key)}\">{Text(group.Key)}</a></li>\n");
        page.Append("</ul>\n</nav>\n");
        foreach (var group in groups)
        {
            page.Append($"<section id=\"{GroupId(group.Key)}\">\n<h2>{Text(group.Key)}</h2>\n");
            AppendNames(page, group);
            page.Append("</section>\n");
        }
        return End(page.Append("</main>\n"));
    }

    static void AppendNames(StringBuilder page, IEnumerable<Explanation> entries)
    {
        page.Append("<ul class=\"names\">\n");
        foreach (var entry in entries)
            page.Append($"<li><a href=\"{Uri.EscapeDataString(entry.Page)}.html\">{Text(ReferencePages.Heading(entry))}</a> <span>{Text(entry.Title)}</span></li>\n");
        page.Append("</ul>\n");
    }

    /// <summary>Rows of a table, each a block: what does not fit into its line goes on under its last column.</summary>
    static string Rows(ExplainedSection section) =>
        $"<pre class=\"rows\" style=\"--hang: {section.Hang}ch\">{string.Concat(section.Text.Split('\n').Select(line => $"<span>{Text(line)}\n</span>"))}</pre>\n";

    static StringBuilder Begin(string title) => new StringBuilder()
        .Append("<!DOCTYPE html>\n<html lang=\"en\">\n<head>\n<meta charset=\"utf-8\">\n<meta name=\"viewport\" content=\"width=device-width, initial-scale=1\">\n")
        .Append("<meta name=\"color-scheme\" content=\"light dark\">\n")
        .Append($"<title>{Text(title)}: NcLanguage reference</title>\n<style>\n{HtmlStyle.Sheet}</style>\n</head>\n<body>\n");

    static string End(StringBuilder page) =>
        page.Append($"<footer>{Text(ReferencePages.Caution)}</footer>\n</body>\n</html>\n").ToString().ReplaceLineEndings("\n");

    static string GroupId(string group) => Slug.Of(group).ToLowerInvariant();

    static string Text(string text) => WebUtility.HtmlEncode(text);
}
