using NcLanguage.Checks.Tests.Rules;

namespace NcLanguage.Checks.Tests.State;

/// <summary>M0 and M1 stop the program and say nothing of the spindle (NISTIR 6556 §3.6.1); M5 before work by hand is common practice.</summary>
public sealed class SpindleAtStopTests
{
    static List<Finding> Of(string stop) => Programs.Of("spindle-at-stop", $"G21 G90 G17 G54\nT4 M6\nS1500 M3\nG43 H4 Z50\n{stop.Replace('|', '\n')}\nM5\nM30\n");

    [Theory]
    [InlineData("M0 (MEASURE THE STEP)", 1)]
    [InlineData("M00 (turn the part over)", 1)]
    [InlineData("M1 (UNCLAMP, REMOVE STRAP 2)", 1)]
    [InlineData("M0 ;clean out the chips", 1)]
    [InlineData("M5|M0 (MEASURE THE STEP)", 0)]
    [InlineData("M5 M0 (MEASURE THE STEP)", 0)]
    [InlineData("M0", 0)]
    [InlineData("M0 (TURN COOLANT ON)", 0)]
    [InlineData("M0 (WATCH THE SPINDLE LOAD)", 0)]
    [InlineData("M0 (LOAD THE NEXT PART)", 1)]
    public void It_is_told_where_the_comment_asks_for_hands(string stop, int told) => Assert.Equal(told, Of(stop).Count);
}
