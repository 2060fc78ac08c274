using NcLanguage.Checks.Tests.Rules;

namespace NcLanguage.Checks.Tests.Cycles;

/// <summary>Which tool goes with which cycle: common practice, and what NISTIR 6556 §3.5.16.2 to .10 says that each cycle does at the bottom and on its way out.</summary>
public sealed class CycleWrongToolTests
{
    const string Setup = """
        { "stock": { "min": [0, 0, -40], "max": [80, 50, 0] },
          "tools": [ { "number": 1, "kind": "drill", "diameter": 6.8, "pointAngle": 118 }, { "number": 2, "kind": "tap", "diameter": 8, "pitch": 1.25 },
                     { "number": 3, "kind": "reamer", "diameter": 8 }, { "number": 4, "kind": "boring-bar", "diameter": 20 }, { "number": 5, "kind": "end-mill", "diameter": 8 },
                     { "number": 6, "diameter": 8 }, { "number": 7, "kind": "thread-mill", "diameter": 6, "pitch": 1 } ] }
        """;

    static List<Finding> Of(int tool, string cycle) =>
        Programs.Of("cycle-wrong-tool", $"G21 G90 G17 G54\nT{tool} M6\nS400 M3\nG0 X12 Y20 Z40\nG98 {cycle} X12 Y20 Z-12 R5 F500\nX40\nX60\nG80\nM30\n", Setup);

    [Theory]
    [InlineData(1, "G84", "G84 taps, and tool 1 is a drill.")]
    [InlineData(1, "G74", "G74 taps, and tool 1 is a drill.")]
    [InlineData(5, "G84", "G84 taps, and tool 5 is an end-mill.")]
    [InlineData(7, "G84", "G84 taps, and tool 7 is a thread-mill.")]
    [InlineData(2, "G81", "G81 draws the tool out by a rapid without turning it back, and tool 2 is a tap.")]
    [InlineData(2, "G82 P0.2", "G82 draws the tool out by a rapid without turning it back, and tool 2 is a tap.")]
    [InlineData(2, "G83 Q2", "G83 pecks and draws the tool out by a rapid, and tool 2 is a tap.")]
    [InlineData(2, "G73 Q2", "G73 pecks and draws the tool out by a rapid, and tool 2 is a tap.")]
    [InlineData(2, "G86 P0.2", "G86 bores, and tool 2 is a tap.")]
    [InlineData(2, "G76 Q0.3", "G76 moves the tool aside with the spindle stopped, and tool 2 is a tap.")]
    [InlineData(1, "G76 Q0.3", "G76 moves the tool aside with the spindle stopped, and tool 1 is a drill.")]
    [InlineData(3, "G73 Q2", "G73 breaks chips by drawing back, and tool 3 is a reamer.")] // common practice, from memory: so too the three below
    [InlineData(3, "G83 Q2", "G83 pecks and draws the tool out by a rapid, and tool 3 is a reamer.")]
    [InlineData(3, "G81", "G81 draws the tool out by a rapid, and tool 3 is a reamer: G85 feeds it out.", Severity.Note)]
    [InlineData(3, "G82 P0.2", "G82 draws the tool out by a rapid, and tool 3 is a reamer: G85 feeds it out.", Severity.Note)]
    public void A_cycle_that_is_not_made_for_the_tool_is_told_once(int tool, string cycle, string message, Severity severity = Severity.Error)
    {
        var finding = Assert.Single(Of(tool, cycle));
        Assert.Equal((5, message, severity), (finding.Line + 1, finding.Message, finding.Severity));
    }

    [Theory]
    [InlineData(1, "G81")]
    [InlineData(1, "G83 Q2")]
    [InlineData(2, "G84")]
    [InlineData(2, "G74")]
    [InlineData(2, "G85")] // with a head that turns it back
    [InlineData(2, "G89 P0.2")]
    [InlineData(3, "G85")]
    [InlineData(3, "G89 P0.2")]
    [InlineData(3, "G86 P0.2")] // stopped first
    [InlineData(4, "G76 Q0.3")]
    [InlineData(4, "G86 P0.2")]
    [InlineData(5, "G82 P0.2")]
    [InlineData(6, "G84")] // nobody knows what it is
    [InlineData(6, "G76 Q0.3")]
    [InlineData(9, "G84")] // nor this
    public void What_goes_together_is_not(int tool, string cycle) => Assert.Empty(Of(tool, cycle));

    [Fact]
    public void Of_a_drill_no_pitch_is_asked_for() =>
        Assert.Empty(Programs.Of("tap-pitch-unknown", "G21 G90 G17 G54\nT1 M6\nS400 M3\nG0 X12 Y20 Z40\nG98 G84 X12 Y20 Z-12 R5 F500\nG80\nM30\n", Setup));

    // It drills, whatever the cycle is called: a hole of the drawing that it makes is not tapped.
    [Theory]
    [InlineData("\"diameter\": 6.8, \"depth\": 10, \"thread\": \"M8\"", 1)]
    [InlineData("\"diameter\": 6.8, \"depth\": 5", 0)]
    public void A_drill_in_a_tapping_cycle_cuts_no_thread(string hole, int notFinished) => Assert.Equal(
        notFinished,
        Programs.Lines(
            "hole-not-finished", "G21 G90 G17 G54\nT1 M6\nS400 M3\nG0 X12 Y20 Z40\nG98 G81 X12 Y20 Z-13 R5 F500\nG80\nG84 X12 Y20 Z-12 R5 F500\nG80\nM30\n",
            Setup[..^2] + $$""", "holes": [ { "x": 12, "y": 20, {{hole}} } ] }""").Length);
}
