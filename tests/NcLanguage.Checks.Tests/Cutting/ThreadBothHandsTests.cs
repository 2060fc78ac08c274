using NcLanguage.Checks.Tests.Rules;

namespace NcLanguage.Checks.Tests.Cutting;

/// <summary>A right-hand helix rises counterclockwise and falls clockwise, seen from above (geometry): of one thread all arcs cut the same hand.</summary>
public sealed class ThreadBothHandsTests
{
    const string Tools = "\"tools\": [ { \"number\": 11, \"kind\": \"thread-mill\", \"diameter\": 12, \"pitch\": 1.5 } ]";

    static List<Finding> Of(string arcs, string setup = "") => [.. Programs.Analyse(
        $"G21 G90 G17 G54\nT11 M6\nS2400 M3\nG0 X0 Y0\nG43 H11 Z20\nG1 Z-9 F1000\nX9\n{arcs.Replace('|', '\n')}\nG1 X0 Y0\nG0 Z20\nM5\nM30\n", $"{{ {setup} {Tools} }}")
        .Findings.Where(finding => finding.Name.StartsWith("thread-", StringComparison.Ordinal))];

    [Theory]
    [InlineData("G3 I-9 Z-7.5 F240|G2 I-9 Z-6|G3 I-9 Z-4.5", 9)]
    [InlineData("G2 I-9 Z-7.5 F240|G3 I-9 Z-6|I-9 Z-4.5", 8)]
    [InlineData("G3 I-9 Z-7.5 F240|G2 I-9 Z-6", 9)]
    [InlineData("G3 X-9 I-9 Z-8.25 F240|X9 I9 Z-7.5|X-9 I-9 Z-6.75|G2 X9 I9 Z-6|G3 X-9 I-9 Z-5.25|X9 I9 Z-4.5", 11)]
    [InlineData("G3 X-9 I-9 Z-8.25 F240|G2 X9 I9 Z-7.5", 9)]
    [InlineData("G2 I-9 Z-10.5 F240|G3 I-9 Z-12|G2 I-9 Z-13.5", 9)]
    [InlineData("G2 I-9 Z-7.5 F240|G1 X0 Y0|Z-9|X9.2|G3 I-9.2 Z-7.5", 8)] // in two passes
    public void An_arc_that_turns_against_the_others_is_the_one_finding(string arcs, int line)
    {
        var found = Assert.Single(Of(arcs));
        Assert.Equal(("thread-both-hands", line), (found.Name, found.Line + 1));
    }

    /// <summary>What the drawing asks for is cut by the other turns, and crossed by this one.</summary>
    [Fact]
    public void It_is_told_where_the_drawing_has_the_thread()
    {
        var found = Assert.Single(Of("G3 I-9 Z-7.5 F240|G2 I-9 Z-6|G3 I-9 Z-4.5", "\"holes\": [ { \"x\": 0, \"y\": 0, \"thread\": \"M30x1.5\" } ],"));
        Assert.Equal("This arc of T11 about X0 Y0 turns clockwise and the others of its thread turn counterclockwise: it cuts a left-hand groove across the right-hand one.", found.Message);
    }

    [Theory]
    [InlineData("G3 I-9 Z-7.5 F240|I-9 Z-6")]
    [InlineData("G3 I-9 Z-7.5 F240|G2 I-9 Z-9")] // back down the same groove
    [InlineData("G3 I-9 Z-7.5 F240|G2 I-9")] // a level turn
    [InlineData("G3 I-9 Z-7.5 F240|G1 X0 Y0|G1 Z-9|X9|G3 I-9 Z-7.5")]
    [InlineData("G3 I-9 Z-7.5 F240|G1 X0 Y0|G0 Z20|X60|G1 Z-9|X69|G3 I-9 Z-7.5")]
    public void One_hand_is_none_to_be_told(string arcs) => Assert.Empty(Of(arcs));

    /// <summary>A wrong level is told as that, and alone.</summary>
    [Fact]
    public void A_wrong_level_is_that_of_the_pitch() => Assert.Equal("thread-mill-pitch", Assert.Single(Of("G3 I-9 Z-7.5 F240|I-9 Z-9|I-9 Z-4.5|I-9 Z-3")).Name);
}
