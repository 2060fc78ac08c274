using System.Text.Json;
using System.Text.Json.Nodes;
using NcLanguage.Machine.Profiles;
using NcLanguage.Machine.Setups;

namespace NcLanguage.Machine.Tests.Schema;

/// <summary>The schemas against an outside validator (JsonSchema.Net, JSON Schema draft 2020-12): they and the readers say the same.</summary>
public class SchemaTests
{
    [Theory]
    [InlineData(Samples.Setup)]
    [InlineData("{}")]
    [InlineData("""{ "obstacles": [], "tools": [], "holes": [], "workOffsets": {}, "variables": {}, }  // nothing yet""")]
    [InlineData("""{ "units": "inch", "stock": null, "frame": "G59.3", "clearance": 0, "clampHeight": -5, "tools": [ { "number": 99999, "flutes": 4.0 } ] }""")]
    [InlineData("""{ "workOffsets": { "G54.1 P1": [0, 0, 0], "G54.1 P48": null, "G54.1 P999": [1, 2, 3] } }""")]
    [InlineData("""{ "frame": "G54.1 P1", "stock": { "min": [0, 0, 0], "max": [9, 9, 9], "hollows": null } }""")]
    [InlineData("""{ "stock": { "min": [0, 0, 0], "max": [9, 9, 9], "hollows": [ { "min": [-1, 2], "max": [20, 4], "cornerRadius": null, "bottom": null } ] } }""")]
    public void Sound_setups_please_both(string text)
    {
        var verdict = SchemaVerdict.OfSetup(text);

        Assert.True(verdict.IsValid);
        Assert.Empty(verdict.Problems);
    }

    [Theory]
    [InlineData(Samples.Machine)]
    [InlineData("{}")]
    [InlineData("""{ "rapid": 12000, "spindle": { "max": 4000 }, "travel": { "z": [-300, 0] }, "readings": { "dwell": null, "programMarks": {} } }""")]
    public void Sound_machines_please_both(string text)
    {
        var verdict = SchemaVerdict.OfMachine(text);

        Assert.True(verdict.IsValid);
        Assert.Empty(verdict.Problems);
    }

    [Theory]
    [InlineData(Samples.Cutting)]
    [InlineData("{}")]
    [InlineData("""{ "units": "inch", "materials": null, "rows": [ { "kind": ["end-mill"], "feedPerTooth": [0.001, 0.001], "source": "handbook", } ] } // all materials""")]
    public void Sound_cutting_data_please_both(string text)
    {
        var verdict = SchemaVerdict.OfCutting(text);

        Assert.True(verdict.IsValid);
        Assert.Empty(verdict.Problems);
    }

    /// <summary>The table in the executable is held to the same schema.</summary>
    [Fact]
    public void The_tables_own_data_please_both()
    {
        using var stream = typeof(Schemas).Assembly.GetManifestResourceStream("cutting.json")!;
        using var reader = new StreamReader(stream);
        var verdict = SchemaVerdict.OfCutting(reader.ReadToEnd());

        Assert.True(verdict.IsValid);
        Assert.Empty(verdict.Problems);
    }

