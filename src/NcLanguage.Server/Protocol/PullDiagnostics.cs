namespace NcLanguage.Server.Protocol;

// Findings asked for: LSP 3.17, "Pull Diagnostics".

internal sealed record DiagnosticOptions(string Identifier, bool InterFileDependencies, bool WorkspaceDiagnostics);

internal sealed record DocumentDiagnosticParams(TextDocumentIdentifier TextDocument, string? PreviousResultId = null);

/// <summary>Kind "full" with the findings, or "unchanged".</summary>
internal sealed record DocumentDiagnosticReport(string Kind, string? ResultId, Diagnostic[]? Items = null);

internal sealed record WorkspaceDiagnosticParams(PreviousResultId[] PreviousResultIds);

internal sealed record PreviousResultId(string Uri, string Value);

internal sealed record WorkspaceDiagnosticReport(WorkspaceDocumentDiagnosticReport[] Items);

internal sealed record WorkspaceDocumentDiagnosticReport(string Kind, string Uri, int? Version, string? ResultId, Diagnostic[]? Items = null)
{
    // LSP wants the member written even where it is null.
    [System.Text.Json.Serialization.JsonIgnore(Condition = System.Text.Json.Serialization.JsonIgnoreCondition.Never)]
    public int? Version { get; init; } = Version;
}
