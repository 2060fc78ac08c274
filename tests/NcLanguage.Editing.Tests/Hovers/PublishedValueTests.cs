using NcLanguage.Editing.Tests.Support;

namespace NcLanguage.Editing.Tests.Hovers;

/// <summary>Derived values against published ones. Each names its source.</summary>
public sealed class PublishedValueTests
{
    static string Tool(string diameter, string more = "") =>
        $$"""{ "units": "mm", "tools": [ { "number": 1, "diameter": {{diameter}}{{more}} } ] }""";

    /// <summary>Speed = π·D·n/1000. 10 mm drill at S3183: 100.0 m/min (drilling example on a question site); D 12.7 at n 626.6: 25 m/min (Groover,
    /// Fundamentals of Modern Manufacturing, drilling problem); D 10 at n 954.9: 30 m/min (the same kind of problem); metric form of the formula
    /// from memory, inch form in the open textbook Machining 1, chapter 8.</summary>
    [Theory]
    [InlineData("10", "3183", "100 m/min")]
    [InlineData("12.7", "626.6", "25 m/min")]
    [InlineData("10", "954.9", "30 m/min")]
    [InlineData("8.5", "749", "20 m/min")]
    [InlineData("6.8", "1404.3", "30 m/min")]
    public void Cutting_speed(string diameter, string speed, string expected) =>
        Assert.Contains($" · {expected} at diameter {diameter} mm (T1).", Editor.Markdown($"G21 T1 M6\n$0S{speed} M3", Tool(diameter)), StringComparison.Ordinal);

    /// <summary>RPM = 12·SFPM/(π·D), open textbook Machining 1, chapter 8: half an inch at 80 ft/min turns 611.2, at 100 ft/min 763.9.</summary>
    [Theory]
    [InlineData("611.2", "80 ft/min")]
    [InlineData("763.9", "100 ft/min")]
    public void Cutting_speed_in_feet(string speed, string expected) =>
        Assert.Contains($" · {expected} at diameter 12.7 mm (T1).", Editor.Markdown($"G20 T1 M6\n$0S{speed} M3", Tool("12.7")), StringComparison.Ordinal);

    /// <summary>F = n·f: 626.6 turns at 0.30 mm feed 188 mm/min (Groover); 954.9 at 0.25 feed 238.7; 3183 at 0.06 feed 191.</summary>
    [Theory]
    [InlineData("626.6", "188", "188 mm/min · 0.3 mm per rev at S626.6")]
    [InlineData("954.9", "238.7", "238.7 mm/min · 0.25 mm per rev at S954.9")]
    [InlineData("3183", "191", "191 mm/min · 0.06 mm per rev at S3183")]
    public void Feed_per_turn(string speed, string feed, string expected) =>
        Assert.Contains(expected, Editor.Markdown($"G21\nS{speed} M3 $0F{feed}"), StringComparison.Ordinal);

    /// <summary>F = n·z·fz (textbook, from memory).</summary>
    [Fact]
    public void Feed_per_tooth() => Assert.Contains(
        "240 mm/min · 0.2 mm per rev at S1200 · 0.05 mm per tooth (4 teeth)",
        Editor.Markdown("G21 T1 M6\nS1200 M3 $0F240", Tool("10", ", \"flutes\": 4")), StringComparison.Ordinal);

    const string Drilling = """
        { "units": "mm", "material": "aluminium", "tools": [ { "number": 1, "kind": "drill", "diameter": 8, "flutes": 2, "material": "HSS" } ] }
        """;

    /// <summary>200 to 300 ft/min for HSS drills in aluminium, 0.004 to 0.007 in/rev from 1/4 to 1/2 in (U.S. Navy training course on drilling), in
    /// the unit of the program.</summary>
    [Theory]
    [InlineData("G21 T1 M6\n$0S3000 M3", "The cutting data give 61 to 91.4 m/min for aluminium with an edge of HSS (U.S. Navy training course on drilling).")]
    [InlineData("G20 T1 M6\n$0S3000 M3", "The cutting data give 200 to 300 ft/min for aluminium with an edge of HSS (U.S. Navy training course on drilling).")]
    [InlineData("G21 T1 M6\nS3000 M3 $0F400", "The cutting data give 0.102 to 0.178 mm per turn for aluminium with an edge of HSS (U.S. Navy training course on drilling).")]
    [InlineData("G20 T1 M6\nS3000 M3 $0F16", "The cutting data give 0.004 to 0.007 in per turn for aluminium with an edge of HSS (U.S. Navy training course on drilling).")]
    public void What_the_cutting_data_give(string program, string expected) => Assert.Contains(expected, Editor.Markdown(program, Drilling), StringComparison.Ordinal);

    [Fact]
    public void Nothing_is_said_of_what_the_cutting_data_lack() =>
        Assert.DoesNotContain("cutting data", Editor.Markdown("G21 T1 M6\n$0S3000 M3", Drilling.Replace("aluminium", "hardwood", StringComparison.Ordinal)), StringComparison.Ordinal);

