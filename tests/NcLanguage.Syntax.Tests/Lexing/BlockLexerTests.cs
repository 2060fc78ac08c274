using System.Text;
using CsCheck;
using NcLanguage.Syntax.Lexing;

namespace NcLanguage.Syntax.Tests.Lexing;

public sealed class BlockLexerTests
{
    const string Likely = "GXN%()/;#[]=+-. \t0123456789:SINIFGOTO";

    static Token[] Lex(string line) => BlockLexer.LexLine(Encoding.UTF8.GetBytes(line));

    static string Show(string line) => string.Join(' ', Lex(line).Select(token => token.Kind switch
    {
        TokenKind.Word => $"{(char)token.Letter}={Number(token)}{(token.IsMalformed ? "!" : "")}",
        TokenKind.Statement => $"{token.Statement}={Number(token)}",
        _ => token.Kind.ToString(),
    }));

    static string Number(Token token) => Math.Round(token.Value, 9).ToString(System.Globalization.CultureInfo.InvariantCulture);

    /// <summary>Any bytes: tokens lie in order within the line, do not overlap, and what is between them is blank.</summary>
    [Fact]
    public void Any_bytes_are_accepted_and_nothing_is_lost() =>
        Gen.OneOf(Gen.Byte.Array[0, 60], Gen.Int[0, Likely.Length - 1].Select(i => (byte)Likely[i]).Array[0, 40]).Sample(line =>
        {
            // NUL and DEL at both ends are passed over, and the blanks among them.
            var at = line.Length - line.AsSpan().TrimStart([(byte)0, (byte)0x7F, (byte)' ', (byte)'\t']).Length;
            var end = line.AsSpan().TrimEnd([(byte)0, (byte)0x7F, (byte)' ', (byte)'\t']).Length;
            foreach (var token in BlockLexer.LexLine(line))
            {
                Assert.True(token.Start >= at && token.End > token.Start && token.End <= line.Length);
                Assert.True(line.AsSpan(at, token.Start - at).IndexOfAnyExcept((byte)' ', (byte)'\t') < 0);
                at = token.End;
            }
            Assert.True(at >= end || line.AsSpan(at..end).IndexOfAnyExcept((byte)' ', (byte)'\t') < 0);
        }, iter: 20_000);

    [Fact]
    public void A_byte_order_mark_is_no_part_of_the_block()
    {
        byte[] line = [0xEF, 0xBB, 0xBF, (byte)'%'];
        Assert.Equal(TokenKind.Percent, Assert.Single(BlockLexer.LexLine(line)).Kind);
    }

    /// <summary>ISO 840 (from memory): NUL and DEL carry no information and may stand anywhere between; here at both ends of a line, where a tape or a transfer leaves them.</summary>
    [Theory]
    [InlineData("\0\0%", "%")]
    [InlineData("\u007F\0G0 X5\0\0", "G0 X5")]
    [InlineData("\0\0\0", "")]
    [InlineData("G0 X5\0\t\0 ", "G0 X5")]
    [InlineData(" \0\tG0 X5", "G0 X5")]
    public void NUL_and_DEL_at_the_ends_of_a_line_are_no_part_of_the_block(string line, string same) => Assert.Equal(Show(same), Show(line));

    /// <summary>NISTIR 6556 §3.3: blanks anywhere, case without meaning; the example of the report.</summary>
    [Fact]
    public void Section_3_3_blanks_and_case() => Assert.Equal(Show("g0 x+0.1234 y7"), Show("g0x +0. 12 34y 7"));

    /// <summary>NISTIR 6556 §3.3.2.1: forms of numbers.</summary>
    [Theory]
    [InlineData("X.5", "X=0.5")]
    [InlineData("X5.", "X=5")]
    [InlineData("X+005.50", "X=5.5")]
    [InlineData("X-3", "X=-3")]
    [InlineData("X1.2.3", "X=NaN!")]
    [InlineData("X-", "X=NaN!")]
    [InlineData("X", "BareLetter")]
    [InlineData("X Y5", "BareLetter Y=5")]
    public void Section_3_3_2_1_numbers(string line, string tokens) => Assert.Equal(tokens, Show(line));

    [Theory]
    [InlineData("%", "Percent")]
    [InlineData("O1000 (PLATE)", "O=1000 Comment")]
    [InlineData(":12", ":=12")]
    [InlineData("/N10 G0", "Skip N=10 G=0")]
    [InlineData("/2 N10", "Skip N=10")]
    [InlineData("G0 / X1", "G=0 Unknown X=1")]
    [InlineData("(open", "UnclosedComment")]
    [InlineData("(a (b) c) G0", "Comment G=0")]
    [InlineData("G0 ; rest ( of", "G=0 LineComment")]
    [InlineData("X[1+2*3] Y-[2]", "X=7 Y=-2")]
    [InlineData("x asin[0.5]", "X=30")]
    [InlineData("G1 X asim[0.5] (c)", "G=1 X=NaN! Comment")]
    [InlineData("#3=15", "Assignment")]
    [InlineData("#=", "Assignment")]
    [InlineData("IF [#1 GT 2] GOTO 30", "If=NaN Goto=30")]
    [InlineData("IF[1 EQ 1]THEN #2=3", "If=1 Then=NaN Assignment")]
    [InlineData("WHILE [1 LT 2] DO1", "While=1 Do=1")]
    [InlineData("END1", "End=1")]
    [InlineData("I5 J2", "I=5 J=2")]
    [InlineData("D1 T2 E3 W4", "D=1 T=2 E=3 W=4")]
    [InlineData("&&& X1", "Unknown X=1")]
    public void Blocks(string line, string tokens) => Assert.Equal(tokens, Show(line));

    [Fact]
    public void A_nested_comment_is_marked() => Assert.True(Lex("(a (b) c)")[0].IsNested);

    [Fact]
    public void A_line_too_long_is_read_in_part_and_says_so()
    {
        var tokens = Lex(new string('X', 1) + new string('1', 10) + new string(' ', 5_000) + "Y2");
        Assert.Equal(TokenKind.Excess, tokens[^1].Kind);
        Assert.Equal(BlockLexer.LongestRead, tokens[^1].Start);
    }
}
