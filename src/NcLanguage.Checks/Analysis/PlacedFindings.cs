namespace NcLanguage.Checks.Analysis;

/// <summary>The findings of a part with the lines of the whole text. An edit moves few parts, if any: what has been placed is kept with its part.</summary>
sealed class PlacedFindings
{
    readonly int _firstLine;
    readonly Finding[] _findings;

    PlacedFindings(Finding[] found, int firstLine)
    {
        _firstLine = firstLine;
        _findings = Array.ConvertAll(found, finding => finding with { Line = finding.Line + firstLine });
    }

    /// <param name="found">With lines from the part's beginning.</param>
    /// <param name="firstLine">The line of the whole text that the part begins with.</param>
    /// <param name="kept">What was placed last.</param>
    public static Finding[] Of(Finding[] found, int firstLine, ref PlacedFindings? kept)
    {
        if (firstLine == 0 || found.Length == 0)
            return found;
        var placed = kept;
        if (placed is null || placed._firstLine != firstLine)
            kept = placed = new PlacedFindings(found, firstLine);
        return placed._findings;
    }
}
