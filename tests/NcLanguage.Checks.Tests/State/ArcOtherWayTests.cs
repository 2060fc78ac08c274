using NcLanguage.Checks.Tests.Rules;

namespace NcLanguage.Checks.Tests.State;

/// <summary>Arcs that turn the other way than both their neighbours want. Directions at their ends by plane geometry: the tangent of a circle stands across its radius. Which contours are usual: common practice.</summary>
public sealed class ArcOtherWayTests
{
    const string Start = "G21 G17 G90 G94 G40 G54\nT3 M6\nS2000 M3\nG0 X-20 Y0\nG43 H3 Z-5\n";

    static List<Finding> Of(string blocks) => Programs.Of("arc-other-way", Start + blocks + "\nG0 Z50\nM5\nM30", """{ "tools": [ { "number": 3, "kind": "end-mill", "diameter": 8, "length": 90, "radiusOffset": 3 } ] }""");

    // A plate of 60 by 50 with corners of R10, the last but one of them at the third block from the end.
    const string Plate = "G1 X50 Y0 F300\nG3 X60 Y10 R10\nG1 Y40\nG3 X50 Y50 R10\nG1 X10\nG3 X0 Y40 R10\nG1 Y10\nG3 X10 Y0 R10\nG1 X20";

    [Theory]
    [InlineData("G3 X50 Y50 R10", "G2 X50 Y50 R10", new[] { 9 })]
    [InlineData("G3 X50 Y50 R10", "G3 X50 Y50 R10", new int[0])]
    [InlineData("G3 X50 Y50 R10", "G2 X50 Y50 I-10 J0", new[] { 9 })] // by its centre it runs the long way round
    [InlineData("G3 X60 Y10 R10", "G3 X60 Y10 I0 J10", new int[0])]
    [InlineData("G3 X60 Y10 R10", "G3 X60 Y10 I10 J0", new[] { 7 })] // I and J swapped: three quarters of a circle about the corner
    [InlineData("G3 X60 Y10 R10", "G3 X60 Y10 R-10", new[] { 7 })] // the same by R
    [InlineData("G3 X60 Y10 R10\nG1 Y40\nG3 X50 Y50 R10", "G3 X60 Y10 R-10\nG1 Y40\nG3 X50 Y50 R-10", new int[0])]
    [InlineData("G3 X60 Y10 R10\nG1 Y40\nG3 X50 Y50 R10", "G3 X60 Y10 I10 J0\nG1 Y40\nG3 X50 Y50 I0 J10", new int[0])] // two such corners: cut free, as is meant
    [InlineData("G3 X60 Y10 R10\nG1 Y40", "G1 X57\nG3 X60 Y3 I3 J0\nG1 Y40", new int[0])] // cut free by another radius
    [InlineData("G3 X50 Y50 R10\nG1 X10\nG3 X0 Y40 R10", "G2 X50 Y50 R10\nG1 X10\nG2 X0 Y40 R10", new int[0])] // two hollows: meant
    [InlineData("Y40\nG3 X50 Y50 R10", "Y35\nG2 X45 Y50 R15", new int[0])] // a hollow of another radius
    [InlineData("G1 Y40\nG3 X50 Y50 R10", "G1 Y50\nX50", new int[0])] // a sharp corner
    public void One_of_several_corners_that_turns_the_other_way_is_told(string was, string instead, int[] lines) =>
        Assert.Equal(lines, Of(Plate.Replace(was, instead, StringComparison.Ordinal)).Select(finding => finding.Line + 1));

    /// <summary>Parts of the run that hold nothing but a comment, or one move, stand between it and its neighbours.</summary>
    [Theory]
    [InlineData(0)]
    [InlineData(130)]
    [InlineData(300)]
    public void One_far_from_its_neighbours_is_told_too(int between)
    {
        var comments = string.Concat(Enumerable.Repeat("(ON AND ON)\n", between));
        var program = Start + Plate.Replace("G3 X50 Y50 R10", comments + "G2 X50 Y50 R10\n" + comments.TrimEnd(), StringComparison.Ordinal).Replace("\n\n", "\n", StringComparison.Ordinal) + "\nG0 Z50\nM5\nM30";
        Assert.Equal(9 + between, Assert.Single(Programs.Analyse(program).Findings, finding => finding.Name == "arc-other-way").Line + 1);
    }

