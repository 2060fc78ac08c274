using NcLanguage.Checks;
using NcLanguage.Checks.Analysis;
using NcLanguage.Control.Execution;
using NcLanguage.Control.State;

namespace NcLanguage.Editing;

/// <summary>The holes that the block of a line drills over all its runs, those of a program in another file that it calls included.</summary>
/// <param name="First">Index of the first of them in the hole table.</param>
readonly record struct LineHoles(int First, int Count)
{
    /// <summary>For the lines from <paramref name="firstLine"/> to <paramref name="lastLine"/> (0-based, both included); none for a run that keeps to
    /// the order of the text.</summary>
    public static Dictionary<int, LineHoles> In(ProgramRun run, int firstLine, int lastLine)
    {
        var holes = new Dictionary<int, LineHoles>();
        if (run.Flow is null)
            return holes;
        var index = 0;
        for (var part = 0; part < run.Results.Length; part++)
        {
            var drilled = run.Results[part].Holes;
            // Of most parts no block stands in these lines, which shows sooner than hole by hole.
            if (drilled.Length > 0 && run.Results[part].Lines.AsSpan().ContainsAnyInRange(firstLine, lastLine))
                for (var i = 0; i < drilled.Length; i++)
                {
                    var line = run.LineOf(part, drilled.LineOf(i));
                    if (line >= firstLine && line <= lastLine)
                        holes[line] = holes.TryGetValue(line, out var known) ? known with { Count = known.Count + 1 } : new LineHoles(index + i, 1);
                }
            index += drilled.Length;
        }
        return holes;
    }

    /// <summary>→ 8 holes, first X40 Y0</summary>
    public HintAnswer Hint(HoleTable table, int line, int column, in ControlState state)
    {
        var row = table[First];
        var text = "→ " + Say.Count(Count, "hole");
        var isPlaced = row.Plane == WorkPlane.XY && double.IsFinite(row.Hole.X + row.Hole.Y);
        if (isPlaced)
            text += (Count == 1 ? " " : ", first ") + Lengths.Of(state).Place(new Place('X', row.Hole.X, 'Y', row.Hole.Y));
        if (text.Length > InlayHints.LongestText)
            text = "→ " + Say.Count(Count, "hole");
        var where = row.File is { } file ? $"in {file}" : "by this block";
        var coordinates = isPlaced ? CoordinatesText.Behind(table, row, state) : "";
        return new HintAnswer(line, column, text, Count == 1
            ? $"Hole {row.Number} is drilled {where}{coordinates}."
            : $"{Count} holes are drilled {where} over all its runs; hole {row.Number} is the first{coordinates}.");
    }
}
