using CsCheck;
using MathNet.Numerics.LinearAlgebra;
using NcLanguage.Control.Execution;
using NcLanguage.Control.Moves;
using NcLanguage.Machine.Geometry;
using NcLanguage.Machine.Profiles;

namespace NcLanguage.Control.Tests.Execution;

/// <summary>Polar words, scaling, rotation and mirror: where the words lead. What the codes do is common practice, the places are closed forms.</summary>
public sealed class FrameTests
{
    static Session At(double x, double y, double z = 0) => new(setup: OrderTests.Datum, start: new Point3(x, y, z));

    static void Near(double x, double y, double z, Point3 place)
    {
        Assert.Equal(x, place.X, 9);
        Assert.Equal(y, place.Y, 9);
        Assert.Equal(z, place.Z, 9);
    }

    /// <summary>Turned by 30° about X10 Y10 the point 20 mm to the right of it lies at 20·cos 30°, 20·sin 30° from it; machine and frame follow.</summary>
    [Fact]
    public void Rotation_by_30_degrees()
    {
        var session = At(0, 0, 5).Run("G90 G68 X10 Y10 R30", "G0 X30 Y10");
        Near(10 + 20 * Math.Sqrt(3) / 2, 20, 5, session.State.Position);
        Near(session.State.Position.X - 300, session.State.Position.Y - 200, -395, session.State.MachinePosition);
        Assert.Equal(default, session.Step.ToFrame);
        Assert.Empty(session.Faults);
        // A word of one axis moves both; the other keeps the place the program has given it.
        Near(10 + 20 * Math.Sqrt(3) / 2 - 10, 20 + 20 * Math.Sqrt(3) / 2, 5, session.Run("Y30").State.Position);
        // Off: the tool stands where it stands, and the next word leads there untouched.
        session.Run("G69", "X1 Y2");
        Assert.Equal(new Point3(1, 2, 5), session.State.Position);
    }

    /// <summary>Quarter turns are exact, so that a square stays one; the words of the point are places in G91 too.</summary>
    [Fact]
    public void Quarter_turns_are_exact() =>
        Assert.Equal(["rapid -10 20 0", "rapid -20 20 0", "rapid -20 10 0"], At(0, 0).Run("G91 G68 X0 Y0 R90", "G0 X20 Y10", "Y10", "X-10").Log);

    /// <summary>In G91 the angle adds to the one in force; in G90 it replaces it.</summary>
    [Theory]
    [InlineData("G91 G68 X0 Y0 R60", 90)]
    [InlineData("G90 G68 X0 Y0 R60", 60)]
    public void Angles_add_in_increments(string second, double angle)
    {
        var session = At(0, 0).Run("G90 G68 X0 Y0 R30", second, "G90 G1 X10 Y0 F100");
        Near(10 * Math.Cos(angle * Math.PI / 180), 10 * Math.Sin(angle * Math.PI / 180), 0, session.State.Position);
    }

    /// <summary>Without a point the path turns about where the tool stands; without R it is not known by how much.</summary>
    [Fact]
    public void About_where_the_tool_stands()
    {
        var session = At(5, 7).Run("G68 R90");
        Assert.Equal(new Point3(5, 7, 0), session.State.Position);
        Assert.Equal(["rapid 5 17 0"], session.Run("G90 G0 X15 Y7").Log);
        Assert.Equal([FaultKind.WordMissing], session.Clear().Run("G68 X0 Y0").Faults.Select(fault => fault.Kind));
        Assert.Equal(["rapid ? ? 0"], session.Run("G0 X1").Log);
    }

    /// <summary>In ZX the first axis is Z: a quarter turn counterclockwise takes Z into X.</summary>
    [Fact]
    public void Rotation_in_another_plane() => Assert.Equal(["rapid 10 3 0"], At(0, 0).Run("G18 G68 X0 Z0 R90", "G90 G0 X0 Y3 Z10").Log);

