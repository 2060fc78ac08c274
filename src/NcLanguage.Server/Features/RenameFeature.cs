using NcLanguage.Editing;
using NcLanguage.Server.Jobs;
using NcLanguage.Server.Protocol;
using NcLanguage.Server.Rpc;
using StreamJsonRpc.Protocol;

namespace NcLanguage.Server.Features;

/// <summary>textDocument/prepareRename and textDocument/rename, and the numbers that belong together (textDocument/linkedEditingRange).</summary>
static class RenameFeature
{
    public static PrepareRenameResult? Prepare(FeatureContext context, Position position)
    {
        (var line, var column) = context.Positions.ToPlace(context.Text, position);
        if (Renaming(context).Prepare(line, column) is not { } use)
            return null;
        var written = System.Text.Encoding.UTF8.GetString(context.Text.Line(use.Line)[use.Start..use.End]);
        return new PrepareRenameResult(context.Positions.ToRange(context.Text, use.Line, use.Start, use.End), written);
    }

    public static WorkspaceEdit Rename(FeatureContext context, Position position, string newName, Func<string, int?> versionOf)
    {
        (var line, var column) = context.Positions.ToPlace(context.Text, position);
        var answer = Renaming(context).Rename(line, column, newName, context.Cancel);
        if (answer.Refusal is { } refusal)
            throw Errors.Refused(refusal);
        if (answer.Files.Count > 0 && !context.Client.RenamesFiles)
            throw Errors.Refused($"Calls find {Path.GetFileName(answer.Files[0].From)} by its name, and this editor cannot rename it along.");
        var map = new PlaceMap(context);
        TextDocumentEdit[] documents = [.. answer.Edits.GroupBy(edit => edit.Path).Select(group => new TextDocumentEdit(
            new OptionalVersionedTextDocumentIdentifier(map.UriOf(group.Key), group.Key is null ? context.Snapshot.Version : versionOf(map.UriOf(group.Key))),
            [.. group.Select(edit => new TextEdit(map.Range(edit.Path, edit.Edit.Line, edit.Edit.StartColumn, edit.Edit.EndColumn), edit.Edit.NewText))]))];
        if (!context.Client.VersionedEdits)
            return new WorkspaceEdit(Changes: documents.ToDictionary(document => document.TextDocument.Uri, document => document.Edits));
        RenameFile[] files = [.. answer.Files.Select(file => new RenameFile(map.UriOf(file.From), Documents.DocumentUri.FromPath(file.To)))];
        var setups = answer.Files.Select(file => SetupRename.Of(file.From, file.To, context.Jobs)).OfType<RenameFile>();
        return new WorkspaceEdit(DocumentChanges: [.. documents, .. files, .. setups]);
    }

    public static LinkedEditingRanges? Linked(FeatureContext context, Position position)
    {
        (var line, var column) = context.Positions.ToPlace(context.Text, position);
        var twins = Twins.At(context.Analysis, line, column);
        return twins.Count == 0 ? null
            : new LinkedEditingRanges([.. twins.Select(use => context.Positions.ToRange(context.Text, use.Line, use.Start, use.End))], "[0-9]*");
    }

    static Renaming Renaming(FeatureContext context) => new(context.Analysis, context.Path, context.Folder);
}
