using NcLanguage.Checks.Rules;

namespace NcLanguage.Checks.Drawing;

/// <summary>Tells errors that may change where a hole is made, how deep or how wide: where one stands at its block, what is wrong with the hole comes of it.</summary>
static class HoleCauses
{
    /// <summary>Text that is not read as meant, modes, cycles, and which blocks run at all do; what the tool meets on its way and how it cuts does not.</summary>
    public static bool MayBe(Rule rule) => AreaOf(rule) switch
    {
        "NC1" => true,
        "NC2" => rule is not (SpindleOff or SpindleReversed or SpeedMissing or FeedMissing or ToolChangeLow or HomeThroughWork),
        "NC3" => rule is not (DwellUnit or RInsideStock or ReturnReadDifferently or TapFeed or TapDirection),
        // A hole in a clamp is at a wrong place.
        "NC4" => rule is HoleUnderObstacle,
        "NC6" => rule is not (ProgramEndMissing or ToolNotInSetup or AlarmReached),
        _ => false,
    };

    static string AreaOf(Rule rule) => rule.Info.Id[..3];
}
