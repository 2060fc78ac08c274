using System.Globalization;
using NcLanguage.Checks.Tests.Rules;

namespace NcLanguage.Checks.Tests.Cutting;

/// <summary>The helix of a thread mill climbs by the pitch of its teeth (common practice); a thread's lead is its pitch times its starts (from memory). M30 × 1.5 with a mill of 12 mm: the centre goes
/// on a radius of 9 mm.</summary>
public sealed class ThreadMillPitchTests
{
    static List<Finding> Of(string arcs, string tool = "\"pitch\": 1.5", string unit = "G21") => Programs.Of(
        "thread-mill-pitch",
        $"{unit} G90 G17 G54\nT11 M6\nS2400 M3\nG0 X0 Y0\nG43 H11 Z20\nG1 Z-9 F1000\n{arcs.Replace('|', '\n')}\nG1 X0 Y0\nG0 Z20\nM5\nM30\n",
        $$"""{ "tools": [ { "number": 11, "kind": "thread-mill", "diameter": 12, {{tool}} } ] }""");

    [Theory]
    [InlineData(1.25, "rises by 1.25 mm")]
    [InlineData(1, "rises by 1 mm")]
    [InlineData(2.25, "rises by 2.25 mm")]
    [InlineData(0.75, "rises by 0.75 mm")]
    [InlineData(-1.25, "falls by 1.25 mm")]
    [InlineData(1.54, null)] // within 3 %
    [InlineData(1.56, "rises by 1.56 mm")]
    [InlineData(1.5, null)]
    [InlineData(-1.5, null)]
    [InlineData(3, null)] // two starts
    [InlineData(0, null)] // a level circle is no helix
    public void The_lead_of_a_turn_is_the_pitch(double rise, string? words)
    {
        var found = Of(string.Create(CultureInfo.InvariantCulture, $"X9|G3 I-9 Z{-9 + rise} F240"));
        Assert.Equal(words is null ? 0 : 1, found.Count);
        Assert.All(found, finding => Assert.Equal((7, $"This helix of T11 {words} for each turn, and the pitch of the tool is 1.5 mm: its teeth do not run in one groove."), (finding.Line, finding.Message)));
    }

    [Theory]
    [InlineData("X9|G3 X-9 I-9 Z-8.375 F240|X9 I9 Z-7.75", 1)] // two halves, 1.25 for a turn
    [InlineData("X9|G3 X-9 I-9 Z-8.25 F240|X9 I9 Z-7.5", 0)]
    [InlineData("X9|G3 X0 Y9 I-9 Z-8.625 F240|X-9 Y0 J-9 Z-8.25|X0 Y-9 I9 Z-7.875|X9 Y0 J9 Z-7.5", 0)] // by quarters
    [InlineData("X9|G3 I-9 Z-7.75 F240|I-9 Z-6.5|I-9 Z-5.25", 1)] // one helix of three turns
    [InlineData("X9|G3 I-9 Z-7.75 F240|G1 X0|G0 Z-9|G1 X9|G3 I-9 Z-7.75", 1)] // once for a tool and a lead
    [InlineData("X9|G3 I-9 Z-7.75 F240|G1 X0|G0 Z-9|G1 X9|G3 I-9 Z-8", 2)]
    [InlineData("G3 X9 I4.5 Z-8.9 F240|I-9 Z-7.4|X0 I-4.5 Z-7.3", 0)] // in and out on half turns that climb as they like
    [InlineData("G3 X9 I4.5 Z-8.9 F240", 0)]
    [InlineData("X9|G3 I-9 F240|I-9 Z-7.5|I-9", 0)] // level turns before and behind
    [InlineData("X9|G3 I-9 F240|I-9 Z-7.75|I-9", 1)]
    [InlineData("X9|G3 X0 Y9 I-9 Z-8.9 F240|X0 Y9 J-9 Z-7.4|X-9 Y0 J-9", 0)] // in and out about the same centre
    [InlineData("X9|G3 X-9 I-9 Z-8.9 F240", 0)] // half a turn alone
    public void Arcs_about_one_centre_are_one_helix(string arcs, int told) => Assert.Equal(told, Of(arcs).Count);

