using NcLanguage.Fuzz.Running;
using NcLanguage.Syntax.Lexing;
using NcLanguage.Syntax.Text;

namespace NcLanguage.Fuzz.Demands;

/// <summary>A text gives back the bytes it was made from, its lines are those between the line ends, and its tokens lose nothing.</summary>
static class TextDemands
{
    public static void Lossless(SourceText text, byte[] bytes)
    {
        Demand.That(text.ToBytes().AsSpan().SequenceEqual(bytes), "the text gives its bytes back");
        var starts = LineStarts(bytes);
        Demand.Equal(starts.Count, text.LineCount, "lines of the text");
        for (var line = 0; line < starts.Count; line++)
        {
            var end = line + 1 < starts.Count ? starts[line + 1] : bytes.Length;
            var whole = bytes.AsSpan(starts[line]..end).TrimEnd("\r\n"u8);
            Demand.That(text.Line(line).SequenceEqual(whole), "a line is what stands between line ends", () => $"line {line}");
            Demand.Equal(starts[line], text.OffsetOf(line, 0), "the offset of a line");
            Demand.Equal(line, text.LineAt(starts[line]), "the line at an offset");
            AllInTokens(text.BlockAt(line), line);
        }
    }

    /// <summary>Tokens lie in order and apart, and between them is nothing but blanks.</summary>
    static void AllInTokens(in Block block, int line)
    {
        var at = 0;
        foreach (ref readonly var token in block.Tokens)
        {
            var (start, end, length) = (token.Start, token.End, block.Line.Length);
            Demand.That(start >= at && end > start && end <= length, "tokens lie in order", () => $"line {line}: {start} to {end} behind {at}, of {length}");
            IsBlank(block.Line[at..start], line);
            at = end;
        }
        IsBlank(block.Line[at..], line);
    }

    static void IsBlank(ReadOnlySpan<byte> between, int line) =>
        Demand.That(between.Trim(" \t\0\u007F"u8).Length == 0 || (line == 0 && between.Trim(" \t\0\u007F"u8).SequenceEqual<byte>([0xEF, 0xBB, 0xBF])), "what is between tokens is blank", () => $"line {line}");

    /// <summary>Where lines begin: behind LF, CR LF, or a CR alone. Written apart from the program's own.</summary>
    static List<int> LineStarts(byte[] bytes)
    {
        var starts = new List<int> { 0 };
        for (var i = 0; i < bytes.Length; i++)
            if (bytes[i] == '\n' || (bytes[i] == '\r' && (i + 1 == bytes.Length || bytes[i + 1] != '\n')))
                starts.Add(i + 1);
        return starts;
    }
}
