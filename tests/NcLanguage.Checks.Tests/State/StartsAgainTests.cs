using NcLanguage.Checks.Tests.Rules;

namespace NcLanguage.Checks.Tests.State;

/// <summary>M99 in a program that nothing calls begins it again (common practice): what is on then meets its first moves. A return is the caller's
/// matter. The programs are our own.</summary>
public sealed class StartsAgainTests
{
    const string Start = "O1\nG21 G90 G17 G54\nT1 M6\nS1000 M3\nG0 G43 H1 X0 Y0 Z50\n";
    const string Setup = """{ "tools": [ { "number": 1, "kind": "end-mill", "diameter": 10, "length": 100 } ] }""";

    [Theory]
    [InlineData("cycle-not-cancelled", "G98 G81 X10 Y10 Z-5 R2 F100\nM99", new[] { 7 })]
    [InlineData("cycle-not-cancelled", "G98 G81 X10 Y10 Z-5 R2 F100\nG80\nM99", new int[0])]
    [InlineData("cycle-not-cancelled", "#1=1\nIF [#1 EQ 1] GOTO 5\nG4 P1\nN5 G98 G81 X10 Y10 Z-5 R2 F100\nM99", new[] { 10 })] // steered
    [InlineData("cycle-not-cancelled", "G98 G81 X10 Y10 Z-5 R2 F100\nM98 P2\nG80\nM30\nO2\nX20\nM99", new int[0])] // a return
    [InlineData("compensation-left-on", "G1 G41 D1 X20 F100\nY60\nM99", new[] { 8 })]
    [InlineData("compensation-left-on", "G1 G41 D1 X20 F100\nY60\nG40 X-30\nM99", new int[0])]
    [InlineData("compensation-left-on", "G1 G41 D1 X20 F100\nM98 P2\nG40 X-30\nM30\nO2\nY60\nM99", new int[0])]
    public void What_is_on_at_the_end_is_told_where_no_caller_takes_it_over(string rule, string blocks, int[] lines) =>
        Assert.Equal(lines, Programs.Lines(rule, Start + blocks, Setup));

    /// <summary>A program without a tool that ends with M99 alone is there to be called: what is on there is its caller's.</summary>
    [Fact]
    public void A_program_that_is_there_to_be_called_is_left_alone() =>
        Assert.Empty(Programs.Lines("cycle-not-cancelled", "O2\nG98 G81 X10 Y10 Z-5 R2 F100\nM99", Setup));
}
