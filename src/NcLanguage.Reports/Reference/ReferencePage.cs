using System.Collections.Immutable;
using NcLanguage.Reports.Explain;

namespace NcLanguage.Reports.Reference;

/// <summary>How pages are written.</summary>
public enum PageFormat
{
    /// <summary>For browsers and for print.</summary>
    Html,

    /// <summary>For editors.</summary>
    Markdown,
}

/// <summary>One file of the reference.</summary>
/// <param name="FileName">Without a folder.</param>
public sealed record ReferencePage(string FileName, string Text);

/// <summary>The reference as files: a page for each name that can be explained, and one that lists them.</summary>
public static class ReferencePages
{
    /// <summary>The file name of the list, without its ending.</summary>
    public const string Index = "index";

    /// <summary>What every page says at its foot.</summary>
    internal const string Caution =
        "A check is no proof: single block, dry run above the part, a hand on feed hold. Local codes and licensed practice come first.";

    public static ImmutableArray<ReferencePage> All(PageFormat format) => format == PageFormat.Html
        ? [new(Index + ".html", HtmlPage.List(Glossary.All)), .. Glossary.All.Select(entry => new ReferencePage(entry.Page + ".html", HtmlPage.Of(entry)))]
        : [new(Index + ".md", MarkdownPage.List(Glossary.All)), .. Glossary.All.Select(entry => new ReferencePage(entry.Page + ".md", MarkdownPage.Of(entry)))];

    /// <summary>The title of a page: a rule's number goes before its name.</summary>
    internal static string Heading(Explanation entry) => entry.Alias is null ? entry.Name : $"{entry.Alias} {entry.Name}";
}
