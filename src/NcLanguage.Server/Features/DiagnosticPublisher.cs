using System.Collections.Immutable;
using System.Diagnostics.CodeAnalysis;
using NcLanguage.Checks;
using NcLanguage.Checks.Analysis;
using NcLanguage.Server.Documents;
using NcLanguage.Server.Protocol;
using NcLanguage.Server.Rpc;
using NcLanguage.Syntax.Text;

namespace NcLanguage.Server.Features;

/// <summary>textDocument/publishDiagnostics: sends the findings of the newest version, and none of an older one after it. Findings that went out
/// before the pages they link to were written are sent once more when they are; those that a half-written word brings are notes until the keys rest.</summary>
sealed class DiagnosticPublisher
{
    /// <summary>More than this nobody reads, and to send them at each key would cost more than to find them: the worst are sent, the rest is counted in one note.</summary>
    public const int MostFindings = 500;

    readonly Lock _gate = new();
    readonly Action<PublishDiagnosticsParams> _send;
    readonly Action _askAgain;
    readonly ClientProfile _client;
    readonly PositionMapper _positions;
    readonly ReferenceLinks _links;
    readonly FindingTexts _texts;
    readonly Dictionary<string, (DocumentSnapshot Snapshot, AnalysedProgram Program, ImmutableArray<Finding> Findings, Func<bool> IsNewest)> _withoutLinks = [];
    readonly Dictionary<string, ShownFindings> _shown = [];
    readonly Dictionary<string, ToldFindings> _told = [];

    /// <param name="send">Sends findings to the client.</param>
    /// <param name="askAgain">Tells a client that asks for findings itself to ask again.</param>
    /// <param name="client">What the client takes.</param>
    /// <param name="positions">How places are counted.</param>
    /// <param name="links">The pages that findings link to.</param>
    public DiagnosticPublisher(Action<PublishDiagnosticsParams> send, Action askAgain, ClientProfile client, PositionMapper positions, ReferenceLinks links)
    {
        (_send, _askAgain, _client, _positions, _links) = (send, askAgain, client, positions, links);
        _texts = new FindingTexts(links);
        links.Settled += SendWithLinks;
    }

    /// <summary>Sends the findings unless <paramref name="isNewest"/> denies it. Asked and sent under one lock, so that an older
    /// version can't overtake a newer one.</summary>
    public void Publish(DocumentSnapshot snapshot, AnalysedProgram program, ImmutableArray<Finding> findings, Func<bool> isNewest)
    {
        if (_client.PullsDiagnostics)
            return;
        var isFinal = _links.IsSettled;
        ShownFindings? shown;
        ToldFindings? told;
        lock (_gate)
        {
            _shown.TryGetValue(snapshot.Uri, out shown);
            _told.TryGetValue(snapshot.Uri, out told);
        }
        told ??= ToldFindings.None;
        var diagnostics = Map(snapshot, program.Analysis, findings, ref shown, ref told);
        lock (_gate)
        {
            if (!isNewest())
                return;
            _withoutLinks.Remove(snapshot.Uri);
            _shown[snapshot.Uri] = shown;
            _told[snapshot.Uri] = told;
            _send(new PublishDiagnosticsParams(snapshot.Uri, snapshot.Version, diagnostics));
            if (isFinal || diagnostics.Length == 0)
                return;
            if (_links.IsSettled)
                SendAgain(snapshot, program, findings);
            else
                _withoutLinks[snapshot.Uri] = (snapshot, program, findings, isNewest);
        }
    }

    /// <summary>The keys rest: tells as what it is what was a note while they flowed, if anything was.</summary>
    public void Rest(DocumentSnapshot snapshot, AnalysedProgram program, ImmutableArray<Finding> findings, Func<bool> isNewest)
    {
        lock (_gate)
        {
            if (!isNewest() || !_told.TryGetValue(snapshot.Uri, out var told) || told.Notes.Count == 0)
                return;
        }
        if (_client.PullsDiagnostics)
            _askAgain();
        else
            Publish(snapshot, program, findings, isNewest);
    }

    /// <summary>The findings of an open program for a client that asks for them itself; those that the keys bring are notes while they flow.</summary>
    public Diagnostic[] Tell(DocumentSnapshot snapshot, ProgramAnalysis analysis, ImmutableArray<Finding> findings)
    {
        lock (_gate)
        {
            var told = _told.GetValueOrDefault(snapshot.Uri, ToldFindings.None);
            ShownFindings? shown = null;
            var diagnostics = Map(snapshot, analysis, findings, ref shown, ref told);
            _told[snapshot.Uri] = told;
            return diagnostics;
        }
    }

    /// <summary>Says in place of the findings that this version could not be checked: those of the version before would stand at other places.</summary>
    public void PublishFailure(DocumentSnapshot snapshot, Exception fault, Func<bool> isNewest)
    {
        var message = $"This program could not be checked, by a fault of the server's own ({fault.GetType().Name}); its log says where.";
        lock (_gate)
        {
            if (!isNewest() || _client.PullsDiagnostics)
                return;
            _withoutLinks.Remove(snapshot.Uri);
            _send(new PublishDiagnosticsParams(snapshot.Uri, snapshot.Version, [new Diagnostic(default, new DiagnosticText(message, DiagnosticSeverity.Error, source: Source))]));
        }
    }