    /// <summary>The text is run in parts of some 128 lines; where one ends has no meaning.</summary>
    [Theory]
    [InlineData("G3 X50 Y50 R10", "G2 X50 Y50 R10", 9)]
    [InlineData("Y40\nG3 X50 Y50 R10", "Y40\nG3 X50 Y50 R100", 9)]
    public void One_at_the_end_of_a_part_is_told_too(string was, string instead, int line)
    {
        for (var above = 110; above < 135; above++)
        {
            var analysis = Programs.Analyse(Start + string.Concat(Enumerable.Repeat("(ON AND ON)\n", above)) + Plate.Replace(was, instead, StringComparison.Ordinal) + "\nG0 Z50\nM5\nM30");
            Assert.Equal(line + above, Assert.Single(analysis.Findings, finding => finding.Name is "arc-other-way" or "arc-radius-point").Line + 1);
        }
    }

    [Theory]
    // Half circles of a spiral, one of them the other way.
    [InlineData("G1 X0 Y0 F300\nG3 X10 I5\nG3 X-4 I-7\nG3 X14 I9\nG3 X-8 I-11", new int[0])]
    [InlineData("G1 X0 Y0 F300\nG3 X10 I5\nG2 X-4 I-7\nG3 X14 I9\nG3 X-8 I-11", new[] { 8 })]
    // A helix about the other side of its start.
    [InlineData("G1 X4 F300\nG3 I-4 Z-6\nI-4 Z-7\nI-4", new int[0])]
    [InlineData("G1 X4 F300\nG3 I-4 Z-6\nI4 Z-7\nI-4", new[] { 8 })]
    // A curved slot gone there and back, and a row of scallops.
    [InlineData("G1 X0 F300\nG2 X20 R15\nG3 X0 R15 Z-6\nG2 X20 R15 Z-7\nG3 X0 R15", new int[0])]
    [InlineData("G1 X0 F300\nG2 X20 R10\nG2 X40 R10\nG2 X60 R10", new int[0])]
    // Nothing stands before it, or behind it.
    [InlineData("G2 X0 Y20 R20 F300\nG1 X30", new int[0])]
    [InlineData("G1 X50 F300\nG2 X60 Y10 R10", new int[0])]
    public void One_that_goes_back_on_both_its_neighbours_is_told(string blocks, int[] lines) => Assert.Equal(lines, Of(blocks).Select(finding => finding.Line + 1));

    /// <summary>The tool's radius moves the path aside, and not the corners of what is written.</summary>
    [Fact]
    public void Under_compensation_the_programmed_path_counts() => Assert.Equal(
        "As G2 this arc meets the moves before and behind it at corners; as G3 it would run smoothly into both.",
        Assert.Single(Of("G1 G42 D3 X0 Y0 F300\n" + Plate.Replace("G3 X50 Y50", "G2 X50 Y50", StringComparison.Ordinal) + "\nG40 Y-20")).Message);

    /// <summary>Mirrored, G2 runs counterclockwise: it is the code that is named.</summary>
    [Fact]
    public void Mirrored_the_code_is_named_as_it_is_written() => Assert.StartsWith(
        "As G2 this arc", Assert.Single(Of("G51 X0 Y0 I-1 J1\n" + Plate.Replace("G3 X50 Y50", "G2 X50 Y50", StringComparison.Ordinal) + "\nG50")).Message, StringComparison.Ordinal);

    [Fact]
    public void A_whole_turn_may_have_its_centre_on_the_wrong_side() => Assert.Equal(
        "As G3 this arc goes back on the move before it and on the one behind it; as G2, or with its centre on the other side, it would run smoothly into both.",
        Assert.Single(Of("G1 X4 F300\nG3 I-4 Z-6\nI4 Z-7\nI-4")).Message);
}