    /// <summary>An arc keeps its radius and sense when turned: quarter circle about the datum, turned by 30°.</summary>
    [Theory]
    [InlineData("G3 X0 Y10 I-10 J0")]
    [InlineData("G3 X0 Y10 R10")]
    public void Arc_turned(string block)
    {
        var arc = At(0, 0).Run("G90 G68 X0 Y0 R30", "G0 X10 Y0").Clear().Run("F100 " + block).Moves[0];
        Near(10 * Math.Cos(Math.PI / 6), 10 * Math.Sin(Math.PI / 6), 0, arc.From);
        Near(10 * Math.Cos(Math.PI * 2 / 3), 10 * Math.Sin(Math.PI * 2 / 3), 0, arc.To);
        Near(0, 0, 0, arc.Center);
        Assert.False(arc.Clockwise);
        Assert.Equal(Math.PI / 2, Arcs.Sweep(arc), 9);
    }

    /// <summary>Scaled by 2 about X10 Y0: lengths, radius and the time at the same feed double.</summary>
    [Fact]
    public void Scaled_arc()
    {
        var plain = At(0, 0).Run("G90 G0 X10 Y0", "G2 X20 Y10 I10 J0 F100").Moves[^1];
        var arc = At(0, 0).Run("G90 G51 X10 Y0 Z0 P2", "G0 X10 Y0", "G2 X20 Y10 I10 J0 F100").Moves[^1];
        Near(30, 20, 0, arc.To);
        Near(30, 0, 0, arc.Center);
        Assert.True(arc.Clockwise);
        Assert.Equal(2 * plain.Length, arc.Length, 9);
        Assert.Equal(2 * plain.Seconds, arc.Seconds, 9);
    }

    /// <summary>A square mirrored at the Y axis: X changes its sign, and arcs run the other way round; mirrored in both they do not.</summary>
    [Fact]
    public void Mirrored_square()
    {
        string[] square = ["G1 X10 F100", "G3 X12 Y2 J2", "G1 Y10", "X2", "Y2"];
        var session = At(2, 0).Run("G90 G51 X0 Y0 Z0 I-1 J1 K1", "G0 X2 Y0").Clear().Run(square);
        Assert.Equal(["feed -10 0 0", "arc -12 2 0", "feed -12 10 0", "feed -2 10 0", "feed -2 2 0"], session.Log);
        Assert.Equal(new Point3(-10, 2, 0), session.Moves[1].Center);
        Assert.True(session.Moves[1].Clockwise);
        Assert.Equal(Math.PI / 2, Arcs.Sweep(session.Moves[1]), 9);
        session = At(2, 0).Run("G90 G51 X0 Y0 Z0 I-1 J-1", "G0 X2 Y0").Clear().Run(square);
        Assert.Equal("arc -12 -2 0", session.Log[1]);
        Assert.False(session.Moves[1].Clockwise);
    }

    /// <summary>The same by G51.1 about X5: what ends each axis is its own G50.1, and a place keeps its other axis.</summary>
    [Fact]
    public void Mirror_about_a_place()
    {
        var session = At(2, 0).Run("G90 G51.1 X5", "G0 X2 Y0").Clear().Run("G1 X10 F100", "G3 X12 Y2 J2", "G51.1 Y-1", "G1 X10 Y2", "G2 X12 Y4 J2", "G50.1 X99", "G0 X1 Y1", "G50.1", "G0 X1 Y1");
        Assert.Equal(["feed 0 0 0", "arc -2 2 0", "feed 0 -4 0", "arc -2 -6 0", "rapid 1 -3 0", "rapid 1 1 0"], session.Log);
        Assert.Equal((true, new Point3(0, 2, 0)), (session.Moves[1].Clockwise, session.Moves[1].Center));
        Assert.True(session.Moves[3].Clockwise);
        Assert.Empty(session.Faults);
        Assert.Null(session.State.ProgramFrame);
        Assert.Equal([FaultKind.WordMissing], session.Run("G51.1").Faults.Select(fault => fault.Kind));
    }

