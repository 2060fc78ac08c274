using NcLanguage.Checks.Analysis;
using NcLanguage.Editing.Tests.Support;

namespace NcLanguage.Editing.Tests.Hovers;

/// <summary>Hovers on blocks that run more than once, or not at all. How loops and jumps run: common practice; places and counts by hand.</summary>
public sealed class RunHoverTests
{
    const string Loop =
        """
        G21 G90 G17 G54 G94
        G0 X0 Y0 Z5
        #1=0
        N10 G1 X[10+#1*20] Y[40-#1*10] F[100+#1*50]
        #1=#1+1
        IF [#1 LT 5] GOTO 10
        G0 Z50
        GOTO 90
        N80 G0 X77
        N90 M30
        """;

    static string At(string line, string marked) => Loop.Replace(line, marked, StringComparison.Ordinal);

    [Fact]
    public void A_block_tells_how_often_it_runs_and_what_differs()
    {
        var text = Editor.Markdown(At("N10 G1", "N1$00 G1"));
        Assert.StartsWith("**Runs 5 times**: X from 10 to 90, Y from 0 to 40, feed from 100 mm/min to 300 mm/min. In all ", text, StringComparison.Ordinal);
        Assert.Contains(" The first run:\n\n1. feed X0 Y0 → X10 Y40", text, StringComparison.Ordinal);
    }

    [Fact]
    public void A_setting_tells_the_values_of_all_runs()
    {
        Assert.StartsWith("`#1` local variable\n\nBecomes 1, was 0. Over its 5 runs: 5 values from 1 to 5.", Editor.Markdown(At("#1=#1+1", "$0#1=#1+1")), StringComparison.Ordinal);
        Assert.StartsWith("**Runs 5 times**: `#1` from 1 to 5.", Editor.Markdown(At("#1=#1+1", "N11$0 #1=#1+1")), StringComparison.Ordinal);
    }

    [Fact]
    public void A_word_and_a_variable_in_it_tell_the_values_of_all_runs()
    {
        Assert.Contains(" Over its 5 runs: 5 values from 10 to 90.", Editor.Markdown(At("X[10+", "$0X[10+")), StringComparison.Ordinal);
        Assert.EndsWith("Its value is 0. Over its 5 runs: 5 values from 0 to 4.", Editor.Markdown(At("X[10+#1*", "X[10+$0#1*")), StringComparison.Ordinal);
    }

    [Fact]
    public void A_setting_of_a_variable_with_a_long_name_tells_its_value()
    {
        const string name = "#<distance_to_the_first_hole>";
        Assert.Contains("Becomes 5", Editor.Markdown($"$0{name}=5"), StringComparison.Ordinal);
        Assert.Contains("2 values from 1 to 2", Editor.Markdown($"{name}=0\nWHILE [{name} LT 2] DO 1\n$0{name}={name}+1\nEND 1\nM30"), StringComparison.Ordinal);
    }

    [Fact]
    public void A_block_that_runs_once_says_nothing_of_runs()
    {
        var text = Editor.Markdown(At("G0 Z50", "N70$0 G0 Z50"));
        Assert.StartsWith("1. rapid", text, StringComparison.Ordinal);
        Assert.DoesNotContain("un", text.Split('\n')[0].Replace("until", "", StringComparison.Ordinal), StringComparison.Ordinal);
    }

    [Fact]
    public void A_block_the_run_does_not_come_to_says_so()
    {
        const string said = "**Not reached**: the run does not come to this block.";
        Assert.StartsWith(said, Editor.Markdown(At("N80 ", "N8$00 ")), StringComparison.Ordinal);
        Assert.EndsWith(said, Editor.Markdown(At("X77", "$0X77")), StringComparison.Ordinal);
        Assert.Contains(said, Editor.Markdown(At("N80 G0", "N80 $0G0")), StringComparison.Ordinal);
    }

    /// <summary>9 × 3 holes: an outer loop over X, an inner one over Y.</summary>
    [Fact]
    public void Holes_of_all_runs_are_told_together()
    {
        var text = Editor.Markdown(
            """
            G21 G90 G17 G54 G94
            T4 M6
            S1500 M3 F120
            G0 X0 Y0 Z10
            #1=0
            WHILE [#1 LT 9] DO 1
            #2=0
            WHILE [#2 LT 3] DO 2
            N5$00 G99 G82 X[#1*10] Y[#2*15] Z-3 R2 P0.5
            #2=#2+1
            END 2
            #1=#1+1
            END 1
            G80
            M30
            """, Editor.PlateSetup);
        Assert.StartsWith("**Runs 27 times**: 27 holes, X from 0 to 80, Y from 0 to 30. In all ", text, StringComparison.Ordinal);
        Assert.Contains("The first run:\n\n**Hole 1** X0 Y0", text, StringComparison.Ordinal);
    }

    /// <summary>The work is bounded: the first 1,000 runs, and it says so.</summary>
    [Fact]
    public void A_block_that_runs_very_often_is_told_by_its_first_runs()
    {
        const string program = "G21 G90 G17 G54 G94 F100\nG0 X0 Y0 Z5\n#1=0\nN1$00 G1 X#1\n#1=#1+1\nIF [#1 LT 2500] GOTO 10\nM30";
        Assert.StartsWith("**Runs 2,500 times**. In the first 1,000: X from 0 to 999. The first run:", Editor.Markdown(program), StringComparison.Ordinal);
        Assert.Contains(" In the first 1,000 of its 2,500 runs: 1,000 values from 0 to 999.",
            Editor.Markdown(program.Replace("N1$00 G1 X#1", "N10 G1 $0X#1", StringComparison.Ordinal)), StringComparison.Ordinal);
    }

    [Fact]
    public void What_lies_behind_a_run_cut_short_says_why_it_is_not_reached()
    {
        const string counting = "#1=0\nN10 #1=#1+1\nGOTO 10\nN2$00 G0 X1\nM30";
        Assert.StartsWith("**Not reached** in the 2,005 blocks that are followed here.",
            Editor.Markdown(counting.Replace("GOTO 10", "IF [#1 GE 0] GOTO 10", StringComparison.Ordinal), options: new AnalysisOptions(MostBlocks: 2000)), StringComparison.Ordinal);
        Assert.StartsWith("**Not reached**: the run stays in a loop that never ends.", Editor.Markdown("N10 G4 P1\nGOTO 10\nN2$00 G0 X1\nM30"), StringComparison.Ordinal);
        Assert.StartsWith("**Not reached**: the run stops before, with an alarm.", Editor.Markdown("GOTO 10\nN2$00 G0 X1\nM30"), StringComparison.Ordinal);
    }

    [Fact]
    public void A_block_at_one_place_says_so() =>
        Assert.StartsWith("**Runs 3 times**: to the same place each time.", Editor.Markdown(
            "G21 G90 G17 G54\nG0 X0 Y0 Z5\nO1 REPEAT [3]\nN1$00 G0 X7\nG0 X0\nO1 ENDREPEAT\nM30"), StringComparison.Ordinal);
}
