using NcLanguage.Editing.Tests.Navigation;

namespace NcLanguage.Editing.Tests.Structure;

/// <summary>What folds, and what a growing selection takes.</summary>
public sealed class FoldingTests
{
    const string Program =
        """
        (PLATE)
        (SECOND LINE)
        T4 M6
        G90 G54 G0 X0 Y0
        #1=0
        WHILE [#1 LT 3] DO1
        G81 X[#1*10] Y0 Z-3 R2 F100
        X[#1*10] Y20
        #1=#1+1
        END1
        G80
        T5 M6
        G1 X$05 F100
        X9
        M30
        """;

    static string[] Of(string marked) =>
        [.. Foldings.Of(new Marked(marked).Analysis).Select(fold => $"{fold.FirstLine + 1}-{fold.LastLine + 1}{(fold.IsComment ? " comment" : "")}").Order(StringComparer.Ordinal)];

    [Fact]
    public void Tools_operations_loops_and_comments() => Assert.Equal(["1-2 comment", "12-15", "13-14", "3-11", "6-10", "7-8"], Of(Program));

    [Fact]
    public void Nothing_folds_in_a_program_of_one_line() => Assert.Empty(Of("$0"));

    [Fact]
    public void Loops_within_loops_and_one_that_is_never_closed() =>
        Assert.Equal(["1-6", "2-5", "3-4"], Of("WHILE [#1 LT 3] DO1\nWHILE [#2 LT 3] DO2\nO9 IF [#1 EQ 2]\nO9 ENDIF\nEND2\nEND1\nWHILE [#1 LT 9] DO3$0"));

    [Fact]
    public void A_selection_grows_from_number_to_word_to_block_to_operation_to_tool_to_all()
    {
        var at = new Marked(Program);
        var grown = SelectionRanges.At(at.Analysis, Outline.Of(at.Analysis), at.Line, at.Column + 1);
        Assert.Equal(["13:4-13:5", "13:3-13:5", "13:0-13:10", "13:0-14:2", "12:0-15:3", "1:0-15:3"],
            grown.Select(stretch => $"{stretch.StartLine + 1}:{stretch.StartColumn}-{stretch.EndLine + 1}:{stretch.EndColumn}"));
    }

    /// <summary>The cycle's first hole stands before the loop, the last of its holes in it.</summary>
    [Fact]
    public void A_loop_lies_between_block_and_operation()
    {
        var at = new Marked("G21 G90 G17 G54\nT4 M6\nG0 X0 Y0 Z9\nG81 X0 Y0 Z-3 R2 F100\n#1=1\nWHILE [#1 LT 4] DO1\nX[#1*10]$0\n#1=#1+1\nEND1\nG80\nM30");
        var grown = SelectionRanges.At(at.Analysis, Outline.Of(at.Analysis), at.Line, at.Column);
        Assert.Equal(["7-7", "6-9", "4-9", "2-11", "1-11"], grown.Select(stretch => $"{stretch.StartLine + 1}-{stretch.EndLine + 1}").Distinct());
    }

    [Fact]
    public void A_selection_in_an_empty_text_is_the_text() =>
        Assert.Equal([new TextStretch(0, 0, 0, 0)], SelectionRanges.At(new Marked("$0").Analysis, [], 0, 0));
}
