using System.Text;
using NcLanguage.Checks;
using NcLanguage.Checks.Analysis;
using NcLanguage.Control.Execution;
using NcLanguage.Control.Moves;

namespace NcLanguage.Editing;

/// <summary>What a block will do, in order: from where to where, at which level, how long, how close to what stands in the way.</summary>
static class BlockHover
{
    /// <summary>Moves told one by one; a block with more says how many it leaves out.</summary>
    const int MostMoves = 24;

    public static HoverAnswer Of(ProgramAnalysis analysis, int line)
    {
        var (start, end) = StepContext.WordsOf(analysis.Main.BlockAt(line));
        return new HoverAnswer(Text(analysis, line), line, start, end);
    }

    public static string Text(ProgramAnalysis analysis, int line)
    {
        var step = analysis.Main.StepAt(line);
        var text = new StringBuilder();
        if ((step.Events & StepEvents.NotRun) != 0)
            return "This block does not run: the program has ended above it.";
        if ((step.Events & StepEvents.Skipped) != 0)
            return "This block is passed over: block skip is on.";
        AppendHoles(text, analysis, line, step);
        AppendMoves(text, analysis, step);
        AppendReadDifferently(text, analysis, line, step);
        text.Append("\n\n---\n").Append(StateText.InForce(analysis, line, step.After));
        return text.ToString().Trim();
    }

    static void AppendHoles(StringBuilder text, ProgramAnalysis analysis, int line, Step step)
    {
        if (step.Holes.Count == 0)
            return;
        var first = HoleNumbers.Before(analysis.Main, line) + 1;
        var last = first + step.Holes.Count - 1;
        var hole = step.Holes[0];
        text.Append(first == last ? $"**Hole {first}**" : $"**Holes {first} to {last}**")
            .Append($" at {Say.Place(hole.X, hole.Y)}, G{hole.Cycle}, from {Say.Level(hole.RLevel)} to {Say.Level(hole.Bottom)}");
        if (first != last)
            text.Append($", the last at {Say.Place(step.Holes[^1].X, step.Holes[^1].Y)}");
        text.Append("\n\n");
    }

    static void AppendMoves(StringBuilder text, ProgramAnalysis analysis, Step step)
    {
        if (step.Moves.Count == 0)
        {
            text.Append("Nothing moves in this block.\n");
            return;
        }
        var seconds = 0.0;
        for (var i = 0; i < step.Moves.Count; i++)
        {
            ref readonly var move = ref step.Moves[i];
            seconds += move.Seconds;
            if (i < MostMoves)
                text.Append(i + 1).Append(". ").Append(MoveText.Of(move, step, i)).Append(ClearanceText.Of(analysis, step, move)).Append('\n');
        }
        if (step.Moves.Count > MostMoves)
            text.Append("\n… and ").Append(Say.Count(step.Moves.Count - MostMoves, "further move")).Append(".\n");
        if (step.Moves.Count > 1)
            text.Append("\nIn all ").Append(Say.Seconds(seconds)).Append(".\n");
    }

    static void AppendReadDifferently(StringBuilder text, ProgramAnalysis analysis, int line, Step step)
    {
        if (step.Holes.Count == 0 || OtherReading.HoleAt(analysis, line) is not { } other)
            return;
        var here = step.Holes[0];
        if (Math.Abs(here.X - other.X) > 1e-6 || Math.Abs(here.Y - other.Y) > 1e-6)
            text.Append($"\nA control that reads cycle positions {OtherReading.PositionsName(analysis)} drills at {Say.Place(other.X, other.Y)}.\n");
    }
}
