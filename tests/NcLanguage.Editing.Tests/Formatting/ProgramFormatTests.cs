using System.Text;
using CsCheck;
using NcLanguage.Checks.Analysis;
using NcLanguage.Editing.Formatting;
using NcLanguage.Machine.Profiles;
using NcLanguage.Machine.Setups;
using NcLanguage.Syntax.Text;

namespace NcLanguage.Editing.Tests.Formatting;

/// <summary>What tidying does to a text, and what it must leave alone.</summary>
public sealed class ProgramFormatTests
{
    static FormatResult Format(string text, int step = 0) =>
        ProgramFormat.Of(SourceText.From(text), new Job(MachineProfile.IsoMill, Setup.None), new FormatOptions(step), CancellationToken.None);

    [Theory]
    [InlineData("g0x1y2\n", "G0 X1 Y2\n")]
    [InlineData("N5G0   X 1 . 5\tY2  \n", "N5 G0 X1.5 Y2\n")]
    [InlineData("/g0x1\n/2g0x1\n", "/G0 X1\n/2 G0 X1\n")]
    [InlineData("g0x1(keep  Me)y2;and me  \n", "G0 X1 (keep  Me) Y2 ;and me\n")]
    [InlineData("#1=#2 + 1\nif [ #1 eq 2 ] goto 5\nn5m30\n", "#1=#2 + 1\nIF [#1 EQ 2] GOTO 5\nN5 M30\n")]
    [InlineData("#<Depth one> = 2\n", "#<Depth one> = 2\n")]
    [InlineData("o100 call [ 1 ] [#2]\no100sub\no100endsub\n", "O100 CALL [1] [#2]\nO100 SUB\nO100 ENDSUB\n")]
    [InlineData("G0 X1\n\n\n\nG0 X2\n\n", "G0 X1\n\nG0 X2\n")]
    [InlineData("  G0 X1", "  G0 X1\n")]
    [InlineData("g0x1\r\ng0x2\r\n", "G0 X1\r\nG0 X2\r\n")]
    [InlineData("g0x1\rg0x2\r", "G0 X1\rG0 X2\r")]
    [InlineData("", "")]
    [InlineData("g0 x1,5 what\ng0x1\n", "g0 x1,5 what\nG0 X1\n")]
    [InlineData("g0 x[1+ \n", "g0 x[1+\n")]
    public void Tidies(string text, string tidy) => Assert.Equal(tidy, Format(text).Text.ToString());

    /// <summary>A tidy program too: whether it is one is what takes the time.</summary>
    [Theory]
    [InlineData("G0 X1\n")]
    [InlineData("g0x1\n")]
    public void It_ends_where_it_is_not_wanted_any_longer(string text) => Assert.Throws<OperationCanceledException>(() =>
        ProgramFormat.Of(SourceText.From(text), new Job(MachineProfile.IsoMill, Setup.None), new FormatOptions(), new CancellationToken(canceled: true)));

    [Fact]
    public void Bytes_of_comments_stay()
    {
        byte[] text = [.. "g0x1("u8, 0xE4, 0xFF, .. ")\n"u8];
        var tidy = ProgramFormat.Of(SourceText.From(text), new Job(MachineProfile.IsoMill, Setup.None), new FormatOptions(), CancellationToken.None).Text;
        Assert.Equal([.. "G0 X1 ("u8, 0xE4, 0xFF, .. ")\n"u8], tidy.ToBytes());
    }

    [Theory]
    [InlineData("%\nO1 (PLATE)\nG0 X1\n(ONLY A COMMENT)\nN7 X2\n%\n", "%\nO1 (PLATE)\nN10 G0 X1\n(ONLY A COMMENT)\nN20 X2\n%\n")]
    [InlineData("/N3 G0 X1\n/G0 X2\n", "/N10 G0 X1\n/N20 G0 X2\n")]
    [InlineData("#1=0\nN5 #1=#1+1\nIF [#1 LT 3] GOTO 5\nM30\n", "N10 #1=0\nN20 #1=#1+1\nN30 IF [#1 LT 3] GOTO 20\nN40 M30\n")]
    [InlineData("#1=0\nN5 #1=#1+1\nIF [#1 GE 3] GOTO 9\nM99 P5\nN9 M30\n", null)]
    [InlineData("O1\nM98 P2\nM30\nO2\nN1 G0 X1\nGOTO 1\nM99\n", "O1\nN10 M98 P2\nN20 M30\nO2\nN10 G0 X1\nN20 GOTO 10\nN30 M99\n")]
    public void Renumbers(string text, string? renumbered)
    {
        var result = Format(text, 10);
        Assert.Equal(renumbered ?? text, result.Text.ToString());
        Assert.Equal(renumbered is null, result.Refusal is not null);
    }

    [Theory]
    [InlineData("GOTO #1\nN5 M30\n", "worked out")]
    [InlineData("GOTO 5\nN5 G0 X1\nN5 M30\n", "more than once")]
    [InlineData("G0 X1 $\n", "cannot be read")]
    [InlineData("M98 P2\nM30\nO2\nM99 P5\n", "the program that calls")]
    public void Refuses(string text, string why) => Assert.Contains(why, Format(text, 10).Refusal, StringComparison.Ordinal);

    /// <summary>Of a line that long not all is read; without the blanks it would be read, and do something.</summary>
    [Fact]
    public void A_line_that_is_too_lineto_be_read_stays_as_it_is()
    {
        var line = "G0 X5" + new string(' ', 200_000);
        var result = Format($"g21g90\nG0 X0 Y0\n{line}\nm30\n");
        Assert.Equal((null, $"G21 G90\nG0 X0 Y0\n{line}\nM30\n"), (result.Refusal, result.Text.ToString()));
    }

    static readonly Gen<string> Programs = Gen.OneOf(
        Gen.OneOf("g0x1", "G1 X5. F100", "n 10 y-3", "(Comment)", "", "  ", "/g0 z5", "#1=5+2", "x#1", "g2x0y0i-5", "%", "o7", "if[#1 gt 2]goto 10", "g91", "g90 g81z-3r2", "g80", ";rest", "x1 $", "m30"),
        Gen.Char[" gGxXyYzZ0123456789.-()#[]/%;\t"].Array[0, 12].Select(chars => new string(chars))).Array[0, 20].Select(lines => string.Join('\n', lines) + "\n");

    /// <summary>Tidying twice changes nothing more, and nothing but blanks, case and empty lines differs from what was there.</summary>
    [Fact]
    public void Tidying_is_done_once_and_loses_nothing() => Programs.Sample(text =>
    {
        var once = Format(text).Text;
        Assert.Equal(once.ToString(), Format(once.ToString()).Text.ToString());
        Assert.Equal(Essence(text), Essence(once.ToString()));
    }, iter: 3000);

    static string Essence(string text) => new([.. Encoding.UTF8.GetString(Encoding.UTF8.GetBytes(text)).Where(c => !char.IsWhiteSpace(c)).Select(char.ToUpperInvariant)]);
}
