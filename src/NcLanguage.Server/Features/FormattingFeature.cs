using NcLanguage.Editing;
using NcLanguage.Editing.Formatting;
using NcLanguage.Server.Protocol;
using NcLanguage.Server.Rpc;
using StreamJsonRpc.Protocol;

namespace NcLanguage.Server.Features;

/// <summary>textDocument/formatting, rangeFormatting and onTypeFormatting, and textDocument/inlineValue.</summary>
static class FormattingFeature
{
    /// <summary>A line is tidied when the next one is begun.</summary>
    public const string Trigger = "\n";

    public static TextEdit[] Whole(FeatureContext context) => Lines(context, 0, context.Text.LineCount - 1);

    public static TextEdit[] Range(FeatureContext context, TextRange range)
    {
        var (first, last) = context.Positions.ToMarkedLines(context.Text, range);
        return Lines(context, first, last);
    }

    public static TextEdit[] OnType(FeatureContext context, Position position)
    {
        (var line, _) = context.Positions.ToPlace(context.Text, position);
        return line == 0 ? [] : Map(context, FormatEdits.OfLine(context.Text, line - 1));
    }

    public static InlineValueText[] Values(FeatureContext context, TextRange range, InlineValueContext? asked)
    {
        var (first, last) = context.Positions.ToLines(context.Text, range);
        int? stopped = asked?.StoppedLocation is { } place ? context.Positions.ToPlace(context.Text, place.End).Line : null;
        return [.. InlineValues.In(context.Analysis, first, last, stopped, context.Cancel).Select(value =>
            new InlineValueText(context.Positions.ToRange(context.Text, value.Line, value.Start, value.End), value.Text))];
    }

    static TextEdit[] Lines(FeatureContext context, int first, int last)
    {
        var (edits, refusal) = FormatEdits.Of(context.Analysis, first, last, context.Cancel);
        return refusal is null ? Map(context, edits) : throw Errors.Refused(refusal);
    }

    static TextEdit[] Map(FeatureContext context, IReadOnlyList<RangeEdit> edits)
    {
        var map = new PlaceMap(context);
        return [.. edits.Select(edit => new TextEdit(map.Range(null, edit.Stretch), edit.NewText))];
    }
}
