using System.Buffers;
using NcLanguage.Syntax.Text;

namespace NcLanguage.Syntax.Tests.Text;

/// <summary>A text that comes in pieces is the text that comes at once.</summary>
public class SourceTextBuilderTests
{
    static readonly string[] Pieces = ["G1 X10 Y20.5", "\n", "\r\n", "\r", "\n\r", "", "(deep)", "深", "N10 G0 Z5\nX", new('X', 3_000), new('\n', 300)];

    [Fact]
    public void Pieces_make_the_text_that_they_are_together()
    {
        for (var seed = 0; seed < 60; seed++)
        {
            var random = new Random(seed);
            var builder = new SourceTextBuilder();
            var whole = new List<byte>();
            var wanted = random.Next(300_000);
            while (whole.Count < wanted)
            {
                // Now and then a line that no room holds.
                var piece = System.Text.Encoding.UTF8.GetBytes(random.Next(2_000) == 0 ? new string('Y', 100_000) : Pieces[random.Next(Pieces.Length)]);
                builder.Write(piece);
                whole.AddRange(piece);
            }
            var text = builder.Build();
            var atOnce = SourceText.From([.. whole]);
            Assert.Equal(whole, text.ToBytes());
            Assert.Equal(atOnce.LineCount, text.LineCount);
            Assert.Equal(atOnce.Chunks.ToArray().Select(chunk => (chunk.Length, chunk.LineCount, chunk.IsLast)), text.Chunks.ToArray().Select(chunk => (chunk.Length, chunk.LineCount, chunk.IsLast)));
            for (var line = 0; line < text.LineCount; line += 1 + line / 50)
                Assert.Equal(atOnce.OffsetOf(line, 3), text.OffsetOf(line, 3));
        }
    }

    [Fact]
    public void Of_nothing_it_makes_an_empty_text() => Assert.Equal((0, 1), (new SourceTextBuilder().Build().Length, new SourceTextBuilder().Build().LineCount));

    [Fact]
    public void More_than_there_is_room_for_is_refused()
    {
        var builder = new SourceTextBuilder();
        var room = builder.GetSpan().Length;
        Assert.Throws<ArgumentOutOfRangeException>(() => builder.Advance(room + 1));
        Assert.Throws<ArgumentOutOfRangeException>(() => builder.Advance(-1));
    }
}