    /// <summary>Takes all findings of a document away. Call it once the document counts as closed.</summary>
    public void Clear(string uri)
    {
        lock (_gate)
        {
            _withoutLinks.Remove(uri);
            _shown.Remove(uri);
            _told.Remove(uri);
            _send(new PublishDiagnosticsParams(uri, null, []));
        }
    }

    public Diagnostic Map(DocumentSnapshot snapshot, ProgramAnalysis analysis, Finding finding) => Map(snapshot, analysis, new SetterLines(analysis.Main), finding, false);

    Diagnostic Map(DocumentSnapshot snapshot, ProgramAnalysis analysis, SetterLines setters, Finding finding, bool isNote) => new(
        _positions.ToRange(snapshot.Text, finding.Line, finding.StartColumn, finding.EndColumn),
        _texts.For(finding, isNote ? DiagnosticSeverity.Information : Severity(finding.Severity)),
        Related(snapshot, analysis, setters, finding));

    void SendWithLinks()
    {
        lock (_gate)
        {
            foreach (var (snapshot, program, findings, isNewest) in _withoutLinks.Values)
                if (isNewest())
                    SendAgain(snapshot, program, findings);
            _withoutLinks.Clear();
        }
    }

    // Where the pages could not be written there is nothing to add.
    void SendAgain(DocumentSnapshot snapshot, AnalysedProgram program, ImmutableArray<Finding> findings)
    {
        if (_links.HasPages)
            _send(new PublishDiagnosticsParams(snapshot.Uri, snapshot.Version, Tell(snapshot, program.Analysis, findings)));
    }

    /// <summary>The findings of a program that nobody types, as many as an editor can show.</summary>
    public Diagnostic[] Map(DocumentSnapshot snapshot, ProgramAnalysis analysis, ImmutableArray<Finding> findings)
    {
        ShownFindings? shown = null;
        var told = ToldFindings.None;
        return Map(snapshot, analysis, findings, ref shown, ref told);
    }

    /// <param name="shown">What went out last; then what goes out now.</param>
    /// <param name="told">What was told last; then what is told now.</param>
    Diagnostic[] Map(DocumentSnapshot snapshot, ProgramAnalysis analysis, ImmutableArray<Finding> findings, [NotNull] ref ShownFindings? shown, ref ToldFindings told)
    {
        (var worst, var left) = Worst(findings);
        var toCome = StillToCome.Of(snapshot, analysis, worst);
        (var areNotes, told) = told.Next(snapshot.Typing, toCome, worst, snapshot.Text.LineCount);
        var setters = new SetterLines(analysis.Main);
        shown = ShownFindings.Of(
            snapshot.Text, worst, areNotes, _links.HasPages, shown, finding => _client.RelatedInformation ? setters.Of(finding) : -1,
            (finding, isNote) => Map(snapshot, analysis, setters, finding, isNote));
        if (left is null)
            return shown.Diagnostics;
        var rest = $"{Say.Count(findings.Length - MostFindings, "more finding is", "more findings are")} not shown here, none worse than these; the command nclanguage check --format json lists all.";
        return [.. shown.Diagnostics, new(_positions.ToRange(snapshot.Text, left.Line, left.StartColumn, left.EndColumn), new DiagnosticText(rest, DiagnosticSeverity.Information, source: Source))];
    }

    /// <summary>As many as are shown: errors first, then warnings, then notes, of each kind those that stand first; and the first of the others, null where there is none.</summary>
    static (ImmutableArray<Finding> Shown, Finding? Left) Worst(ImmutableArray<Finding> findings)
    {
        if (findings.Length <= MostFindings)
            return (findings, null);
        // Of each severity no more than would be shown of it alone: with so many errors nothing behind them is looked at.
        var first = (Errors: new List<int>(), Warnings: new List<int>(), Notes: new List<int>());
        for (var i = 0; i < findings.Length && first.Errors.Count < MostFindings; i++)
        {
            var ofKind = findings[i].Severity switch
            {
                Checks.Severity.Error => first.Errors,
                Checks.Severity.Warning => first.Warnings,
                _ => first.Notes,
            };
            if (ofKind.Count < MostFindings)
                ofKind.Add(i);
        }
        int[] shown = [.. first.Errors.Concat(first.Warnings).Concat(first.Notes).Take(MostFindings).Order()];
        var left = 0;
        while (left < shown.Length && shown[left] == left)
            left++;
        return ([.. shown.Select(i => findings[i])], findings[left]);
    }

    DiagnosticRelatedInformation[]? Related(DocumentSnapshot snapshot, ProgramAnalysis analysis, SetterLines setters, Finding finding)
    {
        if (!_client.RelatedInformation)
            return null;
        DiagnosticRelatedInformation[] places =
        [
            .. analysis.Related(finding, setters).Select(place => new DiagnosticRelatedInformation(
                _positions.ToRange(snapshot.Text, place.Line, place.StartColumn, place.EndColumn), new RelatedText(snapshot.Uri, ShownText.Of(place.Message)))),
        ];
        return places.Length > 0 ? places : null;
    }

    static DiagnosticSeverity Severity(Severity severity) => severity switch
    {
        Checks.Severity.Error => DiagnosticSeverity.Error,
        Checks.Severity.Warning => DiagnosticSeverity.Warning,
        _ => DiagnosticSeverity.Information,
    };

    public const string Source = "nclanguage";
}
