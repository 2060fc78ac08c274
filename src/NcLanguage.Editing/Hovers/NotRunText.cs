using NcLanguage.Control.Execution;
using NcLanguage.Syntax.Lexing;

namespace NcLanguage.Editing;

/// <summary>Why a block does not run.</summary>
static class NotRunText
{
    /// <summary>One sentence; empty for a block that runs.</summary>
    public static string Of(in Block block, Step step)
    {
        if ((step.Events & StepEvents.Skipped) != 0)
            return "**Passed over**: block skip is on.";
        if ((step.Events & StepEvents.NotRun) == 0)
            return "";
        return block.Tokens[0].Kind == TokenKind.Percent
            ? "**Does not run**: it stands on a line that marks the beginning or end of the file."
            : "**Does not run**: the program has ended above this block.";
    }
}
