using System.Collections.Immutable;
using System.Text;
using System.Text.Encodings.Web;
using System.Text.Json;
using System.Text.Json.Nodes;

namespace NcLanguage.Fuzz.Cases;

/// <summary>A case as it is kept: the name of its check, why it is kept, and the case itself. Bytes are written as the characters of the same number, a line a string.</summary>
sealed record CaseFile(string Check, string Why, FuzzCase Case)
{
    static readonly JsonSerializerOptions Indented = new() { WriteIndented = true, Encoder = JavaScriptEncoder.UnsafeRelaxedJsonEscaping };

    public static CaseFile Read(string path)
    {
        var root = JsonNode.Parse(File.ReadAllText(path))!.AsObject();
        return new CaseFile((string)root["check"]!, (string)root["why"]!, new FuzzCase
        {
            Program = Bytes(root["program"]) ?? [],
            Setup = Bytes(root["setup"]),
            Machine = Bytes(root["machine"]),
            Cutting = Bytes(root["cutting"]),
            Called = Bytes(root["called"]),
            Readings = [.. root["readings"]?.AsArray().Select(reading => (string)reading!) ?? []],
            IsPortable = (bool?)root["portable"] ?? false,
            Skips = (bool?)root["skip"] ?? false,
            Edits = [.. root["edits"]?.AsArray().Select(edit => new CaseEdit((int)edit!["at"]!, (int)edit["length"]!, Bytes(edit["text"])!)) ?? []],
        });
    }

    public string Write()
    {
        var root = new JsonObject { ["check"] = Check, ["why"] = Why, ["program"] = Lines(Case.Program) };
        foreach (var (name, bytes) in new[] { ("setup", Case.Setup), ("machine", Case.Machine), ("cutting", Case.Cutting), ("called", Case.Called) })
            if (bytes is not null)
                root[name] = Lines(bytes);
        if (!Case.Readings.IsEmpty)
            root["readings"] = new JsonArray([.. Case.Readings.Select(reading => (JsonNode)reading)]);
        if (Case.IsPortable)
            root["portable"] = true;
        if (Case.Skips)
            root["skip"] = true;
        if (!Case.Edits.IsEmpty)
            root["edits"] = new JsonArray([.. Case.Edits.Select(edit => new JsonObject { ["at"] = edit.At, ["length"] = edit.Length, ["text"] = Lines(edit.Text) })]);
        return root.ToJsonString(Indented) + "\n";
    }

    static JsonArray Lines(byte[] bytes)
    {
        var lines = new JsonArray();
        for (var start = 0; start < bytes.Length;)
        {
            var end = Array.IndexOf(bytes, (byte)'\n', start) + 1;
            end = end == 0 ? bytes.Length : end;
            lines.Add(Encoding.Latin1.GetString(bytes, start, end - start));
            start = end;
        }
        return lines;
    }

    static byte[]? Bytes(JsonNode? lines) => lines is null ? null : [.. lines.AsArray().SelectMany(line => Encoding.Latin1.GetBytes((string)line!))];
}
