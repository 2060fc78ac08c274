using System.Collections.Immutable;
using System.Globalization;
using System.Text;
using NcLanguage.Machine.Json;
using NcLanguage.Machine.Setups;

namespace NcLanguage.Machine.Loading;

/// <summary>What a table of values says of a drawing's holes.</summary>
/// <param name="Holes">Equal ones once, in mm; none where there is a mistake.</param>
/// <param name="Mistakes">One sentence for each, with its line, from 1.</param>
/// <param name="Unused">The columns that say nothing of the holes, as the first line names them.</param>
/// <param name="HasBareLengths">Whether a column of lengths names no unit.</param>
public sealed record HoleList(ImmutableArray<DrawingHole> Holes, ImmutableArray<(int Line, string Message)> Mistakes, ImmutableArray<string> Unused, bool HasBareLengths);

/// <summary>The holes of a drawing as a table of values: RFC 4180, columns known by their names in the first line.</summary>
/// <remarks>x and y are needed; diameter, depth and thread may be there; other columns are passed over and named, so that the hole table of a program can be read back. The separator is the
/// comma, semicolon or tab that the first line has most of; behind semicolons and tabs a comma is a decimal sign. A unit stands behind a column's name: x [in], depth (mm).</remarks>
public static class HoleListFile
{
    static readonly char[] Separators = [',', ';', '\t'];

    /// <summary>The first two are needed.</summary>
    static readonly string[] Columns = ["x", "y", "diameter", "depth", "thread"];

    /// <summary>Reads a table.</summary>
    /// <param name="isInch">Whether lengths are inches where a column does not say.</param>
    public static HoleList Read(string text, bool isInch)
    {
        ArgumentNullException.ThrowIfNull(text);
        var mistakes = new List<(int Line, string Message)>();
        text = text.TrimStart('\uFEFF');
        var separator = SeparatorOf(text);
        var rows = Rows(text, separator, mistakes);
        if (rows.Count == 0)
            return new([], [(1, "the table is empty; its first line names the columns: x, y, diameter, depth, thread")], [], false);
        var unused = new List<string>();
        var columns = ColumnsOf(rows[0].Fields, isInch, mistakes, unused, out var hasBareLengths);
        var holes = new List<DrawingHole>();
        foreach (var (line, fields) in rows.Skip(1))
            if (mistakes.Count == 0 || columns.ContainsKey("x") && columns.ContainsKey("y"))
            {
                if (fields.FindLastIndex(field => field.Trim().Length > 0) >= rows[0].Fields.Count)
                    mistakes.Add((line, $"there are {fields.Count} values, but the first line names {rows[0].Fields.Count} columns"
                        + (separator == ',' ? "; where the comma is the decimal sign, put semicolons between the values" : "")));
                else
                    ReadRow(line, fields, columns, separator, holes, mistakes);
            }
        return mistakes.Count > 0 ? new([], [.. mistakes.OrderBy(mistake => mistake.Line)], [.. unused], hasBareLengths)
            : new([.. holes.Distinct()], [], [.. unused], hasBareLengths);
    }

    static char SeparatorOf(string text)
    {
        var rest = text.TrimStart();
        var end = rest.IndexOfAny(['\r', '\n']);
        var head = end < 0 ? rest : rest[..end];
        return Separators.MaxBy(sign => head.Count(c => c == sign));
    }

    static Dictionary<string, (int Index, double Scale)> ColumnsOf(List<string> names, bool isInch, List<(int, string)> mistakes, List<string> unused, out bool hasBareLengths)
    {
        hasBareLengths = false;
        var columns = new Dictionary<string, (int, double)>();
        for (var i = 0; i < names.Count; i++)
        {
            var name = names[i].Trim().ToLowerInvariant();
            var scale = isInch ? LengthUnit.Inch.Millimetres : 1;
            var unit = name.IndexOfAny(['[', '(']);
            if (unit > 0)
            {
                var written = name[unit..].Trim('[', ']', '(', ')', ' ');
                name = name[..unit].Trim();
                if (Columns.Contains(name) && written is not ("mm" or "in" or "inch"))
                    mistakes.Add((1, $"the unit of column {names[i].Trim()} is neither mm nor in"));
                scale = written is "mm" ? 1 : LengthUnit.Inch.Millimetres;
            }
            else if (Columns.Contains(name) && name != "thread")
            {
                hasBareLengths = true;
            }
            if (name.Length > 0 && !Columns.Contains(name))
                unused.Add(names[i].Trim());
            if (Columns.Contains(name) && !columns.TryAdd(name, (i, scale)))
                mistakes.Add((1, $"there are two columns {name}"));
        }
        foreach (var needed in Columns.Take(2))
            if (!columns.ContainsKey(needed))
                mistakes.Add((1, $"there is no column {needed}; the first line names the columns: x, y, diameter, depth, thread"));
        return columns;
    }

