using NcLanguage.Checks.Analysis;
using NcLanguage.Checks.Tests.Rules;
using NcLanguage.Machine.Geometry;
using NcLanguage.Machine.Setups;

namespace NcLanguage.Checks.Tests.State;

/// <summary>What a tool takes over from the one before it: its feed (NISTIR 6556 §3.6.3 lists what a tool change alters, F is not among it)
/// and its coolant (common practice). The programs are our own.</summary>
public sealed class NextToolTests
{
    const string First = "G21 G90 G17 G54 G94\nT1 M6\nM3 S1000\nG0 X0 Y0\nG43 H1 Z5\nG1 Z-1 F300\nG0 Z50\n"; // 7 lines

    const string Second = "T2 M6\nM3 S1000\nG0 X0 Y0\nG43 H2 Z5\n"; // 4 lines

    static int[] Lines(string rule, string program, Setup? setup = null, string readings = "") =>
        [.. Check.Of(rule, program, readings, setup).Select(finding => finding.Line + 1)];

    static Setup With(Tool tool) => Setup.None with { IsPresent = true, Tools = [tool] };

    [Theory]
    [InlineData(First + Second + "G1 Z-1\nZ-2", new[] { 12 })]
    [InlineData(First + Second + "G81 X0 Y0 Z-1 R2\nX5\nG80", new[] { 12 })]
    [InlineData(First + Second + "G1 Z-1 F80\nZ-2", new int[0])]
    [InlineData(First + Second + "F80\nG1 Z-1", new int[0])]
    [InlineData(First + "F80\n" + Second + "G1 Z-1", new int[0])] // given for it before the change
    [InlineData(First + "T2 M6 F80\nM3\nG0 X0 Y0\nG43 H2 Z5\nG1 Z-1", new int[0])]
    [InlineData(First + Second + "G1 Z20\nZ-1", new[] { 13 })] // straight up is no cut
    [InlineData(First + Second + "G93 G1 Z-1 F2\nG94", new int[0])] // every block has its own
    [InlineData(First + "T1 M6\nM3 S1000\nG43 H1 Z5\nG1 Z-1", new int[0])] // the same tool
    [InlineData("G21 G90 G17 G54\nF100\n" + Second + "G1 Z-1\nZ-2", new int[0])] // no tool before has cut by it
    [InlineData(First + "M98 P5\n" + Second + "G1 Z-1", new int[0])] // the feed that the call left is not known
    [InlineData(First + Second + "G95\nG1 Z-1", new int[0])] // the number per minute is none per turn: feed-missing
    [InlineData(First + "T2 M6\nT3 M6\nM3 S500\nG43 H3 Z5\nG1 Z-1", new[] { 12 })]
    public void The_feed_of_the_tool_before_is_told_at_the_first_cut(string program, int[] lines) =>
        Assert.Equal(lines, Lines("feed-from-other-tool", program + "\nG0 Z50\nM5\nM30"));

    [Fact]
    public void A_feed_in_the_air_is_no_cut()
    {
        var plate = Setup.None with { IsPresent = true, Stock = new Box3(new(0, 0, -20), new(100, 60, 0)) };
        const string program = First + Second + "G1 X20\nZ-1\nG0 Z50\nM5\nM30";
        Assert.Equal([12], Lines("feed-from-other-tool", program));
        Assert.Equal([13], Lines("feed-from-other-tool", program, plate));
    }

    /// <summary>One cause, one finding: where the pitch is known, tap-feed tells what the feed has to be.</summary>
    [Fact]
    public void A_tap_s_feed_is_left_to_tap_feed()
    {
        const string program = First + Second + "G84 X0 Y0 Z-8 R5\nG80\nG0 Z50\nM5\nM30";
        Assert.Equal([12], Lines("feed-from-other-tool", program));
        var tap = With(new Tool { Number = 2, Kind = ToolKind.Tap, Pitch = 1, Length = 100 });
        Assert.Empty(Lines("feed-from-other-tool", program, tap));
        Assert.Equal([12], Lines("tap-feed", program, tap));
    }

    [Fact]
    public void A_probe_cuts_nothing() =>
        Assert.Empty(Lines("feed-from-other-tool", First + Second + "G1 Z1\nG0 Z50\nM5\nM30", With(new Tool { Number = 2, Kind = ToolKind.Probe })));

