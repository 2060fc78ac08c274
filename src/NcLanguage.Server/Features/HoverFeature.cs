using NcLanguage.Editing;
using NcLanguage.Server.Documents;
using NcLanguage.Server.Protocol;

namespace NcLanguage.Server.Features;

/// <summary>textDocument/hover.</summary>
internal static class HoverFeature
{
    public static Protocol.Hover? Answer(FeatureContext context, Position position)
    {
        (int line, int column) = context.Positions.ToPlace(context.Text, position);
        HoverAnswer? answer = Editing.Hover.At(context.Analysis, line, column);
        if (answer is null) return null;
        return new Protocol.Hover(context.Client.HoverText(answer.Markdown), context.Positions.ToRange(context.Text, answer.Line, answer.StartColumn, answer.EndColumn));
    }
}
