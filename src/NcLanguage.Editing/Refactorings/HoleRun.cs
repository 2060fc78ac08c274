using NcLanguage.Checks.Analysis;
using NcLanguage.Control.State;
using NcLanguage.Syntax.Lexing;

namespace NcLanguage.Editing.Refactorings;

/// <summary>An uninterrupted run of holes of a cycle, as the table of holes has it.</summary>
/// <param name="First">Index of its first hole.</param>
/// <param name="End">Index of the one after its last.</param>
readonly record struct HoleRun(HoleTable Table, int First, int End)
{
    public int Count => End - First;

    public int FirstLine => Table[First].Line;

    public int LastLine => Table[End - 1].Line;

    /// <summary>The run that the first of these lines which drills belongs to; null where none drills.</summary>
    public static HoleRun? In(ProgramAnalysis analysis, Lines lines, CancellationToken cancel)
    {
        var table = HoleTable.Of(analysis.Main);
        foreach (var line in Lines.Each(lines.First, lines.Last, cancel))
        {
            var (hole, count) = table.At(line);
            if (count == 0)
                continue;
            var (first, end) = table.RunOf(hole);
            return new HoleRun(table, first, end);
        }
        return null;
    }

    /// <summary>Why its blocks cannot be taken one after the other as they stand, one sentence; null where they can.</summary>
    public string? Obstacle(ProgramAnalysis analysis)
    {
        for (var i = First; i < End; i++)
            if (Table[i].File is not null)
                return "Holes of this run are drilled by a program in another file.";
        if (LastLine < FirstLine)
            return "The run of holes leaves the order of the text.";
        for (var line = FirstLine; line <= LastLine; line++)
        {
            var block = analysis.Text.BlockAt(line);
            if (block.Tokens.Length == 0)
                continue;
            if (analysis.Main.Flow is { } flow && flow.RunsOf(line) != 1)
                return $"Line {line + 1} does not run just once.";
            if (block.HasStatement || block.IndexOf('O') >= 0 || block.IndexOf('P') >= 0 && Checks.WordEdits.IndexOfCode(block, 'M', 98) >= 0)
                return $"Line {line + 1} stands in the way: it steers the order in which blocks run.";
            if (block.IsSkippable)
                return $"Line {line + 1} can be skipped by a switch at the machine.";
            if (analysis.Main.StateBefore(line).ProgramFrame is not null)
                return $"Line {line + 1} is read as polar words, scaled or rotated.";
        }
        return null;
    }
}
