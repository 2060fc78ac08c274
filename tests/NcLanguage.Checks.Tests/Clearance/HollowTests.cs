using NcLanguage.Checks.Clearance;
using NcLanguage.Checks.Tests.Rules;
using NcLanguage.Machine.Geometry;
using NcLanguage.Machine.Setups;

namespace NcLanguage.Checks.Tests.Clearance;

/// <summary>What the setup says is hollow in the stock before the first cut: volumes by elementary solid geometry, contacts in closed form, the practice of opening cored and drilled holes from memory.</summary>
public sealed class HollowTests
{
    static readonly Box3 Stock = new(new(0, 0, -20), new(80, 50, 0));

    [Theory]
    [InlineData(20, 15, 60, 35, 10, -20)] // a slot with round ends, through
    [InlineData(20, 15, 60, 35, 4, -8)]
    [InlineData(20, 15, 60, 35, 0, -5)]
    [InlineData(30, 15, 50, 35, 10, -12)] // a bore
    public void A_hollow_takes_its_volume_and_no_more(double minX, double minY, double maxX, double maxY, double corner, double bottom)
    {
        // A rectangle less the four corners outside its quarter circles.
        var exact = ((maxX - minX) * (maxY - minY) - (4 - Math.PI) * corner * corner) * -bottom;
        var hollow = new Hollow("", minX, minY, maxX, maxY, corner, bottom);
        var (field, touched) = (new StockField(Stock, 0.05, CellRule.Middle), new StockField(Stock, 0.5));
        field.Open(hollow);
        touched.Open(hollow);
        Assert.InRange(80.0 * 50 * 20 - field.Volume, exact * 0.999, exact * 1.001);
        Assert.InRange(80.0 * 50 * 20 - touched.Volume, exact, exact * 1.15);
    }

    [Theory]
    [InlineData(45, 20, -5)] // in the middle: the nearest long side
    [InlineData(45, 32, 7)] // straight beside it
    [InlineData(61, 25, 1)] // past a round corner, whose centre is (58, 21): 3 and 4 mm aside make 5
    [InlineData(30, 15, 0)] // on the outline
    public void A_place_has_its_distance_to_the_outline(double x, double y, double distance) => Assert.Equal(distance, new Hollow("", 20, 15, 62, 25, 4, -5).DistanceTo(x, y), 1e-9);

    const string Casting = """
        { "stock": { "min": [0, 0, -30], "max": [120, 80, 0],
                     "hollows": [ { "name": "cored bore", "center": [60, 40], "diameter": 36 }, { "center": [100, 60], "diameter": 6.8, "bottom": -20 },
                                  { "name": "slot", "min": [10, 10], "max": [50, 22], "cornerRadius": 6, "bottom": -8 } ] },
          "tools": [ { "number": 1, "kind": "boring-bar", "diameter": 38, "shankDiameter": 25, "fluteLength": 10, "length": 150 },
                     { "number": 2, "kind": "tap", "diameter": 8, "pitch": 1.25, "fluteLength": 30, "length": 100 },
                     { "number": 3, "kind": "end-mill", "diameter": 10, "flutes": 4, "fluteLength": 30, "length": 90 },
                     { "number": 4, "kind": "drill", "diameter": 5, "pointAngle": 118, "fluteLength": 60, "length": 120 },
                     { "number": 5, "kind": "reamer", "diameter": 7, "fluteLength": 40, "length": 130 },
                     { "number": 6, "kind": "boring-bar", "diameter": 60, "shankDiameter": 25, "length": 150 } ] }
        """;

    static string Solid => Casting[..Casting.IndexOf(",\n             \"hollows\"", StringComparison.Ordinal)] + " }," + Casting[Casting.IndexOf("\n  \"tools\"", StringComparison.Ordinal)..];

    static string Program(int tool, string moves) => $"G21 G90 G17 G54\nT{tool} M6\nS500 M3\nG0 X60 Y40\nG43 H{tool} Z50\n{moves}\nG80\nG0 Z50\nM30";

