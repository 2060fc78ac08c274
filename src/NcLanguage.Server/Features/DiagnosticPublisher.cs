using System.Collections.Immutable;
using NcLanguage.Checks;
using NcLanguage.Checks.Analysis;
using NcLanguage.Server.Documents;
using NcLanguage.Server.Protocol;
using NcLanguage.Server.Rpc;
using NcLanguage.Syntax.Text;

namespace NcLanguage.Server.Features;

/// <summary>textDocument/publishDiagnostics: sends the findings of the newest version, and none of an older one after it.</summary>
internal sealed class DiagnosticPublisher(Action<PublishDiagnosticsParams> send, ClientProfile client, PositionMapper positions)
{
    /// <summary>More than this an editor can't show and nobody reads; the rest is counted in one last note.</summary>
    public const int MostFindings = 2000;

    private readonly Lock _gate = new();

    /// <summary>Sends the findings unless <paramref name="isNewest"/> denies it. Asked and sent under one lock, so that an older
    /// version can't overtake a newer one.</summary>
    public void Publish(DocumentSnapshot snapshot, AnalysedProgram program, Func<bool> isNewest)
    {
        Diagnostic[] diagnostics = Map(snapshot.Uri, program.Analysis);
        lock (_gate)
        {
            if (isNewest()) send(new PublishDiagnosticsParams(snapshot.Uri, snapshot.Version, diagnostics));
        }
    }

    /// <summary>Takes all findings of a document away. Call it once the document counts as closed.</summary>
    public void Clear(string uri)
    {
        lock (_gate) send(new PublishDiagnosticsParams(uri, null, []));
    }

    public Diagnostic Map(string uri, ProgramAnalysis analysis, Finding finding) => new(
        positions.ToRange(analysis.Text, finding.Line, finding.StartColumn, finding.EndColumn), finding.Message, Severity(finding.Severity), finding.Id,
        Source: Source, RelatedInformation: Related(uri, analysis, finding), Data: finding.Name);

    private Diagnostic[] Map(string uri, ProgramAnalysis analysis)
    {
        SourceText text = analysis.Text;
        ImmutableArray<Finding> findings = analysis.Findings;
        if (findings.Length <= MostFindings) return [.. findings.Select(finding => Map(uri, analysis, finding))];
        Finding next = findings[MostFindings];
        string rest = $"{findings.Length - MostFindings} more findings are not shown here; the command nclanguage check lists all.";
        return
        [
            .. findings.Take(MostFindings).Select(finding => Map(uri, analysis, finding)),
            new(positions.ToRange(text, next.Line, next.StartColumn, next.EndColumn), rest, DiagnosticSeverity.Information, Source: Source),
        ];
    }

    private DiagnosticRelatedInformation[]? Related(string uri, ProgramAnalysis analysis, Finding finding)
    {
        if (!client.RelatedInformation) return null;
        DiagnosticRelatedInformation[] places =
        [
            .. analysis.Related(finding).Select(place => new DiagnosticRelatedInformation(
                new Location(uri, positions.ToRange(analysis.Text, place.Line, place.StartColumn, place.EndColumn)), place.Message)),
        ];
        return places.Length > 0 ? places : null;
    }

    private static DiagnosticSeverity Severity(Severity severity) => severity switch
    {
        Checks.Severity.Error => DiagnosticSeverity.Error,
        Checks.Severity.Warning => DiagnosticSeverity.Warning,
        _ => DiagnosticSeverity.Information,
    };

    public const string Source = "nclanguage";
}
