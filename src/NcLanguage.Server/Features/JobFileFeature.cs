using NcLanguage.Editing;
using NcLanguage.Server.Documents;
using NcLanguage.Server.Jobs;
using NcLanguage.Server.Protocol;
using NcLanguage.Server.Rpc;

namespace NcLanguage.Server.Features;

/// <summary>Hover, completion and definition in setup and machine files, for editors that do not read the schema themselves.</summary>
internal sealed class JobFileFeature(ClientProfile client, PositionMapper positions, JobLoader jobs)
{
    public Protocol.Hover? Hover(JobDocument document, Position position)
    {
        if (JobFileAnswers.Hover(KindOf(document), document.Text, positions.ToOffset(document.Text, position)) is not { } hover) return null;
        return new Protocol.Hover(client.HoverText(hover.Markdown), Range(document, hover.Start, hover.End));
    }

    public CompletionList Completion(JobDocument document, Position position)
    {
        JobFileItems items = JobFileAnswers.Completion(
            KindOf(document), document.Text, positions.ToOffset(document.Text, position), jobs.LoadFile(document.Path).Inputs.Setup.Cutting);
        if (items.Items.Count == 0) return CompletionFeature.Nothing;
        TextRange range = Range(document, items.Start, items.End);
        return new CompletionList(false, [.. items.Items.Select(item => new CompletionItem(
            item.Label, item.IsName ? CompletionItemKind.Field : CompletionItemKind.Value,
            Documentation: new MarkupContent("plaintext", item.Meaning),
            // A client compares with what stands in the range, the quote included.
            FilterText: item.Snippet is null ? item.NewText : item.Label,
            InsertTextFormat: client.Snippets && item.Snippet is not null ? InsertTextFormat.Snippet : null,
            TextEdit: new TextEdit(range, client.Snippets && item.Snippet is { } snippet ? snippet : item.NewText)))]);
    }

    /// <summary>The machine file that a setup or another machine file names.</summary>
    public Location[] Definition(JobDocument document, Position position)
    {
        if (JobFileAnswers.MachineNamed(KindOf(document), document.Text, positions.ToOffset(document.Text, position)) is not var (name, _, _)) return [];
        string path = Path.GetFullPath(Path.Combine(Path.GetDirectoryName(document.Path) ?? "", name));
        return jobs.TextOf(path) is null ? [] : [new Location(jobs.UriOf(path), default)];
    }

    private static JobFileKind KindOf(JobDocument document) => WatchedFiles.IsSetup(document.Path) ? JobFileKind.Setup : WatchedFiles.IsCutting(document.Path) ? JobFileKind.Cutting : JobFileKind.Machine;

    private TextRange Range(JobDocument document, int start, int end) => new(At(document, start), At(document, end));

    private Position At(JobDocument document, int offset)
    {
        int line = document.Text.LineAt(offset);
        return positions.ToPosition(document.Text, line, offset - document.Text.OffsetOf(line, 0));
    }
}
