using System.Text;
using System.Text.RegularExpressions;
using CsCheck;
using NcLanguage.Editing.Tests.Support;

namespace NcLanguage.Editing.Tests.Text;

/// <summary>Markdown without its signs, held against CommonMark 0.31 as the reference library Markdig reads it.</summary>
public sealed class PlainTextTests
{
    [Theory]
    [InlineData("**G81** drilling\n\nSource: x", "G81 drilling\n\nSource: x")]
    [InlineData("`#1 = 5` sets it", "#1 = 5 sets it")]
    [InlineData("`` a`b `` is code", "a`b is code")]
    [InlineData(@"clamp \*A\* \#1", "clamp *A* #1")]
    [InlineData("```nc\nG0 X1 **2**\n```\n\nnote", "G0 X1 **2**\n\nnote")]
    [InlineData("Holes: **no level clears**.", "Holes: no level clears.")]
    // Signs that mean nothing at their place.
    [InlineData("2 ** 3", "2 ** 3")]
    [InlineData("a ` b", "a ` b")]
    [InlineData(@"C:\tools", @"C:\tools")]
    [InlineData("", "")]
    public void Signs_go_and_text_stays(string markdown, string expected)
    {
        Assert.Equal(expected, PlainText.Of(markdown));
        Assert.Equal(Words(Reference(markdown)), Words(PlainText.Of(markdown)));
    }

    /// <summary>Texts put together of what this room writes, round names that somebody else chose.</summary>
    [Fact]
    public void It_agrees_with_the_reference_on_whatever_is_written() =>
        Gen.Select(Gen.OneOf(Gen.Const("**{0}**"), Gen.Const("{0}"), Gen.Const("`` #{0} ``"), Gen.Const("`#{0}`")), Gen.String[Gen.Char["ab*_`\\#[]()<>!~ .1é"], 1, 12]).Array[1, 6].Sample(parts =>
        {
            var markdown = new StringBuilder("G1");
            foreach (var (form, name) in parts)
                markdown.Append(' ').Append(form.Replace("{0}", form.Contains('`', StringComparison.Ordinal) ? name.Replace("`", "", StringComparison.Ordinal) : "x" + Escaped(name) + "x", StringComparison.Ordinal));
            Assert.Equal(Words(Reference(markdown.ToString())), Words(PlainText.Of(markdown.ToString())));
        }, iter: 2000, threads: 1);

    [Theory]
    [InlineData("G21 G90 G54\n$0G81 X35 Y10 Z-5 R2 F100\nM30\n")]
    [InlineData("G21 G90 G54\nG$081 X35 Y10 Z-5 R2 F100\nM30\n")]
    [InlineData("G21 G90 G54\nG0 X#1$00\nM30\n")]
    [InlineData("G21 G90 G54\nIF [#1 GT$0 2] GOTO 7\nN7 M30\n")]
    public void A_hover_of_every_kind_loses_nothing_but_signs(string program)
    {
        var markdown = Editor.HoverAt(program, Editor.PlateSetup)!.Markdown;
        var plain = PlainText.Of(markdown);
        Assert.DoesNotContain("**", plain, StringComparison.Ordinal);
        // What begins the entries of a list stays; the reference leaves it out.
        Assert.Equal(Words(Reference(markdown)), Words(Regex.Replace(plain, @"(?m)^(\d+\.|-) ", "")));
    }

    // CommonMark 0.31, section 2.4: a backslash before a sign of ASCII makes it a plain one.
    static string Escaped(string name) => Regex.Replace(name, @"[*_`\\#\[\]()<>!~]", @"\$0");

    static string Reference(string markdown) => Markdig.Markdown.ToPlainText(markdown);

    // The reference joins lines and paragraphs in its own way.
    static string Words(string text) => Regex.Replace(text, @"\s+", " ").Trim();
}
