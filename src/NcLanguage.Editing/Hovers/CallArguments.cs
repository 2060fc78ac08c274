using NcLanguage.Control.Codes;
using NcLanguage.Control.Execution;

namespace NcLanguage.Editing;

/// <summary>Which variable of the program called each letter of a G65 becomes.</summary>
static class CallArguments
{
    // By number from 1 on; G L N O P hand nothing over (common practice).
    const string Letters = "ABCIJKDEF_H_M___QRSTUVWXYZ";

    /// <summary>The number of the variable; 0 where the block calls no program with arguments, or the letter is none.</summary>
    public static int NumberOf(Step step, char letter) =>
        step.Words.Find(ModalGroup.MacroCall) is { } call && call.Code.TakesArguments ? Letters.IndexOf(letter, StringComparison.Ordinal) + 1 : 0;
}
