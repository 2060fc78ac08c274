using NcLanguage.Checks.Analysis;
using NcLanguage.Server.Documents;
using NcLanguage.Server.Rpc;
using NcLanguage.Syntax.Text;

namespace NcLanguage.Server.Features;

/// <summary>What a request is answered from: one analysed snapshot, and how this client wants its answers.</summary>
internal sealed record FeatureContext(DocumentSnapshot Snapshot, ProgramAnalysis Analysis, ClientProfile Client, PositionMapper Positions, DiagnosticPublisher Diagnostics)
{
    public SourceText Text => Snapshot.Text;

    public string Uri => Snapshot.Uri;
}
