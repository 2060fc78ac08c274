using System.Net;
using System.Text;

namespace NcLanguage.Reports.Sheet;

/// <summary>One column of a table.</summary>
/// <param name="Name">What it holds.</param>
/// <param name="Unit">The unit of its numbers, or null.</param>
/// <param name="IsText">Whether it holds words: they stand to the left, numbers to the right.</param>
readonly record struct Column(string Name, string? Unit = null, bool IsText = false);

/// <summary>Writes the parts of the page. All text is escaped.</summary>
sealed class SheetHtml
{
    /// <summary>Rows of a table that is not broken over two pages.</summary>
    const int MostWhole = 12;

    readonly StringBuilder _page = new();

    /// <summary>Markup that is written as it stands.</summary>
    public void Raw(string markup) => _page.Append(markup);

    public static string Text(string text) => WebUtility.HtmlEncode(text);

    /// <summary>A heading and what stands under it.</summary>
    public void Section(string id, string heading, Action write)
    {
        _page.Append($"<section id=\"{id}\">\n<h2>{Text(heading)}</h2>\n");
        write();
        _page.Append("</section>\n");
    }

    public void Paragraph(string text, string? cssClass = null) =>
        _page.Append(cssClass is null ? "<p>" : $"<p class=\"{cssClass}\">").Append(Text(text)).Append("</p>\n");

    public void List(IEnumerable<string> items, string? cssClass = null)
    {
        _page.Append(cssClass is null ? "<ul>\n" : $"<ul class=\"{cssClass}\">\n");
        foreach (var item in items)
            _page.Append("<li>").Append(Text(item)).Append("</li>\n");
        _page.Append("</ul>\n");
    }

    /// <summary>Names and what belongs to them.</summary>
    public void Facts(IEnumerable<(string Name, string Value)> facts)
    {
        _page.Append("<dl>\n");
        foreach (var (name, value) in facts)
            _page.Append($"<div><dt>{Text(name)}</dt><dd>{Text(value)}</dd></div>\n");
        _page.Append("</dl>\n");
    }

    /// <param name="id">By which the table can be found.</param>
    /// <param name="caption">What it tells, for those who do not see where it stands.</param>
    /// <param name="rows">Cells in the order of the columns. A row whose first cell begins with <see cref="Alarm"/> is set off.</param>
    public void Table(string id, string caption, ReadOnlySpan<Column> columns, IEnumerable<string[]> rows)
    {
        var all = rows.ToList();
        _page.Append($"<table id=\"{id}\"{(all.Count <= MostWhole ? " class=\"whole\"" : "")}>\n<caption>{Text(caption)}</caption>\n<thead><tr>");
        var isText = new bool[columns.Length];
        for (var i = 0; i < columns.Length; i++)
        {
            isText[i] = columns[i].IsText;
            _page.Append(isText[i] ? "<th scope=\"col\">" : "<th scope=\"col\" class=\"n\">").Append(Text(columns[i].Name));
            if (columns[i].Unit is { } unit)
                _page.Append(" <span>").Append(Text(unit)).Append("</span>");
            _page.Append("</th>");
        }
        _page.Append("</tr></thead>\n<tbody>\n");
        foreach (var row in all)
            Row(row, isText);
        _page.Append("</tbody>\n</table>\n");
    }

    /// <summary>Marks a row that must not be overlooked.</summary>
    public const char Alarm = '\u0001';

    void Row(string[] cells, bool[] isText)
    {
        var isAlarm = cells[0].StartsWith(Alarm);
        _page.Append(isAlarm ? "<tr class=\"alarm\">" : "<tr>");
        for (var i = 0; i < cells.Length; i++)
            _page.Append(isText[i] ? "<td>" : "<td class=\"n\">").Append(Text(i == 0 && isAlarm ? cells[0][1..] : cells[i])).Append("</td>");
        _page.Append("</tr>\n");
    }

    public override string ToString() => _page.ToString();
}
