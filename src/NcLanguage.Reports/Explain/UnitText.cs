using NcLanguage.Control.Codes;

namespace NcLanguage.Reports.Explain;

/// <summary>Units of words, in words.</summary>
static class UnitText
{
    /// <summary>The unit; empty where there is none to tell.</summary>
    public static string Of(WordUnit unit, char letter) => unit switch
    {
        WordUnit.Length => "in mm or inch",
        WordUnit.Degrees => "in degrees",
        WordUnit.Feed => "in the unit of the feed mode",
        WordUnit.Speed => "in rev/min",
        WordUnit.Dwell when letter == 'X' => "in seconds; without a point in milliseconds where the reading dwell is byPoint or integers is increments",
        WordUnit.Dwell => "in seconds or milliseconds by the reading dwell",
        _ => "",
    };
}
