using System.Text.Json;
using NcLanguage.Checks;

namespace NcLanguage.Reports.Findings;

/// <summary>Findings as JSON, all of them. Lines and columns count from 1, columns in characters.</summary>
public sealed class CheckJson(Utf8JsonWriter json) : ICheckWriter
{
    bool _hasBegun;

    public void Write(ReportedFile file)
    {
        ArgumentNullException.ThrowIfNull(file);
        Begin();
        WriteFile(file);
    }

    public void End(CheckTotals totals)
    {
        ArgumentNullException.ThrowIfNull(totals);
        Begin();
        json.WriteEndArray();
        json.WriteNumber("errors", totals.Errors);
        json.WriteNumber("warnings", totals.Warnings);
        json.WriteNumber("notes", totals.Notes);
        WriteWhereAny("notRead", totals.NotRead, unread =>
        {
            json.WriteString("path", unread.Path);
            json.WriteString("reason", unread.Reason);
        });
        if (totals.LeftOut is { } leftOut)
            json.WriteNumber("leftOut", leftOut);
        json.WriteEndObject();
    }

    void Begin()
    {
        if (_hasBegun)
            return;
        _hasBegun = true;
        json.WriteStartObject();
        json.WriteStartArray("files");
    }

    void WriteFile(ReportedFile file)
    {
        json.WriteStartObject();
        json.WriteString("path", file.Path);
        if (file.Blocks is { } blocks)
        {
            json.WriteNumber("blocks", blocks);
            json.WriteString("machine", file.Machine);
            if (file.Remark is { } remark)
                json.WriteString("remark", remark);
            WriteTexts("notChecked", file.NotChecked);
        }
        json.WriteStartArray("findings");
        foreach (var finding in file.Findings)
            WriteFinding(finding);
        json.WriteEndArray();
        if (file.FixesLeftOut > 0)
            json.WriteNumber("fixesLeftOut", file.FixesLeftOut);
        WriteWhereAny("fixed", file.Fixed, applied =>
        {
            json.WriteNumber("line", applied.Line);
            json.WriteString("title", applied.Title);
        });
        WriteWhereAny("notFixed", file.NotFixed, left =>
        {
            json.WriteNumber("line", left.Line);
            json.WriteString("title", left.Title);
            json.WriteString("finding", left.Finding);
        });
        json.WriteEndObject();
    }

    void WriteFinding(ReportedFinding finding)
    {
        json.WriteStartObject();
        json.WriteString("id", finding.Id);
        json.WriteString("name", finding.Name);
        json.WriteString("severity", Word(finding.Severity));
        WritePlace(finding.Place);
        json.WriteString("message", finding.Message);
        WriteTexts("fixes", finding.Fixes.Select(fix => fix.Title));
        json.WriteStartArray("related");
        foreach (var related in finding.Related)
        {
            json.WriteStartObject();
            WritePlace(related.Place);
            json.WriteString("message", related.Message);
            json.WriteEndObject();
        }
        json.WriteEndArray();
        json.WriteEndObject();
        // Files with very many findings go out as they are written.
        json.FlushWhereMuch();
    }

    void WritePlace(ReportedPlace place)
    {
        json.WriteNumber("line", place.Line);
        json.WriteNumber("column", place.Column);
        json.WriteNumber("endLine", place.Line);
        json.WriteNumber("endColumn", place.EndColumn);
    }

    void WriteWhereAny<T>(string name, IReadOnlyCollection<T> items, Action<T> writeMembers)
    {
        if (items.Count == 0)
            return;
        json.WriteStartArray(name);
        foreach (var item in items)
        {
            json.WriteStartObject();
            writeMembers(item);
            json.WriteEndObject();
        }
        json.WriteEndArray();
    }

    void WriteTexts(string name, IEnumerable<string> texts)
    {
        json.WriteStartArray(name);
        foreach (var text in texts)
            json.WriteStringValue(text);
        json.WriteEndArray();
    }

    /// <summary>error, warning or note.</summary>
    public static string Word(Severity severity) => severity switch
    {
        Severity.Error => "error",
        Severity.Warning => "warning",
        _ => "note",
    };
}
