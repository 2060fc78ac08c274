namespace NcLanguage.Checks.Analysis;

/// <summary>The findings of a part with the lines of the whole text, and with the names of coordinates that the whole run wants said. An edit moves few parts, if any: what has been placed is kept with its part.</summary>
sealed class PlacedFindings
{
    readonly int _firstLine;
    readonly string? _plain;
    readonly Finding[] _findings;

    PlacedFindings(Finding[] found, int firstLine, string? plain, PlacedFindings? before)
    {
        (_firstLine, _plain) = (firstLine, plain);
        // What only moves is told in the same words: above a line that comes or goes that is all of it.
        _findings = before is not null && before._plain == plain
            ? Array.ConvertAll(before._findings, finding => finding with { Line = finding.Line - before._firstLine + firstLine })
            : Array.ConvertAll(found, finding => finding with { Line = finding.Line + firstLine, Message = PlaceNames.Told(finding.Message, plain) });
    }

    /// <param name="found">With lines from the part's beginning.</param>
    /// <param name="firstLine">The line of the whole text that the part begins with.</param>
    /// <param name="plain">The coordinates that go without saying.</param>
    /// <param name="kept">What was placed last.</param>
    public static Finding[] Of(Finding[] found, int firstLine, string? plain, ref PlacedFindings? kept)
    {
        if (found.Length == 0)
            return found;
        var placed = kept;
        if (placed is null || placed._firstLine != firstLine || placed._plain != plain)
            kept = placed = new PlacedFindings(found, firstLine, plain, placed);
        return placed._findings;
    }
}
