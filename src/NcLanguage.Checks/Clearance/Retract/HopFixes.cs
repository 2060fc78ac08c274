using NcLanguage.Checks.Analysis;

namespace NcLanguage.Checks.Clearance;

/// <summary>The fixes that write the return words of a run of holes.</summary>
static class HopFixes
{
    public static IEnumerable<Fix> Clear(Finding finding, ProgramAnalysis analysis) =>
        Of(finding, analysis, HopAim.Clear, "Return to the initial level (G98) where the traverse needs it", Certainty.OfReading(analysis));

    public static IEnumerable<Fix> Fast(Finding finding, ProgramAnalysis analysis) =>
        Of(finding, analysis, HopAim.Fast, "Return to the R level (G99) where the traverse clears there", FixSafety.Choice);

    static IEnumerable<Fix> Of(Finding finding, ProgramAnalysis analysis, HopAim aim, string title, FixSafety safety)
    {
        if (HopPlan.For(analysis.Main, finding.Line, aim) is { } plan && plan.Serves(finding.Line))
            yield return new Fix(title, safety, plan.Edits());
    }
}
