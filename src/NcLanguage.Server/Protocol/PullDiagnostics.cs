using System.Text.Json;

namespace NcLanguage.Server.Protocol;

// Findings asked for: LSP 3.17, "Pull Diagnostics".

sealed record DiagnosticOptions(string Identifier, bool InterFileDependencies, bool WorkspaceDiagnostics, bool WorkDoneProgress);

sealed record DocumentDiagnosticParams(TextDocumentIdentifier TextDocument, string? PreviousResultId = null);

/// <summary>Kind "full" with the findings, or "unchanged".</summary>
sealed record DocumentDiagnosticReport(string Kind, string? ResultId, Diagnostic[]? Items = null);

/// <param name="PreviousResultIds">What the client has already.</param>
/// <param name="WorkDoneToken">Where it wants to hear how far the work is.</param>
/// <param name="PartialResultToken">Where it takes findings before the answer.</param>
sealed record WorkspaceDiagnosticParams(PreviousResultId[] PreviousResultIds, JsonElement? WorkDoneToken = null, JsonElement? PartialResultToken = null);

sealed record PartialDiagnosticsParams(JsonElement Token, WorkspaceDiagnosticReport Value);

sealed record WorkProgressParams(JsonElement Token, WorkDoneProgress Value);

/// <summary>Kind begin, report or end.</summary>
sealed record WorkDoneProgress(string Kind, string? Title = null, string? Message = null, int? Percentage = null);

sealed record PreviousResultId(string Uri, string Value);

sealed record WorkspaceDiagnosticReport(WorkspaceDocumentDiagnosticReport[] Items);

sealed record WorkspaceDocumentDiagnosticReport(string Kind, string Uri, int? Version, string? ResultId, Diagnostic[]? Items = null)
{
    // LSP wants the member written even where it is null.
    [System.Text.Json.Serialization.JsonIgnore(Condition = System.Text.Json.Serialization.JsonIgnoreCondition.Never)]
    public int? Version { get; init; } = Version;
}
