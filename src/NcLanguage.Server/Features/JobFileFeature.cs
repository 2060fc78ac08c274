using NcLanguage.Editing;
using NcLanguage.Machine.Files;
using NcLanguage.Machine.Setups;
using NcLanguage.Server.Documents;
using NcLanguage.Server.Jobs;
using NcLanguage.Server.Protocol;
using NcLanguage.Server.Rpc;

namespace NcLanguage.Server.Features;

/// <summary>Hover, completion and definition in setup and machine files, for editors that do not read the schema themselves.</summary>
sealed class JobFileFeature(ClientProfile client, PositionMapper positions, JobLoader jobs)
{
    /// <summary>Variables that are offered.</summary>
    const int MostVariables = 100;

    /// <summary>Places of programs that are told.</summary>
    const int MostPlaces = 1000;

    public Protocol.Hover? Hover(JobDocument document, Position position)
    {
        if (JobFileAnswers.Hover(KindOf(document), document.Text, positions.ToOffset(document.Text, position)) is not { } hover)
            return null;
        return new Protocol.Hover(client.HoverText(hover.Markdown), Range(document, hover.Start, hover.End));
    }

    public CompletionList Completion(JobDocument document, Position position)
    {
        var items = JobFileAnswers.Completion(
            KindOf(document), document.Text, positions.ToOffset(document.Text, position),
            new JobFileSurroundings(jobs.LoadFile(document.Path).Inputs.Setup.Cutting, jobs.MachinesBeside(document.Path), () => VariablesOf(document)));
        if (items.Items.Count == 0)
            return CompletionFeature.Nothing;
        var range = Range(document, items.Start, items.End);
        return new CompletionList(false, [.. items.Items.Select(item => new CompletionItem(
            item.Label, item.IsName ? CompletionItemKind.Field : CompletionItemKind.Value,
            Documentation: new MarkupContent("plaintext", item.Meaning),
            // A client compares with what stands in the range, the quote included.
            FilterText: item.IsName ? $"\"{item.Label}\"" : item.Snippet is null ? item.NewText : item.Label,
            InsertTextFormat: client.Snippets && item.Snippet is not null ? InsertTextFormat.Snippet : null,
            TextEdit: new TextEdit(range, client.Snippets && item.Snippet is { } snippet ? snippet : item.NewText),
            AdditionalTextEdits: item.CommaAt < 0 ? null : [new TextEdit(Range(document, item.CommaAt, item.CommaAt), ",")]))]);
    }

    /// <summary>The variables that the programs beside a setup read: of its own program, or of all where it is for all.</summary>
    IEnumerable<string> VariablesOf(JobDocument document)
    {
        var own = WatchedFiles.ProgramOf(document.Path);
        return jobs.FolderOf(document.Path).Others(CancellationToken.None)
            .Where(program => own is null || DocumentUri.PathComparer.Equals(Path.GetFileNameWithoutExtension(program.Path), own))
            .SelectMany(program => JobFileSymbols.VariablesReadIn(program.Text).Take(MostPlaces)).Distinct().Order(StringComparer.Ordinal).Take(MostVariables);
    }

    /// <summary>The machine file that a setup or another machine file names; for what a setup gives to programs the places that use it.</summary>
    public Location[] Definition(JobDocument document, Position position, CancellationToken cancel)
    {
        if (JobFileAnswers.MachineNamed(KindOf(document), document.Text, positions.ToOffset(document.Text, position)) is not var (name, _, _))
            return References(document, position, cancel);
        return MachineFile(document, name) is { } path ? [new Location(jobs.UriOf(path), default)] : [];
    }

    /// <summary>Where the programs of a setup use the tool, offset or variable at a place of it.</summary>
    public Location[] References(JobDocument document, Position position, CancellationToken cancel)
    {
        if (KindOf(document) != JobFileKind.Setup)
            return [];
        var setup = jobs.LoadFile(document.Path).Inputs.Setup;
        if (JobFileSymbols.At(document.Text, positions.ToOffset(document.Text, position), setup) is not { } symbol)
            return [];
        List<Location> found = [];
        foreach (var program in jobs.FolderOf(document.Path).Others(cancel))
        {
            if (found.Count >= MostPlaces)
                break;
            SymbolUse[] uses = [.. JobFileSymbols.UsesIn(program.Text, symbol, cancel).Take(MostPlaces)];
            // Each program finds its setup by itself.
            if (uses.Length == 0 || jobs.Load(program.Path).Inputs.Setup.Path is not { } own || !DocumentUri.PathComparer.Equals(own, document.Path))
                continue;
            found.AddRange(uses.Select(use => new Location(jobs.UriOf(program.Path), positions.ToRange(program.Text, use.Line, use.Start, use.End))));
        }
        return [.. found];
    }

    public DocumentLink[] Links(JobDocument document) =>
    [
        .. from named in JobFileAnswers.MachinesNamed(KindOf(document), document.Text)
           let path = MachineFile(document, named.Name)
           where path is not null
           select new DocumentLink(Range(document, named.Start, named.End), jobs.UriOf(path), "Open " + Path.GetFileName(path)),
    ];

    string? MachineFile(JobDocument document, string name)
    {
        var path = SetupLocator.FullPath(name, Path.GetDirectoryName(document.Path));
        return path is null || jobs.TextOf(path) is null ? null : path;
    }

    static JobFileKind KindOf(JobDocument document) => JobFileName.IsSetup(document.Path) ? JobFileKind.Setup : JobFileName.IsCutting(document.Path) ? JobFileKind.Cutting : JobFileKind.Machine;

    TextRange Range(JobDocument document, int start, int end) => new(At(document, start), At(document, end));

    Position At(JobDocument document, int offset)
    {
        var line = document.Text.LineAt(offset);
        return positions.ToPosition(document.Text, line, offset - document.Text.OffsetOf(line, 0));
    }
}
