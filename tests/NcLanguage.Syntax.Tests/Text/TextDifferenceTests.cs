using CsCheck;
using NcLanguage.Syntax.Text;

namespace NcLanguage.Syntax.Tests.Text;

/// <summary>Held against the definition: what is before the stretch and behind it is the same in both texts, and neither can be longer.</summary>
public sealed class TextDifferenceTests
{
    // Few different bytes, so that much is the same by chance.
    static readonly Gen<byte[]> Bytes = Gen.Int[0, 3].Select(i => (byte)"\r\nX1"[i]).Array[0, 60];

    [Fact]
    public void The_stretch_makes_one_text_the_other_and_is_the_shortest() =>
        Gen.Select(Bytes, Bytes, Bytes, Bytes).Sample((head, tail, one, two) =>
        {
            var text = SourceText.From([.. head, .. one, .. tail]);
            var other = SourceText.From([.. head, .. two, .. tail]);
            var (start, end, otherEnd) = TextDifference.Between(text, other);
            Assert.InRange(start, 0, Math.Min(end, otherEnd));
            Assert.Equal(other.ToBytes(), text.WithChange(start, end, other.ToBytes(start, otherEnd)).ToBytes());
            if (end == start || otherEnd == start)
                return;
            Assert.NotEqual(text.ToBytes()[start], other.ToBytes()[start]);
            Assert.NotEqual(text.ToBytes()[end - 1], other.ToBytes()[otherEnd - 1]);
        });

    /// <summary>Chunks that lie at other offsets, and lines of more than a chunk.</summary>
    [Theory]
    [InlineData(5_000, 30_000, 12)]
    [InlineData(0, 0, 3)]
    [InlineData(70_000, 70_001, 0)]
    [InlineData(10, 69_990, 40_000)]
    public void It_is_found_across_chunks(int start, int end, int written)
    {
        var bytes = new byte[70_001];
        for (var i = 0; i < bytes.Length; i++)
            bytes[i] = i % 29 == 0 && i < 40_000 ? (byte)'\n' : (byte)('A' + i % 7);
        var text = SourceText.From(bytes);
        var other = SourceText.From([.. bytes[..start], .. Enumerable.Repeat((byte)'+', written), .. bytes[end..]]);
        var found = TextDifference.Between(text, other);
        Assert.Equal((start, end, start + written), (found.Start, found.End, found.OtherEnd));
    }

    [Fact]
    public void There_is_none_between_two_that_are_the_same()
    {
        var (start, end, otherEnd) = TextDifference.Between(SourceText.From("G0 X1\nM30\n"), SourceText.From("G0 X1\nM30\n"));
        Assert.Equal((start, start), (end, otherEnd));
        Assert.Equal(new TextDifference(0, 0, 0), TextDifference.Between(SourceText.From(""), SourceText.From("")));
    }

    /// <summary>What stays is not read again.</summary>
    [Fact]
    public void Chunks_around_it_are_kept()
    {
        var bytes = string.Concat(Enumerable.Range(0, 2000).Select(i => $"G1 X{i}\n"));
        var text = SourceText.From(bytes);
        var other = SourceText.From(bytes.Replace("X1000\n", "X1000.5\n", StringComparison.Ordinal));
        var (start, end, otherEnd) = TextDifference.Between(text, other);
        var after = text.WithChange(start, end, other.ToBytes(start, otherEnd));
        Assert.Equal(text.Chunks.Length - 1, after.Chunks.ToArray().Intersect(text.Chunks.ToArray()).Count());
    }
}
