using System.Text.Json;

namespace NcLanguage.Reports.Explain;

/// <summary>Explanations as JSON: {"entries":[{"kind","name","alias","title","group","sections":[{"heading","text"}]}]}.</summary>
public static class ExplainJson
{
    public static void Write(IEnumerable<Explanation> entries, Utf8JsonWriter json)
    {
        ArgumentNullException.ThrowIfNull(entries);
        ArgumentNullException.ThrowIfNull(json);
        json.WriteStartObject();
        json.WriteStartArray("entries");
        foreach (var entry in entries)
        {
            json.WriteStartObject();
            json.WriteString("kind", entry.KindWord);
            json.WriteString("name", entry.Name);
            json.WriteString("alias", entry.Alias);
            json.WriteString("title", entry.Title);
            json.WriteString("group", entry.Group);
            json.WriteStartArray("sections");
            foreach (var section in entry.Sections)
            {
                json.WriteStartObject();
                json.WriteString("heading", section.Heading);
                json.WriteString("text", section.Text);
                json.WriteEndObject();
            }
            json.WriteEndArray();
            json.WriteEndObject();
        }
        json.WriteEndArray();
        json.WriteEndObject();
    }
}
