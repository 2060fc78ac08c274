using NcLanguage.Editing;
using NcLanguage.Server.Protocol;

namespace NcLanguage.Server.Features;

/// <summary>textDocument/definition, declaration, references and documentHighlight.</summary>
static class NavigationFeature
{
    public static Location[] Definition(FeatureContext context, Position position)
    {
        (var line, var column) = context.Positions.ToPlace(context.Text, position);
        var map = new PlaceMap(context);
        return [.. Editing.Definition.Of(context.Analysis, line, column, context.Path, context.Folder, context.Cancel).Select(map.Location)];
    }

    public static Location[] References(FeatureContext context, Position position, bool withDefinition)
    {
        (var line, var column) = context.Positions.ToPlace(context.Text, position);
        var map = new PlaceMap(context);
        return [.. Editing.References.Of(context.Analysis, line, column, withDefinition, context.Path, context.Folder, context.Cancel).Select(map.Location)];
    }

    public static DocumentHighlight[] Highlights(FeatureContext context, Position position)
    {
        (var line, var column) = context.Positions.ToPlace(context.Text, position);
        return [.. Editing.References.Highlights(context.Analysis, line, column, context.Cancel).Select(use => new DocumentHighlight(
            context.Positions.ToRange(context.Text, use.Line, use.Start, use.End),
            use.Role is UseRole.Read or UseRole.Call ? DocumentHighlightKind.Read : DocumentHighlightKind.Write))];
    }
}
