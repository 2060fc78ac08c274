using System.Text;
using CsCheck;
using NcLanguage.Reports.Findings;

namespace NcLanguage.Reports.Tests.Findings;

public sealed class ExcerptTests
{
    static (string Text, string Mark) Show(string line, int start, int end)
    {
        var excerpt = Excerpt.Of(Encoding.UTF8.GetBytes(line), start, end);
        return (excerpt.Text, new string(' ', excerpt.MarkStart) + new string('^', excerpt.MarkLength));
    }

    [Fact]
    public void A_short_line_is_shown_whole() => Assert.Equal(("N10 G81 X5", "    ^^^"), Show("N10 G81 X5", 4, 7));

    [Fact]
    public void An_empty_place_shows_too() => Assert.Equal(("G81", "   ^"), Show("G81", 3, 3));

    [Fact]
    public void Characters_of_several_bytes_take_one_place() => Assert.Equal(("(ä) G81", "    ^^^"), Show("(ä) G81", 5, 8));

    [Fact]
    public void Control_characters_cannot_reach_the_terminal() => Assert.Equal(("\uFFFD[2J G1", "^^^^^"), Show("\u001b[2J\tG1", 0, 5));

    [Fact]
    public void Of_a_long_line_the_part_around_the_place_is_shown()
    {
        var line = new string('A', 500) + "G81" + new string('B', 500);
        var (text, mark) = Show(line, 500, 503);
        Assert.InRange(text.Length, 100, 125);
        Assert.Equal("G81", text.Substring(mark.IndexOf('^', StringComparison.Ordinal), 3));
        Assert.True(text.StartsWith('…') && text.EndsWith('…'));
    }

    [Fact]
    public void Any_bytes_and_any_place_give_a_mark_within_or_right_behind_a_short_text() =>
        Gen.Select(Gen.Byte.Array[0, 400], Gen.Int[0, 400], Gen.Int[0, 400]).Sample((bytes, a, b) =>
        {
            var excerpt = Excerpt.Of(bytes, Math.Min(a, b), Math.Max(a, b));
            var characters = excerpt.Text.EnumerateRunes().Count();
            return characters <= 130 && excerpt.MarkLength >= 1 && excerpt.MarkStart + excerpt.MarkLength <= characters + 1
                && !excerpt.Text.Any(char.IsControl);
        });
}
