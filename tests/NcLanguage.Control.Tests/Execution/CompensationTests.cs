using NcLanguage.Control.Compensation;
using NcLanguage.Control.Execution;
using NcLanguage.Control.Moves;
using NcLanguage.Control.State;
using NcLanguage.Machine.Geometry;
using NcLanguage.Machine.Setups;

namespace NcLanguage.Control.Tests.Execution;

/// <summary>Radius compensation from block to block. Places are worked out by hand from the geometry; what the published specification says is named.</summary>
public sealed class CompensationTests
{
    static readonly Setup Tools = Setup.None with
    {
        WorkOffsets = Setup.None.WorkOffsets.Add(54, new Point3(-300, -200, -400)),
        Tools =
        [
            new Tool { Number = 1, Diameter = 10 }, new Tool { Number = 2, Diameter = 6, RadiusOffset = 22 }, new Tool { Number = 3 },
        ],
    };

    static Session At(double x, double y, double z = 0) => new Session(setup: Tools, start: new Point3(x, y, z)).Run("G90 G17 G21 F100").Clear();

    /// <summary>Outside corner: round it on an arc about it (NISTIR 6556 appendix B), which belongs to the block behind it.</summary>
    [Fact]
    public void Outside_corner()
    {
        // Down along x = −10 and away to the left of it, the tool on the left: the corner is a left turn for a tool on the right.
        var session = At(-15, 60).Run("G1 G42 D1 X-10 Y40", "Y0", "X30");

        Assert.Empty(session.Faults);
        Assert.Equal(["feed -15 0 0", "arc -10 -5 0", "feed 30 -5 0"], session.Log.TakeLast(3));
        Assert.Equal(new Point3(-10, 0, 0), session.Moves[^2].Center);
        Assert.False(session.Moves[^2].Clockwise);
        Assert.Equal(2, session.Step.Moves.Count);
    }

    /// <summary>What lies to the left of the program lies to the right of the path that G51.1 mirrors (common practice): along Y20, mirrored to Y-20, the centre of a tool of radius 5 keeps to Y-25.</summary>
    [Fact]
    public void Left_of_a_mirrored_path()
    {
        var session = At(-20, -20).Run("G51.1 Y0", "G1 G41 D1 X0 Y20", "X50", "X80");

        Assert.Empty(session.Faults);
        Assert.Equal(["feed 50 -25 0", "feed 80 -25 0"], session.Log.TakeLast(2));
    }

    /// <summary>Straight back is round the end of a wall: half a turn about it.</summary>
    [Fact]
    public void Straight_back()
    {
        var session = At(-20, 5).Run("G1 G41 D1 X0 Y0", "X50", "X0");

        Assert.Equal(["feed 50 5 0", "arc 50 -5 0", "feed 0 -5 0"], session.Log.TakeLast(3));
        Assert.True(session.Moves[^2].Clockwise);
        Assert.Equal(5 * Math.PI, session.Moves[^2].Length, 9);
    }

    /// <summary>Inside corner of two straight lines: the block ends where the offset lines cross, the next starts there (common practice).</summary>
    [Fact]
    public void Inside_corner_of_two_lines() =>
        Assert.Equal(["feed 45 5 0", "feed 45 40 0"], At(-20, 5).Run("G1 G41 D1 X0 Y0", "X50", "Y40").Log.TakeLast(2));

    /// <summary>Line and arc: the line y = 5 meets the circle of radius 20 − 5 about (30, 10) at x = 30 + √(15² − 5²).</summary>
    [Fact]
    public void Inside_corner_of_a_line_and_an_arc()
    {
        // From (x, 0) on the circle of radius 20 about (30, 10): x = 30 + √(20² − 10²), and on to its top.
        var x = 30 + Math.Sqrt(300);
        var session = At(-20, 5).Run("G1 G41 D1 X0 Y0", $"X{x:0.######}", $"G3 X30 Y30 I{30 - x:0.######} J10");

        Assert.Empty(session.Faults);
        Assert.Equal(30 + Math.Sqrt(200), session.Moves[^2].To.X, 5);
        Assert.Equal(5, session.Moves[^2].To.Y, 5);
        Assert.Equal("arc 30 25 0", session.Log[^1]);
        Assert.Equal(new Point3(30, 10, 0), new Point3(Math.Round(session.Moves[^1].Center.X, 5), Math.Round(session.Moves[^1].Center.Y, 5), 0));
    }

    /// <summary>Tangent: nothing in between, on an inner and an outer arc; radii 20 − 5 and 20 + 5.</summary>
    [Theory]
    [InlineData("G3 X60 Y20 J20", "arc 55 20 0")]
    [InlineData("G2 X60 Y-20 J-20", "arc 65 -20 0")]
    public void Tangent_arcs(string arc, string expected)
    {
        var session = At(-20, 5).Run("G1 G41 D1 X0 Y0", "X40", arc);

        Assert.Equal(["feed 40 5 0", expected], session.Log.TakeLast(2));
        Assert.Empty(session.Faults);
    }

