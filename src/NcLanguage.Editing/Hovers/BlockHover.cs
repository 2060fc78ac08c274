using System.Text;
using NcLanguage.Checks;
using NcLanguage.Checks.Analysis;
using NcLanguage.Control.Execution;
using NcLanguage.Syntax.Lexing;

namespace NcLanguage.Editing;

/// <summary>What a block will do, in order: from where to where, at which level, how long, how close to what stands in the way; and
/// the state in force with the lines that set it.</summary>
static class BlockHover
{
    public static HoverAnswer Of(ProgramAnalysis analysis, int line, int column)
    {
        var (start, end) = RangeOf(analysis.Main.BlockAt(line));
        var step = analysis.Main.StepAt(line);
        var text = NotRunText.Of(analysis.Main.BlockAt(line), step);
        if (text.Length == 0)
            text = Text(analysis, line, step);
        return new HoverAnswer(text, line, Math.Min(start, column), Math.Max(end, column));
    }

    public static string Text(ProgramAnalysis analysis, int line, Step step)
    {
        var text = new StringBuilder(RunsText.Head(analysis, line, step));
        if (step.Holes.Count > 0)
            HoleText.AppendTitle(text, analysis, line, step);
        AppendMoves(text, analysis, step);
        text.Append(OffPathText.Of(step));
        if (step.Holes.Count > 0)
        {
            HoleText.AppendNext(text, analysis, line, step);
            text.Append(OtherReading.Text(analysis, line, step));
        }
        if (ClearanceText.Note(analysis, step) is { Length: > 0 } note)
            text.Append('\n').Append(note).Append('\n');
        return text.Append('\n').Append(StateText.InForce(analysis, line, step.After)).ToString();
    }

    static void AppendMoves(StringBuilder text, ProgramAnalysis analysis, Step step)
    {
        if (step.Moves.Count == 0)
        {
            var (lengths, at) = (Lengths.Of(step.After), step.After.Position);
            text.Append("Nothing moves. ").Append(double.IsNaN(at.X) && double.IsNaN(at.Y) && double.IsNaN(at.Z)
                ? $"Where the tool stands is {Lengths.NotKnown}.\n"
                : $"The tool stands at {lengths.Axis('X', at.X)}, {lengths.Axis('Y', at.Y)}, {lengths.Axis('Z', at.Z)}{CoordinatesText.Behind(analysis.Main, step.After)}.\n");
            return;
        }
        MoveList.Append(text, analysis, step);
        if (step.Moves.Count > 1 && step.Holes.Count == 0 && StepFacts.Seconds(step) is var seconds && !double.IsNaN(seconds))
            text.Append("\nIn all ").Append(Say.Seconds(seconds)).Append(".\n");
    }

    static (int Start, int End) RangeOf(in Block block)
    {
        var (start, end) = (-1, 0);
        foreach (ref readonly var token in block.Tokens)
        {
            if (token.IsComment)
                continue;
            start = start < 0 ? token.Start : start;
            end = token.End;
        }
        return (Math.Max(start, 0), end);
    }
}