    [Theory]
    [InlineData("rapid-into-stock", 3, "G0 Z-10")] // down the bore
    [InlineData("rapid-into-stock", 3, "G0 X16 Y16\nZ-7.5\nX44\nG1 Z-10 F100\nX16")] // to the floor of the slot, and along it
    [InlineData("r-inside-stock", 4, "G99 G81 X30 Y16 R-6 Z-20 F100\nX20")]
    [InlineData("plunge-with-end-mill", 3, "G1 Z-35 F100")]
    [InlineData("hole-too-short-for-tool", 1, "G99 G85 R2 Z-31 F40\nT4 M6\nG43 H4 Z50\nG99 G81 X10 Y70 R2 Z-10 F100")]
    [InlineData("hole-too-short-for-tool", 2, "G99 G84 X100 Y60 R5 Z-15 F625\nG80\nT4 M6\nG43 H4 Z50\nG99 G81 X10 Y70 R2 Z-10 F100")]
    public void What_the_stock_has_already_raises_no_alarm(string rule, int tool, string moves)
    {
        Assert.Empty(Programs.Of(rule, Program(tool, moves), Casting));
        Assert.NotEmpty(Programs.Of(rule, Program(tool, moves), Solid));
    }

    [Theory]
    [InlineData("rapid-into-stock", 1, "G0 Z-10", "at least 10 mm deep")] // wider than the bore
    [InlineData("rapid-into-stock", 3, "G0 X16 Y16\nZ-7.5\nX60", "This rapid goes into stock that still stands")] // out through the slot's end
    [InlineData("rapid-into-stock", 3, "G0 X16 Y16\nZ-9", "This rapid goes into stock that still stands")] // deeper than its floor
    [InlineData("r-inside-stock", 4, "G99 G81 X30 Y16 R-9 Z-20 F100", "The R level Z-9 lies 1 mm inside the stock (the hollow's floor at Z-8): the tool goes there at rapid.")]
    [InlineData("r-inside-stock", 3, "G99 G81 X100 Y60 R-2 Z-10 F100", "The R level Z-2 lies 2 mm inside the stock (top at Z0): the tool goes there at rapid.")] // wider than the bore
    [InlineData("plunge-with-end-mill", 3, "G0 X79\nG1 Z-5 F100", "T3, a mill with 4 flutes, goes straight down 5 mm beside an earlier cut, its middle in full material: its end may not cut in the middle. Drill first, or go down on a ramp or a helix.")]
    [InlineData("hole-too-short-for-tool", 2, "G99 G84 X100 Y60 R5 Z-22 F625", "T2 taps at X100 Y60 to Z-22, and the hole that the stock has there is full width to Z-20 only: it has to be drilled to Z-22, or T2 less deep.")]
    [InlineData("tap-drill-size", 2, "G99 G84 X60 Y40 R5 Z-22 F625", "in a hole of 36 mm: there is no thread at all.")]
    [InlineData("hole-size", 5, "G99 G85 X100 Y60 R5 Z-15 F100", null)] // 0.2 mm: in order
    [InlineData("hole-size", 6, "G99 G85 R5 Z-31 F40", "T6 bores 60 mm at X60 Y40 in a hole of 36 mm: it has 24 mm to take, too much.")]
    public void What_does_not_fit_what_the_stock_has_is_told(string rule, int tool, string moves, string? message)
    {
        var found = Programs.Of(rule, Program(tool, moves), Casting).ToList();
        if (message is null)
            Assert.Empty(found);
        else
            Assert.Contains(message, Assert.Single(found).Message, StringComparison.Ordinal);
    }

    static string Drawing(string hole) => Casting.Replace("\"tools\"", $"\"holes\": [ {hole} ], \"tools\"", StringComparison.Ordinal);

    const string Thread = """{ "x": 100, "y": 60, "diameter": 6.8, "depth": 15, "thread": "M8" }""";
    const string Bore = """{ "x": 60, "y": 40, "diameter": 38, "depth": 30 }""";

    [Theory]
    [InlineData(Thread, 2, "G99 G84 X100 Y60 R5 Z-15 F625", null)]
    [InlineData(Thread, 2, "G99 G84 X100 Y60 R5 Z-10 F625", "hole-shallow")] // the thread
    [InlineData(Thread, 4, "G99 G81 X10 Y70 R2 Z-10 F100", "hole-missing hole-extra")] // never tapped
    [InlineData(Bore, 1, "G99 G85 R5 Z-31 F40", null)]
    [InlineData(Bore, 4, "G99 G81 X10 Y70 R2 Z-10 F100", "hole-missing hole-extra")] // never bored
    [InlineData("""{ "x": 60, "y": 40, "diameter": 36, "depth": 30 }""", 3, "G0 X130", null)] // there already
    public void A_drawings_hole_may_begin_in_a_hollow(string hole, int tool, string moves, string? rules)
    {
        string[] drawing = ["hole-missing", "hole-shallow", "hole-not-finished", "hole-wrong-size", "hole-too-deep", "hole-extra"];
        var found = drawing.Where(rule => Programs.Of(rule, Program(tool, moves), Drawing(hole)).Count > 0);
        Assert.Equal(rules ?? "", string.Join(' ', found));
    }
}
