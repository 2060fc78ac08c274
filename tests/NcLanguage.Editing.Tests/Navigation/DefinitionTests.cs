using NcLanguage.Editing.Tests.Support;

namespace NcLanguage.Editing.Tests.Navigation;

/// <summary>Where what stands at a place comes from. How jumps, calls and variables work: NISTIR 6556 §3.3.2 and common practice.</summary>
public sealed class DefinitionTests
{
    static string[] Of(string marked, string? setup = null, Checks.Analysis.AnalysisOptions? options = null)
    {
        var at = new Marked(marked, setup, options);
        return [.. Definition.Of(at.Analysis, at.Line, at.Column).Select(at.Place)];
    }

    [Theory]
    [InlineData("N10 G0 X1\nGOTO 2$000\nN200 M30", "3 200")]
    [InlineData("N10 G0 X1\nIF [#1 EQ 0] GOTO$0 10\nM30", "1 10")]
    [InlineData("O1\nM98 P$020\nM30\nO20\nG91 X1\nM99", "4 20")]
    [InlineData("O1\nG65 P20$0 A5\nM30\nO20\nG91 X#1\nM99", "4 20")]
    [InlineData("O20 SUB\nG91 X1\nO20 ENDSUB\nO2$00 CALL\nM2", "1 20")]
    [InlineData("WHILE [#1 LT 2] DO1\n#1=#1+1\nEND$01\nM30", "1 1")]
    public void A_number_leads_to_the_block_it_names(string marked, string expected)
    {
        Assert.Equal([expected], Of(marked));
    }

    [Fact]
    public void A_variable_leads_to_the_setting_before_it_and_else_to_all_of_them()
    {
        Assert.Equal(["3 100"], Of("#100=1\nG0 X0\n#100=2\nG1 X#10$00 F50\n#100=3"));
        Assert.Equal(["2 100", "3 100"], Of("G1 X#1$000 F50\n#100=2\n#100=3"));
        Assert.Equal(["1 depth"], Of("#<depth>=2\nG1 Z-#<De$0 pth> F50"));
    }

    [Fact]
    public void Block_numbers_and_own_variables_end_with_their_program()
    {
        const string Two = "O1\nN10 #1=5\nM98 P2\nGOTO 10\nM30\nO2\nN10 #1=6\nGOTO $010\nG1 X#1\nM99";
        Assert.Equal(["7 10"], Of(Two));
        Assert.Equal(["7 1"], Of(Two.Replace("$0", "", StringComparison.Ordinal).Replace("X#1", "X#$01", StringComparison.Ordinal)));
    }

    [Fact]
    public void A_call_leads_to_the_file_beside() =>
        Assert.Equal(["/job/O1200.nc 1"], Of("O1\nM98 P12$000\nM30", options: Folder.Of(1200, "O1200\nM99\n")));

    [Theory]
    [InlineData("( ROW OF HOLES )\n%\nO1200\nM99\n", 3)]
    [InlineData("O7\nM99\nO1200\nM99\n", 3)]
    [InlineData("(no number)\nG91 X1\nM99\n", 1)]
    public void A_call_leads_to_the_number_of_the_file_beside(string called, int line) =>
        Assert.Equal([$"/job/O1200.nc {line}"], Of("O1\nM98 P12$000\nM30", options: Folder.Of(1200, called)));

    const string Given = "{ \"variables\": {\n \"#100\": 3,\n \"#<depth>\": 2 } }";

    [Fact]
    public void Variables_that_the_setup_gives_lead_to_it()
    {
        Assert.Equal(["test.setup.json 2"], Of("G0 X#10$00", Given));
        Assert.Equal(["test.setup.json 3"], Of("G0 Z#<De$0pth>", Given));
        Assert.Equal(["1 100"], Of("#100=1\nG0 X#10$00", Given));
        Assert.Equal(["test.setup.json 2", "2 100"], Of("G0 X#10$00\n#100=1", Given));
        Assert.Empty(Of("G0 X#10$01", Given));
        var at = new Marked("G0 X#10$00\nX#100", Given);
        Assert.Equal(["1 100", "2 100", "test.setup.json 2"], References.Of(at.Analysis, at.Line, at.Column, true, null, null).Select(at.Place));
        Assert.Equal(["1 100", "2 100"], References.Of(at.Analysis, at.Line, at.Column, false, null, null).Select(at.Place));
    }

    [Fact]
    public void Tools_and_offsets_lead_to_their_row_in_the_setup()
    {
        Assert.Equal(["test.setup.json 5"], Of("T$05 M6", Editor.PlateSetup));
        Assert.Equal(["test.setup.json 6"], Of("T5 M6\nG43 H$06 Z50", Editor.PlateSetup));
        Assert.Empty(Of("T$09 M6", Editor.PlateSetup));
        Assert.Empty(Of("T$05 M6"));
    }

    [Theory]
    [InlineData("G81 X0 Y0 Z-5 R2 F100\nX10\n$0Y20", "1 G81")]
    [InlineData("G90 G01 X5 F100\nX1$00", "1 G01")]
    [InlineData("S800\nM$03", "1 S800")]
    [InlineData("T5\nG0 X0\nM$06", "1 T5")]
    public void A_word_leads_to_the_code_it_hangs_on(string marked, string expected) => Assert.Equal([expected], Of(marked));

    [Theory]
    [InlineData("G1 X$05 F100")]
    [InlineData("$0")]
    [InlineData("(N10 GO$0TO 10)\nN10")]
    [InlineData("GOTO $07\nN10 M30")]
    [InlineData("G0 X1$0\nM30")]
    public void Nothing_is_told_where_nothing_leads_on(string marked) => Assert.Empty(Of(marked));
}
