using NcLanguage.Checks.Analysis;
using NcLanguage.Checks.Tests.Rules;

namespace NcLanguage.Checks.Tests.State;

/// <summary>A program's numbers that fit the setup in the other unit: the inch is 25.4 mm by definition (1959). The programs are our own.</summary>
public sealed class UnitsAgainstSetupTests
{
    const string Tools = """
        "tools": [ { "number": 1, "kind": "face-mill", "diameter": 50 }, { "number": 2, "kind": "drill", "diameter": 8, "pointAngle": 118 }, { "number": 3, "kind": "end-mill", "diameter": 10, "flutes": 2 } ]
        """;

    const string Plate = $$"""{ "stock": { "min": [0, 0, -20], "max": [100, 60, 0] }, {{Tools}} }""";

    const string Drawn = $$"""{ "stock": { "min": [0, 0, -20], "max": [100, 60, 0] }, {{Tools}}, "holes": [ { "x": 10, "y": 10, "diameter": 8 }, { "x": 30, "y": 10, "diameter": 8 }, { "x": 30, "y": 20, "diameter": 8 } ] }""";

    const string Facing = "T1 M6\nS900 M3\nG0 X-30 Y15\nG43 H1 Z40\nZ-0.5\nG1 X130 F400\nG0 Y45\nG1 X-30\nG0 Z40\nM5\n";

    const string Holes = "T2 M6\nS900 M3\nG0 X10 Y10\nG43 H2 Z40\nG99 G81 X10 Y10 Z-12 R2 F120\nX30\nY20\nG80\nG0 Z40\nM5\n";

    const string InchHoles = "T2 M6\nS900 M3\nG0 X.394 Y.394\nG43 H2 Z1.5\nG99 G81 X.394 Y.394 Z-.472 R.08 F4.7\nX1.181\nY.787\nG80\nG0 Z1.5\nM5\n";

    const string WideInchHoles = "T2 M6\nS900 M3\nG0 X.5 Y.5\nG43 H2 Z1.5\nG99 G81 X.5 Y.5 Z-.472 R.08 F4.7\nX.8\nX1.1\nX2.5\nG80\nG0 Z1.5\nM5\n";

    static List<Finding> Of(string unit, string blocks, string setup) => Programs.Of("units-against-setup", $"{unit} G90 G17 G54\n{blocks}M30\n", setup);

    [Theory]
    [InlineData("G20", Facing, Plate, "Under G20 the program works over 160 in along X, where the stock is 3.937 in long, and it fits the stock when the same numbers are read in millimetres: is G21 meant, or are the units of the setup wrong?")]
    [InlineData("G20", Holes, Plate, "Under G20 the program works over 20 in along X, where the stock is 3.937 in long, and it fits the stock when the same numbers are read in millimetres: is G21 meant, or are the units of the setup wrong?")]
    [InlineData("G20", Holes, Drawn, "Under G20 no hole of the drawing is where it should be, and all 3 are when the same numbers are read in millimetres: is G21 meant, or are the units of the setup wrong?")]
    [InlineData("G21", InchHoles, Drawn, "Under G21 no hole of the drawing is where it should be, and all 3 are when the same numbers are read in inches: is G20 meant, or are the units of the setup wrong?")]
    [InlineData("G21", WideInchHoles, Plate, "Under G21 the holes of T2 are 8 mm wide and as near as 0.3 mm to one another, and they fit the stock when the same numbers are read in inches: is G20 meant, or are the units of the setup wrong?")]
    public void The_other_unit_is_told_once_at_the_code(string unit, string blocks, string setup, string message)
    {
        var finding = Assert.Single(Of(unit, blocks, setup));
        Assert.Equal((0, 0, 3), (finding.Line, finding.StartColumn, finding.EndColumn));
        Assert.StartsWith(message, finding.Message, StringComparison.Ordinal);
        Assert.Empty(Of(unit == "G20" ? "G21" : "G20", blocks, setup));
    }