    /// <summary>Turned round: feed per revolution under G95 gives feed per minute.</summary>
    [Fact]
    public void Feed_per_turn_programmed() => Assert.Contains(
        "0.3 mm per rev · 188 mm/min at S626.6", Editor.Markdown("G21\nG95 S626.6 M3 $0F0.3"), StringComparison.Ordinal);

    /// <summary>NISTIR 6556 §3.5.19: F2 in inverse time is half a minute.</summary>
    [Fact]
    public void Inverse_time() => Assert.EndsWith("The block's move takes 30 s.", Editor.Markdown("G93 G1 X10 $0F2"), StringComparison.Ordinal);

    /// <summary>Tapping feed = turns × pitch: ISO 262 coarse pitches at 500 turns; M6 at S600 takes F600 (textbook program, Smid); F150 with
    /// S300 cuts 2 threads for each mm (NISTIR 6556 §3.5.16.5).</summary>
    [Theory]
    [InlineData("1", "600", "600", "600")]
    [InlineData("1.25", "500", "625", "625")]
    [InlineData("1.75", "500", "875", "875")]
    [InlineData("0.5", "300", "150", "150")]
    [InlineData("1.25", "500", "600", "625")]
    public void Tapping_feed(string pitch, string speed, string feed, string asked)
    {
        var text = Editor.Markdown(
            $"G21 G90 T1 M6\nS{speed} M3\nG0 X0 Y0 Z10\nG84 X1 Z-9 R5 $0F{feed}", Tool("8", $", \"kind\": \"tap\", \"pitch\": {pitch}"));
        Assert.Contains(
            feed == asked ? $" That is the pitch of T1, {pitch} mm." : $" **The pitch of T1, {pitch} mm, asks for {asked} mm/min.**", text, StringComparison.Ordinal);
    }

    /// <summary>t = 60·turns/n: 2 turns at 1000 last 0.12 s; 0.2 s at 1200 are 4 turns (arithmetic).</summary>
    [Theory]
    [InlineData("1000", "0.12", "0.12 s (seconds, iso-mill) · 2 turns at S1000.")]
    [InlineData("1200", "0.2", "0.2 s (seconds, iso-mill) · 4 turns at S1200.")]
    public void Turns_during_a_dwell(string speed, string seconds, string expected) =>
        Assert.EndsWith(expected, Editor.Markdown($"S{speed} M3\nG4 $0P{seconds}"), StringComparison.Ordinal);

    [Fact]
    public void No_turns_are_told_while_the_spindle_stands() =>
        Assert.DoesNotContain("turns", Editor.Markdown("S1000 M5\nG4 $0P0.12"), StringComparison.Ordinal);

    /// <summary>Feed strokes = ⌈(R − Z)/Q⌉: R2 Z-20 Q5 goes to -3, -8, -13, -18, -20 (arithmetic).</summary>
    [Theory]
    [InlineData("Q5", "5 mm a peck: 5 over 22 mm.")]
    [InlineData("Q22", "22 mm a peck: 1 over 22 mm.")]
    [InlineData("Q2.2", "2.2 mm a peck: 10 over 22 mm.")]
    public void Pecks(string word, string expected)
    {
        var program = $"G21 G90 G0 X0 Y0 Z10\nG83 X1 Z-20 R2 $0{word} F100";
        Assert.Contains(expected, Editor.Markdown(program), StringComparison.Ordinal);
    }

    /// <summary>The international inch is 25.4 mm exactly (1959 agreement).</summary>
    [Theory]
    [InlineData("X1", "To X1 (25.4 mm)")]
    [InlineData("X-0.5", "To X-0.5 (-12.7 mm)")]
    [InlineData("X3.0625", "To X3.0625 (77.788 mm)")]
    public void Inches(string word, string expected) =>
        Assert.Contains(expected, Editor.Markdown($"G20 G90 G0 $0{word}"), StringComparison.Ordinal);

    /// <summary>A feed of 10 in/min is 254 mm/min: what the block does is told in the program's unit, and takes 6 s for an inch.</summary>
    [Fact]
    public void Inch_feed() => Assert.Contains(
        "1. feed X0 → X1 at Z0 · 10 in/min · 6 s\n", Editor.Markdown("G20 G90 G0 X0 Y0 Z0\n$0G1 X1 F10"), StringComparison.Ordinal);

    /// <summary>NISTIR 6556 §3.5.16.2, first worked example, from (1, 2, 3). Each axis goes 3 mm: 2 * sqrt(3 / 3000) s.</summary>
    [Fact]
    public void Worked_example_of_a_cycle() => Assert.Contains(
        "1. traverse X1 Y2 → X4 Y5 at Z3 · 0.063 s\n2. rapid Z3 → Z2.8 · 0.016 s\n3. feed Z2.8 → Z1.5 · 100 mm/min · 0.78 s\n4. return Z1.5 → Z3 · 0.045 s\n",
        Editor.Markdown("G21 G90 G0 X1 Y2 Z3 F100\nG90 $0G81 G98 X4 Y5 Z1.5 R2.8"),
        StringComparison.Ordinal);
}
