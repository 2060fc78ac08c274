using NcLanguage.Checks.Tests.Rules;

namespace NcLanguage.Checks.Tests.Cutting;

/// <summary>The rules that hold S and F against the cutting data. Expected speeds and feeds by v = π·D·n and f = F/(n·z) from the rows' published ends.</summary>
public sealed class CuttingDataTests
{
    static string Setup(string material, string tool, string units = "mm") => $$"""
        { "units": "{{units}}", "material": "{{material}}", "tools": [ { "number": 3, {{tool}} } ] }
        """;

    const string Drill = "\"kind\": \"drill\", \"diameter\": 10, \"material\": \"HSS\", \"flutes\": 2";
    const string Mill = "\"kind\": \"end-mill\", \"diameter\": 10, \"material\": \"carbide\", \"flutes\": 4";

    static int[] Speed(string words, string setup, string? machine = null) => Programs.Lines("cutting-speed", "G21 G90 G17 G54\nT3 M6\n" + words + "\nM30", setup, machine);

    static int[] Feed(string words, string setup, string? machine = null) => Programs.Lines("feed-per-tooth", "G21 G90 G17 G54\nT3 M6\nS3000 M3\nG0 X0 Y0 Z5\n" + words + "\nM30", setup, machine);

    /// <summary>Aluminium, HSS: 200 to 300 ft/min (U.S. Navy training course). Twice 300 ft/min at 10 mm are 5821 turns, half of 200 are 970.</summary>
    [Theory]
    [InlineData("S5800 M3", false)]
    [InlineData("S5850 M3", true)]
    [InlineData("S980 M3", false)]
    [InlineData("S960 M3", true)]
    [InlineData("S9000", false)] // not turning
    [InlineData("S9000 M5", false)]
    public void A_speed_is_held_against_the_table(string words, bool found) => Assert.Equal(found ? [3] : [], Speed(words, Setup("aluminium", Drill)));

    [Theory]
    [InlineData("S9000\nM3", 4)] // where it is started
    [InlineData("S2000 M3\nS9000", 4)]
    public void It_is_told_where_the_tool_turns_at_it(string words, int line) => Assert.Equal([line], Speed(words, Setup("aluminium", Drill)));

    [Theory]
    [InlineData("hardwood", Drill)]
    [InlineData("aluminium", "\"kind\": \"drill\", \"diameter\": 10")]
    [InlineData("aluminium", "\"kind\": \"drill\", \"material\": \"HSS\"")]
    [InlineData("aluminium", "\"diameter\": 10, \"material\": \"HSS\"")]
    [InlineData("aluminium", "\"kind\": \"drill\", \"diameter\": 10, \"material\": \"ceramic\"")]
    [InlineData("aluminium", "\"kind\": \"boring-bar\", \"diameter\": 10, \"material\": \"HSS\"")]
    public void What_is_not_known_is_not_judged(string material, string tool)
    {
        Assert.Empty(Speed("S60000 M3", Setup(material, tool)));
        Assert.Empty(Speed("S1 M3", Setup(material, tool)));
    }

    /// <summary>T-slot cutters are fed at half a thousandth of an inch a tooth and more (common practice, from memory): of 21 mm with 6 teeth at S300, half of that is 11.4 mm/min. The upper
    /// end is that of mills of this size, 0.01 in; twice that is 914 mm/min.</summary>
    [Theory]
    [InlineData("S300\nG1 X10 F35", false)]
    [InlineData("S300\nG1 X10 F12", false)]
    [InlineData("S300\nG1 X10 F11", true)]
    [InlineData("S300\nG1 X10 F910", false)]
    [InlineData("S300\nG1 X10 F920", true)]
    public void A_slot_mill_may_be_fed_less_than_an_end_mill(string words, bool found) =>
        Assert.Equal(found ? [6] : [], Feed(words, Setup("low-carbon steel", "\"kind\": \"slot-mill\", \"diameter\": 21, \"shankDiameter\": 10, \"fluteLength\": 9, \"material\": \"HSS\", \"flutes\": 6")));

    /// <summary>Slitting saws take as little (common practice, from memory): of 63 mm with 32 teeth at S140, half of 0.0005 in a tooth is 28.4 mm/min.</summary>
    [Theory]
    [InlineData("S140\nG1 X10 F60", false)]
    [InlineData("S140\nG1 X10 F29", false)]
    [InlineData("S140\nG1 X10 F28", true)]
    public void A_slitting_saw_may_be_fed_as_little(string words, bool found) =>
        Assert.Equal(found ? [6] : [], Feed(words, Setup("low-carbon steel", "\"kind\": \"slot-mill\", \"diameter\": 63, \"shankDiameter\": 22, \"fluteLength\": 2, \"material\": \"HSS\", \"flutes\": 32")));

