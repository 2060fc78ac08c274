using NcLanguage.Checks.Tests.Rules;

namespace NcLanguage.Checks.Tests.Cutting;

/// <summary>A right-hand helix rises counterclockwise, seen from above (geometry); where nothing is said a thread is right-hand (ISO 6410-1, from memory).</summary>
public sealed class ThreadLeftHandTests
{
    static List<Finding> Of(string arcs, string comment = "M30X1.5", string holes = "") => Programs.Of(
        "thread-left-hand",
        $"({comment})\nG21 G90 G17 G54\nT11 M6\nS2400 M3\nG0 X0 Y0\nG43 H11 Z20\nG1 Z-9 F1000\nX9\n{arcs.Replace('|', '\n')}\nG1 X0 Y0\nG0 Z20\nM5\nM30\n",
        $$"""{ {{holes}} "tools": [ { "number": 11, "kind": "thread-mill", "diameter": 12, "pitch": 1.5 } ] }""");

    [Theory]
    [InlineData("G3 I-9 Z-7.5 F240", 0)]
    [InlineData("G2 I-9 Z-10.5 F240", 0)]
    [InlineData("G2 I-9 Z-7.5 F240", 1)]
    [InlineData("G3 I-9 Z-10.5 F240", 1)]
    [InlineData("G2 X-9 I-9 Z-8.25 F240|X9 I9 Z-7.5", 1)]
    [InlineData("G2 I-9 F240", 0)] // a level turn
    public void The_hand_is_that_of_the_helix(string arcs, int told) => Assert.Equal(told, Of(arcs).Count);

    [Theory]
    [InlineData("M30X1.5 LH", "")]
    [InlineData("left hand thread", "")]
    [InlineData("M30", "\"holes\": [ { \"x\": 0, \"y\": 0, \"thread\": \"M30x1.5\" } ],")] // held against the drawing
    public void What_is_said_or_drawn_is_not_told(string comment, string holes) => Assert.Empty(Of("G2 I-9 Z-7.5 F240", comment, holes));

    [Fact]
    public void It_is_told_once_for_a_tool()
    {
        var finding = Assert.Single(Of("G2 I-9 Z-7.5 F240|G1 X0|G0 Z20|G0 X60|G1 Z-9|X69|G2 I-9 Z-7.5"));
        Assert.Equal("The helix of T11 at X0 Y0 and 1 more place cuts a left-hand thread: for a right-hand one G3 leads up, or G2 down.", finding.Message);
    }
}
