using CsCheck;
using NcLanguage.Syntax.Text;

namespace NcLanguage.Syntax.Tests.Text;

public sealed class SourceTextTests
{
    // Few different bytes, so that CR LF pairs are made and broken often.
    static readonly Gen<byte[]> Bytes = Gen.Int[0, 5].Select(i => "\r\nX1 \u00FF"[i]).Select(c => (byte)c).Array[0, 400];

    /// <summary>Random edits, checked against a plain byte array edited the same way and against a text made anew.</summary>
    [Fact]
    public void Edits_equal_those_of_a_plain_array() =>
        Gen.Select(Bytes, Gen.Select(Gen.Double[0, 1], Gen.Double[0, 1], Bytes).Array[1, 12]).Sample((start, edits) =>
        {
            var text = SourceText.From(start);
            var plain = start.ToList();
            foreach (var (a, b, insert) in edits)
            {
                var from = (int)(Math.Min(a, b) * plain.Count);
                var to = (int)(Math.Max(a, b) * plain.Count);
                text = text.WithChange(from, to, insert);
                plain.RemoveRange(from, to - from);
                plain.InsertRange(from, insert);
                AssertSame(SourceText.From([.. plain]), text, plain);
            }
        });

    static void AssertSame(SourceText expected, SourceText text, List<byte> plain)
    {
        Assert.Equal(plain, text.ToBytes());
        Assert.Equal(expected.LineCount, text.LineCount);
        for (var line = 0; line < text.LineCount; line++)
        {
            Assert.Equal(expected.Line(line).ToArray(), text.Line(line).ToArray());
            Assert.Equal(line, text.LineAt(text.OffsetOf(line, 0)));
        }
    }

    /// <summary>Many lines: an edit keeps every chunk it does not touch.</summary>
    [Fact]
    public void An_edit_keeps_the_chunks_it_does_not_touch()
    {
        var text = SourceText.From(string.Concat(Enumerable.Range(0, 10_000).Select(i => $"N{i} X{i}\n")));
        var at = text.OffsetOf(5_000, 3);
        var edited = text.WithChange(at, at, "9"u8);
        var kept = edited.Chunks.ToArray().Count(chunk => text.Chunks.ToArray().Contains(chunk));
        Assert.InRange(text.Chunks.Length - kept, 1, 2);
    }

    /// <summary>Typing and deleting for long does not wear the text down to ever more or ever smaller chunks.</summary>
    [Fact]
    public void A_text_does_not_crumble()
    {
        var text = SourceText.From(string.Concat(Enumerable.Range(0, 2_000).Select(i => $"N{i} X{i}\n")));
        var before = text.Chunks.Length;
        for (var i = 0; i < 2_000; i++)
        {
            var at = text.OffsetOf(i % text.LineCount, 0);
            text = text.WithChange(at, at, "\n"u8);
            text = text.WithChange(at, at + 1, []);
        }
        Assert.InRange(text.Chunks.Length, 1, before + 2);
    }

    [Theory]
    [InlineData("", 1)]
    [InlineData("\n", 2)]
    [InlineData("G0\r\nG1", 2)]
    [InlineData("G0\rG1\n", 3)]
    public void Lines_are_counted_as_editors_count_them(string content, int lines) =>
        Assert.Equal(lines, SourceText.From(content).LineCount);

    [Fact]
    public void A_range_outside_the_text_is_refused()
    {
        var text = SourceText.From("G0");
        Assert.Throws<ArgumentOutOfRangeException>(() => text.WithChange(1, 3, []));
        Assert.Throws<ArgumentOutOfRangeException>(() => text.WithChange(2, 1, []));
    }
}