    // Programs that are as they should be, or wrong in another way.
    [Theory]
    [InlineData("G20", InchHoles, Drawn)]
    [InlineData("G20", WideInchHoles, Plate)]
    [InlineData("G21", Facing, Plate)]
    [InlineData("G21", Holes, Drawn)]
    // A slip of one number alone.
    [InlineData("G21", "T2 M6\nS900 M3\nG0 X10 Y10\nG43 H2 Z40\nG99 G81 X10 Y10 Z-120 R2 F120\nX30\nX500\nG80\nG0 Z40\nM5\n", Plate)]
    // Five parts of 4 in in a row, of which the setup tells the first.
    [InlineData("G20", "T2 M6\nS900 M3\nG0 X1 Y1\nG43 H2 Z2\nG99 G81 X1 Y1 Z-.5 R.1 F5\nX6\nX11\nX16\nX21\nG80\nG0 Z2\nM5\n", Plate)]
    // One feed to a place far away.
    [InlineData("G20", "T3 M6\nS900 M3\nG0 X-1 Y1\nG43 H3 Z2\nZ-.1\nG1 X4 F10\nY1.2\nX0\nY1.4\nX4\nG0 Z2\nG1 X60 F100\nM5\n", Plate)]
    // A slot drilled in millimetres: its holes overlap by less than half.
    [InlineData("G21", "T2 M6\nS900 M3\nG0 X1 Y1\nG43 H2 Z40\nG99 G81 X0.5 Y1 Z-0.7 R0.5 F120\nX5\nX10\nG80\nG0 Z40\nM5\n", Plate)]
    // A letter of 3 mm, and a small bore of a helix: neither is as large as its tool.
    [InlineData("G21", "T3 M6\nS900 M3\nG0 X1 Y1\nG43 H3 Z2\nG1 Z-0.2 F100\nX3 Y2\nX1 Y2\nG0 Z2\nM5\n", Plate)]
    [InlineData("G21", "T3 M6\nS900 M3\nG0 X2 Y1\nG43 H3 Z2\nG1 Z0 F100\nG3 I-1 Z-0.5\nG3 I-1\nG0 Z2\nM5\n", Plate)]
    // Both units: units-mixed.
    [InlineData("G20", "G0 X1\nG21\n" + Facing, Plate)]
    [InlineData("G55 G20", Facing, Plate)]
    public void Others_are_not(string unit, string blocks, string setup) => Assert.Empty(Of(unit, blocks, setup));

    [Fact] // A hole at the zero is there in either unit.
    public void A_hole_at_the_zero_is_not_counted()
    {
        var finding = Assert.Single(Of("G20", Holes, Drawn.Replace("\"holes\": [", "\"holes\": [ { \"x\": 0, \"y\": 0, \"diameter\": 8 },", StringComparison.Ordinal)));
        Assert.StartsWith("Under G20 away from the zero no hole of the drawing is where it should be, and all 3 are when the same numbers are read in millimetres", finding.Message, StringComparison.Ordinal);
    }

    [Fact] // The radius that compensation leads a contour aside by has no unit of the program's: the way in lies 5 mm beside the edge, as if it were 5 in.
    public void A_contour_under_compensation_hides_no_holes()
    {
        const string contour = "T3 M6\nS900 M3\nG0 X-.4 Y-.4\nG43 H3 Z1.5\nG1 Z-.2 F5\nG41 D3 X0 F10\nY2.362\nX3.937\nY0\nX-.4\nG40 Y-.4\nG0 Z1.5\nM5\n";
        var setup = Drawn.Replace("\"diameter\": 10,", "\"diameter\": 10, \"radiusOffset\": 3,", StringComparison.Ordinal);
        Assert.StartsWith("Under G21 no hole of the drawing", Assert.Single(Of("G21", InchHoles + contour, setup)).Message, StringComparison.Ordinal);
        Assert.Empty(Of("G20", InchHoles + contour, setup));
    }

    [Fact]
    public void Without_a_setup_nothing_is_known() => Assert.Empty(Programs.Of("units-against-setup", $"G20 G90 G17 G54\n{Facing}M30\n"));

    // A cutter of 3 in runs out beside a strip of 0.2 in; thirteen parts of 0.4 in in a row, of which the setup tells the first.
    [Theory]
    [InlineData("G0 X0.5 Y-2.\nG43 H4 Z2.\nZ-.02\nG1 Y2.2 F20\nG0 Z2.\n", "0.2")]
    [InlineData("G0 X0.2 Y0.2\nG43 H4 Z2.\nG99 G81 X.2 Y.2 Z-.1 R.1 F5\nX.7\nX1.2\nX1.7\nX2.2\nX2.7\nX3.2\nX3.7\nX4.2\nX4.7\nX5.2\nX5.7\nX6.2\nG80\nG0 Z2.\n", "0.4")]
    public void Run_outs_and_rows_of_parts_are_no_slip(string blocks, string width)
    {
        var setup = $$"""{ "units": "inch", "stock": { "min": [0, 0, -0.5], "max": [{{(width == "0.2" ? "6" : width)}}, {{width}}, 0] }, "tools": [ { "number": 4, "diameter": {{(width == "0.2" ? "3" : "0.125")}} } ] }""";
        Assert.Empty(Of("G20", $"T4 M6\nS900 M3\n{blocks}M5\n", setup));
    }

    const string Tap = """{ "stock": { "min": [0, 0, -20], "max": [100, 60, 0] }, "tools": [ { "number": 5, "kind": "tap", "diameter": 8, "pitch": 1.25 } ] }""";

