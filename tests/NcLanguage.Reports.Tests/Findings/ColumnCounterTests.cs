using System.Text;
using CsCheck;
using NcLanguage.Reports.Findings;
using NcLanguage.Syntax.Text;

namespace NcLanguage.Reports.Tests.Findings;

/// <summary>Columns are characters; held against the platform's own decoding of UTF-8.</summary>
public sealed class ColumnCounterTests
{
    [Theory]
    [InlineData("", 0)]
    [InlineData("G81 X10", 7)]
    [InlineData("äöü", 3)]
    [InlineData("(🔧)", 3)]
    public void Characters_are_counted_as_scalar_values(string text, int expected) =>
        Assert.Equal(expected, ColumnCounter.Count(Encoding.UTF8.GetBytes(text)));

    [Fact]
    public void A_byte_that_is_no_UTF_8_counts_as_one() =>
        // A lone continuation byte, the first two bytes of a character of three, FF.
        Assert.Equal(6, ColumnCounter.Count([0x80, (byte)'X', 0xE2, 0x82, (byte)'Y', 0xFF]));

    [Fact]
    public void Sound_text_counts_as_the_platform_counts() =>
        Gen.String.Select(text => Encoding.UTF8.GetBytes(text)).Sample(bytes =>
            ColumnCounter.Count(bytes) == Encoding.UTF8.GetString(bytes).EnumerateRunes().Count());

    [Fact]
    public void Places_in_any_order_are_those_of_a_fresh_count() =>
        Gen.Select(Gen.Byte.Array[1, 40], Gen.Int[0, 40].Array[1, 10]).Sample((line, columns) =>
        {
            var bytes = line.Where(b => b is not ((byte)'\n' or (byte)'\r')).ToArray();
            var text = SourceText.From([.. "X\n"u8, .. bytes]);
            var counter = new ColumnCounter(text);
            return columns.All(column =>
            {
                var end = Math.Min(column, bytes.Length);
                // A place never splits a character.
                while (end < bytes.Length && end > 0 && (bytes[end] & 0xC0) == 0x80)
                    end++;
                return counter.Place(1, 0, end) == new ReportedPlace(2, 1, ColumnCounter.Count(bytes.AsSpan(0, end)) + 1);
            });
        });

    [Fact]
    public void The_byte_order_mark_is_no_column() =>
        Assert.Equal(new ReportedPlace(1, 1, 4), new ColumnCounter(SourceText.From([.. Encoding.UTF8.Preamble, .. "G81"u8])).Place(0, 3, 6));
}
