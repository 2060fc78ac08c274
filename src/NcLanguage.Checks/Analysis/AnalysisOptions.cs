namespace NcLanguage.Checks.Analysis;

/// <summary>What is asked of an analysis beside the program, the setup and the machine.</summary>
/// <param name="Portable">Report where other readings would change the outcome even though a machine was chosen.</param>
/// <param name="Skip">Pass over blocks with /.</param>
/// <param name="MentionMissingSetup">Say what is not checked where there is no setup file.</param>
public sealed record AnalysisOptions(bool Portable = false, bool Skip = false, bool MentionMissingSetup = false)
{
    public static AnalysisOptions Default { get; } = new();
}