    static string Tapping(string unit, double feed, string feedMode = "G94") =>
        string.Create(System.Globalization.CultureInfo.InvariantCulture, $"{unit} G90 G17 G54\nT5 M6\nS500 M3\nG0 X10 Y10\nG43 H5 Z40\nG99 {feedMode} G84 X10 Y10 Z-12 R5 F{feed}\nX90\nX50\nG80\nG0 Z40\nM30\n");

    [Fact] // What follows from a unit that seems to be wrong is not sure.
    public void No_other_fix_is_certain_beside_it()
    {
        static (FixSafety, FixSafety) Fixes(string unit, double feed)
        {
            var analysis = Programs.Analyse(Tapping(unit, feed), Tap);
            var fixes = analysis.Findings.SelectMany(analysis.FixesOf).ToList();
            return (Assert.Single(fixes, fix => fix.Title.StartsWith("Feed by the pitch", StringComparison.Ordinal)).Safety,
                Assert.Single(analysis.Findings.Where(finding => finding.Name == "spindle-left-on").SelectMany(analysis.FixesOf)).Safety);
        }

        Assert.Equal((FixSafety.Safe, FixSafety.Safe), Fixes("G21", 500));
        Assert.Equal((FixSafety.Choice, FixSafety.Choice), Fixes("G20 (nc-allow units-against-setup: looked at)", 625));
    }

    [Fact] // What one letter brings about is one finding, with the first of each rule as its related places; what does not hang on it is told.
    public void What_may_come_of_it_is_told_with_it()
    {
        var analysis = Programs.Analyse(Tapping("G20", 625), Tap);
        var slip = Assert.Single(analysis.Findings, finding => finding.Name == "units-against-setup");
        Assert.EndsWith("or are the units of the setup wrong? 3 more findings may come of it and are not told by themselves: tap-feed, hole-outside-stock, r-far.", slip.Message, StringComparison.Ordinal);
        Assert.Equal(["5 tap-feed", "5 hole-outside-stock", "5 r-far"], analysis.Related(slip).Select(place => $"{place.Line} {place.Message.Split(':')[0]}"));
        Assert.DoesNotContain(analysis.Findings, finding => finding.Name is "tap-feed" or "hole-outside-stock" or "r-far");
        Assert.Contains(analysis.Findings, finding => finding.Name == "spindle-left-on");
    }

    [Fact] // Silenced, or settled, it hides nothing.
    public void Where_it_is_silenced_or_mended_all_is_told()
    {
        var outside = Assert.Single(Programs.Analyse(Tapping("G20 (nc-allow units-against-setup: looked at)", 625), Tap).Findings, finding => finding.Name == "hole-outside-stock");
        Assert.EndsWith(" The same goes for 2 more holes of this run.", outside.Message, StringComparison.Ordinal);
        Assert.Contains(Programs.Analyse(Tapping("G21", 500), Tap).Findings, finding => finding.Name == "tap-feed");
    }

    [Fact] // A first look at a large program tells them in the same way.
    public void A_first_look_folds_them_too()
    {
        var text = Tapping("G20", 625);
        var before = Programs.Analyse(text, Tap);
        _ = before.Findings;
        var after = before.WithText(NcLanguage.Syntax.Text.SourceText.From(System.Text.Encoding.ASCII.GetBytes(text.Replace("X90", "X91", StringComparison.Ordinal))));
        var slip = Assert.Single(after.FirstLook(before), finding => finding.Name == "units-against-setup");
        Assert.Contains("3 more findings", slip.Message, StringComparison.Ordinal);
        Assert.Equal(3, after.Related(slip).Count());
        Assert.Equal(before.Findings.Length, after.FirstLook(before).Length);
    }

    [Theory] // Lengths of an inch program have four decimals; a lead of a turn has one more. ISO 261: M8 has 1.25 mm; the inch is 25.4 mm.
    [InlineData("G94", "F24.6063")]
    [InlineData("G95", "F0.04921")]
    public void A_feed_by_the_pitch_is_written_as_fine_as_the_unit_has_it(string feedMode, string word)
    {
        var analysis = Programs.Analyse(Tapping("G20 (nc-allow units-against-setup: looked at)", 625, feedMode), Tap);
        Assert.Equal($"Feed by the pitch ({word})", Assert.Single(analysis.FixesOf(analysis.Findings.Single(finding => finding.Name == "tap-feed"))).Title);
    }

    [Fact]
    public void Every_code_of_the_unit_is_written_anew()
    {
        var analysis = Programs.Analyse($"G20 G90 G17 G54\n{Facing}G20 G90\n{Holes}M30\n", Plate);
        var fix = Assert.Single(analysis.FixesOf(analysis.Findings.Single(finding => finding.Name == "units-against-setup")));
        Assert.Equal(FixSafety.Choice, fix.Safety);
        Assert.Equal($"G21 G90 G17 G54\n{Facing}G21 G90\n{Holes}M30\n", TextEdits.Apply(analysis.Text, fix.Edits).ToString());
    }
}