    /// <summary>A full turn ends where it began, and goes across the tool's axis as any other cut: with 4 teeth at S3000 F12000 is 1 mm a tooth. Under G93 F400 asks for one round of 8 mm in
    /// 1/400 min, and would be a usual feed a minute. Far too little is none there: within a bore the tool's middle is fed the less the less room it has (plane geometry), down a helix less on purpose.</summary>
    [Theory]
    [InlineData("G1 X8 F800\nG3 I-8 F12000", 6)]
    [InlineData("G1 X8 F800\nG3 I-8 Z3 F12000", 6)]
    [InlineData("G1 X8 F800\nG93 G3 I-8 Z3 F400", 6)]
    [InlineData("G1 X8 F800\nG3 I-8 Z3 F60", 0)]
    [InlineData("G1 X8 F800\nG3 I-8 F800", 0)]
    public void A_full_turn_is_held_against_the_table_too(string words, int line) => Assert.Equal(line > 0 ? [line] : [], Feed(words, Setup("aluminium", Mill)));

    /// <summary>Where one row's source is a part of another's, it is named once.</summary>
    [Fact]
    public void A_source_is_named_once()
    {
        var setup = Setup("low-carbon steel", "\"kind\": \"slot-mill\", \"diameter\": 63, \"shankDiameter\": 22, \"fluteLength\": 2, \"material\": \"HSS\", \"flutes\": 32");
        var message = Assert.Single(Programs.Of("feed-per-tooth", "G21 G90 G17 G54\nT3 M6\nM3 S140\nG0 X0 Y0 Z5\nG1 X10 F28\nM30", setup)).Message;
        Assert.Equal(2, message.Split("common practice").Length);
    }

    /// <summary>One cause, one finding: F1200 with four teeth is 0.1 mm a tooth at S3000, which is in the table, and 1 mm at S300, whose 9.4 m/min are told. F6000 at S3000 is 0.5 mm.</summary>
    [Theory]
    [InlineData("S300\nG1 X50 F1200", new int[0])]
    [InlineData("S3000\nG1 X50 F1200", new int[0])]
    [InlineData("S3000\nG1 X50 F6000", new[] { 6 })]
    [InlineData("G95\nS300\nG1 X50 F4", new[] { 7 })] // by the turn it hangs on no speed
    public void A_feed_that_only_the_speed_makes_strange_is_left_to_the_speed(string words, int[] lines) => Assert.Equal(lines, Feed(words, Setup("aluminium", Mill)));

    /// <summary>F0.15 by the minute at S3000 is 0.00005 mm a turn; by the turn it is within the 0.004 to 0.007 in of a 10 mm drill (U.S. Navy training course).</summary>
    [Theory]
    [InlineData("G81 X5 Y5 R2 Z-5 F0.15", "This feed at S3000 is 0.00005 mm per turn,", " G95 would make 0.15 mm of it.", "Add G95", "G81 X5 Y5 R2 Z-5 G95 F0.15")]
    [InlineData("G95 G81 X5 Y5 R2 Z-5 F450", "This feed at S3000 is 450 mm per turn,", " G94 would make 0.15 mm of it.", "Write G94 in place of G95", "G94 G81 X5 Y5 R2 Z-5 F450")]
    [InlineData("G95\nG81 X5 Y5 R2 Z-5 F450", "This feed at S3000 is 450 mm per turn,", " G94 would make 0.15 mm of it.", "Add G94", "G95\nG81 X5 Y5 R2 Z-5 G94 F450")]
    [InlineData("G95\nG81 X5 Y5 R2 Z-5 F450\nX9\nX20 F0.1", "This feed at S3000 is 450 mm per turn,", " G94 would make 0.15 mm of it.", "F0.177: 0.178 mm per turn", null)] // the next would be one by the minute
    public void A_feed_of_the_other_kind_is_named(string words, string begin, string end, string fix, string? mended)
    {
        const string head = "G21 G90 G17 G54\nT3 M6\nS3000 M3\nG0 X0 Y0 Z5\n";
        var analysis = Programs.Analyse(head + words + "\nM30", Setup("aluminium", Drill));
        var found = analysis.Findings.Single(finding => finding.Name == "feed-per-tooth");
        Assert.StartsWith(begin, found.Message, StringComparison.Ordinal);
        Assert.EndsWith(end, found.Message, StringComparison.Ordinal);
        var first = found.Rule.Fixes(found, analysis).First();
        Assert.Equal(fix, first.Title);
        if (mended is not null)
            Assert.Empty(Programs.Of("feed-per-tooth", head + mended + "\nM30", Setup("aluminium", Drill)));
    }

