using System.Text;
using Spectre.Console;

namespace NcLanguage.Cli.Common;

/// <summary>A column of a table.</summary>
/// <param name="Width">Places it usually takes; 0 for as many as each text has.</param>
/// <param name="Gap">Blanks before it.</param>
/// <param name="IsText">Begins at its left end; numbers stand at their right end.</param>
readonly record struct ScreenColumn(string Head, int Width = 0, int Gap = 1, bool IsText = false);

/// <summary>A table for people. Where the terminal is too narrow for its usual columns they are as wide as what stands in them, heads are broken at blanks, columns without a word in them
/// are left out, and the last one, a text, goes on in further lines under its beginning.</summary>
sealed class ScreenTable(Screen screen, params ScreenColumn[] columns)
{
    /// <summary>Fewer places are no column of text: it goes on a line of its own.</summary>
    const int LeastText = 12;

    const int OwnLineIndent = 6;

    /// <summary>A row; the style is that of its last cell.</summary>
    public readonly record struct Row(string[] Cells, Style? Style = null);

    public void Write(IEnumerable<Row> rows)
    {
        if (screen.Width == int.MaxValue)
        {
            WriteUsual(rows);
            return;
        }
        var all = rows.ToList();
        if (columns.Select((column, i) => column.Gap + Math.Max(column.Width, LongestCell(all, i))).Sum() <= screen.Width)
            WriteUsual(all);
        else
            WriteNarrow(all);
    }

    void WriteUsual(IEnumerable<Row> rows)
    {
        screen.WriteLine(Usual(columns.Select(column => column.Head)).TrimEnd(), Styles.Heading);
        foreach (var row in rows)
        {
            var before = Usual(row.Cells.SkipLast(1));
            var last = new string(' ', columns[^1].Gap) + Padded(row.Cells[^1], columns[^1], columns[^1].Width).TrimEnd();
            screen.Write(row.Cells[^1].Length == 0 ? before.TrimEnd() : before);
            screen.WriteLine(row.Cells[^1].Length == 0 ? "" : last, row.Style);
        }
    }

    string Usual(IEnumerable<string> cells)
    {
        var line = new StringBuilder();
        foreach (var (column, cell) in columns.Zip(cells))
            line.Append(' ', column.Gap).Append(Padded(cell, column, column.Width));
        return line.ToString();
    }

    void WriteNarrow(List<Row> rows)
    {
        var widths = columns.Select((column, i) => Math.Max(LongestCell(rows, i), column.Head.Split(' ').Max(word => word.Length))).ToArray();
        var shown = Enumerable.Range(0, columns.Length).Where(i => LongestCell(rows, i) > 0).ToList();
        var last = columns.Length - 1;
        var hasText = columns[last].IsText && shown.Remove(last);
        var gap = shown.Sum(i => widths[i] + 2) + (hasText ? widths[last] : -2) <= screen.Width ? 2 : 1;
        var used = shown.Sum(i => widths[i] + gap);
        var isOnOwnLine = hasText && screen.Width - used < Math.Min(LeastText, widths[last]);
        var isBeside = hasText && !isOnOwnLine;
        if (isBeside)
            widths[last] = Math.Min(widths[last], screen.Width - used);
        Widen(shown, widths, screen.Width - used - (isBeside ? widths[last] : -gap));
        used = shown.Sum(i => widths[i] + gap);
        var text = isBeside ? new string(' ', used) : "";

        var withText = isBeside ? shown.Append(last).ToList() : shown;
        var heads = withText.Select(i => Broken(columns[i].Head, widths[i])).ToList();
        for (var line = heads.Max(head => head.Count); line > 0; line--)
            screen.WriteLine(Line(withText, heads.Select(head => line <= head.Count ? head[^line] : ""), widths, gap).TrimEnd(), Styles.Heading);
        foreach (var row in rows)
        {
            var cells = Line(shown, shown.Select(i => row.Cells[i]), widths, gap);
            if (!isBeside)
            {
                screen.WriteLine(cells.TrimEnd());
                if (isOnOwnLine && row.Cells[last].Length > 0)
                    screen.WriteParagraph(row.Cells[last], OwnLineIndent, row.Style);
                continue;
            }
            var lines = Broken(row.Cells[last], widths[last]);
            for (var line = 0; line < lines.Count; line++)
            {
                var before = line == 0 ? cells.PadRight(used) : text;
                screen.Write(lines[line].Length == 0 ? before.TrimEnd() : before);
                screen.WriteLine(lines[line], row.Style);
            }
        }
    }

    /// <summary>Gives room that is left to the columns with the highest heads, as long as that makes them lower.</summary>
    void Widen(List<int> shown, int[] widths, int room)
    {
        while (shown.Count > 0)
        {
            var highest = shown.MaxBy(i => Broken(columns[i].Head, widths[i]).Count);
            var lines = Broken(columns[highest].Head, widths[highest]).Count;
            var wider = widths[highest];
            while (lines > 1 && wider - widths[highest] < room && Broken(columns[highest].Head, wider).Count >= lines)
                wider++;
            if (lines == 1 || Broken(columns[highest].Head, wider).Count >= lines)
                return;
            room -= wider - widths[highest];
            widths[highest] = wider;
        }
    }

    static int LongestCell(List<Row> rows, int column) => rows.Count == 0 ? 0 : rows.Max(row => row.Cells[column].Length);

    /// <summary>A text in lines of at most so many places, where its words allow it.</summary>
    static List<string> Broken(string text, int width)
    {
        var lines = new List<string>();
        var line = new StringBuilder();
        foreach (var word in text.Split(' '))
        {
            if (line.Length > 0 && line.Length + 1 + word.Length > width)
            {
                lines.Add(line.ToString());
                line.Clear();
            }
            line.Append(line.Length > 0 ? " " : "").Append(word);
        }
        lines.Add(line.ToString());
        return lines;
    }

    static string Padded(string cell, in ScreenColumn column, int width) => column.IsText ? cell.PadRight(width) : cell.PadLeft(width);

    /// <summary>A line of cells of some columns.</summary>
    string Line(List<int> which, IEnumerable<string> cells, int[] widths, int gap)
    {
        var line = new StringBuilder();
        foreach (var (i, cell) in which.Zip(cells))
            line.Append(' ', line.Length == 0 ? 0 : gap).Append(Padded(cell, columns[i], widths[i]));
        return line.ToString();
    }
}
