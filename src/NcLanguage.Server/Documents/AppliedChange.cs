using NcLanguage.Server.Protocol;
using NcLanguage.Syntax.Text;

namespace NcLanguage.Server.Documents;

/// <summary>A text after a change of the client's.</summary>
/// <param name="Text">The text.</param>
/// <param name="End">The offset behind the last line that the change wrote to.</param>
/// <param name="IsKey">Whether somebody may have typed it just now and goes on: little was written, or taken away.</param>
readonly record struct AppliedChange(SourceText Text, int End, bool IsKey)
{
    /// <summary>Bytes that a key writes: editors write a bracket's partner with it.</summary>
    const int OfAKey = 2;

    /// <summary>Bytes that are typed, or taken away, from one text to the next by a client that sends all of it: such clients wait for a pause.</summary>
    const int OfAWord = 16;

    public static AppliedChange Of(SourceText text, TextDocumentContentChangeEvent change, PositionMapper positions)
    {
        if (change.Range is not { } range)
            return OfWhole(text, change.Text.ToText());
        var start = positions.ToOffset(text, range.Start);
        var end = positions.ToOffset(text, range.End);
        (start, end) = (Math.Min(start, end), Math.Max(start, end));
        var written = change.Text.ToBytes();
        var isKey = range.Start.Line == range.End.Line && range.End.Character - (long)range.Start.Character is 0 or 1 && written.Length <= OfAKey && IsWithinLine(written);
        return new(text.WithChange(start, end, written), start + written.Length - (written is [.., (byte)'\n'] ? 1 : 0), isKey);
    }

    /// <summary>A client that sends the whole text has changed a stretch of it: what is around that is kept, as if it had named the stretch.</summary>
    static AppliedChange OfWhole(SourceText text, SourceText whole)
    {
        var (start, end, wholeEnd) = TextDifference.Between(text, whole);
        var length = wholeEnd - start;
        // Another text is taken as it comes.
        if (length > OfAWord && length > whole.Length / 2)
            return new(whole, 0, false);
        var written = whole.ToBytes(start, wholeEnd);
        // Who waits for a pause may have gone on to the next line meanwhile.
        var isKey = length <= OfAWord && end - start <= OfAWord && IsWithinLine(text.ToBytes(start, end));
        return new(text.WithChange(start, end, written), wholeEnd - (written is [.., (byte)'\n'] ? 1 : 0), isKey);
    }

    static bool IsWithinLine(ReadOnlySpan<byte> bytes) => !bytes.ContainsAny((byte)'\r', (byte)'\n');
}
