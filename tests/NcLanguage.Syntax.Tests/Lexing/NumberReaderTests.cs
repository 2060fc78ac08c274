using System.Globalization;
using System.Text;
using CsCheck;
using NcLanguage.Syntax.Lexing;

namespace NcLanguage.Syntax.Tests.Lexing;

public class NumberReaderTests
{
    // NISTIR 6556 §3.3 and §3.3.2.1, appendix E.2.
    [Theory]
    [InlineData("+0. 12 34y 7", 0.1234, 9, true, 5, 4)]
    [InlineData(".5", 0.5, 2, true, 1, 1)]
    [InlineData("5.", 5, 2, true, 1, 0)]
    [InlineData("+005.50", 5.5, 7, true, 5, 2)]
    [InlineData("5", 5, 1, false, 1, 0)]
    [InlineData("-5", -5, 2, false, 1, 0)]
    [InlineData("  7 ", 7, 3, false, 1, 0)]
    [InlineData("\t- 1\t2", -12, 6, false, 2, 0)]
    [InlineData("000009", 9, 6, false, 6, 0)]
    [InlineData("1e5", 1, 1, false, 1, 0)] // No exponents: the letter begins the next word.
    [InlineData("1-2", 1, 1, false, 1, 0)]
    [InlineData("1+2", 1, 1, false, 1, 0)]
    [InlineData("5 (five)", 5, 1, false, 1, 0)]
    public void Reads(string text, double value, int end, bool hasPoint, int digits, int decimals) =>
        Assert.Equal(new NumberReading(value, end, hasPoint, digits, decimals, false), Read(text));

    [Theory]
    [InlineData("", 0)]
    [InlineData("  ", 0)]
    [InlineData("X5", 0)]
    [InlineData("(5)", 0)]
    [InlineData("-", 1)]
    [InlineData(".", 1)]
    [InlineData("-.", 2)]
    [InlineData("1.2.3", 5)]
    [InlineData("1..", 3)]
    [InlineData("--3", 1)]
    [InlineData("\uFF15", 0)] // A full-width five.
    public void Refuses(string text, int end)
    {
        var reading = Read(text);

        Assert.True(reading.Malformed);
        Assert.Equal(double.NaN, reading.Value);
        Assert.Equal(end, reading.End);
    }

    [Theory]
    [InlineData(0, 1)]
    [InlineData(1, 9)]
    [InlineData(308, 0)]
    [InlineData(0, 1100)]
    public void Refuses_what_no_double_holds_and_takes_what_one_does(int nines, int decimals)
    {
        Assert.True(Read(new string('9', 310)).Malformed);
        Assert.True(Read("-" + new string('9', 100_000)).Malformed);
        var text = new string('9', nines) + "." + new string('0', decimals) + "1";
        AssertAsParsed(text);
    }

    /// <summary>Where a double is just as near as its neighbour, one digit far behind decides.</summary>
    [Theory]
    [InlineData("9007199254740993")]
    [InlineData("9007199254740992.5")]
    [InlineData("9007199254740993.0000000000000000000000000000000000000000000001")]
    [InlineData("1.00000000000000011102230246251565404236316680908203125")]
    public void Rounds_to_the_nearest_at_ties(string text)
    {
        AssertAsParsed(text);
        AssertAsParsed(text + (text.Contains('.') ? "" : ".") + new string('0', 900));
        AssertAsParsed(text + (text.Contains('.') ? "" : ".") + new string('0', 900) + "1");
    }

    // The reference is the platform's own reading of the same digits (IEEE 754 nearest).
    [Fact]
    public void Is_the_nearest_double()
    {
        var digits = Gen.Char["0123456789"];
        Gen.Select(Gen.OneOf("", "+", "-"), Gen.String[digits, 0, 24], Gen.String[digits, 1, 30], Gen.Int[0, 3]).Sample((sign, whole, decimals, shape) =>
            AssertAsParsed(sign + (shape == 0 ? decimals : shape == 1 ? decimals + "." : whole + "." + decimals)), iter: 20_000);
    }

    [Fact]
    public void Reads_back_every_double_written_with_seventeen_figures() =>
        Gen.Double[-1e6, 1e6].Sample(value =>
        {
            var text = Math.Round(value, 9).ToString("F9", CultureInfo.InvariantCulture);
            AssertAsParsed(text);
        }, iter: 20_000);

    [Fact]
    public void Spaces_have_no_meaning() =>
        Gen.Select(Gen.Double[-1e5, 1e5], Gen.OneOf(" ", "\t", "  ").Array[1, 12]).Sample((value, spaces) =>
        {
            var text = value.ToString("F5", CultureInfo.InvariantCulture);
            var spaced = new StringBuilder();
            for (var i = 0; i < text.Length; i++)
                spaced.Append(spaces[i % spaces.Length]).Append(text[i]);
            Assert.Equal(Read(text) with { End = spaced.Length }, Read(spaced.ToString()));
        }, iter: 2_000);

    /// <summary>Any bytes, any start: no exception, an end within the line, and no value where it is malformed.</summary>
    [Fact]
    public void Never_throws() =>
        Gen.Select(Gen.OneOf<byte>(Gen.Byte, Gen.OneOf("0123456789+-. \t"u8.ToArray())).Array[0, 40], Gen.Int[0, 45]).Sample((line, start) =>
        {
            var reading = NumberReader.ReadNumber(line, start);
            Assert.InRange(reading.End, start, Math.Max(start, line.Length));
            Assert.Equal(reading.Malformed, double.IsNaN(reading.Value));
        }, iter: 50_000);

    [Fact]
    public void Allocates_nothing()
    {
        var lines = new[] { "12.5"u8.ToArray(), "-0.12345678901234567890"u8.ToArray(), "1.2.3"u8.ToArray() };
        foreach (var line in lines)
            NumberReader.ReadNumber(line, 0);
        var before = GC.GetAllocatedBytesForCurrentThread();
        for (var i = 0; i < 1000; i++)
            NumberReader.ReadNumber(lines[i % 3], 0);
        Assert.Equal(0, GC.GetAllocatedBytesForCurrentThread() - before);
    }

    static void AssertAsParsed(string text)
    {
        var expected = double.Parse(text, CultureInfo.InvariantCulture) + 0.0; // Minus nought is nought.
        var reading = Read(text);
        Assert.False(reading.Malformed, text);
        Assert.Equal(BitConverter.DoubleToInt64Bits(expected), BitConverter.DoubleToInt64Bits(reading.Value));
        Assert.Equal(text.Length, reading.End);
    }

    static NumberReading Read(string text) => NumberReader.ReadNumber(Encoding.UTF8.GetBytes(text), 0);
}