    [Theory]
    [InlineData("""{ "clearence": 2 }""")]
    [InlineData("""{ "units": "cm" }""")]
    [InlineData("""{ "frame": "G53" }""")]
    [InlineData("""{ "machine": "" }""")]
    [InlineData("""{ "clearance": -0.1 }""")]
    [InlineData("""{ "clampHeight": "30" }""")]
    [InlineData("""{ "clampHeight": 100001 }""")]
    [InlineData("""{ "stock": { "min": [0, 0, 0] } }""")]
    [InlineData("""{ "stock": { "min": [0, 0, 0, 0], "max": [1, 1, 1] } }""")]
    [InlineData("""{ "stock": { "min": [0, 0, 0], "max": [1, 1, null] } }""")]
    [InlineData("""{ "frame": "G54.1 P0" }""")]
    [InlineData("""{ "stock": { "min": [0, 0, 0], "max": [9, 9, 9], "hollows": {} } }""")]
    [InlineData("""{ "stock": { "min": [0, 0, 0], "max": [9, 9, 9], "hollows": [ { "bottom": 3 } ] } }""")]
    [InlineData("""{ "stock": { "min": [0, 0, 0], "max": [9, 9, 9], "hollows": [ { "center": [2, 2] } ] } }""")]
    [InlineData("""{ "stock": { "min": [0, 0, 0], "max": [9, 9, 9], "hollows": [ { "center": [2, 2], "diameter": 2, "top": 4 } ] } }""")]
    [InlineData("""{ "stock": { "min": [0, 0, 0], "max": [9, 9, 9], "hollows": [ { "center": [2, 2], "diameter": 2, "cornerRadius": 1 } ] } }""")]
    [InlineData("""{ "stock": { "min": [0, 0, 0], "max": [9, 9, 9], "hollows": [ { "min": [2, 2, 0], "max": [4, 4] } ] } }""")]
    [InlineData("""{ "stock": { "min": [0, 0, 0], "max": [9, 9, 9], "hollows": [ { "min": [2, 2], "max": [4, 4], "cornerRadius": 0 } ] } }""")]
    [InlineData("""{ "obstacles": { } }""")]
    [InlineData("""{ "obstacles": [ { "name": "clamp" } ] }""")]
    [InlineData("""{ "obstacles": [ { "min": [0, 0, 0], "max": [1, 1, 1], "top": 5 } ] }""")]
    [InlineData("""{ "obstacles": [ { "center": [0, 0], "diameter": 0, "bottom": 0, "top": 1 } ] }""")]
    [InlineData("""{ "obstacles": [ { "center": [0, 0], "diameter": 5, "bottom": 0 } ] }""")]
    [InlineData("""{ "obstacles": [ null ] }""")]
    [InlineData("""{ "workOffsets": { "G60": [0, 0, 0] } }""")]
    [InlineData("""{ "workOffsets": { "G54.1": [0, 0, 0] } }""")]
    [InlineData("""{ "workOffsets": { "G54.1 P0": [0, 0, 0] } }""")]
    [InlineData("""{ "workOffsets": { "G54.1P3": [0, 0, 0] } }""")]
    [InlineData("""{ "workOffsets": { "G54.1 P1000": [0, 0, 0] } }""")]
    [InlineData("""{ "workOffsets": { "G54.1 P03": [0, 0, 0] } }""")]
    [InlineData("""{ "workOffsets": { "G54.1 P3": [0, 0] } }""")]
    [InlineData("""{ "tools": [ { "diameter": 5 } ] }""")]
    [InlineData("""{ "tools": [ { "number": 0 } ] }""")]
    [InlineData("""{ "tools": [ { "number": 1.5 } ] }""")]
    [InlineData("""{ "tools": [ { "number": 1, "kind": "Drill" } ] }""")]
    [InlineData("""{ "tools": [ { "number": 1, "pointAngle": 181 } ] }""")]
    [InlineData("""{ "tools": [ { "number": 1, "pitch": 0 } ] }""")]
    [InlineData("""{ "holes": [ { "x": 1 } ] }""")]
    [InlineData("""{ "holes": [ { "x": 1, "y": null } ] }""")]
    [InlineData("""{ "variables": { "500": 1 } }""")]
    [InlineData("""{ "variables": { "#<>": 1 } }""")]
    [InlineData("""{ "variables": { "#500": true } }""")]
    [InlineData("[]")]
    public void Faulty_setups_displease_both(string text)
    {
        var verdict = SchemaVerdict.OfSetup(text);

        Assert.False(verdict.IsValid);
        Assert.Single(verdict.Problems);
    }

