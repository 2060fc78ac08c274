using System.Globalization;
using NcLanguage.Server.Protocol;

namespace NcLanguage.Server.Features;

/// <summary>textDocument/diagnostic: the findings of a program, setup or machine file when the editor asks for them.</summary>
static class PullDiagnosticFeature
{
    const string Full = "full";
    const string Unchanged = "unchanged";

    public static DiagnosticOptions Options { get; } = new("nclanguage", InterFileDependencies: true, WorkspaceDiagnostics: true, WorkDoneProgress: true);

    public static DocumentDiagnosticReport Answer(FeatureContext context, string? previous) => Report(context.Diagnostics.Tell(context.Snapshot, context.Analysis, context.Analysis.FindAll(context.Cancel)), previous);

    /// <summary>The findings, or that they are the same as before.</summary>
    public static DocumentDiagnosticReport Report(Diagnostic[] items, string? previous)
    {
        var id = IdOf(items);
        return id == previous ? new DocumentDiagnosticReport(Unchanged, id) : new DocumentDiagnosticReport(Full, id, items);
    }

    public static WorkspaceDocumentDiagnosticReport InWorkspace(FeatureContext context, string? previous)
    {
        var report = Answer(context, previous);
        return new WorkspaceDocumentDiagnosticReport(report.Kind, context.Uri, context.Snapshot.Version, report.ResultId, report.Items);
    }

    public static bool IsNew(WorkspaceDocumentDiagnosticReport report) => report.Kind == Full;

    /// <summary>The same for the same findings at the same places, whatever version they are of.</summary>
    static string IdOf(Diagnostic[] items)
    {
        var hash = new HashCode();
        foreach (var item in items)
        {
            hash.Add(item.Range);
            hash.Add(item.Text.Severity);
            hash.Add(item.Text.Code, StringComparer.Ordinal);
            hash.Add(item.Text.Message, StringComparer.Ordinal);
            hash.Add(item.Text.CodeDescription);
        }
        return hash.ToHashCode().ToString("x8", CultureInfo.InvariantCulture) + items.Length.ToString(CultureInfo.InvariantCulture);
    }
}
