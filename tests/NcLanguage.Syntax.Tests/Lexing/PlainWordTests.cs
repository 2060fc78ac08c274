using System.Text;
using NcLanguage.Syntax.Lexing;

namespace NcLanguage.Syntax.Tests.Lexing;

/// <summary>A word whose number stands right behind its letter is read at one go; a blank between them has no meaning (NISTIR 6556 §3.3) and keeps it from being.</summary>
public sealed class PlainWordTests
{
    static readonly string[] Behind = ["", " ", "  Y2", " Y2", "Y-3.5", "O5", "o", " O", ".", ".5", ",5", " 5", " .", "-1", " -1", "E5", "[1]", "#2", "(c)", " (c)", ";", "\t7", "/", "G1", "%", "\u0001", "é", "O1.5", "00O0"];

    static void Same(string number, string behind)
    {
        var together = BlockLexer.LexLine(Encoding.UTF8.GetBytes($"X{number}{behind}"));
        var apart = BlockLexer.LexLine(Encoding.UTF8.GetBytes($"X {number}{behind}"));
        Assert.Equal(apart.Select(token => Shifted(token)), together);
        foreach (var (a, b) in apart.Zip(together))
            Assert.Equal(BitConverter.DoubleToInt64Bits(a.Value), BitConverter.DoubleToInt64Bits(b.Value));
    }

    static Token Shifted(Token token) => new(
        token.Kind, token.Traits, token.Letter, token.Statement, token.Error,
        token.Start == 0 ? 0 : token.Start - 1, token.End > 1 ? token.End - 1 : token.End, token.ValueStart > 1 ? token.ValueStart - 1 : token.ValueStart, token.Value);

    [Fact]
    public void Random_words_are_read_as_with_a_blank()
    {
        for (var seed = 0; seed < 20_000; seed++)
        {
            var random = new Random(seed);
            var number = new StringBuilder(random.GetItems(["", "", "-", "+", "."], 1)[0]);
            var length = random.Next(0, random.Next(2) == 0 ? 6 : 24);
            for (var i = 0; i < length; i++)
                number.Append(random.Next(12) switch { 0 => '.', 1 => '0', 2 => '9', var digit => (char)('0' + digit % 10) });
            Same(number.ToString(), Behind[random.Next(Behind.Length)]);
        }
    }

    [Theory]
    [InlineData("999999999999999")]
    [InlineData("1000000000000000")]
    [InlineData("9007199254740993")]
    [InlineData("0.1234567890123456789")]
    [InlineData("000000000000000001.5")]
    [InlineData("-0")]
    [InlineData("-0.000")]
    [InlineData("-")]
    [InlineData(".")]
    [InlineData("")]
    public void So_are_those_at_the_bounds(string number)
    {
        foreach (var behind in Behind)
            Same(number, behind);
    }
}