    static void ReadRow(
        int line, List<string> fields, Dictionary<string, (int Index, double Scale)> columns, char separator, List<DrawingHole> holes, List<(int, string)> mistakes)
    {
        var before = mistakes.Count;
        double? Value(string name, bool isNeeded, double above)
        {
            var written = columns.TryGetValue(name, out var column) && column.Index < fields.Count ? fields[column.Index].Trim() : "";
            if (written.Length == 0)
            {
                if (isNeeded)
                    mistakes.Add((line, $"{name} is missing"));
                return null;
            }
            var number = separator == ',' ? written : written.Replace(',', '.');
            if (!double.TryParse(number, NumberStyles.AllowLeadingSign | NumberStyles.AllowDecimalPoint, CultureInfo.InvariantCulture, out var value) || !double.IsFinite(value))
                mistakes.Add((line, $"{name} is {MessageText.Clip(written)}, which is no number"));
            else if (value * column.Scale is var mm && (mm <= above || Math.Abs(mm) > Bounds.GreatestLength))
                mistakes.Add((line, $"{name} is {MessageText.Clip(written)}, {(mm <= above ? "but has to be above 0" : "which is too far away")}"));
            else
                return mm;
            return null;
        }

        var (x, y) = (Value("x", true, double.NegativeInfinity), Value("y", true, double.NegativeInfinity));
        var (diameter, depth) = (Value("diameter", false, 0), Value("depth", false, 0));
        var thread = columns.TryGetValue("thread", out var at) && at.Index < fields.Count && fields[at.Index].Trim() is { Length: > 0 } name ? name : null;
        if (mistakes.Count == before)
            holes.Add(new DrawingHole(x!.Value, y!.Value, diameter, depth, thread));
    }

    /// <summary>The records with the line each begins at; blank lines are left out.</summary>
    static List<(int Line, List<string> Fields)> Rows(string text, char separator, List<(int, string)> mistakes)
    {
        var rows = new List<(int, List<string>)>();
        var (line, at) = (1, 0);
        while (at < text.Length)
        {
            var (begin, fields) = (line, new List<string>());
            while (true)
            {
                fields.Add(Field(text, ref at, ref line, separator, begin, mistakes));
                if (at >= text.Length || text[at] != separator)
                    break;
                at++;
            }
            if (at < text.Length)
            {
                at += text[at] == '\r' && at + 1 < text.Length && text[at + 1] == '\n' ? 2 : 1;
                line++;
            }
            if (fields.Exists(field => field.Trim().Length > 0))
                rows.Add((begin, fields));
        }
        return rows;
    }

    static string Field(string text, ref int at, ref int line, char separator, int begin, List<(int, string)> mistakes)
    {
        var field = new StringBuilder();
        if (at < text.Length && text[at] == '"')
        {
            for (at++; ; at++)
            {
                if (at >= text.Length)
                {
                    mistakes.Add((begin, "a quotation mark is not closed"));
                    return field.ToString();
                }
                if (text[at] == '"' && !(at + 1 < text.Length && text[at + 1] == '"'))
                    break;
                if (text[at] == '"')
                    at++;
                else if (text[at] == '\n')
                    line++;
                field.Append(text[at]);
            }
            at++;
        }
        for (; at < text.Length && text[at] != separator && text[at] is not ('\r' or '\n'); at++)
            field.Append(text[at]);
        return field.ToString();
    }
}
