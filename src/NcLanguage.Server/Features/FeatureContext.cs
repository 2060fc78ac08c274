using NcLanguage.Checks.Analysis;
using NcLanguage.Server.Documents;
using NcLanguage.Server.Jobs;
using NcLanguage.Server.Rpc;
using NcLanguage.Syntax.Text;

namespace NcLanguage.Server.Features;

/// <summary>What a request is answered from: one analysed snapshot, and how this client wants its answers.</summary>
sealed record FeatureContext(
    DocumentSnapshot Snapshot, ProgramAnalysis Analysis, ClientProfile Client, PositionMapper Positions, DiagnosticPublisher Diagnostics, JobLoader Jobs, LoadedJob Job, CancellationToken Cancel)
{
    public SourceText Text => Snapshot.Text;

    public string Uri => Snapshot.Uri;

    /// <summary>The program's file; null for a text never saved.</summary>
    public string? Path { get; } = DocumentUri.ToPath(Snapshot.Uri);

    /// <summary>The programs beside it; null for a text never saved.</summary>
    public ProgramFolder? Folder => Path is null ? null : Jobs.FolderOf(Path);
}
