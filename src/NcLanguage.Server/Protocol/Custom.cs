namespace NcLanguage.Server.Protocol;

// Requests of our own, described in DEVELOPERS.md. What is not known is left out of the answers.

sealed record StateAtParams(TextDocumentIdentifier TextDocument, Position Position);

sealed record HolesParams(TextDocumentIdentifier TextDocument);

sealed record MotionViewParams(TextDocumentIdentifier TextDocument, string? Nonce = null);

/// <summary>A page, and the program that it shows.</summary>
sealed record PageAnswer([property: System.Text.Json.Serialization.JsonConverter(typeof(LongTextConverter))] string Html, string Uri);

/// <summary>What a program is run with. The setup is left out where none was found.</summary>
sealed record JobInUseAnswer(FileInUse? Setup, FileInUse Machine);

/// <summary>A setup or machine: its name, its address where it is a file, and how many mistakes are in it.</summary>
/// <param name="IsChosen">Of a machine: whether somebody chose it.</param>
sealed record FileInUse(string Name, string? Uri, int Problems, bool IsChosen);

/// <summary>A setup to be written for a program that has none: where it belongs, and how it may begin.</summary>
sealed record NewSetupAnswer(string Uri, string Text);

sealed record ExecuteCommandParams(string Command, System.Text.Json.JsonElement[]? Arguments = null, System.Text.Json.JsonElement? WorkDoneToken = null);

/// <summary>workspace/applyEdit: the edit is the client's to make.</summary>
sealed record ApplyEditParams(System.Text.Json.JsonElement Edit);

sealed record ExecuteCommandOptions(string[] Commands, bool WorkDoneProgress);

sealed record ShowDocumentParams(string Uri, bool External);