    /// <summary>A corner tangent but for numbers rounded to 0.001 mm is one.</summary>
    [Fact]
    public void Rounded_tangent()
    {
        var session = At(-20, 5).Run("G1 G41 D1 X0 Y0", "X40", "G3 X60 Y20.001 I-0.0005 J20.0005");

        Assert.Empty(session.Faults);
        Assert.Equal(2, session.Log.Skip(1).Count());
    }

    /// <summary>A full circle comes out as one, its radius 20 − 5.</summary>
    [Fact]
    public void Full_circle()
    {
        var session = At(20, 5).Run("G1 G41 D1 X40 Y0", "G3 J20", "G1 X60");

        Assert.Equal(["arc 40 5 0", "feed 60 5 0"], session.Log.TakeLast(2));
        Assert.Equal(2 * Math.PI * 15, session.Moves[^2].Length, 6);
    }

    /// <summary>A helix keeps its Z: radius 15, half a turn, 3 mm down.</summary>
    [Fact]
    public void Helix()
    {
        var session = At(20, 5).Run("G1 G41 D1 X40 Y0", "G3 Y40 J20 Z-3", "G1 X20");

        Assert.Equal("arc 40 35 -3", session.Log[^2]);
        Assert.Equal(Math.Sqrt(Math.Pow(15 * Math.PI, 2) + 9), session.Moves[^2].Length, 6);
        Assert.Equal(session.Moves[^2].Length / 100 * 60, session.Moves[^2].Seconds, 6);
    }

    /// <summary>Where the way in bends towards the tool, the first move ends square to the start of the second (common practice).</summary>
    [Fact]
    public void Way_in_at_an_inside_corner() => Assert.Equal(["feed -5 0 0", "feed -5 40 0"], At(-30, -1).Run("G1 G41 D1 X0 Y0", "Y40").Log);

    /// <summary>Blocks that do not move in X and Y do not hide the next piece; the level changes where the tool then stands.</summary>
    [Fact]
    public void Blocks_between() => Assert.Equal(
        ["feed -5 0 0", "feed -5 0 -2", "spindle", "feed -5 40 -2", "feed 40 45 -2"],
        At(-30, -1).Run("G1 G41 D1 X0 Y0", "Z-2", "(a note)", "", "M3 S100", "Y40", "X40").Log.Where(line => !line.StartsWith("arc", StringComparison.Ordinal)));

    /// <summary>A place named where the program stands already moves nothing but Z.</summary>
    [Fact]
    public void Named_where_it_stands() => Assert.Equal("feed 50 5 -2", At(-20, 5).Run("G1 G41 D1 X0 Y0", "X50", "X50 Y0 Z-2").Log[^1]);

    /// <summary>The last move before G40 ends square; the next leads from there to the programmed place, in both axes.</summary>
    [Theory]
    [InlineData("G40 G1 X50 Y20", "feed 50 20 0")]
    [InlineData("G40 G1 X60", "feed 60 0 0")]
    [InlineData("G40 G0 Y30", "rapid 50 30 0")]
    [InlineData("G40|G91|G1 X10", "feed 60 0 0")]
    [InlineData("G40|G0 Z20|X60", "rapid 60 0 20")]
    public void Way_out(string blocks, string last)
    {
        var session = At(-20, 5).Run(["G1 G41 D1 X0 Y0", "X50", .. blocks.Split('|')]);

        Assert.Equal("feed 50 5 0", session.Log[1]);
        Assert.Equal(last, session.Log[^1]);
        Assert.Equal(default, session.State.OffPath);
    }

    /// <summary>G40 alone moves nothing: the tool stands where it is until the next move.</summary>
    [Fact]
    public void G40_alone()
    {
        var session = At(-20, 5).Run("G1 G41 D1 X0 Y0", "X50", "G40");

        Assert.Equal(2, session.Moves.Count);
        Assert.Equal(new Point3(50, 5, 0), session.State.Position);
        Assert.Equal(new Point3(50, 0, 0), session.State.ProgrammedPosition);
    }

    /// <summary>Distances count from the programmed place, not from where the tool's centre stands.</summary>
    [Fact]
    public void Distances() => Assert.Equal(["feed 45 5 0", "feed 45 40 0"], At(-20, 5).Run("G1 G41 D1 X0 Y0", "G91 X50", "Y40").Log.TakeLast(2));

    /// <summary>The machine and the table see the tool's centre.</summary>
    [Fact]
    public void Machine_and_frame()
    {
        var session = At(-20, 5).Run("G1 G41 D1 X0 Y0", "X50");

        Assert.Equal(new Point3(-250, -195, -400), session.State.MachinePosition);
        Assert.Equal(default, session.Step.ToFrame);
    }