    /// <summary>A rotation is mirrored with all the rest: by 30° about X10 it turns the other way about X-10.</summary>
    [Theory]
    [InlineData("G51.1 X0", "G68 X10 Y0 R30")]
    [InlineData("G68 X10 Y0 R30", "G51.1 X0")]
    public void Mirrored_rotation(string first, string second)
    {
        var session = At(0, 0).Run("G90 " + first, second, "G0 X30 Y0");
        Near(-10 - 20 * Math.Cos(Math.PI / 6), 10, 0, session.State.Position);
    }

    /// <summary>Stretched unequally a circle is none: refused, its centre not known, its end known. Along the third axis it does not matter.</summary>
    [Fact]
    public void Arc_under_unequal_factors()
    {
        var session = At(0, 0).Run("G90 G51 X0 Y0 Z0 I2 J1 K1", "G0 X10 Y0").Clear().Run("G3 X0 Y10 I-10 F100");
        Assert.Equal([FaultKind.NotAllowedHere], session.Faults.Select(fault => fault.Kind));
        Assert.False(session.Moves[0].Center.IsKnown);
        Assert.Equal(new Point3(0, 10, 0), session.State.Position);
        Assert.Empty(At(0, 0).Run("G90 G51 X0 Y0 Z0 I2 J2 K1", "G0 X10 Y0", "G3 X0 Y10 I-10 F100").Faults);
    }

    /// <summary>A factor of 0 and a missing one are refused; one for one axis leaves the others alone.</summary>
    [Fact]
    public void Factors()
    {
        Assert.Equal([FaultKind.ValueNotAllowed], At(0, 0).Run("G51 X0 Y0 P0").Faults.Select(fault => fault.Kind));
        Assert.Equal([FaultKind.WordMissing], At(0, 0).Run("G51 X0 Y0").Faults.Select(fault => fault.Kind));
        Assert.Equal(["rapid 20 3 0"], At(0, 0).Run("G51 X0 I2", "G90 G0 X10 Y3").Log);
        Assert.Equal(["rapid 15 3 0"], At(5, 0).Run("G51 I2", "G90 G0 X10 Y3").Log);
    }

    /// <summary>Six holes on a circle by polar words against cos and sin, in places and in increments of the angle.</summary>
    [Theory]
    [InlineData("G90 G16", "G81 X50 Y0 Z-5 R2 F100", "Y60", "Y120", "Y180", "Y240", "Y300")]
    [InlineData("G90 G16", "G81 X50 Y0 Z-5 R2 F100", "G91 Y60", "Y60", "Y60", "Y60", "Y60")]
    [InlineData("G90 G16", "G81 X50 Y0 Z-5 R2 F100", "G91 Y60 L5")]
    public void Polar_pattern(params string[] program)
    {
        var session = At(0, 0, 20).Run(["G99", .. program]);
        Assert.Equal(6, session.Holes.Count);
        for (var i = 0; i < 6; i++)
        {
            Assert.Equal(50 * Math.Cos(i * Math.PI / 3), session.Holes[i].X, 9);
            Assert.Equal(50 * Math.Sin(i * Math.PI / 3), session.Holes[i].Y, 9);
            Assert.Equal(-5, session.Holes[i].Bottom);
        }
        Assert.Empty(session.Faults);
    }

    /// <summary>In G91 the radius counts from where the tool stands.</summary>
    [Fact]
    public void Polar_from_the_tool()
    {
        var session = At(0, 0).Run("G90 G16 G0 X10 Y0", "G91 X5 Y90");
        Near(10, 5, 0, session.State.Position);
        Near(5, 5, 0, session.Run("X5 Y90").State.Position);
        session.Run("G15 G90 X1 Y2");
        Assert.Equal(new Point3(1, 2, 0), session.State.Position);
    }

