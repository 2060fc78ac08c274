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
    [InlineData("")]
    public void Blank_tape_and_stray_zeros_are_no_UTF_16(string text) => Assert.Null(WideText.Of(Encoding.ASCII.GetBytes(text)));
}
