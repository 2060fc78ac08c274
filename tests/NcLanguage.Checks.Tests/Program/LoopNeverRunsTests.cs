using NcLanguage.Checks.Tests.Rules;

namespace NcLanguage.Checks.Tests.Program;

/// <summary>Common practice: a loop by WHILE asks before its first turn, so that it may run not at all.</summary>
public sealed class LoopNeverRunsTests
{
    static List<Finding> Of(string begin, string condition, string step = "#1=#1-1") =>
        Programs.Of("loop-never-runs", $"G21 G90 G17 G54\nM3 S500\nG0 X0 Y0 Z5\n{begin}\nWHILE {condition} DO1\n{step}\nG1 Z#1 F100\nEND1\nG0 Z50\nM5\nM30\n", """{ "variables": { "#500": 0 } }""");

    [Theory]
    [InlineData("#1=0", "[#1 LT -8]", "#1 begins with 0, which is not less than -8.")]
    [InlineData("#1=0.5", "[#1GE10.001]", "#1 begins with 0.5, which is not at least 10.001.")]
    [InlineData("#1=-8", "[ #1 gt 0 ]", "#1 begins with -8, which is not greater than 0.")]
    [InlineData("#1=[2*3]", "[#1 LE 5]", "#1 begins with 6, which is not at most 5.")]
    public void A_loop_that_counts_from_the_wrong_side_is_told(string begin, string condition, string message)
    {
        var finding = Assert.Single(Of(begin, condition));
        Assert.Equal((4, 3), (finding.Line, finding.Related?.Line));
        Assert.StartsWith("This loop never runs: " + message, finding.Message, StringComparison.Ordinal);
    }

    [Theory]
    [InlineData("#1=0", "[#1 GT -8]")] // it runs
    [InlineData("#1=0", "[#1 LT #500]")] // the setup's, or another program's: so many there are
    [InlineData("#1=#500", "[#1 LT -8]")]
    [InlineData("#1=0", "[#1 EQ 1]")] // a switch
    [InlineData("#1=0", "[[#1 LT -8] OR [#1 GT 8]]")]
    public void Others_are_not(string begin, string condition) => Assert.Empty(Of(begin, condition));

    [Fact] // What does not count on is no counter.
    public void A_loop_that_does_not_count_is_not() => Assert.Empty(Of("#1=0", "[#1 LT -8]", "#1=3"));

    [Fact]
    public void A_loop_that_is_jumped_over_is_not() =>
        Assert.Empty(Programs.Of("loop-never-runs", "G21 G90 G17 G54\nM3 S500\nG0 X0 Y0 Z5\n#1=0\nGOTO 9\nWHILE [#1 LT -8] DO1\n#1=#1-1\nG1 Z#1 F100\nEND1\nN9 G0 Z50\nM5\nM30\n"));
}
