using NcLanguage.Control.Execution;
using NcLanguage.Control.Moves;
using NcLanguage.Control.State;
using NcLanguage.Machine.Geometry;
using NcLanguage.Machine.Profiles;

namespace NcLanguage.Control.Tests.Execution;

/// <summary>Arcs in all planes: centres, sweeps, lengths and what is refused (NISTIR 6556 §3.5.3).</summary>
public sealed class ArcTests
{
    static Session At(double x, double y, double z = 0) => new Session(start: new Point3(x, y, z)).Run("G90 F100").Clear();

    static double Degrees(Move arc) => Arcs.Sweep(arc) * 180 / Math.PI;

    /// <summary>Geometry of two circles through two points (handbook; §3.5.3.1 for the sign): R10 from (0, 0) to (10, 0), and table 10 with R−7.01.</summary>
    [Theory]
    [InlineData("G3 X10 R10", 5, 8.6603, 60)]
    [InlineData("G2 X10 R10", 5, -8.6603, 60)]
    [InlineData("G3 X10 R-10", 5, -8.6603, 300)]
    [InlineData("G2 X10 R-10", 5, 8.6603, 300)]
    [InlineData("G3 X10 R5", 5, 0, 180)]
    [InlineData("G2 X10 R-5", 5, 0, 180)]
    public void Centre_from_radius(string block, double x, double y, double sweep)
    {
        var arc = At(0, 0).Run(block).Moves[0];
        Assert.Equal((x, y), (Math.Round(arc.Center.X, 4), Math.Round(arc.Center.Y, 4)));
        Assert.Equal(sweep, Degrees(arc), 6);
    }

    /// <summary>NISTIR 6556 table 10, and the same with R−7.01: 24.711° and 335.289°, in-plane length 3.0234 (by arithmetic).</summary>
    [Fact]
    public void Table_10_arc_and_the_rest_of_its_circle()
    {
        var arc = At(3, 1).Run("G2 X0 R7.01").Moves[0];
        Assert.Equal(24.711, Degrees(arc), 3);
        Assert.Equal(3.0234, arc.Length, 4);
        arc = At(3, 1).Run("G2 X0 R-7.01").Moves[0];
        Assert.Equal(1.5, arc.Center.X, 9);
        Assert.Equal(-5.8476, arc.Center.Y, 4);
        Assert.Equal(335.289, Degrees(arc), 3);
    }

    /// <summary>§3.5.3.2: from (7, 7) to (10, 16) about (10, 11), radius 5; the length by arithmetic, 5·(180° + asin 0.8).</summary>
    [Fact]
    public void Centre_form()
    {
        var arc = At(7, 7, 9).Run("G17 G2 X10 Y16 I3 J4 Z9").Moves[0];
        Assert.Equal(new Point3(10, 11, 9), arc.Center);
        Assert.Equal(143.1301, Degrees(arc), 4);
        Assert.Equal(216.8699, Degrees(At(7, 7).Run("G3 X10 Y16 I3 J4").Moves[0]), 4);
    }

    /// <summary>§3.5.3 with table 5: XY, ZX and YZ are right-handed, so a counterclockwise quarter leads from the first axis to the second.</summary>
    [Theory]
    [InlineData("G17", "X10", "X0 Y10 I-10", "X0 Y10 R10")]
    [InlineData("G18", "Z10", "Z0 X10 K-10", "Z0 X10 R10")]
    [InlineData("G19", "Y10", "Y0 Z10 J-10", "Y0 Z10 R10")]
    public void Quarters_in_all_planes(string plane, string start, string centre, string radius)
    {
        foreach (var words in new[] { centre, radius })
        {
            var arc = At(0, 0).Run($"{plane} G0 {start}").Clear().Run("G3 " + words).Moves[0];
            Assert.Equal(0, arc.Center.Length, 9);
            Assert.Equal(90, Degrees(arc), 9);
            Assert.Equal(5 * Math.PI, arc.Length, 9);
            var other = At(0, 0).Run($"{plane} G0 {start}").Clear().Run("G2 " + centre).Moves[0];
            Assert.Equal(270, Degrees(other), 9);
        }
    }

    /// <summary>§3.5.3.2: end at the start is a full circle, whether or not the end is written; in all planes.</summary>
    [Theory]
    [InlineData("G17 G2 X1 Y2 I5")]
    [InlineData("G17 G3 I5")]
    [InlineData("G17 G91 G3 X0 J-5")]
    [InlineData("G18 G2 X1 Z3 K5")]
    [InlineData("G19 G3 Y2 Z3 J3 K4")]
    public void Full_circles(string block)
    {
        var session = At(1, 2, 3).Run(block);
        Assert.Equal(360, Degrees(session.Moves[0]), 9);
        Assert.Equal(10 * Math.PI, session.Moves[0].Length, 9);
        Assert.Empty(session.Faults);
    }

