using System.Text;
using NcLanguage.Machine.Loading;
using NcLanguage.Machine.Setups;

namespace NcLanguage.Machine.Tests.Loading;

/// <summary>Files that are no JSON (RFC 8259, with comments and trailing commas): what was expected, what was found, where.</summary>
public class MalformedTests
{
    [Theory]
    [InlineData("{ \"clearance\": 2\n  ⟦\"frame\"⟧: \"G54\" }", "Expected ',' or '}'", "found \"frame\"", "ends on line 1")]
    [InlineData("{ \"stock\": ⟦}⟧", "Expected a value", "found '}'")]
    [InlineData("{ \"stock\" ⟦5⟧ }", "Expected ':' and a value", "found '5'")]
    [InlineData("{ ⟦stock⟧: 5 }", "Expected a name in double quotes or '}'", "found 'stock'")]
    [InlineData("{ ⟦'stock'⟧: 5 }", "found ''stock''", "double quotes")]
    [InlineData("{ \"a\": 1, ⟦,⟧ }", "Expected a name in double quotes or '}'", "found ','")]
    [InlineData("{ \"a\": [1, ⟦,⟧ 2] }", "Expected a value or ']'")]
    [InlineData("{ \"a\": [1 ⟦2⟧] }", "Expected ',' or ']'", "found '2'")]
    [InlineData("{ \"a\": [1 ⟦}⟧", "Expected ',' or ']'", "found '}'")]
    [InlineData("{ \"a\": ⟦NaN⟧ }", "found 'NaN'", "null")]
    [InlineData("{ \"a\": ⟦01⟧ }", "found '01'", "a number is written like")]
    [InlineData("{ \"a\": ⟦1.⟧ }", "found '1.'", "a number is written like")]
    [InlineData("{ \"a\": ⟦.5⟧ }", "found '.5'", "a number is written like")]
    [InlineData("{ \"a\": ⟦+5⟧ }", "found '+5'", "a number is written like")]
    [InlineData("{ \"a\": ⟦aluminium⟧ }", "found 'aluminium'", "double quotes")]
    [InlineData("{ \"a\": ⟦tru⟧ }", "found 'tru'")]
    [InlineData("{ \"a\": ⟦\"abc }⟧\n}", "not closed")]
    [InlineData("{ \"a\": \"C:⟦\\p⟧arts\" }", "\\p is no character")]
    [InlineData("{ \"a\": \"⟦\\ud800⟧ x\" }", "no character")]
    [InlineData("{ \"⟦\\udc00⟧\": 1 }", "no character")]
    [InlineData("{ \"a\": \"x⟦\t⟧y\" }", "control character 0x09")]
    [InlineData("{ \"a\": 1 ⟦/*⟧ comment }", "not closed by */")]
    [InlineData("{ \"a\": 1 ⟦/⟧ 2 }", "found '/'")]
    [InlineData("{ } ⟦{⟧ }", "Expected nothing more", "found '{'")]
    [InlineData("⟦}⟧", "Expected '{'", "found '}'")]
    [InlineData("⟦[1]⟧", "is an object in braces", "holds a list")]
    [InlineData("⟦5⟧", "is an object in braces", "holds the number 5")]
    [InlineData("⟦⟧", "holds no value", "expected '{'")]
    [InlineData("⟦⟧  // only a comment\n", "holds no value")]
    [InlineData("{ \"tools\": [\n  { \"number\": 1 }\n⟦⟧", "The file ends", "'[' of line 1", "expected ',' or ']'")]
    [InlineData("{ \"a\": ⟦⟧", "The file ends", "'{' of line 1", "expected a value")]
    [InlineData("{ \"a\": \"sound \\ud83d\\ude42 \\n\" ⟦5⟧ }", "Expected ',' or '}'", "found '5'")]
    [InlineData("⟦root⟧:x:0:0", "Expected '{', but found 'r'.")]
    [InlineData("// a comment\n⟦geheim⟧ = 5", "Expected '{', but found 'g'.")]
    [InlineData("[⟦section⟧]\nkey = word", "Expected a value or ']', but found 's' (")]
    [InlineData("⟦ß3cret⟧", "Expected '{', but found 'ß'.")]
    public void The_place_and_what_was_expected_there_are_named(string source, params string[] parts)
    {
        var end = source.IndexOf('⟧', StringComparison.Ordinal);
        var marked = source.Contains("⟦⟧", StringComparison.Ordinal) ? null : new Marked(source);
        var bytes = Encoding.UTF8.GetBytes(source.Replace("⟦", "", StringComparison.Ordinal).Replace("⟧", "", StringComparison.Ordinal));

        var (setup, problems) = SetupFile.Read("part.setup.json", bytes);

        var problem = Assert.Single(problems);
        marked?.IsTheOnlyPlace(problems, "setup-malformed");
        Assert.Equal("setup-malformed", problem.Name);
        Assert.Equal(source[..end].Count(c => c == '\n') + 1, problem.Line);
        Assert.All(parts, part => Assert.Contains(part, problem.Message, StringComparison.Ordinal));
        Assert.EndsWith("Nothing of this setup is used.", problem.Message, StringComparison.Ordinal);
        Assert.Equal(new Setup { IsPresent = true, Path = "part.setup.json", ObstaclesAreKnown = false }, setup);
    }

    [Fact]
    public void Bytes_that_are_not_utf8_are_named()
    {
        var problem = Assert.Single(SetupFile.Read("a", [.. "{\n // f"u8, 0xFC, .. "r }"u8]).Problems);

        Assert.Equal((2, 6), (problem.Line, problem.Column));
        Assert.Contains("0xFC", problem.Message, StringComparison.Ordinal);
        Assert.Contains("UTF-16", Assert.Single(SetupFile.Read("a", Encoding.Unicode.GetPreamble()).Problems).Message, StringComparison.Ordinal);
    }

    /// <summary>RFC 4627 §3: the first two characters are ASCII, so that the zeros among four bytes tell.</summary>
    [Fact]
    public void UTF_16_without_a_mark_is_named()
    {
        foreach (var encoding in (Encoding[])[Encoding.Unicode, Encoding.BigEndianUnicode])
            Assert.Contains("UTF-16", Assert.Single(SetupFile.Read("a", encoding.GetBytes("{ \"units\": \"mm\" }")).Problems).Message, StringComparison.Ordinal);
    }

    [Fact]
    public void Deep_nesting_is_refused()
    {
        var text = "{ \"a\": " + new string('[', 5000);

        var problem = Assert.Single(SetupFile.Read("a", Encoding.UTF8.GetBytes(text)).Problems);

        Assert.Contains("nested more than 64 deep", problem.Message, StringComparison.Ordinal);
        Assert.Equal(8 + 63, problem.Column);
    }
}
