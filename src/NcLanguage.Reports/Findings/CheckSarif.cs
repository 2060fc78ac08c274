using System.Globalization;
using System.Text.Json;
using NcLanguage.Checks;
using NcLanguage.Reports.Explain;
using NcLanguage.Reports.Reference;

namespace NcLanguage.Reports.Findings;

/// <summary>Findings in the interchange format for static analysis, SARIF 2.1.0 (OASIS standard), all of them.</summary>
/// <param name="version">The version of the executable.</param>
/// <param name="json">Where to.</param>
public sealed class CheckSarif(string version, Utf8JsonWriter json) : ICheckWriter
{
    const string Schema = "https://docs.oasis-open.org/sarif/sarif/v2.1.0/errata01/os/schemas/sarif-schema-2.1.0.json";

    bool _hasBegun;

    public void Write(ReportedFile file)
    {
        ArgumentNullException.ThrowIfNull(file);
        Begin();
        foreach (var finding in file.Findings)
        {
            WriteResult(finding, Uri(file.Path), json);
            json.FlushWhereMuch();
        }
    }

    public void End(CheckTotals totals)
    {
        ArgumentNullException.ThrowIfNull(totals);
        Begin();
        json.WriteEndArray();
        WriteInvocation(totals, json);
        json.WriteEndObject();
        json.WriteEndArray();
        json.WriteEndObject();
    }

    void Begin()
    {
        if (_hasBegun)
            return;
        _hasBegun = true;
        json.WriteStartObject();
        json.WriteString("$schema", Schema);
        json.WriteString("version", "2.1.0");
        json.WriteStartArray("runs");
        json.WriteStartObject();
        WriteTool(version, json);
        json.WriteString("columnKind", "unicodeCodePoints");
        json.WriteStartArray("results");
    }

    static void WriteTool(string version, Utf8JsonWriter json)
    {
        json.WriteStartObject("tool");
        json.WriteStartObject("driver");
        json.WriteString("name", "nclanguage");
        json.WriteString("version", version);
        json.WriteStartArray("rules");
        foreach (var rule in RuleList.All)
        {
            json.WriteStartObject();
            json.WriteString("id", rule.Info.Id);
            json.WriteString("name", rule.Info.Name);
            WriteText("shortDescription", rule.Info.Title + ".", json);
            WriteText("fullDescription", rule.Info.Finds, json);
            WriteHelp(rule, json);
            json.WriteStartObject("defaultConfiguration");
            json.WriteString("level", CheckJson.Word(rule.Info.Severity));
            json.WriteEndObject();
            json.WriteEndObject();
        }
        json.WriteEndArray();
        json.WriteEndObject();
        json.WriteEndObject();
    }

    /// <summary>The rule's page of the reference. There is no helpUri: it would have to name a place on the web, and there is none.</summary>
    static void WriteHelp(Rule rule, Utf8JsonWriter json)
    {
        var page = Glossary.Find(rule.Info.Id)[0];
        json.WriteStartObject("help");
        json.WriteString("text", string.Join("\n\n", page.Sections.Select(section => $"{section.Heading}\n{section.Text}")));
        json.WriteString("markdown", MarkdownPage.Sections(page));
        json.WriteEndObject();
    }

    static void WriteInvocation(CheckTotals totals, Utf8JsonWriter json)
    {
        json.WriteStartArray("invocations");
        json.WriteStartObject();
        json.WriteBoolean("executionSuccessful", totals is { NotRead.Count: 0, LeftOut: null });
        json.WriteStartArray("toolExecutionNotifications");
        foreach (var unread in totals.NotRead)
            WriteNotification($"Not checked: {unread.Reason}.", json);
        if (totals.LeftOut is { } leftOut)
            WriteNotification(string.Create(CultureInfo.InvariantCulture, $"The check was stopped; not checked: {leftOut} of the programs."), json);
        json.WriteEndArray();
        json.WriteEndObject();
        json.WriteEndArray();
    }

    static void WriteNotification(string message, Utf8JsonWriter json)
    {
        json.WriteStartObject();
        json.WriteString("level", "error");
        WriteText("message", message, json);
        json.WriteEndObject();
    }

    static void WriteResult(ReportedFinding finding, string uri, Utf8JsonWriter json)
    {
        json.WriteStartObject();
        json.WriteString("ruleId", finding.Id);
        json.WriteString("level", CheckJson.Word(finding.Severity));
        WriteText("message", finding.Message, json);
        json.WriteStartArray("locations");
        WriteLocation(uri, finding.Place, null, json);
        json.WriteEndArray();
        if (!finding.Related.IsEmpty)
        {
            json.WriteStartArray("relatedLocations");
            foreach (var related in finding.Related)
                WriteLocation(uri, related.Place, related.Message, json);
            json.WriteEndArray();
        }
        if (!finding.Fixes.IsEmpty)
        {
            json.WriteStartArray("fixes");
            foreach (var fix in finding.Fixes)
                WriteFix(fix, uri, json);
            json.WriteEndArray();
        }
        json.WriteEndObject();
    }

    static void WriteFix(ReportedFix fix, string uri, Utf8JsonWriter json)
    {
        json.WriteStartObject();
        WriteText("description", fix.Title, json);
        json.WriteStartArray("artifactChanges");
        json.WriteStartObject();
        WriteFile(uri, json);
        json.WriteStartArray("replacements");
        foreach (var edit in fix.Edits)
        {
            json.WriteStartObject();
            WriteRegion("deletedRegion", edit.Place, json);
            WriteText("insertedContent", edit.NewText, json);
            json.WriteEndObject();
        }
        json.WriteEndArray();
        json.WriteEndObject();
        json.WriteEndArray();
        json.WriteEndObject();
    }

    static void WriteLocation(string uri, ReportedPlace place, string? message, Utf8JsonWriter json)
    {
        json.WriteStartObject();
        json.WriteStartObject("physicalLocation");
        WriteFile(uri, json);
        WriteRegion("region", place, json);
        json.WriteEndObject();
        if (!string.IsNullOrEmpty(message))
            WriteText("message", message, json);
        json.WriteEndObject();
    }

    static void WriteFile(string uri, Utf8JsonWriter json)
    {
        json.WriteStartObject("artifactLocation");
        json.WriteString("uri", uri);
        json.WriteEndObject();
    }

    static void WriteRegion(string name, ReportedPlace place, Utf8JsonWriter json)
    {
        json.WriteStartObject(name);
        json.WriteNumber("startLine", place.Line);
        json.WriteNumber("startColumn", place.Column);
        json.WriteNumber("endLine", place.Line);
        json.WriteNumber("endColumn", place.EndColumn);
        json.WriteEndObject();
    }

    static void WriteText(string name, string text, Utf8JsonWriter json)
    {
        json.WriteStartObject(name);
        json.WriteString("text", text);
        json.WriteEndObject();
    }

    static string Uri(string path) => Path.IsPathRooted(path)
        ? new Uri(path).AbsoluteUri
        : string.Join('/', path.Replace(Path.DirectorySeparatorChar, '/').Split('/').Select(System.Uri.EscapeDataString));
}
