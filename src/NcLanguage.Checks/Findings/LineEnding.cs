using System.Text;
using NcLanguage.Syntax.Text;

namespace NcLanguage.Checks;

/// <summary>How a text ends its lines, so that a fix which adds one does the same.</summary>
public static class LineEnding
{
    /// <summary>The terminator of a line (0-based), or of the line before where it has none; LF in a text of one line.</summary>
    public static string Of(SourceText text, int line)
    {
        for (; line >= 0; line--)
        {
            var index = text.ChunkOfLine(line);
            var chunk = text.Chunks[index];
            var inChunk = line - text.FirstLineOf(index);
            var start = chunk.LineStart(inChunk) + chunk.Line(inChunk).Length;
            var end = inChunk + 1 < chunk.LineCount ? chunk.LineStart(inChunk + 1) : chunk.Length;
            if (end > start)
                return Encoding.ASCII.GetString(chunk.Bytes[start..end]);
        }
        return "\n";
    }
}
