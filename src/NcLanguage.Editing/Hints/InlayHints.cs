using NcLanguage.Checks;
using NcLanguage.Checks.Analysis;
using NcLanguage.Control.Execution;
using NcLanguage.Control.Moves;
using NcLanguage.Control.State;
using NcLanguage.Machine.Profiles;
using NcLanguage.Syntax.Lexing;

namespace NcLanguage.Editing;

/// <summary>A short text shown in a line behind a byte column; both count from 0.</summary>
public sealed record HintAnswer(int Line, int Column, string Text, string Tooltip);

/// <summary>The true place of every hole whose text is not its place, and dwells in seconds.</summary>
public static class InlayHints
{
    /// <summary>The hints of the lines from <paramref name="firstLine"/> to <paramref name="lastLine"/> (0-based, both included).</summary>
    public static IReadOnlyList<HintAnswer> In(ProgramAnalysis analysis, int firstLine, int lastLine)
    {
        ArgumentNullException.ThrowIfNull(analysis);
        var hints = new List<HintAnswer>();
        firstLine = Math.Max(firstLine, 0);
        lastLine = Math.Min(lastLine, analysis.Text.LineCount - 1);
        if (firstLine > lastLine)
            return hints;
        var executor = analysis.Main.Job.Executor;
        var state = analysis.Main.StateBefore(firstLine);
        var step = new Step();
        for (var line = firstLine; line <= lastLine; line++)
        {
            var block = analysis.Main.BlockAt(line);
            executor.Run(block, ref state, step);
            if (step.Holes.Count > 0)
                AddHole(analysis, line, block, step, hints);
            AddDwell(analysis, line, block, step, hints);
        }
        return hints;
    }

    static void AddHole(ProgramAnalysis analysis, int line, in Block block, Step step, List<HintAnswer> hints)
    {
        var hole = step.Holes[0];
        var asDistance = step.After.Distance == DistanceMode.Incremental
            || analysis.Machine.Readings.HolePositions == HolePositionReading.Incremental;
        var isWritten = step.Words.Has('X') && step.Words.Has('Y');
        if (!double.IsFinite(hole.X + hole.Y) || (!asDistance && isWritten && step.Holes.Count == 1 && step.After.Units != LengthUnit.Inch))
            return;
        var last = step.Holes[^1];
        var text = step.Holes.Count == 1
            ? $"→ {Say.Place(hole.X, hole.Y)}"
            : $"→ {step.Holes.Count} holes, {Say.Place(hole.X, hole.Y)} to {Say.Place(last.X, last.Y)}";
        var number = HoleNumbers.Before(analysis.Main, line) + 1;
        hints.Add(new HintAnswer(line, EndOfPlace(block, step), text,
            step.Holes.Count == 1 ? $"Hole {number} is drilled here." : $"Holes {number} to {number + step.Holes.Count - 1} are drilled here."));
    }

    static int EndOfPlace(in Block block, Step step)
    {
        var end = -1;
        foreach (var letter in "XY")
            if (step.Words.Has(letter))
                end = Math.Max(end, block.Tokens[step.Words.TokenOf(letter)].End);
        return end >= 0 ? end : StepContext.WordsOf(block).End;
    }

    static void AddDwell(ProgramAnalysis analysis, int line, in Block block, Step step, List<HintAnswer> hints)
    {
        var letter = step.Words.Has('P') ? 'P' : step.Words.HasCode('G', 40) && step.Words.Has('X') ? 'X' : '\0';
        if (letter == '\0')
            return;
        foreach (ref readonly var move in step.Moves.Items)
        {
            if (move.Kind != MoveKind.Dwell || double.IsNaN(move.Seconds))
                continue;
            var reading = analysis.Machine.Readings.Dwell == DwellReading.Milliseconds ? "milliseconds" : "seconds";
            hints.Add(new HintAnswer(line, block.Tokens[step.Words.TokenOf(letter)].End, $"= {Say.Seconds(move.Seconds)}",
                $"Dwell as {analysis.Machine.Name} reads it ({(analysis.Machine.Readings.Dwell == DwellReading.ByPoint ? "by the decimal point" : "in " + reading)})."));
            return;
        }
    }
}