    [Theory]
    [InlineData("""{ "travels": {} }""")]
    [InlineData("""{ "base": 5 }""")]
    [InlineData("""{ "name": " " }""")]
    [InlineData("""{ "travel": { "a": [0, 1] } }""")]
    [InlineData("""{ "travel": { "x": [0] } }""")]
    [InlineData("""{ "travel": { "x": 500 } }""")]
    [InlineData("""{ "home": [0, 0] }""")]
    [InlineData("""{ "rapid": 0 }""")]
    [InlineData("""{ "rapid": "fast" }""")]
    [InlineData("""{ "rapid": { "x": -1 } }""")]
    [InlineData("""{ "acceleration": 0 }""")]
    [InlineData("""{ "maxFeed": -8000 }""")]
    [InlineData("""{ "spindle": { "min": 60 } }""")]
    [InlineData("""{ "spindle": 8000 }""")]
    [InlineData("""{ "toolChangeSeconds": -1 }""")]
    [InlineData("""{ "tools": 0 }""")]
    [InlineData("""{ "readings": [] }""")]
    [InlineData("""{ "readings": { "dwel": "seconds" } }""")]
    [InlineData("""{ "readings": { "dwell": "minutes" } }""")]
    [InlineData("""{ "readings": { "rapidsEndCycle": "true" } }""")]
    [InlineData("""{ "readings": { "programMarks": true } }""")]
    [InlineData("""{ "readings": { "programMarks": { "longestBlock": 0 } } }""")]
    [InlineData("""{ "readings": { "programMarks": { "percent": 1 } } }""")]
    public void Faulty_machines_displease_both(string text)
    {
        var verdict = SchemaVerdict.OfMachine(text);

        Assert.False(verdict.IsValid);
        Assert.Single(verdict.Problems);
    }

    /// <summary>Every one value of a sound file replaced by every replacement, removed, or joined by another: both say the same, but for
    /// what compares two values.</summary>
    [Theory]
    [InlineData("setup")]
    [InlineData("machine")]
    [InlineData("cutting")]
    public void Schema_and_reader_agree_on_every_change_of_a_sound_file(string kind)
    {
        var sound = kind switch { "setup" => Samples.Setup, "machine" => Samples.Machine, _ => Samples.Cutting };
        var places = Places(JsonNode.Parse(sound)!).Count();
        string[] changed =
        [
            .. from place in Enumerable.Range(0, places)
               from replacement in Replacements
               select Change(sound, place, replacement, "replace"),
            .. from place in Enumerable.Range(0, places)
               from how in new[] { "remove", "add" }
               select Change(sound, place, "7", how),
        ];
        Assert.True(changed.Length > 1000);
        foreach (var text in changed)
        {
            var verdict = kind switch { "setup" => SchemaVerdict.OfSetup(text), "machine" => SchemaVerdict.OfMachine(text), _ => SchemaVerdict.OfCutting(text) };
            if (verdict.IsValid == verdict.SingleValueProblems.Any())
                Assert.Fail($"schema: {verdict.IsValid}\n{string.Join("\n", verdict.Problems)}\n{text}");
        }
    }

    [Fact]
    public void Every_reading_and_choice_is_in_the_schema_with_its_meaning()
    {
        using var schema = JsonDocument.Parse(Schemas.Machine);
        var readings = schema.RootElement.GetProperty("properties").GetProperty("readings").GetProperty("properties");

        Assert.Equal([.. ReadingTable.All.Select(r => r.Name), ProgramMarkTable.Name], readings.EnumerateObject().Select(p => p.Name));
        foreach (var reading in ReadingTable.All)
        {
            var entry = readings.GetProperty(reading.Name);
            var description = $"{reading.Meaning} {string.Join(" ", reading.Choices.Select(c => $"{c.Name}: {c.Meaning}"))} Taken wrongly: {reading.Consequence}";
            Assert.Equal(description, entry.GetProperty("description").GetString());
            if (!reading.IsTruth)
                Assert.Equal([.. reading.ChoiceNames, null], entry.GetProperty("enum").EnumerateArray().Select(e => e.GetString()));
        }
        var marks = readings.GetProperty(ProgramMarkTable.Name).GetProperty("properties");
        Assert.Equal(ProgramMarkTable.All.Select(m => (m.Name, m.Meaning)), marks.EnumerateObject().Select(p => (p.Name, p.Value.GetProperty("description").GetString()!)));
    }

