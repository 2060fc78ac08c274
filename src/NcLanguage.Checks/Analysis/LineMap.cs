using NcLanguage.Syntax.Text;

namespace NcLanguage.Checks.Analysis;

/// <summary>Where the lines of one version of a text stand in the next: those before an edit and those behind it are the same.</summary>
public sealed class LineMap
{
    readonly int _same;
    readonly int _sameAtEnd;
    readonly int _linesBefore;
    readonly SourceText _after;

    public LineMap(SourceText before, SourceText after)
    {
        ArgumentNullException.ThrowIfNull(before);
        ArgumentNullException.ThrowIfNull(after);
        _after = after;
        _linesBefore = before.LineCount;
        var chunks = before.Chunks;
        var (same, sameAtEnd) = SharedEnds.Of(chunks, after.Chunks);
        _same = FirstLineOf(before, same);
        _sameAtEnd = _linesBefore - FirstLineOf(before, chunks.Length - sameAtEnd);
        var most = Math.Min(_linesBefore, after.LineCount) - _sameAtEnd;
        while (_same < most && before.Line(_same).SequenceEqual(after.Line(_same)))
            _same++;
        while (_sameAtEnd < Math.Min(_linesBefore, after.LineCount) - _same
            && before.Line(_linesBefore - _sameAtEnd - 1).SequenceEqual(after.Line(after.LineCount - _sameAtEnd - 1)))
            _sameAtEnd++;
    }

    /// <summary>The lines of the new text that the old one does not have, the end excluded.</summary>
    public (int First, int End) Changed => (_same, _after.LineCount - _sameAtEnd);

    /// <summary>The lines of the old text that the new one does not have, the end excluded.</summary>
    public (int First, int End) Gone => (_same, _linesBefore - _sameAtEnd);

    /// <summary>The new number of a line (0-based) that is the same in both; −1 for one that is gone or another one now.</summary>
    public int Same(int line) => line < _same ? line : line >= _linesBefore - _sameAtEnd ? line + Shift : -1;

    /// <summary>The old number of a line (0-based) of the new text that is the same in both; −1 for one that is new.</summary>
    public int SameBefore(int line) => line < _same ? line : line >= _after.LineCount - _sameAtEnd ? line - Shift : -1;

    /// <summary>How many lines further down those behind the edit stand.</summary>
    public int Shift => _after.LineCount - _linesBefore;

    /// <summary>A finding at its new place; null where its line is gone, or may be another one now.</summary>
    public Finding? Move(Finding finding)
    {
        ArgumentNullException.ThrowIfNull(finding);
        if (Line(finding.Line) is not (>= 0 and var line))
            return null;
        var moved = line == finding.Line ? finding : finding with { Line = line };
        if (finding.Related is { } related && Line(related.Line) is var other && other != related.Line)
            moved = moved with { Related = other < 0 ? null : related with { Line = other } };
        // The edited line keeps what was told of it until it is looked at again, as far as it reaches.
        var length = _after.Line(line).Length;
        return moved.EndColumn <= length ? moved : moved.StartColumn < length ? moved with { EndColumn = length } : null;
    }

    /// <summary>The new number of a line (0-based); −1 where it is gone.</summary>
    int Line(int line) => Shift == 0 && line < _linesBefore ? line : Same(line);

    static int FirstLineOf(SourceText text, int chunk) => chunk == text.Chunks.Length ? text.LineCount : text.FirstLineOf(chunk);
}
