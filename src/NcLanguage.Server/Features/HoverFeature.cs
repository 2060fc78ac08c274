using NcLanguage.Editing;
using NcLanguage.Server.Documents;
using NcLanguage.Server.Protocol;

namespace NcLanguage.Server.Features;

/// <summary>textDocument/hover.</summary>
static class HoverFeature
{
    public static Protocol.Hover? Answer(FeatureContext context, Position position)
    {
        (var line, var column) = context.Positions.ToPlace(context.Text, position);
        var answer = Editing.Hover.At(context.Analysis, line, column);
        if (answer is null)
            return null;
        return new Protocol.Hover(context.Client.HoverText(answer.Markdown), context.Positions.ToRange(context.Text, answer.Line, answer.StartColumn, answer.EndColumn));
    }
}
