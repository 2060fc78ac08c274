using NcLanguage.Checks;
using NcLanguage.Editing;
using NcLanguage.Server.Protocol;
using NcLanguage.Server.Rpc;
using NcLanguage.Syntax.Text;

namespace NcLanguage.Server.Features;

/// <summary>textDocument/codeAction and codeAction/resolve: a quick fix for each finding that has one, and one action that makes all
/// fixes that are certain; what writes the program in another way is in <see cref="RefactorFeature"/>. Edits that take work are left to the resolving
/// where the client can.</summary>
static class CodeActionFeature
{
    public const string QuickFix = "quickfix";
    public const string FixAll = "source.fixAll";

    public static CodeAction[] Answer(FeatureContext context, TextRange range, CodeActionContext? asked)
    {
        var only = asked?.Only is { } kinds ? Errors.Whole(kinds) : null;
        List<CodeAction> actions = [];
        if (IsWanted(QuickFix, only))
        {
            var (first, last) = context.Positions.ToLines(context.Text, range);
            foreach (var fix in Fixes.In(context.Analysis, first, last, DiagnosticPublisher.MostFindings, context.Cancel))
            {
                actions.Add(new CodeAction(
                    ShownText.Of(fix.Title), QuickFix, [context.Diagnostics.Map(context.Snapshot, context.Analysis, fix.Finding)],
                    fix.Safety == FixSafety.Safe ? true : null, ToEdit(context, fix.Edits)));
            }
        }
        // An editor asks for every kind at each movement of the cursor: the action on the whole text is offered where it is asked for.
        if (only is not null && IsWanted(FixAll, only))
        {
            var action = new CodeAction("Apply all fixes that are certain", FixAll, Data: new CodeActionData(context.Uri, context.Snapshot.Version));
            if (context.Client.ResolvesEdits && CertainFixes.HasAny(context.Analysis, context.Cancel))
                actions.Add(action);
            else if (!context.Client.ResolvesEdits && Fixes.AllSafe(context.Analysis, context.Cancel) is { Length: > 0 } edits)
                actions.Add(action with { Data = null, Edit = ToEdit(context, edits) });
        }
        actions.AddRange(RefactorFeature.Answer(context, range, asked));
        return [.. actions];
    }

    /// <summary>Puts the edits into an action offered before. The text must still be the one it was offered for.</summary>
    public static CodeAction Resolve(FeatureContext context, CodeAction action)
    {
        if (action.Data?.Version != context.Snapshot.Version)
            throw Errors.DocumentChanged();
        if (action.Data.Refactoring is { } refactoring)
            return RefactorFeature.Resolve(context, action, refactoring);
        return action with { Edit = ToEdit(context, Fixes.AllSafe(context.Analysis, context.Cancel)) };
    }

    internal static bool IsWanted(string kind, string[]? only) =>
        only is null || Array.Exists(only, asked => asked.Length == 0 || kind == asked || kind.StartsWith(asked + ".", StringComparison.Ordinal));

    static WorkspaceEdit ToEdit(FeatureContext context, IReadOnlyList<Edit> edits)
    {
        TextEdit[] changes = [.. edits.Select(edit => new TextEdit(context.Positions.ToRange(context.Text, edit.Line, edit.StartColumn, edit.EndColumn), edit.NewText))];
        return ToEdit(context.Client, context.Uri, context.Snapshot.Version, changes);
    }

    internal static WorkspaceEdit ToEdit(ClientProfile client, string uri, int version, TextEdit[] changes) => client.VersionedEdits
        ? new WorkspaceEdit(DocumentChanges: [new TextDocumentEdit(new OptionalVersionedTextDocumentIdentifier(uri, version), changes)])
        : new WorkspaceEdit(Changes: new() { [uri] = changes });
}
