using System.Text;
using NcLanguage.Syntax.Text;

namespace NcLanguage.Checks;

/// <summary>Applies edits to a text.</summary>
public static class TextEdits
{
    /// <summary>The text with all edits made; columns and lines are those of the text given. Edits that say the same are made once;
    /// of two that overlap the second is left out.</summary>
    public static SourceText Apply(SourceText text, IEnumerable<Edit> edits)
    {
        ArgumentNullException.ThrowIfNull(text);
        var ordered = edits.Distinct()
            .Select(edit => (Start: text.OffsetOf(edit.Line, edit.StartColumn), End: text.OffsetOf(edit.Line, edit.EndColumn), edit.NewText))
            .OrderBy(edit => edit.Start).ThenBy(edit => edit.End)
            .ToList();
        var kept = new List<(int Start, int End, string NewText)>();
        foreach (var edit in ordered)
            if (kept.Count == 0 || edit.Start >= kept[^1].End)
                kept.Add(edit);
        // From the end, so that places before stay where they are.
        for (var i = kept.Count - 1; i >= 0; i--)
            text = text.WithChange(kept[i].Start, kept[i].End, Encoding.UTF8.GetBytes(kept[i].NewText));
        return text;
    }
}
