using System.Text;
using NcLanguage.Syntax.Text;

namespace NcLanguage.Syntax.Tests.Text;

/// <summary>What a terminal would obey, or what turns the direction of reading, is written out. Sources: ECMA-48 §5 (control functions), Unicode Standard Annex 9, table 4.</summary>
public sealed class ShownTextTests
{
    [Theory]
    [InlineData("plain Ø 深 😀", "plain Ø 深 😀")]
    [InlineData("a\u001b[31mb", "a\\x1b[31mb")]
    [InlineData("a\nb\tc", "a\\x0ab\\x09c")]
    [InlineData("a\u009bb", "a\\xc2\\x9bb")]
    [InlineData("a\u202eb", "a\\xe2\\x80\\xaeb")]
    [InlineData("a\u2066b\u200f", "a\\xe2\\x81\\xa6b\\xe2\\x80\\x8f")]
    [InlineData("", "")]
    public void A_text_is_fit_for_one_line(string text, string shown) => Assert.Equal(shown, ShownText.Of(text));

    [Fact]
    public void Of_lines_their_ends_and_tabs_stay() =>
        Assert.Equal("G1\tX1\r\n(\\x1b[2J)\n\\xff\r", Encoding.UTF8.GetString(ShownText.OfLines([.. "G1\tX1\r\n(\u001b[2J)\n"u8, 0xff, (byte)'\r'])));
}