    /// <summary>A full circle stays one when its end is off its start by rounding, on either side of the half turn.</summary>
    [Theory]
    [InlineData(1e-16)]
    [InlineData(-1e-16)]
    [InlineData(0)]
    public void Full_circle_within_rounding(double off)
    {
        foreach (var clockwise in new[] { true, false })
            foreach (var start in new[] { 1e-17, -1e-17, 0.0 })
            {
                var arc = new Move(MoveKind.Arc, MoveRole.Plain, new Point3(0, start, 0), new Point3(0, off, 0), new Point3(5, 0, 0), clockwise, WorkPlane.XY, 0, 1, 1);
                Assert.Equal(360, Degrees(arc), 6);
            }
    }

    /// <summary>Helix length √((r·θ)² + Δz²) (handbook): radius 10, one turn, 2 mm down is 62.8637.</summary>
    [Fact]
    public void Helix()
    {
        var arc = At(10, 0, 2).Run("G3 X10 Y0 Z0 I-10 F600").Moves[0];
        Assert.Equal(62.8637, arc.Length, 4);
        // §4.3.6.1: the feed acts along the helix.
        Assert.Equal(6.28637, arc.Seconds, 5);
    }

    /// <summary>A helix whose height is not known still has the length of its circle when it does not climb.</summary>
    [Fact]
    public void Length_where_the_height_is_not_known() =>
        Assert.Equal(10 * Math.PI, new Session().Run("G21 G90 F100 G0 X0 Y0", "G2 I5").Moves[^1].Seconds / 60 * 100, 9);

    /// <summary>§3.5.3.2: start and end radius may differ by 0.002 mm, or 0.0002 inch.</summary>
    [Theory]
    [InlineData("G21", "I5.003", true)]
    [InlineData("G21", "I5.0009", false)]
    [InlineData("G21", "I5.001", false)]
    [InlineData("G21", "I5.0011", true)]
    [InlineData("G20", "I5.00009", false)]
    [InlineData("G20", "I5.0001", false)]
    [InlineData("G20", "I5.00011", true)]
    public void Radius_tolerance(string units, string centre, bool refused)
    {
        var faults = At(0, 0).Run(units, "G2 X10 Y0 J0 " + centre).Faults;
        Assert.Equal(refused ? [FaultKind.ArcRadiusMismatch] : [], faults.Select(fault => fault.Kind));
    }

    /// <summary>§3.5.3.1: no circle passes through both ends when R is less than half their distance, and none is told by R when they are one.</summary>
    [Theory]
    [InlineData("G2 X10 R4.99", true)]
    [InlineData("G2 X10 R4.9985", false)]
    [InlineData("G2 X0 Y0 R5", true)]
    [InlineData("G3 X10 R0", true)]
    [InlineData("G2 X0 Y0 I0", true)]
    public void Impossible_arcs(string block, bool refused) =>
        Assert.Equal(refused ? [FaultKind.ArcImpossible] : [], At(0, 0).Run(block).Faults.Select(fault => fault.Kind));

    /// <summary>§3.5.3: a centre of the plane or a radius is needed; a centre across the plane says nothing.</summary>
    [Theory]
    [InlineData("G2 X10 Y5")]
    [InlineData("G18 G2 X10 Z5 J3")]
    public void Centre_missing(string block)
    {
        var session = At(0, 0).Run(block);
        Assert.Contains(session.Faults, fault => fault.Kind == FaultKind.WordMissing);
        Assert.False(session.Moves[0].Center.IsKnown);
    }

    /// <summary>§3.5.17: I and J are distances under G90 and G91 alike. Reading arcCentre=absolute (common practice): coordinates, both needed.</summary>
    [Fact]
    public void Centre_as_distance_or_as_coordinate()
    {
        Assert.Equal(15, At(10, 0).Run("G90 G2 X20 I5 J0").Moves[0].Center.X);
        Assert.Equal(15, At(10, 0).Run("G91 G2 X10 I5 J0").Moves[0].Center.X);
        var machine = OrderTests.Reading(r => r with { ArcCentre = ArcCentreReading.Absolute });
        var session = new Session(machine, start: new Point3(10, 0, 0)).Run("F100 G2 X20 I15 J0");
        Assert.Equal(new Point3(15, 0, 0), session.Moves[0].Center);
        Assert.Empty(session.Faults);
        Assert.Contains(session.Run("G2 X30 I25").Faults, fault => fault.Kind == FaultKind.WordMissing && fault.Letter == 'J');
    }

    /// <summary>An arc is carried over like any motion mode; R and I in one block: R counts, I has no effect (common practice).</summary>
    [Fact]
    public void Carried_over()
    {
        var session = At(0, 0).Run("G2 X10 I5", "X20 I5", "X30 R5 I5");
        Assert.Equal([MoveKind.Arc, MoveKind.Arc, MoveKind.Arc], session.Moves.Select(move => move.Kind));
        Assert.Equal(['I'], session.Faults.Select(fault => fault.Letter));
    }

    /// <summary>Where the plane is not known, neither is the centre, and no radius is called wrong.</summary>
    [Fact]
    public void Plane_not_known()
    {
        var session = new Session().Run("M30", "O5", "G21 G90 G0 X0 Y0 Z0").Clear().Run("F100 G2 X10 I3");
        Assert.False(session.Moves[0].Center.IsKnown);
        Assert.Empty(session.Faults);
        Assert.Equal(10, session.State.Position.X);
    }
}
