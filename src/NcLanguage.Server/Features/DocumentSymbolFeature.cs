using System.Text.Json;
using NcLanguage.Editing;
using NcLanguage.Server.Protocol;

namespace NcLanguage.Server.Features;

/// <summary>textDocument/documentSymbol: the outline. A client that can't nest symbols gets them one after the other, each with the name of what it stands in.</summary>
static class DocumentSymbolFeature
{
    /// <summary>DocumentSymbol[] or, for a client that does not know these, SymbolInformation[].</summary>
    public static JsonElement Answer(FeatureContext context)
    {
        var items = Outline.Of(context.Analysis, NameOf(context), context.Cancel);
        return context.Client.NestedSymbols
            ? JsonSerializer.SerializeToElement([.. items.Select(item => Map(context, item))], ProtocolJson.Default.DocumentSymbolArray)
            : JsonSerializer.SerializeToElement([.. items.SelectMany(item => Flat(context, item, null))], ProtocolJson.Default.SymbolInformationArray);
    }

    /// <summary>The outline of a file that has none.</summary>
    public static JsonElement Nothing { get; } = JsonSerializer.SerializeToElement([], ProtocolJson.Default.DocumentSymbolArray);

    /// <summary>What a text without a program number is called: its file's name.</summary>
    internal static string NameOf(FeatureContext context) => Path.GetFileName(context.Path) ?? "program";

    static DocumentSymbol Map(FeatureContext context, OutlineItem item)
    {
        var whole = Whole(context, item);
        var title = context.Positions.ToRange(context.Text, item.FirstLine, 0, int.MaxValue);
        DocumentSymbol[] children = [.. item.Children.Select(child => Map(context, child))];
        return new DocumentSymbol(NameOf(item), item.Detail, Kind(item.Kind), whole, title, children);
    }

    static TextRange Whole(FeatureContext context, OutlineItem item) => new(
        context.Positions.ToPosition(context.Text, item.FirstLine, 0), context.Positions.ToPosition(context.Text, item.LastLine, int.MaxValue));

    // The protocol forbids an empty name.
    static string NameOf(OutlineItem item) => string.IsNullOrWhiteSpace(item.Name) ? $"line {item.FirstLine + 1}" : item.Name;

    static IEnumerable<SymbolInformation> Flat(FeatureContext context, OutlineItem item, string? container) =>
        item.Children.SelectMany(child => Flat(context, child, NameOf(item))).Prepend(new SymbolInformation(NameOf(item), Kind(item.Kind), new Location(context.Uri, Whole(context, item)), container));

    internal static SymbolKind Kind(OutlineKind kind) => kind switch
    {
        OutlineKind.Program => SymbolKind.Module,
        OutlineKind.Subroutine => SymbolKind.Function,
        OutlineKind.Tool => SymbolKind.Class,
        _ => SymbolKind.Method,
    };
}
