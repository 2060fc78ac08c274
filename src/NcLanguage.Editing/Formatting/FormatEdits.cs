using System.Buffers;
using NcLanguage.Checks;
using NcLanguage.Checks.Analysis;
using NcLanguage.Syntax.Lexing;
using NcLanguage.Syntax.Text;

namespace NcLanguage.Editing.Formatting;

/// <summary>Tidying as edits line by line, so that cursors, folds and marks stay where they are.</summary>
public static class FormatEdits
{
    /// <summary>Edits that tidy the lines from one to another (0-based, both included), or why there are none.</summary>
    /// <exception cref="OperationCanceledException">The token was cancelled.</exception>
    public static (IReadOnlyList<RangeEdit> Edits, string? Refusal) Of(ProgramAnalysis analysis, int firstLine, int lastLine, CancellationToken cancel)
    {
        ArgumentNullException.ThrowIfNull(analysis);
        var result = ProgramFormat.Of(analysis.Text, analysis.Main.Job, new FormatOptions(FirstLine: firstLine, LastLine: lastLine), cancel);
        return (result.Refusal is null ? Between(analysis.Text, result.Text) : [], result.Refusal);
    }

    /// <summary>Edits that tidy one line just written. Only spelling and blanks change: what the block says is read again and held against what it said.</summary>
    public static IReadOnlyList<RangeEdit> OfLine(SourceText text, int line)
    {
        ArgumentNullException.ThrowIfNull(text);
        var block = text.BlockAt(line);
        var written = new ArrayBufferWriter<byte>();
        BlockFormat.Write(block, [], written);
        var tidy = written.WrittenSpan;
        return tidy.SequenceEqual(block.Line) || !SaysTheSame(block, tidy)
            ? []
            : [new RangeEdit(new TextStretch(line, 0, line, block.Line.Length), System.Text.Encoding.UTF8.GetString(tidy))];
    }

    static bool SaysTheSame(in Block block, ReadOnlySpan<byte> tidy)
    {
        var tokens = BlockLexer.LexLine(tidy);
        if (tokens.Length != block.Tokens.Length)
            return false;
        for (var i = 0; i < tokens.Length; i++)
            if (tokens[i].Kind != block.Tokens[i].Kind || tokens[i].Letter != block.Tokens[i].Letter || !tokens[i].Value.Equals(block.Tokens[i].Value)
                || tokens[i].Statement != block.Tokens[i].Statement || tokens[i].Traits != block.Tokens[i].Traits)
                return false;
        return true;
    }

    /// <summary>Tidying keeps every line that holds anything, in its order, and only takes empty ones out: so lines pair up.</summary>
    static List<RangeEdit> Between(SourceText old, SourceText tidy)
    {
        var edits = new List<RangeEdit>();
        if (ReferenceEquals(old, tidy))
            return edits;
        var (before, after) = (old.ToBytes(), tidy.ToBytes());
        var at = 0;
        for (var line = 0; line < old.LineCount; line++)
        {
            var whole = Whole(old, before, line);
            var now = Whole(tidy, after, at);
            if (now.IsEmpty || (IsBlank(old.Line(line)) && !IsBlank(tidy.Line(at))))
            {
                if (!whole.IsEmpty)
                    edits.Add(new RangeEdit(Stretch(old, line), ""));
                continue;
            }
            if (!whole.SequenceEqual(now))
                edits.Add(new RangeEdit(Stretch(old, line), System.Text.Encoding.UTF8.GetString(now)));
            at++;
        }
        return edits;
    }

    /// <summary>A line with its ending; nothing behind the last.</summary>
    static ReadOnlySpan<byte> Whole(SourceText text, byte[] bytes, int line)
    {
        if (line >= text.LineCount)
            return [];
        var start = text.OffsetOf(line, 0);
        return bytes.AsSpan(start, (line + 1 < text.LineCount ? text.OffsetOf(line + 1, 0) : bytes.Length) - start);
    }

    static TextStretch Stretch(SourceText text, int line) =>
        line + 1 < text.LineCount ? new TextStretch(line, 0, line + 1, 0) : new TextStretch(line, 0, line, text.Line(line).Length);

    static bool IsBlank(ReadOnlySpan<byte> line) => line.IndexOfAnyExcept((byte)' ', (byte)'\t') < 0;
}
