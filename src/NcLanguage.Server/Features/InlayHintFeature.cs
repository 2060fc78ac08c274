using NcLanguage.Editing;
using NcLanguage.Server.Protocol;
using NcLanguage.Server.Rpc;

namespace NcLanguage.Server.Features;

/// <summary>textDocument/inlayHint and inlayHint/resolve: where a hint comes from, in words and as a place, is told when somebody looks, where the client asks.</summary>
static class InlayHintFeature
{
    public static InlayHint[] Answer(FeatureContext context, TextRange range)
    {
        (var first, _) = context.Positions.ToPlace(context.Text, range.Start);
        (var last, _) = context.Positions.ToPlace(context.Text, range.End);
        var isWhole = !context.Client.ResolvesHintTooltips && !context.Client.ResolvesHintPlaces;
        return [.. InlayHints.In(context.Analysis, first, last).Select(hint => new InlayHint(
            context.Positions.ToPosition(context.Text, hint.Line, hint.Column), new HintLabel(hint.Text, IsPart: context.Client.ResolvesHintPlaces),
            context.Client.ResolvesHintTooltips ? null : hint.Tooltip, PaddingLeft: true,
            Data: isWhole ? null : new InlayHintData(context.Uri, context.Snapshot.Version, hint.Line, hint.Column)))];
    }

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
