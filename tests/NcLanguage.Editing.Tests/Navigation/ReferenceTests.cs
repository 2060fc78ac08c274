using NcLanguage.Editing.Tests.Support;

namespace NcLanguage.Editing.Tests.Navigation;

/// <summary>Uses, highlights, twins and calls.</summary>
public sealed class ReferenceTests
{
    [Fact]
    public void References_are_all_uses_in_the_text_and_beside_it()
    {
        var at = new Marked("O1\nM98 P12$0\nM30");
        var folder = new Beside(("/job/O12.nc", "O12\nM99"), ("/job/b.nc", "O3\nM98 P12\nM30"));
        Assert.Equal(["2 12", "/job/O12.nc 1", "/job/b.nc 2"],
            References.Of(at.Analysis, at.Line, at.Column, true, "/job/a.nc", folder).Select(at.Place));
        Assert.Equal(["2 12", "/job/b.nc 2"],
            References.Of(at.Analysis, at.Line, at.Column, false, "/job/a.nc", folder).Select(at.Place));
    }

    [Fact]
    public void A_word_lights_up_with_the_code_it_hangs_on()
    {
        var at = new Marked("G90 G81 X0 Y0 Z-5 R2 F100\nX1$00");
        Assert.Equal([("1 G81", UseRole.Write), ("2 X10", UseRole.Read)], References.Highlights(at.Analysis, at.Line, at.Column).Select(use => (at.Place(use), use.Role)));
    }

    [Theory]
    [InlineData("T4$0 M6\nG43 H4 Z50\nG0 X0\nT5 M6\nG43 H4", "1 4|2 4")]
    [InlineData("T4 M6\nG43 H4$0 Z50\nG41 D4 X5\nT5 M6", "1 4|2 4|3 4")]
    [InlineData("T5 M6\nG43 H5$0 Z50\nT4\nG0 X0\nM6\nG43 H4", "1 5|2 5")]
    [InlineData("WHILE [#1 LT 2] DO1$0\n#1=#1+1\nEND1", "1 1|3 1")]
    [InlineData("O5 WHILE [#1 LT 2]\n#1=[#1+1]\nO5$0 ENDWHILE", "1 5|3 5")]
    [InlineData("T4$0 M6\nG43 H04 Z50", "")]
    [InlineData("T4$0 M6\nG43 H5 Z50", "")]
    [InlineData("G0 X4$0", "")]
    public void Numbers_that_belong_together(string marked, string expected)
    {
        var at = new Marked(marked);
        Assert.Equal(expected, string.Join('|', Twins.At(at.Analysis, at.Line, at.Column).Select(at.Place)));
    }

    [Fact]
    public void Calls_lead_in_and_out_over_files()
    {
        var at = new Marked("O1 (PLATE)\nM98 P12$0\nM98 P12\nM98 P2\nM30\nO2\nM98 P12\nM99");
        var calls = new Calls(at.Analysis, "/job/a.nc", new Beside(("/job/O12.nc", "O12 (ROW)\nG91 X1\nM99")));
        var row = calls.At(at.Line, at.Column)!;
        Assert.Equal(("O12 ROW", "/job/O12.nc", 0, 2), (row.Name, row.Path, row.FirstLine, row.LastLine));
        Assert.Equal([("O1 PLATE", 2), ("O2", 1)], calls.To(row).Select(call => (call.Other.Name, call.From.Count)));
        var main = calls.At(0, 0)!;
        Assert.Equal([("O12 ROW", 2), ("O2", 1)], calls.From(main).Select(call => (call.Other.Name, call.From.Count)));
        Assert.Empty(calls.From(row));
        Assert.Empty(calls.To(main));
    }

    /// <summary>Only where a comment at its head names them: nothing else in a program does.</summary>
    [Fact]
    public void The_setup_that_a_comment_names_is_a_link()
    {
        var at = new Marked("%$0\n( SETUP: test.setup.json )\nG0 X1 (test)\nM30\n", Editor.PlateSetup);
        var link = Assert.Single(ProgramLinks.Of(at.Analysis));
        Assert.Equal((1, 9, 24, "test.setup.json", false), (link.Line, link.StartColumn, link.EndColumn, link.Path, link.IsProgram));
    }

    [Fact]
    public void A_call_of_a_file_beside_is_a_link()
    {
        var at = new Marked("O1\nM98 P1200$0\nM98 P2\nM98 P77\nM30\nO2\nM99", options: Folder.Of(1200, "O1200\nM99\n"));
        Assert.Equal([(1, 5, 9, "/job/O1200.nc")], ProgramLinks.Of(at.Analysis).Select(link => (link.Line, link.StartColumn, link.EndColumn, link.Path)));
    }
}