    // A turn by quarters from Z-9, 0.375 mm each: M30 x 1.5. Lines count from 1, the first arc's is 8.
    [Theory]
    [InlineData("-8.625 -8.25 -7.785 -7.5", 10, "This arc of T11 rises by 0.465 mm, where the helix that it is a part of rises by 0.375 mm over 90°: the pitch of the tool is 1.5 mm, and its teeth leave the groove.")] // one level
    [InlineData("-8.265 -8.25 -7.875 -7.5", 8, "rises by 0.735 mm")] // the first
    [InlineData("-8.625 -8.25 -7.875 -7.25", 11, "rises by 0.625 mm")] // the last
    [InlineData("-8.625 -8.25 -7.875 -7.875", 11, "stays level")] // forgotten
    [InlineData("-8.625 -8.25 -8.875 -7.5", 10, "falls by 0.625 mm")]
    [InlineData("-9.375 -9.75 -10.25 -10.5", 10, "falls by 0.5 mm, where the helix that it is a part of falls by 0.375 mm")]
    [InlineData("-8.625 -8.25 -7.875 -7.5 -7.125 -6.57 -6.375 -6 -5.625", 13, "rises by 0.555 mm")] // within two turns and more
    [InlineData("-8.265 -8.25 -7.875 -7.5 -7.125 -6.75", 8, "rises by 0.735 mm")] // before a whole turn, and made good
    [InlineData("-8.625 -8.25 -7.875 -7.5 -7.215 -6.75", 12, "rises by 0.285 mm")] // behind one
    public void An_arc_that_leaves_its_helix_is_told_once(string levels, int line, string words)
    {
        var found = Of("X9|" + ByQuarters(levels));
        var finding = Assert.Single(found);
        Assert.Equal(line, finding.Line + 1);
        Assert.Contains(words, finding.Message, StringComparison.Ordinal);
    }

    [Theory]
    [InlineData("-8.625 -8.25 -7.875 -7.5")]
    [InlineData("-8.63 -8.25 -7.88 -7.5")] // rounded to hundredths
    [InlineData("-8.61 -8.24 -7.86 -7.49")]
    [InlineData("-8.9 -8.525 -8.15 -7.775 -7.4")] // a way in about the same centre
    [InlineData("-8.625 -8.25 -7.875 -7.5 -7.5")] // and a way out
    [InlineData("-8.625 -8.25 -7.875 -7.5 -7.4 -7.35")]
    [InlineData("-8.95 -8.9 -8.525 -8.15 -7.775 -7.4 -7.4")]
    [InlineData("-9 -9 -9 -9 -8.625 -8.25 -7.875 -7.5")] // a level turn before it
    [InlineData("-8.25 -7.5 -6.75 -6")] // two starts
    [InlineData("-9 -9 -9 -9 -8.25 -7.5 -6.75 -6")]
    [InlineData("-9 -9 -9 -9")]
    public void Quarters_with_their_ways_in_and_out_are_a_thread(string levels) => Assert.Empty(Of("X9|" + ByQuarters(levels)));

    [Theory]
    [InlineData("X9|G3 I-9 Z-7.5 F240|I-9 Z-6.2|I-9 Z-4.5", 9, "rises by 1.3 mm")] // one of three turns
    [InlineData("X9|G3 X-9 I-9 Z-8.1 F240|X9 I9 Z-7.5", 8, "rises by 0.9 mm")] // one of two halves
    public void One_level_is_one_finding(string arcs, int line, string words)
    {
        var finding = Assert.Single(Of(arcs));
        Assert.Equal(line, finding.Line + 1);
        Assert.Contains(words, finding.Message, StringComparison.Ordinal);
    }

    static string ByQuarters(string levels)
    {
        string[] arcs = ["X0 Y9 I-9", "X-9 Y0 J-9", "X0 Y-9 I9", "X9 Y0 J9"];
        return string.Join('|', levels.Split(' ').Select((level, i) => $"G3 {arcs[i % 4]} Z{level} F240"));
    }

    [Fact]
    public void A_single_row_of_teeth_without_a_pitch_cuts_any() => Assert.Empty(Of("X9|G3 I-9 Z-7.75 F240", "\"flutes\": 3"));

    // 20 threads per inch: 0.05 in, 1.27 mm.
    [Theory]
    [InlineData("X0.35|G3 I-0.35 Z-8.95 F9", null)]
    [InlineData("X0.35|G3 I-0.35 Z-8.9 F9", null)] // two starts
    [InlineData("X0.35|G3 I-0.35 Z-8.937 F9", "rises by 0.063 in for each turn, and the pitch of the tool is 0.05 in")]
    public void In_inches(string arcs, string? words)
    {
        var found = Of(arcs, "\"pitch\": 1.27", "G20");
        Assert.Equal(words is null ? 0 : 1, found.Count);
        Assert.All(found, finding => Assert.Contains(words!, finding.Message, StringComparison.Ordinal));
    }

    [Fact]
    public void An_end_mill_goes_down_as_it_likes() => Assert.Empty(Programs.Of(
        "thread-mill-pitch", "G21 G90 G17 G54\nT1 M6\nS2400 M3\nG0 X9 Y0\nG43 H1 Z0\nG3 I-9 Z-1 F240\nG0 Z20\nM5\nM30\n",
        """{ "tools": [ { "number": 1, "kind": "end-mill", "diameter": 12 }, { "number": 11, "kind": "thread-mill", "diameter": 12, "pitch": 1.5 } ] }"""));
}
