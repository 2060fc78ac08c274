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
    /// <summary>Editors cut what is longer.</summary>
    public const int LongestText = 43;

    /// <summary>The hints of the lines from <paramref name="firstLine"/> to <paramref name="lastLine"/> (0-based, both included). Runs the blocks
    /// of these lines and, before them, at most those of one chunk.</summary>
    /// <exception cref="OperationCanceledException">The token was cancelled.</exception>
    public static IReadOnlyList<HintAnswer> In(ProgramAnalysis analysis, int firstLine, int lastLine, CancellationToken cancel = default)
    {
        ArgumentNullException.ThrowIfNull(analysis);
        var hints = new List<HintAnswer>();
        firstLine = Math.Max(firstLine, 0);
        lastLine = Math.Min(lastLine, analysis.Text.LineCount - 1);
        if (firstLine > lastLine)
            return hints;
        var executor = analysis.Main.Job.Executor;
        var holes = HoleTable.Of(analysis.Main);
        var overRuns = LineHoles.In(analysis.Main, firstLine, lastLine);
        var state = analysis.Main.StateBefore(firstLine);
        var (step, ahead) = analysis.Main.StepWithAhead();
        for (var line = firstLine; line <= lastLine; line++)
        {
            cancel.ThrowIfCancellationRequested();
            var block = analysis.Main.BlockAt(line);
            if (block.Tokens.Length == 0)
                continue;
            // Where the run leaves the order of the text, each block is met as the run first came to it.
            ahead.Line = line;
            if (analysis.Main.Flow is null)
                executor.Run(block, ref state, step);
            else
                step = analysis.Main.StepAt(line);
            if (overRuns.TryGetValue(line, out var all) && all.Count > step.Holes.Count)
                hints.Add(all.Hint(holes, line, EndOfPlace(block, step), step.After));
            else if (step.Holes.Count > 0)
                AddHole(analysis, holes, line, block, step, hints);
            if (step.Moves.Count > 0)
                AddDwell(analysis, line, block, step, hints);
        }
        return hints;
    }

    /// <summary>The line (0-based) of the block above that started the cycle whose hole a hint tells; −1 where the hint's own block says all.</summary>
    public static int SourceOf(ProgramAnalysis analysis, HintAnswer hint)
    {
        ArgumentNullException.ThrowIfNull(analysis);
        ArgumentNullException.ThrowIfNull(hint);
        var step = analysis.Main.StepAt(hint.Line);
        return step.Holes.Count > 0 && (step.Sets & Slot.Cycle) == 0 ? analysis.Main.LastSetterBefore(Slot.Cycle, hint.Line) : -1;
    }

    static void AddHole(ProgramAnalysis analysis, HoleTable holes, int line, in Block block, Step step, List<HintAnswer> hints)
    {
        var place = Place.OfHole(step, 0);
        if (!place.IsKnown || IsItsText(analysis, block, step, place))
            return;
        var lengths = Lengths.Of(step.After);
        var count = step.Holes.Count;
        var last = Place.OfHole(step, count - 1);
        var text = "→ " + (count == 1 ? lengths.Place(place) : place.IsAt(last) ? $"{count} times {lengths.Place(place)}" : $"{count} holes, last {lengths.Place(last)}");
        if (text.Length > LongestText)
            return;
        var first = holes.At(line).First + 1;
        var coordinates = CoordinatesText.Behind(analysis.Main, step.After);
        hints.Add(new HintAnswer(line, EndOfPlace(block, step), text, count == 1
            ? $"Hole {first} is drilled here{coordinates}."
            : $"Holes {first} to {first + count - 1} are drilled here, the first at {lengths.Place(place)}{coordinates}."));
    }

    /// <summary>Whether the block's words are the place of its one hole, as plain numbers.</summary>
    static bool IsItsText(ProgramAnalysis analysis, in Block block, Step step, in Place place) =>
        step.Holes.Count == 1
        && step.After.ProgramFrame is null
        && step.After.Distance == DistanceMode.Absolute
        && analysis.Machine.Readings.HolePositions == HolePositionReading.DistanceMode
        && IsPlain(analysis, block, step, place.FirstLetter)
        && IsPlain(analysis, block, step, place.SecondLetter);

    static bool IsPlain(ProgramAnalysis analysis, in Block block, Step step, char letter)
    {
        if (!step.Words.Has(letter))
            return false;
        var token = block.Tokens[step.Words.TokenOf(letter)];
        return !token.IsExpression && (token.HasPoint || token.Value == 0 || analysis.Machine.Readings.Integers == IntegerReading.Whole);
    }

    /// <summary>Behind the words of the hole's place, else behind all words of the block.</summary>
    static int EndOfPlace(in Block block, Step step)
    {
        var end = -1;
        if (step.Holes.Count > 0)
        {
            var place = Place.OfHole(step, 0);
            foreach (var letter in (ReadOnlySpan<char>)[place.FirstLetter, place.SecondLetter])
                if (step.Words.Has(letter))
                    end = Math.Max(end, block.Tokens[step.Words.TokenOf(letter)].End);
        }
        return end >= 0 ? end : StepContext.WordsOf(block).End;
    }

    static void AddDwell(ProgramAnalysis analysis, int line, in Block block, Step step, List<HintAnswer> hints)
    {
        var letter = step.Words.Has('P') ? 'P' : step.Words.HasCode('G', 40) && step.Words.Has('X') ? 'X' : '\0';
        if (letter == '\0')
            return;
        foreach (ref readonly var move in step.Moves.Items)
        {
            if (move.Kind != MoveKind.Dwell || !double.IsFinite(move.Seconds))
                continue;
            var text = "= " + Times.Of(move.Seconds);
            var reading = DwellReadings.IsByPoint(letter, analysis.Machine.Readings) ? "by the decimal point"
                : DwellReadings.IsMilliseconds(letter, hasPoint: true, analysis.Machine.Readings) ? "in milliseconds" : "in seconds";
            if (text.Length <= LongestText)
                hints.Add(new HintAnswer(line, block.Tokens[step.Words.TokenOf(letter)].End, text, $"Dwell, read {reading} by {analysis.Machine.Name}."));
            return;
        }
    }
}
