using NcLanguage.Editing;
using NcLanguage.Server.Protocol;

namespace NcLanguage.Server.Features;

/// <summary>textDocument/foldingRange, selectionRange and documentLink.</summary>
static class StructureFeature
{
    public static FoldingRange[] Foldings(FeatureContext context) =>
        [.. Editing.Foldings.Of(context.Analysis, context.Cancel).Select(fold => new FoldingRange(fold.FirstLine, fold.LastLine, fold.IsComment ? "comment" : "region"))];

    public static SelectionRange[] Selections(FeatureContext context, Position[] positions)
    {
        var outline = Outline.Of(context.Analysis, cancel: context.Cancel);
        var map = new PlaceMap(context);
        return [.. positions.Select(position =>
        {
            (var line, var column) = context.Positions.ToPlace(context.Text, position);
            SelectionRange? range = null;
            foreach (var stretch in SelectionRanges.At(context.Analysis, outline, line, column).Reverse())
                range = new SelectionRange(map.Range(null, stretch), range);
            return range!;
        })];
    }

    public static DocumentLink[] Links(FeatureContext context) =>
        [.. ProgramLinks.Of(context.Analysis, context.Cancel).Select(link => new DocumentLink(
            context.Positions.ToRange(context.Text, link.Line, link.StartColumn, link.EndColumn), context.Jobs.UriOf(link.Path), link.IsProgram ? "Open the program called" : "Open " + System.IO.Path.GetFileName(link.Path)))];
}
