namespace NcLanguage.Checks.Rules;

/// <summary>Tells rules whose findings hang on where a datum lies: they hold places and levels against the setup, the drawing or the machine's travel.</summary>
static class HangsOnDatum
{
    public static bool Is(Rule rule) => rule.Info.Id[..3] switch
    {
        "NC2" => rule is HomeThroughWork,
        "NC3" => rule is RInsideStock or RFar or HoleAboveStock or ReturnHigherThanNeeded,
        "NC4" => rule is not (PathNotKnown or ToolSizeUnknown),
        "NC5" => rule is DeeperThanFlutes or PointNotThrough or PlungeWithEndMill,
        "NC7" => true,
        _ => false,
    };
}
