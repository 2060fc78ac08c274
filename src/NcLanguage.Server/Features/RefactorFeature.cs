using NcLanguage.Editing.Refactorings;
using NcLanguage.Server.Protocol;
using NcLanguage.Server.Rpc;
using NcLanguage.Syntax.Text;
using StreamJsonRpc.Protocol;

namespace NcLanguage.Server.Features;

/// <summary>The part of textDocument/codeAction and codeAction/resolve that writes a program in another way. To prove an edit the program is run, so the edits
/// are left to the resolving where the client can; to one that cannot, only what is proven is offered.</summary>
static class RefactorFeature
{
    /// <summary>Lines of a text of which all that fits is worked out at once, for clients that do not ask for the edits of the one chosen.</summary>
    const int LongestWithoutResolving = 5000;

    /// <summary>All kinds, each once.</summary>
    public static string[] Kinds { get; } = [.. RefactoringList.All.Select(refactoring => refactoring.Kind).Distinct()];

    public static IEnumerable<CodeAction> Answer(FeatureContext context, TextRange range, CodeActionContext? asked)
    {
        // Asked for at each movement of the cursor, an offer that is always there would only hide the fixes.
        if (asked is { TriggerKind: CodeActionContext.Automatic, Only: null })
            yield break;
        if (!context.Client.ResolvesEdits && context.Text.LineCount > LongestWithoutResolving)
            yield break;
        var lines = LinesOf(context, range);
        var isShort = context.Client.ResolvesEdits;
        foreach (var offer in RefactoringList.For(context.Analysis, lines, kind => CodeActionFeature.IsWanted(kind, asked?.Only), context.Cancel))
        {
            if (!isShort && !RefactoringList.CanWorkOutAll(context.Analysis, context.Cancel))
                yield break;
            isShort = true;
            var action = new CodeAction(ShownText.Of(offer.Title), offer.Refactoring.Kind);
            var asking = new RefactoringData(offer.Refactoring.Name, lines.First, lines.Last, lines.IsCursor);
            if (context.Client.ResolvesEdits)
                yield return action with { Data = new CodeActionData(context.Uri, context.Snapshot.Version, asking) };
            else if (offer.Refactoring.Of(context.Analysis, lines, context.Cancel) is { Refusal: null } result)
                yield return action with { Edit = ToEdit(context, result) };
        }
    }

    /// <summary>Works out an action's edits; where they are not proven the request fails with the reason.</summary>
    public static CodeAction Resolve(FeatureContext context, CodeAction action, RefactoringData asking)
    {
        if (RefactoringList.Find(asking.Name) is not { } refactoring)
            return action;
        var last = context.Text.LineCount - 1;
        var lines = new Lines(Math.Clamp(asking.First, 0, last), Math.Clamp(asking.Last, 0, last), asking.IsCursor);
        var result = refactoring.Of(context.Analysis, lines, context.Cancel);
        return result.Refusal is null ? action with { Edit = ToEdit(context, result) } : throw Errors.Refused(result.Refusal);
    }

    static Lines LinesOf(FeatureContext context, TextRange range)
    {
        var isCursor = context.Positions.ToPlace(context.Text, range.Start) == context.Positions.ToPlace(context.Text, range.End);
        var (first, last) = context.Positions.ToMarkedLines(context.Text, range);
        return new Lines(first, last, isCursor);
    }

    static WorkspaceEdit ToEdit(FeatureContext context, RefactoringResult result)
    {
        var map = new PlaceMap(context);
        return CodeActionFeature.ToEdit(
            context.Client, context.Uri, context.Snapshot.Version, [.. result.Edits.Select(edit => new TextEdit(map.Range(null, edit.Stretch), edit.NewText))]);
    }
}
