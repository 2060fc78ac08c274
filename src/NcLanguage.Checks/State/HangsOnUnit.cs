namespace NcLanguage.Checks.Rules;

/// <summary>Tells rules whose findings hang on the unit of a program's numbers: what they hold these against are lengths of the setup, the drawing or the machine.</summary>
static class HangsOnUnit
{
    public static bool Is(Rule rule) => rule.Info.Id[..3] switch
    {
        // Radii of tools; what rounding in the other unit leaves between an arc's two radii.
        "NC2" => rule is CompensationEntry or CompensationCorner or ArcRadiusMismatch or HomeThroughWork or ToolChangeLow,
        "NC3" => rule is RInsideStock or RFar or HoleAboveStock or PeckMissing or PeckStep or TapFeed or ReturnHigherThanNeeded,
        "NC4" => rule is not (PathNotKnown or ToolSizeUnknown),
        // Speeds, and the sizes of the tools at one place.
        "NC5" => rule is not (SpeedOverMachine or CuttingSpeedRule or TapDrillSize or HoleSize),
        "NC7" => true,
        _ => false,
    };
}
