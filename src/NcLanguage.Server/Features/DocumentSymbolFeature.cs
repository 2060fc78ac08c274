using NcLanguage.Editing;
using NcLanguage.Server.Protocol;

namespace NcLanguage.Server.Features;

/// <summary>textDocument/documentSymbol: the outline. A client that can't nest symbols gets them one after the other.</summary>
internal static class DocumentSymbolFeature
{
    public static DocumentSymbol[] Answer(FeatureContext context)
    {
        IEnumerable<OutlineItem> items = Outline.Of(context.Analysis, NameOf(context), context.Cancel);
        if (!context.Client.NestedSymbols) items = items.SelectMany(Flatten);
        return [.. items.Select(item => Map(context, item))];
    }

    /// <summary>What a text without a program number is called: its file's name.</summary>
    internal static string NameOf(FeatureContext context) => Path.GetFileName(context.Path) ?? "program";

    private static DocumentSymbol Map(FeatureContext context, OutlineItem item)
    {
        var whole = new TextRange(
            context.Positions.ToPosition(context.Text, item.FirstLine, 0),
            context.Positions.ToPosition(context.Text, item.LastLine, int.MaxValue));
        TextRange title = context.Positions.ToRange(context.Text, item.FirstLine, 0, int.MaxValue);
        DocumentSymbol[] children = context.Client.NestedSymbols ? [.. item.Children.Select(child => Map(context, child))] : [];
        // The protocol forbids an empty name.
        string name = string.IsNullOrWhiteSpace(item.Name) ? $"line {item.FirstLine + 1}" : item.Name;
        return new DocumentSymbol(name, item.Detail, Kind(item.Kind), whole, title, children);
    }

    private static IEnumerable<OutlineItem> Flatten(OutlineItem item) => item.Children.SelectMany(Flatten).Prepend(item);

    internal static SymbolKind Kind(OutlineKind kind) => kind switch
    {
        OutlineKind.Program => SymbolKind.Module,
        OutlineKind.Subroutine => SymbolKind.Function,
        OutlineKind.Tool => SymbolKind.Class,
        _ => SymbolKind.Method,
    };
}
