using System.Collections.Immutable;
using System.Text;
using NcLanguage.Reports.Explain;

namespace NcLanguage.Reports.Reference;

/// <summary>A page in Markdown, which also reads well as it stands.</summary>
static class MarkdownPage
{
    public static string Of(Explanation entry)
    {
        var page = new StringBuilder().Append("# ").AppendLine(Escaped(ReferencePages.Heading(entry)));
        page.AppendLine().AppendLine(Escaped(entry.Title));
        AppendSections(page, entry, "## ");
        if (SeeAlso.Of(entry) is { IsEmpty: false } others)
        {
            page.AppendLine().AppendLine("## See also").AppendLine();
            foreach (var other in others)
                page.Append("- ").Append(Link(other)).Append(": ").AppendLine(Escaped(other.Title));
        }
        page.AppendLine().AppendLine("---").AppendLine().AppendLine($"{Escaped(entry.Group)} · [All names]({ReferencePages.Index}.md)");
        return page.AppendLine().AppendLine(ReferencePages.Caution).ToString().ReplaceLineEndings("\n");
    }

    /// <summary>The sections alone, without links: for where no other page can be reached.</summary>
    public static string Sections(Explanation entry)
    {
        var text = new StringBuilder();
        AppendSections(text, entry, "### ");
        return text.ToString().ReplaceLineEndings("\n").Trim();
    }

    public static string List(ImmutableArray<Explanation> entries)
    {
        var page = new StringBuilder().AppendLine("# What can be explained");
        foreach (var group in entries.GroupBy(entry => entry.Group))
        {
            page.AppendLine().Append("## ").AppendLine(Escaped(group.Key)).AppendLine();
            foreach (var entry in group)
                page.Append("- ").Append(Link(entry)).Append(": ").AppendLine(Escaped(entry.Title));
        }
        return page.AppendLine().AppendLine("---").AppendLine().AppendLine(ReferencePages.Caution).ToString().ReplaceLineEndings("\n");
    }

    static void AppendSections(StringBuilder page, Explanation entry, string mark)
    {
        foreach (var section in entry.Sections)
        {
            page.AppendLine().Append(mark).AppendLine(section.Heading).AppendLine();
            if (section.IsVerbatim)
                page.AppendLine("```text").AppendLine(section.Text).AppendLine("```");
            else
                page.AppendLine(Escaped(section.Text));
        }
    }

    static string Link(Explanation entry) => $"[{Escaped(ReferencePages.Heading(entry))}]({entry.Page}.md)";

    /// <summary>Text of one line in which no character is taken for Markdown.</summary>
    static string Escaped(string text)
    {
        var result = new StringBuilder(text.Length + 8);
        for (var i = 0; i < text.Length; i++)
        {
            if (text[i] is '\\' or '`' or '*' or '_' or '<' or '[' or ']' or '&' or '~' || (i == 0 && text[i] is '#' or '+' or '-' or '>' or '='))
                result.Append('\\');
            result.Append(text[i]);
        }
        return result.ToString();
    }
}