    /// <summary>Holes turn with the path; R and bottom are levels of the work, which scaling leaves alone.</summary>
    [Fact]
    public void Cycle_positions_turn_and_scale()
    {
        var session = At(0, 0, 20).Run("G90 G99 G68 X0 Y0 R90", "G51 X0 Y0 Z0 P2", "G81 X10 Y0 Z-5 R3 F100", "Y5", "G80 G0 X0 Y0");
        Assert.Equal([(0, 20, 3, -5), (-10, 20, 3, -5)], session.Holes.Select(hole => (hole.X, hole.Y, hole.RLevel, hole.Bottom)));
        Assert.Equal("rapid 0 0 3", session.Log[^1]);
        Assert.Equal("rapid 0 0 14", session.Run("Z7").Log[^1]);
    }

    /// <summary>A hole along an axis that is turned into another leaves the tool where it leaves it in the work: distances go on from there.</summary>
    [Fact]
    public void Hole_along_a_turned_axis()
    {
        var session = At(0, 10, 20).Run("G90 G68 X0 Y0 R90", "G18 G99 G81 X8 Z4 Y-5 R3 F100");
        Assert.Equal(new Point3(0, 3, 4), session.State.Position);
        Assert.Equal(["rapid 0 8 4"], session.Clear().Run("G80 G91 G0 X5").Log);
    }

    /// <summary>The point on the way to the reference point turns; machine coordinates do not.</summary>
    [Fact]
    public void Reference_point_and_machine_coordinates()
    {
        var session = At(0, 0).Run("G90 G68 X0 Y0 R90", "G28 X10 Y0");
        Assert.Equal("rapid 0 10 0", session.Log[0]);
        Assert.Equal(new Point3(0, 0, -400), session.State.MachinePosition);
        Assert.Equal(new Point3(-290, -200, -400), session.Run("G0 G53 X-290 Y-200").State.MachinePosition);
        Assert.Equal(new Point3(10, 0, 0), session.State.Position);
        // From there the program counts by its own directions again.
        Assert.Equal("rapid 10 1 0", session.Run("G91 X1").Log[^1]);
    }

    /// <summary>A shift or another work offset gives the same place other numbers, turned or not.</summary>
    [Fact]
    public void Offsets_under_rotation()
    {
        var session = At(10, 0).Run("G90 G68 X0 Y0 R90", "G92 X0");
        Assert.Equal(default, session.State.Position);
        Assert.Equal(["rapid 0 5 0"], session.Run("G0 X5 Y0").Log);
        Assert.Equal(new Point3(-290, -195, -400), session.State.MachinePosition);
    }

    /// <summary>NISTIR 6556 §3.6.1 by common practice: the end of the program takes all of them off.</summary>
    [Fact]
    public void Off_at_the_end() => Assert.Null(At(0, 0).Run("G68 X0 Y0 R30", "G51 P2", "G51.1 X0", "G16", "M30").State.ProgramFrame);

    static readonly Gen<double> Number = Gen.Int[-40, 40].Select(i => i / 2.0);

