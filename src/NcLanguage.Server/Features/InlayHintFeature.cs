using NcLanguage.Editing;
using NcLanguage.Server.Protocol;

namespace NcLanguage.Server.Features;

/// <summary>textDocument/inlayHint.</summary>
internal static class InlayHintFeature
{
    public static InlayHint[] Answer(FeatureContext context, TextRange range)
    {
        (int first, _) = context.Positions.ToPlace(context.Text, range.Start);
        (int last, _) = context.Positions.ToPlace(context.Text, range.End);
        return [.. InlayHints.In(context.Analysis, first, last).Select(hint =>
            new InlayHint(context.Positions.ToPosition(context.Text, hint.Line, hint.Column), hint.Text, hint.Tooltip, PaddingLeft: true, PaddingRight: false))];
    }
}
