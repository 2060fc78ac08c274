using System.Buffers;
using System.Text;
using NcLanguage.Checks;
using NcLanguage.Editing.Formatting;
using NcLanguage.Syntax.Lexing;
using NcLanguage.Syntax.Text;

namespace NcLanguage.Editing.Refactorings;

/// <summary>A new text in the making: edits of a text, or why there are none. What no edit touches keeps every byte.</summary>
public sealed class Draft(SourceText text)
{
    /// <summary>Edits no further apart are made together: a chunk has some 128 lines.</summary>
    const int LinesTogether = 128;

    readonly List<RangeEdit> _edits = [];

    public bool IsEmpty => _edits.Count == 0;

    /// <summary>Why it cannot be written, one sentence; null where it can.</summary>
    public string? Refusal { get; private init; }

    public static Draft Refuse(string sentence) => new(SourceText.From("")) { Refusal = sentence };

    /// <summary>In the order of the text; those at one place in the order they were added.</summary>
    public IReadOnlyList<RangeEdit> Edits =>
    [
        .. _edits.OrderBy(edit => edit.Stretch.StartLine).ThenBy(edit => edit.Stretch.StartColumn)
            .ThenBy(edit => edit.Stretch.EndLine).ThenBy(edit => edit.Stretch.EndColumn),
    ];

    public void Add(in Edit edit) => Replace(edit.Line, edit.StartColumn, edit.EndColumn, edit.NewText);

    /// <summary>Puts text in place of a stretch of a line.</summary>
    public void Replace(int line, int start, int end, string newText) => _edits.Add(new RangeEdit(new TextStretch(line, start, line, end), newText));

    /// <summary>Puts lines in place of others; the ending of the last of them stays. No lines: they go with their endings.</summary>
    public void ReplaceLines(int first, int last, IReadOnlyList<string> lines)
    {
        if (lines.Count > 0)
            _edits.Add(new RangeEdit(new TextStretch(first, 0, last, text.Line(last).Length), string.Join(LineEnding.Of(text, first), lines)));
        else if (last + 1 < text.LineCount)
            _edits.Add(new RangeEdit(new TextStretch(first, 0, last + 1, 0), ""));
        else
            _edits.Add(new RangeEdit(new TextStretch(first, 0, last, text.Line(last).Length), ""));
    }

    /// <summary>Puts lines before one.</summary>
    public void InsertBefore(int line, params IReadOnlyList<string> lines)
    {
        var ending = LineEnding.Of(text, line);
        _edits.Add(new RangeEdit(new TextStretch(line, 0, line, 0), string.Concat(lines.Select(added => added + ending))));
    }

    /// <summary>Puts a line behind one.</summary>
    public void InsertBehind(int line, string added)
    {
        var length = text.Line(line).Length;
        Replace(line, length, length, LineEnding.Of(text, line) + added);
    }

    /// <summary>Takes tokens out of a block, with the blanks before them.</summary>
    /// <param name="isOut">Whether a token, by its index, goes.</param>
    public void Remove(int line, in Block block, Func<int, bool> isOut)
    {
        var tokens = block.Tokens;
        for (var i = 0; i < tokens.Length; i++)
        {
            if (!isOut(i))
                continue;
            var end = i;
            while (end + 1 < tokens.Length && isOut(end + 1))
                end++;
            var isFirst = i == 0 || tokens[i - 1].Kind == TokenKind.Skip;
            if (isFirst)
                Replace(line, tokens[i].Start, end + 1 < tokens.Length ? tokens[end + 1].Start : block.Line.Length, "");
            else
                Replace(line, tokens[i - 1].End, tokens[end].End, "");
            i = end;
        }
    }

    /// <summary>The text with the edits made, which lie in order and apart.</summary>
    public static SourceText Apply(SourceText text, IReadOnlyList<RangeEdit> edits)
    {
        ArgumentNullException.ThrowIfNull(text);
        ArgumentNullException.ThrowIfNull(edits);
        // Each change makes the chunk anew that it touches: edits that may lie in one chunk are one change.
        for (var end = edits.Count; end > 0;)
        {
            var first = end - 1;
            while (first > 0 && edits[first].Stretch.StartLine - edits[first - 1].Stretch.EndLine <= LinesTogether)
                first--;
            text = Changed(text, edits, first, end);
            end = first;
        }
        return text;
    }

    /// <summary>Makes some of the edits, one behind the other, as one change.</summary>
    static SourceText Changed(SourceText text, IReadOnlyList<RangeEdit> edits, int first, int end)
    {
        var written = new ArrayBufferWriter<byte>();
        var begin = text.OffsetOf(edits[first].Stretch.StartLine, edits[first].Stretch.StartColumn);
        var at = begin;
        for (var i = first; i < end; i++)
        {
            var stretch = edits[i].Stretch;
            text.CopyTo(at, text.OffsetOf(stretch.StartLine, stretch.StartColumn), written);
            Encoding.UTF8.GetBytes(edits[i].NewText, written);
            at = text.OffsetOf(stretch.EndLine, stretch.EndColumn);
        }
        return text.WithChange(begin, at, written.WrittenSpan);
    }
}
