using System.Text.Json;
using NcLanguage.Checks;

namespace NcLanguage.Reports.Findings;

/// <summary>Findings as JSON. Lines and columns count from 1, columns in characters.</summary>
public static class CheckJson
{
    public static void Write(CheckReport report, Utf8JsonWriter json)
    {
        ArgumentNullException.ThrowIfNull(report);
        ArgumentNullException.ThrowIfNull(json);
        json.WriteStartObject();
        json.WriteStartArray("files");
        foreach (var file in report.Files)
            WriteFile(file, json);
        json.WriteEndArray();
        json.WriteNumber("errors", report.Errors);
        json.WriteNumber("warnings", report.Warnings);
        json.WriteNumber("notes", report.Notes);
        if (!report.NotRead.IsEmpty)
        {
            json.WriteStartArray("notRead");
            foreach (var unread in report.NotRead)
            {
                json.WriteStartObject();
                json.WriteString("path", unread.Path);
                json.WriteString("reason", unread.Reason);
                json.WriteEndObject();
            }
            json.WriteEndArray();
        }
        json.WriteEndObject();
    }

    static void WriteFile(ReportedFile file, Utf8JsonWriter json)
    {
        json.WriteStartObject();
        json.WriteString("path", file.Path);
        if (file.Blocks is { } blocks)
        {
            json.WriteNumber("blocks", blocks);
            json.WriteString("machine", file.Machine);
            WriteTexts("notChecked", file.NotChecked, json);
        }
        json.WriteStartArray("findings");
        foreach (var finding in file.Findings)
            WriteFinding(finding, json);
        json.WriteEndArray();
        if (file.FixesLeftOut > 0)
            json.WriteNumber("fixesLeftOut", file.FixesLeftOut);
        if (!file.Fixed.IsEmpty)
        {
            json.WriteStartArray("fixed");
            foreach (var applied in file.Fixed)
            {
                json.WriteStartObject();
                json.WriteNumber("line", applied.Line);
                json.WriteString("title", applied.Title);
                json.WriteEndObject();
            }
            json.WriteEndArray();
        }
        json.WriteEndObject();
        // Files with very many findings go out as they are written.
        if (json.BytesPending > 1 << 16)
            json.Flush();
    }

    static void WriteFinding(ReportedFinding finding, Utf8JsonWriter json)
    {
        json.WriteStartObject();
        json.WriteString("id", finding.Id);
        json.WriteString("name", finding.Name);
        json.WriteString("severity", Word(finding.Severity));
        WritePlace(finding.Place, json);
        json.WriteString("message", finding.Message);
        WriteTexts("fixes", finding.Fixes.Select(fix => fix.Title), json);
        json.WriteStartArray("related");
        foreach (var related in finding.Related)
        {
            json.WriteStartObject();
            WritePlace(related.Place, json);
            json.WriteString("message", related.Message);
            json.WriteEndObject();
        }
        json.WriteEndArray();
        json.WriteEndObject();
    }

    static void WritePlace(ReportedPlace place, Utf8JsonWriter json)
    {
        json.WriteNumber("line", place.Line);
        json.WriteNumber("column", place.Column);
        json.WriteNumber("endLine", place.Line);
        json.WriteNumber("endColumn", place.EndColumn);
    }

    static void WriteTexts(string name, IEnumerable<string> texts, Utf8JsonWriter json)
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
