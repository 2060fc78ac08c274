using System.Numerics;
using NcLanguage.Control.Execution;
using NcLanguage.Control.Moves;
using NcLanguage.Control.Tests.Execution;
using NcLanguage.Machine.Geometry;
using NcLanguage.Machine.Setups;

namespace NcLanguage.Control.Tests.Compensation;

/// <summary>The worked programs of NISTIR 6556 appendix B: the edge of a part cut with a tool of diameter 1 (table 12), and the same path
/// programmed for the tool's centre (table 13).</summary>
public sealed class PublishedCompensation
{
    static readonly Setup OneUnitCutter = Setup.None with { Tools = [new Tool { Number = 1, Diameter = 1 }] };

    static readonly string[] Edge =
    [
        "N0010 G1 X1 Y5", "N0020 G41 D1 G1 Y4", "N0030 G3 X2 Y3 I1", "N0040 G2 X3 Y2 J-1", "N0050 G1 Y-1", "N0060 G2 X2 Y-2 I-1", "N0070 G1 X-2",
        "N0080 G2 X-2.6 Y-0.2 J1", "N0090 G1 X1.4 Y2.8", "N0100 G2 X2 Y3 I0.6 J-0.8", "N0110 G40",
    ];

    static readonly string[] Nominal =
    [
        "N0010 G1 X1.5 Y5", "N0020 G41 D0 G1 Y4", "N0030 G3 X2 Y3.5 I0.5", "N0040 G2 X3.5 Y2 J-1.5", "N0050 G1 Y-1", "N0060 G2 X2 Y-2.5 I-1.5", "N0070 G1 X-2",
        "N0080 G2 X-2.9 Y0.2 J1.5", "N0090 G1 X1.1 Y3.2", "N0100 G2 X2 Y3.5 I0.9 J-1.2", "N0110 G40",
    ];

    static Session Run(string[] program) => new Session(setup: OneUnitCutter, start: default(Point3)).Run("G90 G17 F100").Clear().Run(program);

    /// <summary>Table 13, point by point. The way to it is that of appendix B: the first move touches the circle of the tool's radius about X1 Y4
    /// (from 1 above it, 60 degrees round), and an arc about that point leads to the tangent.</summary>
    [Fact]
    public void Table_12_runs_along_table_13()
    {
        var session = Run(Edge);

        Assert.Empty(session.Faults);
        Assert.Equal(
            [
                "feed 1 5 0", "feed 1.433013 4.25 0", "arc 1.5 4 0", "arc 2 3.5 0", "arc 3.5 2 0", "feed 3.5 -1 0", "arc 2 -2.5 0", "feed -2 -2.5 0",
                "arc -2.9 0.2 0", "feed 1.1 3.2 0", "arc 2 3.5 0",
            ], session.Log);
    }

    /// <summary>Turned or mirrored as a whole, the contour is cut along the path that is turned or mirrored likewise; mirrored, the tool is on the
    /// other side of its way, which is the same side of the part (common practice). The reference is System.Numerics.Complex.</summary>
    [Theory]
    [InlineData("G68 X0 Y0 R30", 30, false)]
    [InlineData("G68 X0 Y0 R-135", -135, false)]
    [InlineData("G51 X0 Y0 Z0 I1 J-1", 0, true)]
    [InlineData("G51 X0 Y0 Z0 I1 J-1; G68 X0 Y0 R70", 70, true)]
    public void Turned_and_mirrored(string frame, double degrees, bool mirrored)
    {
        var (plain, bent) = (Run(Edge), Run([.. frame.Split(';'), .. Edge]));
        Assert.Empty(bent.Faults);
        Assert.Equal(plain.Moves.Count, bent.Moves.Count);
        // The first move comes from where the tool stood before.
        foreach (var (a, b) in plain.Moves.Zip(bent.Moves).Skip(1))
        {
            Near(a.From, b.From);
            Near(a.To, b.To);
            if (a.Kind == MoveKind.Arc)
                Near(a.Center, b.Center);
            Assert.Equal(a.Clockwise != (mirrored && a.Kind == MoveKind.Arc), b.Clockwise);
            Assert.Equal(a.Length, b.Length, 9);
        }

        void Near(Point3 a, Point3 b)
        {
            var turned = new Complex(a.X, mirrored ? -a.Y : a.Y) * Complex.FromPolarCoordinates(1, degrees * Math.PI / 180);
            Assert.Equal(turned.Real, b.X, 9);
            Assert.Equal(turned.Imaginary, b.Y, 9);
        }
    }

