using NcLanguage.Checks.Analysis;
using NcLanguage.Editing;
using NcLanguage.Server.Protocol;
using NcLanguage.Server.Rpc;
using NcLanguage.Syntax.Text;

namespace NcLanguage.Server.Features;

/// <summary>textDocument/inlayHint and inlayHint/resolve: where a hint comes from, in words and as a place, is told when somebody looks, where the client asks.</summary>
static class InlayHintFeature
{
    public static InlayHint[] Answer(FeatureContext context, TextRange range)
    {
        var (first, last) = context.Positions.ToLines(context.Text, range);
        // Behind the last whole word of the line that is being written a hint would stand in the way of the next, and move with each key: it comes when the keys rest.
        var typed = context.Client.RefreshesInlayHints && context.Snapshot.Typing is { IsFlowing: true } keys ? keys.Line : -1;
        var isWhole = !context.Client.ResolvesHintTooltips && !context.Client.ResolvesHintPlaces;
        return [.. InlayHints.In(context.Analysis, first, last, context.Cancel).Where(hint => hint.Line != typed || !IsBehindWords(context.Text, hint)).Select(hint => new InlayHint(
            context.Positions.ToPosition(context.Text, hint.Line, hint.Column), new HintLabel(hint.Text, IsPart: context.Client.ResolvesHintPlaces),
            context.Client.ResolvesHintTooltips ? null : hint.Tooltip, PaddingLeft: true,
            Data: isWhole ? null : new InlayHintData(context.Uri, context.Snapshot.Version, hint.Line, hint.Column)))];
    }

    /// <summary>Whether a hint was held back while keys flowed into a line.</summary>
    public static bool IsHeldBack(SourceText text, ProgramAnalysis analysis, int line) => InlayHints.In(analysis, line, line).Any(hint => IsBehindWords(text, hint));

    /// <summary>Whether no word with a number follows.</summary>
    static bool IsBehindWords(SourceText text, HintAnswer hint) => !text.Line(hint.Line)[hint.Column..].ContainsAnyInRange((byte)'0', (byte)'9');

    /// <summary>Adds what the client leaves for later.</summary>
    public static InlayHint Resolve(FeatureContext context, InlayHint hint)
    {
        if (hint.Data?.Version != context.Snapshot.Version)
            throw Errors.DocumentChanged();
        (var line, var column) = (hint.Data.Line, hint.Data.Column);
        foreach (var answer in InlayHints.In(context.Analysis, line, line))
        {
            if (answer.Column != column)
                continue;
            var source = InlayHints.SourceOf(context.Analysis, answer);
            var place = source < 0 ? null : new Location(context.Uri, context.Positions.ToRange(context.Text, source, 0, int.MaxValue));
            return hint with { Tooltip = answer.Tooltip, Label = hint.Label with { Place = hint.Label.IsPart ? place : null } };
        }
        return hint;
    }
}
