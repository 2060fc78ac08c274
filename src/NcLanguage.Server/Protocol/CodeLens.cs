namespace NcLanguage.Server.Protocol;

sealed record CodeLensOptions(bool ResolveProvider);

sealed record CodeLens(TextRange Range, Command? Command = null, CodeLensData? Data = null);

/// <summary>What a lens carries back when its text is asked for: the document and the version it was given for.</summary>
sealed record CodeLensData(string Uri, int Version, int Place);

/// <summary>A title, and what is done when it is chosen: nothing where the name is empty.</summary>
sealed record Command(
    string Title, [property: System.Text.Json.Serialization.JsonPropertyName("command")] string Name, System.Text.Json.JsonElement[]? Arguments = null);
