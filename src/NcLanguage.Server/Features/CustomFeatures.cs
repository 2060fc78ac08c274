using NcLanguage.Editing;
using NcLanguage.Server.Protocol;

namespace NcLanguage.Server.Features;

/// <summary>nclanguage/stateAt and nclanguage/holes.</summary>
static class CustomFeatures
{
    public static StateAnswer? StateAt(FeatureContext context, Position position) =>
        Editing.StateAt.Line(context.Analysis, context.Positions.ToPlace(context.Text, position).Line);

    public static HolesAnswer Holes(FeatureContext context) => HoleAnswers.Of(context.Analysis, context.Cancel);
}
