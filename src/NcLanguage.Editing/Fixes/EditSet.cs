using System.Collections.Immutable;
using NcLanguage.Checks;

namespace NcLanguage.Editing;

/// <summary>Edits that can be made together.</summary>
sealed class EditSet
{
    readonly Dictionary<int, List<Edit>> _byLine = [];

    /// <summary>Takes the edits of a fix, all or none: none where one meets an edit already taken, and none where all have been, since two findings may share one fix.</summary>
    public bool TryTake(ImmutableArray<Edit> edits)
    {
        if (edits.Any(edit => On(edit.Line).Exists(other => Meets(edit, other))) || edits.All(edit => On(edit.Line).Contains(edit)))
            return false;
        foreach (var edit in edits)
            if (!On(edit.Line).Contains(edit))
                On(edit.Line).Add(edit);
        return true;
    }

    /// <summary>Whether two edits overlap. Words may be put in at one place, one behind the other; a line's end there would part them.</summary>
    static bool Meets(Edit a, Edit b) =>
        a != b && ((a.StartColumn < b.EndColumn && b.StartColumn < a.EndColumn)
            || (a.StartColumn <= b.EndColumn && b.StartColumn <= a.EndColumn && (PartsLine(a) || PartsLine(b))));

    static bool PartsLine(Edit edit) => edit.NewText.AsSpan().IndexOfAny('\r', '\n') >= 0;

    List<Edit> On(int line)
    {
        if (!_byLine.TryGetValue(line, out var edits))
            _byLine[line] = edits = [];
        return edits;
    }
}
