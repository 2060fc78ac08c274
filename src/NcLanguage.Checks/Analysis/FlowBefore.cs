using NcLanguage.Control.Flow;
using NcLanguage.Control.State;

namespace NcLanguage.Checks.Analysis;

/// <summary>The run of the version before, in which that of an edited text finds the stretches that it need not go through again: the same blocks, met in the same state, with no call
/// under way. It serves texts that do no more than call; jumps and loops are followed anew.</summary>
sealed class FlowBefore
{
    readonly FlowRun _run;
    readonly LineMap _lines;

    /// <summary>The blocks around the edit, as lines (0-based) of the text before: what runs behind the one and before the other is another thing now.</summary>
    readonly (int Before, int Behind) _edges;

    FlowBefore(FlowRun run, LineMap lines)
    {
        (_run, _lines) = (run, lines);
        var (before, behind) = lines.Gone;
        for (before--; before >= 0 && run.First[before].Part < 0;)
            before--;
        while (behind < run.First.Length && run.First[behind].Part < 0)
            behind++;
        _edges = (before, behind);
    }

    /// <summary>The run before, where it can serve a new version of the text; else null.</summary>
    public static FlowBefore? Of(FlowRun? run, FlowText text)
    {
        if (run is not { MayServe: true })
            return null;
        var lines = new LineMap(run.Text.Text, text.Text);
        return text.CallsAs(run.Text, lines.Same) ? new FlowBefore(run, lines) : null;
    }

    /// <summary>The stretch that began at a block met in a state, with no call under way; −1 where none did.</summary>
    /// <param name="line">The line (0-based) of the block in the new text.</param>
    /// <param name="state">What it meets.</param>
    public int From(int line, in ControlState state) =>
        _lines.SameBefore(line) is >= 0 and var old && _run.First[old] is { IsReached: true, At: 0, Part: var first } && _run.Stretches[first].IsOutermost && _run.Parts[first].Entry == state
            ? first : -1;

    /// <summary>The stretch that a run from one on comes to at last without going through anything that is another thing now, and again with no call under way; and how many blocks lie in
    /// between. The stretch itself where there is no such other.</summary>
    public (int End, int Blocks) GoneOver(int first)
    {
        var (end, blocks, blocksToEnd) = (first, 0, 0);
        // The last is always run: how it ends is found there.
        for (var at = first; at < _run.Parts.Length - 1 && IsSame(at); at++)
        {
            blocks += BlocksOf(at);
            if (_run.Stretches[at + 1].IsOutermost && IsSameLine(_run.Parts[at + 1].Lines![0]))
                (end, blocksToEnd) = (at + 1, blocks);
        }
        return (end, blocksToEnd);
    }

    /// <summary>How many blocks a stretch holds.</summary>
    public int BlocksOf(int stretch) => _run.Parts[stretch].Lines!.Length;

    /// <summary>The line (0-based) in the new text of the block that a stretch begins with, and the state that it met.</summary>
    public (int Line, ControlState State) BeginningOf(int stretch) => (_lines.Same(_run.Parts[stretch].Lines![0]), _run.Parts[stretch].Entry);

    /// <summary>A stretch and the results of its blocks, at their lines in the new text.</summary>
    public (PartResult Part, FlowStretch Stretch) At(int stretch)
    {
        var (part, told) = (_run.Parts[stretch], _run.Stretches[stretch]);
        if (_lines.Shift == 0)
            return (part, told);
        // A call above the edit leads to where the lines have moved.
        told = told.Moved(_lines);
        return Array.Exists(part.Lines!, line => _lines.Same(line) != line) ? (part.AtLines(Array.ConvertAll(part.Lines!, _lines.Same)), told) : (part, told);
    }

    /// <summary>Whether all that a stretch did hangs on lines that are the same in both texts.</summary>
    bool IsSame(int stretch)
    {
        if (_run.Stretches[stretch].HangsOnOthers)
            return false;
        foreach (var (_, led) in _run.Stretches[stretch].Passages)
            if (!IsSameLine(led.Line))
                return false;
        foreach (var line in _run.Parts[stretch].Lines!)
            if (!IsSameLine(line))
                return false;
        return true;
    }

    bool IsSameLine(int line) => line != _edges.Before && line != _edges.Behind && _lines.Same(line) >= 0;
}
