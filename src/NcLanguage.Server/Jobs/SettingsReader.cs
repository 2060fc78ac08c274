using System.Text.Json;
using NcLanguage.Server.Protocol;

namespace NcLanguage.Server.Jobs;

/// <summary>Reads an editor's settings. A setting of the wrong shape is told and passed over; the others count.</summary>
static class SettingsReader
{
    const string Section = LanguageServer.Name;

    /// <summary>The member for this server among the settings of a notification; null where there is none.</summary>
    public static JsonElement? SectionOf(JsonElement? settings) =>
        settings is { ValueKind: JsonValueKind.Object } all && all.TryGetProperty(Section, out var own) && own.ValueKind != JsonValueKind.Null ? own : null;

    /// <param name="settings">The section, as the client wrote it.</param>
    /// <param name="tell">Takes one sentence for each setting that is passed over.</param>
    public static EditorSettings Read(JsonElement settings, Action<string> tell)
    {
        if (settings.ValueKind == JsonValueKind.Object)
        {
            return new EditorSettings(
                Text(settings, "setup", "the path of a setup file", tell),
                Text(settings, "machine", "the path of a machine file or the name of a built-in machine", tell),
                Texts(settings, "readings", "a list of texts such as \"dwell=milliseconds\"", tell),
                Truth(settings, "portable", tell),
                Truth(settings, "skipBlocks", tell),
                Truth(settings, "logDetails", tell));
        }
        if (settings.ValueKind != JsonValueKind.Null)
            tell($"The settings of {Section} must be an object with members such as \"setup\" and \"readings\", not {Kind(settings)}; they are passed over.");
        return new EditorSettings();
    }

    static string? Text(JsonElement settings, string name, string expected, Action<string> tell)
    {
        if (Find(settings, name) is not { } value)
            return null;
        if (value.ValueKind == JsonValueKind.String && JsonText.TextOf(value) is { } text)
            return text;
        Complain(name, $"a text, {expected}", value, tell);
        return null;
    }

    static string[]? Texts(JsonElement settings, string name, string expected, Action<string> tell)
    {
        if (Find(settings, name) is not { } value)
            return null;
        if (value.ValueKind != JsonValueKind.Array)
        {
            Complain(name, expected, value, tell);
            return null;
        }
        foreach (var entry in value.EnumerateArray())
            if (entry.ValueKind != JsonValueKind.String || JsonText.TextOf(entry) is null)
                tell($"The setting {Section}.{name} must be {expected}; {Kind(entry)} in it is passed over.");
        return [.. value.EnumerateArray().Where(entry => entry.ValueKind == JsonValueKind.String).Select(JsonText.TextOf).OfType<string>()];
    }

    static bool? Truth(JsonElement settings, string name, Action<string> tell)
    {
        if (Find(settings, name) is not { } value)
            return null;
        if (value.ValueKind is JsonValueKind.True or JsonValueKind.False)
            return value.GetBoolean();
        Complain(name, "true or false", value, tell);
        return null;
    }

    static JsonElement? Find(JsonElement settings, string name) =>
        settings.TryGetProperty(name, out var value) && value.ValueKind != JsonValueKind.Null ? value : null;

    static void Complain(string name, string expected, JsonElement value, Action<string> tell) =>
        tell($"The setting {Section}.{name} must be {expected}, not {Kind(value)}; it is passed over.");

    static string Kind(JsonElement value) => value.ValueKind switch
    {
        JsonValueKind.Object => "an object",
        JsonValueKind.Array => "a list",
        JsonValueKind.String => JsonText.TextOf(value) is null ? "bytes that are no UTF-8" : "a text",
        JsonValueKind.Number => "a number",
        JsonValueKind.True => "true",
        JsonValueKind.False => "false",
        _ => "null",
    };
}
