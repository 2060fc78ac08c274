using System.Collections.Immutable;
using System.Text.Json;
using NcLanguage.Machine;
using NcLanguage.Machine.Profiles;

namespace NcLanguage.Reports.Explain;

/// <summary>Members of setup files, machine files and files of cutting data, as their schemas say.</summary>
static class MemberExplanation
{
    const string Readings = "readings";

    /// <summary>One explanation for each member of each file; what stands within a member is told with it.</summary>
    public static ImmutableArray<Explanation> All() => [.. Of("setup", Schemas.Setup), .. Of("machine", Schemas.Machine), .. Of("cutting", Schemas.Cutting)];

    static List<Explanation> Of(string file, string schema)
    {
        using var document = JsonDocument.Parse(schema);
        var shapes = new SchemaShapes(document.RootElement);
        List<Explanation> explanations = [];
        foreach (var member in document.RootElement.GetProperty("properties").EnumerateObject())
            if (member.Value.ValueKind == JsonValueKind.Object)
                explanations.Add(Of(file, member, shapes));
        return explanations;
    }

    static Explanation Of(string file, JsonProperty member, SchemaShapes shapes)
    {
        var description = shapes.Description(member.Value);
        List<ExplainedSection> sections =
        [
            new("What it says", description),
            new("What it may be", shapes.ValueText(member.Value) + ".", IsVerbatim: false),
        ];
        // Readings have pages of their own.
        var within = member.Name == Readings ? [] : shapes.Within(member.Value);
        if (!within.IsEmpty)
        {
            var width = within.Max(part => part.Label.Length);
            sections.Add(new("Its members", string.Join('\n', within.Select(part => $"{part.Label.PadRight(width)}  {part.Text}")), IsVerbatim: true, Hang: width + 2));
        }
        sections.Add(new("Source", $"This project's own format; nclanguage schema {file} writes the whole schema."));
        return new Explanation(
            ExplainedKind.Member, $"{file}.{member.Name}", FirstSentence(description), file switch { "setup" => "Setup files", "machine" => "Machine files", _ => "Files of cutting data" }, $"{file}-{member.Name}", [.. sections])
        {
            AlsoFoundBy = [member.Name, .. within.SelectMany(part => Names(part).SelectMany(name => new[] { name, $"{member.Name}.{name}", $"{file}.{member.Name}.{name}" }))],
            SeeAlso = member.Name == Readings ? [.. ReadingTable.All.Select(reading => reading.Name)] : [],
        };
    }

    /// <summary>Its name, and for a member of a list's entries that of the list before it.</summary>
    static IEnumerable<string> Names(SchemaPart part) => part.Of is null ? [part.Name] : [part.Name, $"{part.Of}.{part.Name}"];

    static string FirstSentence(string text) => text.IndexOf(". ", StringComparison.Ordinal) is > 0 and var end ? text[..end] : text.TrimEnd('.');
}