    [Fact]
    public void A_speed_that_the_spindle_cannot_reach_is_not_asked_for()
    {
        Assert.Equal([3], Speed("S900 M3", Setup("aluminium", Drill), """{ "spindle": { "min": 60, "max": 4000 } }"""));
        Assert.Empty(Speed("S900 M3", Setup("aluminium", Drill), """{ "spindle": { "min": 60, "max": 1500 } }"""));
    }

    /// <summary>One cause, one finding: the spindle's limit speaks first.</summary>
    [Fact]
    public void A_speed_that_the_spindle_does_not_have_is_told_once()
    {
        const string mill = """{ "spindle": { "min": 60, "max": 8000 } }""";
        Assert.Empty(Speed("S9000 M3", Setup("aluminium", Drill), mill));
        Assert.Equal([3], Speed("S7000 M3", Setup("aluminium", Drill), mill));
    }

    /// <summary>Drill feeds of the U.S. Navy training course: 1/4 to 1/2 in takes 0.004 to 0.007 in a turn. At 3000: twice the greatest is 1067 mm/min, half of the least 152.</summary>
    [Theory]
    [InlineData("G81 X5 Y5 R2 Z-5 F1060", false)]
    [InlineData("G81 X5 Y5 R2 Z-5 F1070", true)]
    [InlineData("G81 X5 Y5 R2 Z-5 F155", false)]
    [InlineData("G81 X5 Y5 R2 Z-5 F150", true)]
    [InlineData("G95 G81 X5 Y5 R2 Z-5 F0.35", false)]
    [InlineData("G95 G81 X5 Y5 R2 Z-5 F0.36", true)]
    [InlineData("G93 G1 X5 F3000", false)]
    [InlineData("G1 Z-5 F1070", true)]
    public void A_drills_feed_is_taken_per_turn(string words, bool found) => Assert.Equal(found ? [5] : [], Feed(words, Setup("aluminium", Drill)));

    /// <summary>10 mm mill (common practice): 0.001 to 0.006 in a tooth. Four teeth at 3000: twice the greatest is 3658 mm/min, half of the least 152.</summary>
    [Theory]
    [InlineData("G1 X50 F3650", false)]
    [InlineData("G1 X50 F3670", true)]
    [InlineData("G1 X50 F155", false)]
    [InlineData("G1 X50 F150", true)]
    [InlineData("G1 Z-1 F50", false)] // straight down
    [InlineData("G2 X10 I5 F150", true)]
    [InlineData("G93 G1 X50 F500", true)] // 50 mm in a 500th of a minute, which 500 mm/min may have been meant for
    [InlineData("G93 G1 X50 F10", false)]
    [InlineData("G93 G1 X50 F100", false)] // too fast, but no feed per minute either
    public void A_mills_feed_is_taken_per_tooth(string words, bool found) => Assert.Equal(found ? [5] : [], Feed(words, Setup("aluminium", Mill)));

    [Theory]
    [InlineData("""{ "maxFeed": 3000 }""")]
    [InlineData("""{ "spindle": { "min": 60, "max": 2500 } }""")]
    public void What_the_machine_does_not_have_is_told_once(string machine)
    {
        Assert.Equal([5], Feed("G1 X50 F3700", Setup("aluminium", Mill)));
        Assert.Empty(Feed("G1 X50 F3700", Setup("aluminium", Mill), machine));
    }

    [Fact]
    public void A_message_tells_both_in_the_programs_unit()
    {
        var setup = Setup("stainless steel", "\"kind\": \"drill\", \"diameter\": 0.5, \"material\": \"HSS\"", "inch");
        var message = Programs.Of("cutting-speed", "G20 G90\nT3 M6\nS1000 M3\nM30", setup).Single().Message;
        // π · 0.5 in · 1000 / 12 = 130.9 ft/min.
        Assert.StartsWith("S1000 makes a cutting speed of 131 ft/min, far above the 30 to 40 ft/min for stainless steel with this tool, HSS drill of 0.5 in (", message, StringComparison.Ordinal);
    }
}
