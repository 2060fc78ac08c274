using System.Globalization;
using NcLanguage.Editing;
using NcLanguage.Server.Protocol;
using NcLanguage.Server.Rpc;

namespace NcLanguage.Server.Features;

/// <summary>textDocument/completion and completionItem/resolve. Every item brings its own edit; documentation from the tables is left to the resolving.</summary>
static class CompletionFeature
{
    /// <summary>Beside letters, which every client completes by itself: what begins a variable and an expression. A blank is none: a list that
    /// opens at a line's end takes the Enter that was meant to end the line.</summary>
    public static readonly string[] TriggerCharacters = ["#", "["];

    public static readonly CompletionList Nothing = new(IsIncomplete: false, []);

    public static CompletionList Answer(FeatureContext context, Position position)
    {
        (var line, var column) = context.Positions.ToPlace(context.Text, position);
        var answer = Completion.At(context.Analysis, line, column, context.Client.Snippets);
        if (answer.Entries.IsEmpty)
            return Nothing;
        var range = context.Positions.ToRange(context.Text, answer.Line, answer.StartColumn, answer.EndColumn);
        return new CompletionList(answer.IsIncomplete, [.. answer.Entries.Select((entry, index) => Map(context.Client, entry, range, index))]);
    }

    /// <summary>Adds the documentation; an item without a topic comes back as it is.</summary>
    public static CompletionItem Resolve(ClientProfile client, CompletionItem item) =>
        item.Data is { } topic && CompletionTopics.Documentation(topic) is { } text ? item with { Documentation = client.CompletionText(text) } : item;

    static CompletionItem Map(ClientProfile client, CompletionEntry entry, TextRange range, int rank) => new(
        entry.Label,
        Kind(entry.Kind),
        entry.Detail,
        entry.Documentation is { } text ? client.CompletionText(text) : null,
        // A client sorts by its letters what fits equally well.
        rank.ToString("0000", CultureInfo.InvariantCulture),
        entry.FilterText,
        entry.IsSnippet ? InsertTextFormat.Snippet : null,
        new TextEdit(range, entry.NewText),
        entry.Topic);

    static CompletionItemKind Kind(CompletionKind kind) => kind switch
    {
        CompletionKind.Cycle or CompletionKind.Function => CompletionItemKind.Function,
        CompletionKind.Word => CompletionItemKind.Field,
        CompletionKind.Value => CompletionItemKind.Value,
        CompletionKind.Lines => CompletionItemKind.Snippet,
        CompletionKind.Variable => CompletionItemKind.Variable,
        CompletionKind.BlockNumber => CompletionItemKind.Reference,
        CompletionKind.Program => CompletionItemKind.Module,
        CompletionKind.Rule => CompletionItemKind.Enum,
        _ => CompletionItemKind.Keyword,
    };
}
