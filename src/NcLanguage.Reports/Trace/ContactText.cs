using NcLanguage.Checks;
using NcLanguage.Checks.Clearance;

namespace NcLanguage.Reports.Trace;

/// <summary>How deep a tool goes into what it meets.</summary>
public static class ContactText
{
    /// <summary>What would be told as nothing, mm: the findings call it a touch as well.</summary>
    const double LeastTold = 0.0005;

    /// <param name="distance">Least distance, mm; negative: how deep.</param>
    /// <returns>"2 mm deep"; "just touching" where that rounds to nothing.</returns>
    public static string Depth(double distance, LengthText lengths) => distance < -LeastTold ? $"{lengths.Length(-distance)} deep" : "just touching";

    /// <summary>Whether a distance counts as contact, as for the findings: one that is no more than an error of reckoning does.</summary>
    public static bool IsContact(double distance) => distance <= Sweep.ClearanceTolerance;
}
