using NcLanguage.Control.Flow;

namespace NcLanguage.Checks.Analysis;

/// <summary>What is asked of an analysis beside the program, the setup and the machine.</summary>
/// <param name="Portable">Report where other readings would change the outcome even though a machine was chosen.</param>
/// <param name="Skip">Pass over blocks with /.</param>
/// <param name="MentionMissingSetup">Say what is not checked where there is no setup file.</param>
/// <param name="Programs">Where called programs are found that the program does not hold; null where nowhere.</param>
/// <param name="MostBlocks">Blocks that a run is followed for at most beside each line of the program once, where it leaves the order of the text.</param>
/// <param name="WithTwoHands">Run a large text with two threads: for one program that somebody waits for, not for many at a time.</param>
/// <param name="Once">No other version of the text will follow: nothing is kept for one.</param>
/// <param name="Rules">What is looked for; null for all there is.</param>
public sealed record AnalysisOptions(
    bool Portable = false, bool Skip = false, bool MentionMissingSetup = false, ICalledPrograms? Programs = null,
    int MostBlocks = AnalysisOptions.MostBlocksByDefault, bool WithTwoHands = false, bool Once = false, RuleSet? Rules = null)
{
    /// <summary>Enough for the passes of a surface cut in loops; a run in a loop that never ends takes seconds.</summary>
    public const int MostBlocksByDefault = 1_000_000;

    /// <summary>Few enough that a key struck in a file with such a loop is answered while the next is struck.</summary>
    public const int MostBlocksWhileTyping = 50_000;

    internal RuleSet RulesInForce => Rules ?? RuleSet.All;

    public static AnalysisOptions Default { get; } = new();
}
