using System.Text;
using CsCheck;
using NcLanguage.Syntax.Text;

namespace NcLanguage.Checks.Tests.Analysis;

/// <summary>Edits made at one go: the same text as by .NET's own string functions, at a cost that grows with the text and the edits.</summary>
public sealed class TextEditsTests
{
    static readonly string[] NewTexts = ["", "Y", "(ok)", "\n", "\u00f6"];

    static readonly Gen<(string[] Lines, Edit[] Edits)> Cases =
        from lines in Gen.String[Gen.Char["GX1 (\u00e4)"], 0, 12].Array[1, 40]
        from edits in Gen.Select(Gen.Int[0, 39], Gen.Int[0, 30], Gen.Int[0, 4], Gen.Int[0, 4])
            .Select(edit => new Edit(edit.Item1, edit.Item2, edit.Item2 + edit.Item3, NewTexts[edit.Item4])).Array[0, 20]
        select (lines, edits.Select(edit => Within(lines, edit)).ToArray());

    /// <summary>The edit moved to whole characters of a line that there is.</summary>
    static Edit Within(string[] lines, in Edit edit)
    {
        var line = edit.Line % lines.Length;
        var start = Math.Min(edit.StartColumn, lines[line].Length);
        var end = Math.Min(edit.EndColumn, lines[line].Length);
        return new Edit(line, Encoding.UTF8.GetByteCount(lines[line].AsSpan(0, start)), Encoding.UTF8.GetByteCount(lines[line].AsSpan(0, end)), edit.NewText);
    }

    [Fact]
    public void Together_they_make_what_they_make_one_by_one() => Cases.Sample(any =>
    {
        var text = SourceText.From(string.Join('\n', any.Lines));
        var expected = any.Lines.Select(Encoding.UTF8.GetBytes).ToArray();
        foreach (var edit in TextEdits.Merge(any.Edits).Reverse())
            expected[edit.Line] = [.. expected[edit.Line][..edit.StartColumn], .. Encoding.UTF8.GetBytes(edit.NewText), .. expected[edit.Line][edit.EndColumn..]];
        return TextEdits.Apply(text, any.Edits).ToString() == string.Join('\n', expected.Select(Encoding.UTF8.GetString));
    });

    [Theory]
    [InlineData(false)]
    [InlineData(true)]
    public void Twice_as_many_in_a_text_twice_as_long_copy_twice_as_much(bool eachInItsLine)
    {
        long Bytes(int count)
        {
            var text = SourceText.From(string.Concat(Enumerable.Repeat(eachInItsLine ? "G1 X1\n" : "(", count)));
            Edit[] edits = [.. Enumerable.Range(0, count).Select(i => eachInItsLine ? new Edit(i, 0, 1, "g") : new Edit(0, i, i + 1, ""))];
            TextEdits.Apply(text, edits);
            var before = GC.GetAllocatedBytesForCurrentThread();
            Assert.Equal(eachInItsLine ? text.Length : 0, TextEdits.Apply(text, edits).Length);
            return GC.GetAllocatedBytesForCurrentThread() - before;
        }
        Assert.InRange(Bytes(40_000), 0, 2.6 * Bytes(20_000));
    }
}
