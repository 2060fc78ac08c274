using NcLanguage.Control.Codes;

namespace NcLanguage.Reports.Explain;

/// <summary>Units of words, in words.</summary>
static class UnitText
{
    /// <summary>The unit; empty where there is none to tell.</summary>
    public static string Of(WordUnit unit) => unit switch
    {
        WordUnit.Length => "in mm or inch",
        WordUnit.Degrees => "in degrees",
        WordUnit.Feed => "in the unit of the feed mode",
        WordUnit.Speed => "in rev/min",
        WordUnit.Dwell => "in seconds or milliseconds by the reading dwell",
        _ => "",
    };
}
