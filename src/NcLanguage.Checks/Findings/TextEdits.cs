using System.Buffers;
using System.Collections.Immutable;
using System.Text;
using NcLanguage.Syntax.Text;

namespace NcLanguage.Checks;

/// <summary>Puts edits together and applies them to a text.</summary>
public static class TextEdits
{
    /// <summary>The edits in the order of the text; those that say the same are given once, and of two that overlap the later is left out.</summary>
    public static ImmutableArray<Edit> Merge(IEnumerable<Edit> edits)
    {
        var kept = ImmutableArray.CreateBuilder<Edit>();
        foreach (var edit in edits.Distinct().OrderBy(edit => edit.Line).ThenBy(edit => edit.StartColumn).ThenBy(edit => edit.EndColumn))
            if (kept.Count == 0 || kept[^1].Line != edit.Line || edit.StartColumn >= kept[^1].EndColumn)
                kept.Add(edit);
        return kept.ToImmutable();
    }

    /// <summary>Whether one of the edits writes something else than stands there.</summary>
    public static bool Change(ImmutableArray<Edit> edits, SourceText text)
    {
        ArgumentNullException.ThrowIfNull(text);
        foreach (var edit in edits)
        {
            var line = text.Line(edit.Line);
            var end = Math.Min(edit.EndColumn, line.Length);
            if (!line[Math.Min(edit.StartColumn, end)..end].SequenceEqual(Encoding.UTF8.GetBytes(edit.NewText)))
                return true;
        }
        return false;
    }

    /// <summary>Whether edits leave no more lines than there were that are longer than a length.</summary>
    /// <param name="longest">Characters.</param>
    public static bool FitIn(ImmutableArray<Edit> edits, SourceText text, int longest)
    {
        ArgumentNullException.ThrowIfNull(text);
        var put = edits.Sum(edit => edit.NewText.Length);
        if (edits.All(edit => text.Line(edit.Line).Length + put <= longest))
            return true;
        var edited = Apply(text, edits);
        var (first, last, added) = (edits.Min(edit => edit.Line), edits.Max(edit => edit.Line), edited.LineCount - text.LineCount);
        return LongerThan(longest, edited, first, last + added) <= LongerThan(longest, text, first, last);
    }

    static int LongerThan(int longest, SourceText text, int first, int last) =>
        Enumerable.Range(first, last - first + 1).Count(line => text.Line(line).Length > longest);

    /// <summary>How far apart edits may lie that are made at one go, bytes: each go copies the stretch of text around it.</summary>
    const int Reach = 65_536;

    /// <summary>The text with all edits made, merged as <see cref="Merge"/> says; lines and columns are those of the text given.</summary>
    public static SourceText Apply(SourceText text, IEnumerable<Edit> edits)
    {
        ArgumentNullException.ThrowIfNull(text);
        var merged = Merge(edits).AsSpan();
        var edited = text;
        // From the end, so that places before stay where they are.
        while (!merged.IsEmpty)
        {
            var first = merged.Length - 1;
            while (first > 0 && AreNear(text, merged[first - 1], merged[first]))
                first--;
            edited = ApplyTogether(edited, text, merged[first..]);
            merged = merged[..first];
        }
        return edited;
    }

    static bool AreNear(SourceText text, in Edit edit, in Edit next) =>
        edit.Line == next.Line || text.OffsetOf(next.Line, next.StartColumn) - text.OffsetOf(edit.Line, edit.EndColumn) < Reach;

    /// <summary>Replaces what lies from the first of some edits to the last.</summary>
    static SourceText ApplyTogether(SourceText edited, SourceText text, ReadOnlySpan<Edit> edits)
    {
        var start = text.OffsetOf(edits[0].Line, edits[0].StartColumn);
        var put = new ArrayBufferWriter<byte>();
        var at = start;
        foreach (var edit in edits)
        {
            text.CopyTo(at, text.OffsetOf(edit.Line, edit.StartColumn), put);
            Encoding.UTF8.GetBytes(edit.NewText, put);
            at = text.OffsetOf(edit.Line, edit.EndColumn);
        }
        return edited.WithChange(start, at, put.WrittenSpan);
    }
}
