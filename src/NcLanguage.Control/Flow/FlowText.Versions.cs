namespace NcLanguage.Control.Flow;

// What two versions of a text have in common.
public sealed partial class FlowText
{
    /// <summary>Whether the text does no more than call, in this version as in the one before, and all calls and returns lead to the same places.</summary>
    /// <param name="before">The version before.</param>
    /// <param name="newLine">The new number of a line (0-based) of it that is the same in both; −1 for a line that is gone or another one now.</param>
    public bool CallsAs(FlowText before, Func<int, int> newLine)
    {
        ArgumentNullException.ThrowIfNull(before);
        ArgumentNullException.ThrowIfNull(newLine);
        if (!OnlyCalls || !before.OnlyCalls || LeaderLines != before.LeaderLines || !EndsAs(before, newLine))
            return false;
        var (at, old) = (0, 0);
        while (true)
        {
            while (at < _marks.Length && !_marks[at].BoundsProgram)
                at++;
            while (old < before._marks.Length && !before._marks[old].BoundsProgram)
                old++;
            if (at == _marks.Length || old == before._marks.Length)
                return at == _marks.Length && old == before._marks.Length;
            if (_marks[at++] != before._marks[old] with { Line = newLine(before._marks[old++].Line) })
                return false;
        }
    }

    /// <summary>Whether nothing in it makes a run leave its order but calls and returns.</summary>
    bool OnlyCalls => !Array.Exists(_marks, mark => mark.Kind is MarkKind.Jump or MarkKind.Structure);

    /// <summary>Whether its first program goes to the same line.</summary>
    bool EndsAs(FlowText before, Func<int, int> newLine)
    {
        var (end, endBefore) = (FirstProgram().End, before.FirstProgram().End);
        return endBefore == before.Text.LineCount ? end == Text.LineCount : end == newLine(endBefore);
    }
}