    /// <summary>One change of the frame or one move; each as the block and as what it does to the reference.</summary>
    static readonly Gen<(string Block, Action<Reference> Do)> Act = Gen.OneOf(
        Gen.Select(Number, Number, Gen.Int[-12, 12]).Select(x => (FormattableString.Invariant($"G90 G68 X{x.Item1} Y{x.Item2} R{x.Item3 * 15}"),
            (Action<Reference>)(r => r.Rotation = Reference.About(x.Item1, x.Item2, 0, Reference.Turn(x.Item3 * 15))))),
        Gen.Select(Number, Number, Number, Gen.Int[1, 4], Gen.Int[-4, -1], Gen.Bool).Select(x => (
            FormattableString.Invariant($"G51 X{x.Item1} Y{x.Item2} Z{x.Item3} I{(x.Item6 ? x.Item4 : x.Item5) / 2.0} J{x.Item4 / 2.0} K{x.Item5 / 4.0}"),
            (Action<Reference>)(r => r.Scaling = Reference.About(x.Item1, x.Item2, x.Item3,
                Matrix<double>.Build.DenseOfDiagonalArray([(x.Item6 ? x.Item4 : x.Item5) / 2.0, x.Item4 / 2.0, x.Item5 / 4.0, 1]))))),
        Gen.Const(("G69", (Action<Reference>)(r => r.Rotation = Reference.Identity))),
        Gen.Const(("G50", (Action<Reference>)(r => r.Scaling = Reference.Identity))),
        Gen.Select(Gen.Int[0, 2], Number).Select(x => (FormattableString.Invariant($"G51.1 {"XYZ"[x.Item1]}{x.Item2}"), (Action<Reference>)(r => r.Mirrors[x.Item1] = x.Item2))),
        Gen.Int[0, 2].Select(axis => ($"G50.1 {"XYZ"[axis]}7", (Action<Reference>)(r => r.Mirrors[axis] = null))),
        Gen.Const(("G50.1", (Action<Reference>)(r => Array.Clear(r.Mirrors)))),
        Gen.Select(Number, Number, Number).Select(x => (FormattableString.Invariant($"G90 G0 X{x.Item1} Y{x.Item2} Z{x.Item3}"),
            (Action<Reference>)(r => r.Go(x.Item1, x.Item2, x.Item3)))),
        Gen.Select(Number, Number).Select(x => (FormattableString.Invariant($"G91 G1 X{x.Item1} Z{x.Item2} F100"),
            (Action<Reference>)(r => r.Step(x.Item1, 0, x.Item2)))));

    /// <summary>Random sequences against products of 4 by 4 matrices (MathNet.Numerics): scaling first, then rotation, then the mirror.</summary>
    [Fact]
    public void Composition_against_matrices() => Act.Array[1, 20].Sample(acts =>
    {
        var session = At(0, 0);
        var reference = new Reference();
        foreach (var (block, act) in acts)
        {
            session.Run(block);
            act(reference);
            var place = reference.Work;
            Assert.True(Point3.Distance(place, session.State.Position) < 1e-6 * (1 + place.Length), $"{block}: {session.State.Position} where {place} is right");
        }
        Assert.Empty(session.Faults);
    }, iter: 2000);

    sealed class Reference
    {
        public static readonly Matrix<double> Identity = Matrix<double>.Build.DenseIdentity(4);

        public Matrix<double> Scaling = Identity;
        public Matrix<double> Rotation = Identity;
        public readonly double?[] Mirrors = new double?[3];
        Vector<double> _work = Vector<double>.Build.DenseOfArray([0, 0, 0, 1]);

        public Point3 Work => new(_work[0], _work[1], _work[2]);

        public void Go(double x, double y, double z) => _work = Frame * Vector<double>.Build.DenseOfArray([x, y, z, 1]);

        public void Step(double x, double y, double z)
        {
            var frame = Frame;
            _work = frame * (frame.Inverse() * _work + Vector<double>.Build.DenseOfArray([x, y, z, 0]));
        }

        Matrix<double> Frame =>
            About(Mirrors[0] ?? 0, Mirrors[1] ?? 0, Mirrors[2] ?? 0, Matrix<double>.Build.DenseOfDiagonalArray([.. Mirrors.Select(about => about is null ? 1.0 : -1.0), 1])) * Rotation * Scaling;

        public static Matrix<double> About(double x, double y, double z, Matrix<double> about) => Move(x, y, z) * about * Move(-x, -y, -z);

        public static Matrix<double> Turn(double degrees)
        {
            var (sin, cos) = Math.SinCos(degrees * Math.PI / 180);
            return Matrix<double>.Build.DenseOfArray(new[,] { { cos, -sin, 0, 0 }, { sin, cos, 0, 0 }, { 0, 0, 1, 0 }, { 0.0, 0, 0, 1 } });
        }

        static Matrix<double> Move(double x, double y, double z) =>
            Matrix<double>.Build.DenseOfArray(new[,] { { 1, 0, 0, x }, { 0, 1, 0, y }, { 0, 0, 1, z }, { 0, 0, 0, 1 } });
    }
}