    /// <summary>The radius that the program itself has written counts (G10 L12, common practice).</summary>
    [Fact]
    public void A_radius_of_the_program() => Assert.Equal(
        Run(Edge).Log, new Session(start: default(Point3)).Run("G90 G17 F100", "G10 L12 P1 R0.45", "G91 G10 L13 P1 R0.05", "G90").Clear().Run(Edge).Log);

    /// <summary>Closure of both contours, computed from the published coordinates: 18.28319 round the part, 21.42478 for the tool's centre.</summary>
    [Fact]
    public void Lengths_from_A_to_A()
    {
        Assert.Equal(21.42478, Length(Run(Edge)), 5);
        Assert.Equal(21.42478, Length(Run(Nominal)), 5);
        Assert.Equal(18.28319, Length(Run([.. Edge.Select(block => block.Replace("D1", "D0", StringComparison.Ordinal))])), 5);

        // Point A is where N0030 ends and N0100 ends.
        static double Length(Session session) => session.Moves.TakeLast(7).Sum(move => move.Length);
    }

    /// <summary>The same centre path from both programs, move by move: places, centres and turns.</summary>
    [Fact]
    public void Both_programs_move_the_same()
    {
        var (edge, nominal) = (Run(Edge).Moves.TakeLast(8).ToList(), Run(Nominal).Moves.TakeLast(8).ToList());

        for (var i = 0; i < nominal.Count; i++)
        {
            Assert.Equal((nominal[i].Kind, nominal[i].Clockwise), (edge[i].Kind, edge[i].Clockwise));
            Near(nominal[i].From, edge[i].From);
            Near(nominal[i].To, edge[i].To);
            if (nominal[i].Kind == MoveKind.Arc)
                Near(nominal[i].Center, edge[i].Center);
        }

        static void Near(Point3 expected, Point3 actual) => Assert.True(Point3.Distance(expected, actual) < 1e-9, $"{actual} instead of {expected}");
    }

    /// <summary>Appendix B.3.1.2, the simple way in: the move's end touches the circle about X3 Y3, so that the way and the radius are square and
    /// the tool lies to the left.</summary>
    [Fact]
    public void The_first_move_touches_the_circle_about_its_end()
    {
        var move = Run(["N0010 G1 X1.5 Y4", "N0020 G41 D1 G1 X3 Y3"]).Moves[^1];

        var (way, radius) = (move.To - move.From, move.To - new Point3(3, 3, 0));
        Assert.Equal(0.5, radius.Length, 9);
        Assert.Equal(0, way.X * radius.X + way.Y * radius.Y, 9);
        Assert.True(way.X * radius.Y - way.Y * radius.X > 0);
    }

    /// <summary>Appendix B.5: what a control refuses.</summary>
    [Theory]
    [InlineData("G41 D1 G1 X0.4", FaultKind.CompensationEntry)] // shorter than the radius
    [InlineData("G41 D1 G2 X5 R10", FaultKind.CompensationEntry)] // an arc
    [InlineData("G41 D1 G1 X5|G42 D1", FaultKind.NotAllowedHere)] // on when on
    [InlineData("G41 D1|G20", FaultKind.NotAllowedHere)]
    [InlineData("G41 D1|G18", FaultKind.NotAllowedHere)]
    [InlineData("G41 D1|G19", FaultKind.NotAllowedHere)]
    [InlineData("G18|G42 D1", FaultKind.NotAllowedHere)]
    [InlineData("G41 D1|G55", FaultKind.NotAllowedHere)]
    [InlineData("G41 D1|G0 G53 Z0", FaultKind.NotAllowedHere)]
    [InlineData("G41 D-1", FaultKind.ValueNotAllowed)]
    [InlineData("G1 X5 D1", FaultKind.WordWithoutEffect)]
    [InlineData("G41 D1 D2", FaultKind.AddressRepeated)]
    [InlineData("G41 G42 D1", FaultKind.CodesConflict)]
    [InlineData("G41 D1 G1 X5|G3 X5.4 Y0.4 J0.4|G1 Y5", FaultKind.CompensationCorner)] // the tool's radius is not less than the arc's
    public void Refusals(string blocks, FaultKind kind) => Assert.Contains(Run(blocks.Split('|')).Faults, fault => fault.Kind == kind);

    /// <summary>Appendix B.5: a tool change while it is on is no error.</summary>
    [Fact]
    public void A_tool_change_is_allowed() => Assert.Empty(Run(["G41 D1", "T1 M6"]).Faults);
}