    /// <summary>NISTIR 6556 §3.5.10: D names the radius; without D it is that of the tool in the spindle; D0 is none. radiusOffset in the setup's tool list says which
    /// D is whose.</summary>
    [Theory]
    [InlineData("G41 D1", 5)]
    [InlineData("G41 D22", 3)]
    [InlineData("G41 D0", 0)]
    [InlineData("T1 M6|G41", 5)]
    [InlineData("T1 M6|G41 D22", 3)]
    [InlineData("G41", double.NaN)]
    [InlineData("G41 D2", double.NaN)]
    [InlineData("G41 D3", double.NaN)]
    [InlineData("G41 D9", double.NaN)]
    public void Radius(string blocks, double radius)
    {
        var session = At(-20, 0).Run(blocks.Split('|'));

        Assert.Equal(radius, session.State.CompensationRadius);
        Assert.Equal(double.IsNaN(radius) ? [FaultKind.NotFollowed] : [], session.Faults.Select(fault => fault.Kind));
        Assert.Equal(double.IsNaN(radius), double.IsNaN(session.Step.ToFrame.X));
    }

    /// <summary>Without a block ahead a move ends square to its own end; an inside corner met after it is reached straight.</summary>
    [Fact]
    public void Nothing_known_ahead()
    {
        var session = At(-20, 5).Run("G1 G41 D1 X0 Y0").Run("X50");
        Assert.Equal("feed 50 5 0", session.Log[^1]);
        session.Run("Y40");
        Assert.Equal(["feed 45 0 0", "feed 45 40 0"], session.Log.TakeLast(2));
    }

    /// <summary>A place ahead that is not known leaves the end of the move not known, once, until G40.</summary>
    [Fact]
    public void Ahead_not_known()
    {
        var session = At(-20, 5).Run("G1 G41 D1 X0 Y0", "X50", "X#7 Y40", "X10");

        Assert.Single(session.Faults, fault => fault.Kind == FaultKind.NotFollowed);
        Assert.True(double.IsNaN(session.Step.ToFrame.X));
        Assert.False(session.Run("G40", "G0 X0 Y0").State.NotFollowed.HasFlag(NotFollowed.Compensation));
        Assert.Equal(new Point3(0, 0, 0), session.State.Position);
        Assert.True(session.Step.ToFrame.IsKnown);
    }

    /// <summary>A value set in a block acts behind it (NISTIR 6556 §3.3.3), also where the block ahead reads it.</summary>
    [Fact]
    public void Ahead_reads_what_this_block_sets() =>
        Assert.Equal(["feed 45 5 0", "feed 45 40 0"], At(-20, 5).Run("#1=10", "G1 G41 D1 X0 Y0", "X50 #1=40", "Y#1").Log.TakeLast(2));

    /// <summary>Inside corners of 90 degrees take 5 mm from either side of a tool of 10: a side between two needs 10. The fault stands at the block
    /// that ends at the corner.</summary>
    [Theory]
    [InlineData("Y12")]
    [InlineData("Y10")]
    [InlineData("Y9.9", 2)]
    [InlineData("Y3", 1)]
    public void No_room(string side, params int[] refusedAt)
    {
        var session = At(-20, 5).Run("G1 G41 D1 X0 Y0", "X50", side, "X0");

        Assert.Equal(refusedAt, session.FaultBlocks);
        Assert.All(session.Faults, fault => Assert.Equal((FaultKind.CompensationCorner, 5), (fault.Kind, fault.A)));
    }

    /// <summary>An inside arc must be larger than the tool (NISTIR 6556 appendix B.5).</summary>
    [Theory]
    [InlineData(4.9, true)]
    [InlineData(5, true)]
    [InlineData(5.1, false)]
    public void Inside_arc(double radius, bool refused)
    {
        var session = At(-20, 5).Run("G1 G41 D1 X0 Y0", "X40", $"G3 X{40 + radius} Y{radius} J{radius}", "G1 Y60");

        Assert.Equal(refused, session.Faults.Any(fault => fault is { Kind: FaultKind.CompensationCorner, Letter: 'R', A: 5 } && Math.Abs(fault.B - radius) < 1e-9));
        Assert.Equal(40 + radius - 5, session.State.Position.X, 9);
    }

    /// <summary>Inverse time: F says how long the block takes, the arc round its corner included (NISTIR 6556 §3.5.19).</summary>
    [Fact]
    public void Inverse_time()
    {
        var session = At(-25, 60).Run("G1 G41 D1 X-10 Y40", "Y0", "G93 X-50 F2");

        Assert.Equal(2, session.Step.Moves.Count);
        Assert.Equal(30, session.Step.Moves[0].Seconds + session.Step.Moves[1].Seconds, 6);
    }

    /// <summary>A rapid goes straight to the end of its offset line, without an arc.</summary>
    [Fact]
    public void Rapids() => Assert.Equal(["rapid -15 0 0", "rapid 30 -5 0"], At(-15, 60).Run("G0 G42 D1 X-10 Y40", "Y0", "X30").Log.TakeLast(2));
}
