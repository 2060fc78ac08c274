using System.Text;
using NcLanguage.Checks;
using NcLanguage.Checks.Analysis;
using NcLanguage.Control.Execution;
using NcLanguage.Control.Moves;

namespace NcLanguage.Editing;

/// <summary>The moves of a step as a numbered list, in the order they are made.</summary>
static class MoveList
{
    /// <summary>Moves told one by one; a block with more says how many it leaves out.</summary>
    const int MostItems = 24;

    public static void Append(StringBuilder text, ProgramAnalysis analysis, Step step)
    {
        var (item, at) = (0, 0);
        while (at < step.Moves.Count && item < MostItems)
        {
            var end = EndOfPecks(step, at);
            text.Append(++item).Append(". ");
            if (end - at > 1)
            {
                text.Append(MoveText.Pecks(step, at, end)).Append(ClearanceText.Of(analysis, step, at, end));
                at = end;
            }
            else
            {
                text.Append(MoveText.Of(step, at)).Append(ClearanceText.Of(analysis, step, at, at + 1));
                at++;
            }
            text.Append('\n');
        }
        if (at < step.Moves.Count)
            text.Append("\n… and ").Append(Say.Count(step.Moves.Count - at, "further move")).Append(".\n");
    }

    /// <summary>The end of the strokes that begin at a move; the move itself where none do.</summary>
    static int EndOfPecks(Step step, int at)
    {
        if (step.Holes.Count == 0 || step.Holes[0].Cycle is not (73 or 83))
            return at;
        while (at < step.Moves.Count && step.Moves[at].Role == MoveRole.InHole)
            at++;
        return at;
    }
}