    [Fact]
    public void The_names_of_tool_kinds_and_work_offsets_are_those_of_the_schema()
    {
        using var schema = JsonDocument.Parse(Schemas.Setup);
        var kinds = schema.RootElement.GetProperty("$defs").GetProperty("tool").GetProperty("properties").GetProperty("kind").GetProperty("enum");
        var frames = schema.RootElement.GetProperty("properties").GetProperty("frame").GetProperty("anyOf")[0].GetProperty("enum");

        Assert.Equal([.. ToolKindName.All, null], kinds.EnumerateArray().Select(e => e.GetString()));
        Assert.Equal([.. WorkOffsetName.All, null], frames.EnumerateArray().Select(e => e.GetString()));
    }

    [Fact]
    public void Every_member_has_a_description_for_the_editor()
    {
        foreach (var text in new[] { Schemas.Setup, Schemas.Machine, Schemas.Cutting })
        {
            using var schema = JsonDocument.Parse(text);
            Assert.False(string.IsNullOrEmpty(schema.RootElement.GetProperty("title").GetString()));
            AssertDescribed(schema.RootElement, "");
        }
    }

    static readonly string[] Replacements =
    [
        "null", "true", "0", "-1", "1", "2.5", "3", "1e6", "-1e7", "1e300", "\"\"", "\" \"", "\"mm\"", "\"%()\"", "\"% (\"", "\"[]-^`~\"", "\"inch\"", "\"G55\"", "\"drill\"", "\"L\"",
        "\"seconds\"", "[]", "{}", "[1, 2]", "[1, 2, 3]", "[3, 2, 1]", "[1, \"2\", 3]", "{ \"x\": 1 }", "{ \"min\": 5, \"max\": 3 }",
        "{ \"number\": 7 }", "[ { \"number\": 7 }, { \"number\": 7 } ]", "[ { \"x\": 1, \"y\": 1 } ]",
    ];

    static string Change(string sound, int place, string replacement, string how)
    {
        var root = JsonNode.Parse(sound)!;
        var places = Places(root).ToList();
        var (parent, key, index) = places[place];
        var value = JsonNode.Parse(replacement);
        switch (parent)
        {
            case JsonObject o when how == "remove":
                o.Remove(key!);
                break;
            case JsonObject o:
                o[how == "add" ? key + "s" : key!] = value;
                break;
            case JsonArray a when how == "remove":
                a.RemoveAt(index);
                break;
            case JsonArray a when how == "add":
                a.Add(value);
                break;
            case JsonArray a:
                a[index] = value;
                break;
        }
        return root.ToJsonString();
    }

    static IEnumerable<(JsonNode Parent, string? Key, int Index)> Places(JsonNode node)
    {
        if (node is JsonObject o)
        {
            foreach (var (key, value) in o)
            {
                yield return (o, key, -1);
                foreach (var inner in value is null ? [] : Places(value))
                    yield return inner;
            }
        }
        else if (node is JsonArray a)
        {
            for (var i = 0; i < a.Count; i++)
            {
                yield return (a, null, i);
                foreach (var inner in a[i] is { } item ? Places(item) : [])
                    yield return inner;
            }
        }
    }

    static void AssertDescribed(JsonElement element, string where)
    {
        if (element.ValueKind == JsonValueKind.Array)
        {
            foreach (var item in element.EnumerateArray())
                AssertDescribed(item, where + "[]");
        }
        if (element.ValueKind != JsonValueKind.Object)
            return;
        foreach (var member in element.EnumerateObject())
        {
            if (member.Name is "properties" && !where.EndsWith("oneOf[]", StringComparison.Ordinal))
            {
                foreach (var property in member.Value.EnumerateObject().Where(p => p.Value.ValueKind == JsonValueKind.Object))
                    Assert.True(property.Value.TryGetProperty("description", out _), $"{where}/{property.Name} has no description");
            }
            AssertDescribed(member.Value, where + "/" + member.Name);
        }
    }
}
