using System.Text;
using CsCheck;
using NcLanguage.Syntax.Text;

namespace NcLanguage.Syntax.Tests.Text;

/// <summary>Text in UTF-16, held against the platform's own decoding.</summary>
public sealed class WideTextTests
{
    static readonly Gen<UnicodeEncoding> Encodings = Gen.Select(Gen.Bool, Gen.Bool, (isBigEndian, hasMark) => new UnicodeEncoding(isBigEndian, hasMark));

    static byte[] Bytes(UnicodeEncoding encoding, string text) => [.. encoding.GetPreamble(), .. encoding.GetBytes(text)];

    [Fact]
    public void Programs_are_told_by_their_first_characters_and_come_back_byte_for_byte() =>
        Gen.Select(Encodings, Gen.String[Gen.Char[' ', '~'], 128, 300], Gen.String.AlphaNumeric.Select(text => text + "äß板🔧\n")).Sample((encoding, ascii, any) =>
        {
            var bytes = Bytes(encoding, ascii + any);
            var wide = WideText.Of(bytes);
            Assert.NotNull(wide);
            Assert.Equal(encoding.GetPreamble().Length > 0, wide.HasMark);
            var text = wide.Decode(bytes);
            Assert.Equal(ascii + any, text.ToString());
            Assert.Equal(bytes, wide.Encode(text));
            Assert.Equal(ascii + any, WideText.Read(bytes).ToString());
        }, iter: 200);

    /// <summary>A head of comments in another script, and ideographic spaces (U+3000), whose low byte is zero, hide nothing.</summary>
    [Theory]
    [InlineData("(板 加工)\n%\nO1\nG21 G90\nM30\n")]
    [InlineData("(\u3000\u3000\u3000板の穴あけ 表と裏)\nO1 G21 G90 G17 G54\nM30\n")]
    [InlineData("(Обработка плиты, сторона один; сверлить все отверстия, после чего фаски)\nG21 G90\nM30\n")]
    [InlineData("–O1\nM30\n")]
    [InlineData("\0\0\0\0%\nO1\nM30\n%\n\0\0\0\0\0\0\0\0\0\0\0\0\0\0\0\0\0")]
    [InlineData("M3")]
    public void Most_characters_tell_and_not_the_first(string text)
    {
        foreach (var isBigEndian in (bool[])[false, true])
        {
            var bytes = Bytes(new UnicodeEncoding(isBigEndian, false), text);
            Assert.Equal(text, WideText.Of(bytes)?.Decode(bytes).ToString());
        }
    }

    [Fact]
    public void A_long_head_in_another_script_hides_no_program()
    {
        var text = $"({new string('板', 1000)})\n{string.Concat(Enumerable.Repeat("G1 X1 F100\n", 200))}";
        Assert.Equal(text, WideText.Read(Encoding.Unicode.GetBytes(text)).ToString());
    }

    [Fact]
    public void Bytes_that_are_no_UTF_16_stay_as_they_are() =>
        Gen.Byte[1, 255].Array[0, 300].Where(bytes => bytes is not ([0xFF, 0xFE, ..] or [0xFE, 0xFF, ..])).Sample(bytes =>
        {
            Assert.Null(WideText.Of(bytes));
            Assert.Equal(bytes, WideText.Read(bytes).ToBytes());
        });

    [Theory]
    [InlineData("\0\0\0\0\0\0\0\0%\nO1\n")]
    [InlineData("\0")]
    [InlineData("\0G\0")]
    [InlineData("G0\0\0 X1\n")]
    [InlineData("\0\0\0%\nO1\nM30\n%\n\0\0\0")]
    [InlineData("G0\0 X1\n\0Y1 F\0 100\nG\01 Z1\n")]
    [InlineData("O\0\0\01\0\0\0\n\0\0\0M\0\0\0")]
    [InlineData("X10\r\n\0X20\r\n\0Y30\r\n\0")]
    [InlineData("X10\0\r\nX20\0\r\nY30\0\r\n")]
    [InlineData("X1\n\0X2\n\0")]
    [InlineData("")]
    public void Blank_tape_and_stray_zeros_are_no_UTF_16(string text) => Assert.Null(WideText.Of(Encoding.ASCII.GetBytes(text)));
}
