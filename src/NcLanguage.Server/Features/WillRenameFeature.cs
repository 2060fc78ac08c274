using NcLanguage.Control.Flow;
using NcLanguage.Editing;
using NcLanguage.Server.Documents;
using NcLanguage.Server.Jobs;
using NcLanguage.Server.Protocol;
using NcLanguage.Server.Rpc;
using NcLanguage.Syntax.Text;

namespace NcLanguage.Server.Features;

/// <summary>workspace/willRenameFiles: a program that others call by the number of its file's name takes its callers along, and each its setup.</summary>
static class WillRenameFeature
{
    public static FileOperationOptions Options { get; } = new(new FileOperationRegistrationOptions(
        [.. SiblingPrograms.Extensions.Select(extension => new FileOperationFilter(new FileOperationPattern("**/*" + extension)))]));

    /// <param name="files">What is to be renamed.</param>
    /// <param name="jobs">Where texts come from.</param>
    /// <param name="positions">How the client counts.</param>
    /// <param name="client">How it takes edits.</param>
    /// <param name="versionOf">The version of an open document; null where it is not open.</param>
    /// <param name="tell">Shows a sentence to the user.</param>
    /// <param name="cancel">Stops it.</param>
    public static WorkspaceEdit? Answer(
        FileRename[] files, JobLoader jobs, PositionMapper positions, ClientProfile client, Func<string, int?> versionOf, Action<string> tell, CancellationToken cancel)
    {
        List<(string Uri, TextEdit Edit)> edits = [];
        List<RenameFile> setups = [];
        foreach (var file in files)
        {
            if (DocumentUri.ToPath(file.OldUri) is not { } from || DocumentUri.ToPath(file.NewUri) is not { } to || jobs.TextOf(from) is not { } text)
                continue;
            if (client is { VersionedEdits: true, RenamesFiles: true } && SetupRename.Of(from, to, jobs) is { } setup)
                setups.Add(setup);
            FolderProgram[] programs = [new FolderProgram(from, text), .. jobs.FolderOf(from).Others(cancel)];
            var texts = programs.ToDictionary(program => program.Path, program => program.Text);
            var answer = FileRenaming.Of(programs, from, to, cancel);
            if (answer.Refusal is { } refusal)
                tell(refusal);
            foreach (var edit in answer.Edits)
                edits.Add((jobs.UriOf(edit.Path!), new TextEdit(
                    positions.ToRange(texts[edit.Path!], edit.Edit.Line, edit.Edit.StartColumn, edit.Edit.EndColumn), edit.Edit.NewText)));
        }
        if (edits.Count == 0 && setups.Count == 0)
            return null;
        var byFile = edits.GroupBy(edit => edit.Uri, edit => edit.Edit);
        return client.VersionedEdits
            ? new WorkspaceEdit(DocumentChanges: [.. byFile.Select(file => new TextDocumentEdit(new OptionalVersionedTextDocumentIdentifier(file.Key, versionOf(file.Key)), [.. file])), .. setups])
            : new WorkspaceEdit(Changes: byFile.ToDictionary(file => file.Key, file => file.ToArray()));
    }
}