    [Fact]
    public void The_block_that_gave_the_feed_is_named()
    {
        var analysis = Check.Analyse(First + Second + "G1 Z-1\nG0 Z50\nM5\nM30");
        var finding = analysis.Findings.Single(found => found.Name == "feed-from-other-tool");
        Assert.Contains("F300", finding.Message, StringComparison.Ordinal);
        Assert.Equal(5, analysis.Related(finding).Single().Line);
    }

    // ---- coolant-off ----

    static string Wet(string between) => First.Replace("Z5\nG1", "Z5 M8\nG1", StringComparison.Ordinal) + between + Second;

    [Theory]
    [InlineData("M9\n", "G1 Z-1 F80\nZ-2", new[] { 13 })]
    [InlineData("M9\n", "G81 X0 Y0 Z-1 R2 F80\nX5\nG80", new[] { 13 })]
    [InlineData("M9\n", "M8\nG1 Z-1 F80\nM9", new int[0])]
    [InlineData("M9\n", "M7\nG1 Z-1 F80\nM9", new int[0])]
    [InlineData("M9\n", "G1 Z-1 F80 M8\nM9", new int[0])]
    [InlineData("M9\n", "M9 (dry)\nG1 Z-1 F80", new int[0])]
    [InlineData("M9\n", "G1 Z20 F80", new int[0])]
    [InlineData("", "G1 Z-1 F80\nM9", new int[0])] // §3.6.3: a tool change leaves the coolant on
    public void A_tool_that_cuts_dry_where_others_had_coolant_is_noted(string between, string blocks, int[] lines) =>
        Assert.Equal(lines, Lines("coolant-off", Wet(between) + blocks + "\nG0 Z50\nM5\nM30"));

    [Theory]
    [InlineData(First + Second + "G1 Z-1 F80")] // no coolant code at all
    [InlineData(First + "T2 M6\nM3 S1000\nG0 X0 Y0\nG43 H2 Z5 M8\nG1 Z-1 F80\nM9")] // the tools before the first wet one
    [InlineData(First + "M8\nM9\n" + Second + "G1 Z-1 F80")] // on, but nothing was cut
    [InlineData("G21 G90 G17 G54\nM3 S1000\nG0 X0 Y0 Z5\nM8\nG1 Z-1 F80\nM9\nZ-2")] // the same tool, switched off by the program
    public void Without_a_wet_tool_before_nothing_is_noted(string program) => Assert.Empty(Lines("coolant-off", program + "\nG0 Z50\nM5\nM30"));

    [Theory]
    [InlineData("M8", "G1 Z-1 F80 M8")]
    [InlineData("M7", "G1 Z-1 F80 M7")]
    public void The_fix_turns_on_what_was_on_before(string code, string mended)
    {
        var program = Wet("M9\n").Replace("M8", code, StringComparison.Ordinal) + "G1 Z-1 F80\nG0 Z50 M9\nM5\nM30";
        Assert.Contains("\n" + mended + "\n", Check.Fixed("coolant-off", program), StringComparison.Ordinal);
    }

    /// <summary>What a fix switches on is switched off again, once.</summary>
    [Theory]
    [InlineData("G0 Z50 M9\nM5\nM30", "G0 Z50 M9\nM5\nM30")]
    [InlineData("G0 Z50\nM5\nM30", "G0 Z50\nM5\nM9 M30")]
    [InlineData("G0 Z50\nM5\nM2", "G0 Z50\nM5\nM9 M2")]
    [InlineData("G0 Z50\nM5\nM9 M30", "G0 Z50\nM5\nM9 M30")]
    [InlineData("G0 Z50\nM5", "G0 Z50\nM5")]
    public void The_fix_switches_the_coolant_off_at_the_end_where_nothing_does(string end, string mended) =>
        Assert.EndsWith("G1 Z-1 F80 M8\n" + mended, Check.Fixed("coolant-off", Wet("M9\n") + "G1 Z-1 F80\n" + end), StringComparison.Ordinal);

    [Theory]
    [InlineData("G0 Z50\nM5\nM30", "G0 Z50\nM5\nM30")]
    [InlineData("G0 Z50\nM30", "G0 Z50\nM5 M30")]
    public void The_fix_stops_the_spindle_at_the_end_where_nothing_does(string end, string mended) =>
        Assert.Equal("G21 G90 G17 G54\nT1 M6\nS900\nG0 X0 Y0\nM3\nG1 Z-1 F80\n" + mended, Check.Fixed("spindle-off", "G21 G90 G17 G54\nT1 M6\nS900\nG0 X0 Y0\nG1 Z-1 F80\n" + end));
}
