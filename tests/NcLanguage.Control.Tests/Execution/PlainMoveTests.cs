using System.Collections.Immutable;
using System.Globalization;
using NcLanguage.Control.Execution;
using NcLanguage.Machine.Geometry;
using NcLanguage.Machine.Profiles;
using NcLanguage.Machine.Setups;

namespace NcLanguage.Control.Tests.Execution;

/// <summary>One more plain move is made like those before it, without going through the order of a block again: what comes of it is what comes of a block worked out by itself.</summary>
public sealed class PlainMoveTests
{
    static readonly ImmutableDictionary<int, Point3> Datums =
        ImmutableDictionary<int, Point3>.Empty.Add(54, new(-300, -200, -250)).Add(55, new(-100, -200, -250));

    static Setup Setup(Random random) => new()
    {
        IsPresent = true,
        Stock = random.Next(2) == 0 ? null : new Box3(new(0, 0, -20), new(100, 60, 0)),
        Obstacles = random.Next(2) == 0 ? [] : [new BoxObstacle("clamp", new Box3(new(-20, 10, -5), new(-2, 30, 15)))],
        WorkOffsets = random.Next(2) == 0 ? ImmutableDictionary<int, Point3>.Empty : Datums,
        Tools = random.Next(3) == 0 ? [] : [new Tool { Number = 1, Kind = ToolKind.EndMill, Diameter = random.Next(3) == 0 ? null : 8, Length = random.Next(3) == 0 ? null : 100, LengthOffset = 1 }],
    };

    [Fact]
    public void A_random_path_is_followed_as_block_by_block()
    {
        var (followed, fromWords) = (0, 0);
        for (var seed = 0; seed < 2500; seed++)
        {
            var random = new Random(seed);
            var machine = MachineProfile.IsoMill with
            {
                MaxFeed = random.Next(2) == 0 ? null : 400,
                Readings = new Readings
                {
                    ArcCentre = random.Next(4) == 0 ? ArcCentreReading.Absolute : ArcCentreReading.Incremental,
                    RapidPath = random.Next(3) == 0 ? RapidPathReading.PerAxis : RapidPathReading.Straight,
                    Integers = random.Next(6) == 0 ? IntegerReading.Increments : IntegerReading.Whole,
                    LengthOffset = random.Next(4) == 0 ? LengthOffsetReading.WithTool : LengthOffsetReading.G43,
                    ProgramMarks = new ProgramMarks { LongestBlock = random.Next(4) == 0 ? 12 : 256 },
                },
            };
            var blocks = Enumerable.Range(0, 80).Select(_ => Block(random));
            var steps = EachStep.SameAsWorkedOut($"{Head(random)}\n{string.Join('\n', blocks)}\nM30\n", machine, Setup(random), step => step.IsPlainMove);
            (followed, fromWords) = (followed + steps.All, fromWords + steps.FromWords);
        }
        Assert.InRange(followed, 20_000, int.MaxValue);
        Assert.InRange(fromWords, 10_000, followed);
    }

    static string Head(Random random) =>
        (random.Next(5) == 0 ? "" : $"{random.GetItems(["G20", "G21"], 1)[0]} G90 G17 G54\n") + (random.Next(6) == 0 ? "" : "T1 M6\n") + (random.Next(6) == 0 ? "" : "S900 M3 M8\n")
        + (random.Next(3) == 0 ? "" : "G43 H1 Z40\n") + (random.Next(4) == 0 ? "" : "G0 X5 Y5 Z3\n") + (random.Next(4) == 0 ? "" : "G1 Z-1 F120\n");

    /// <summary>Mostly one more move; now and then a block that makes something else of the next.</summary>
    static string Block(Random random)
    {
        var (x, y) = (random.Next(0, 8) * 12.5, random.Next(0, 5) * 10);
        var place = FormattableString.Invariant($"X{x:0.###} Y{y}.");
        return random.Next(random.Next(4) == 0 ? 100 : 67) switch
        {
            < 20 => place,
            < 30 => "G1 " + place,
            < 38 => FormattableString.Invariant($"N{random.Next(200_000)} G{random.Next(2, 4)} {place} I{random.Next(-9, 9)}. J{random.Next(-9, 9)}"),
            < 44 => FormattableString.Invariant($"G{random.Next(2, 4)} {place} R{random.Next(-60, 60)}"),
            < 48 => FormattableString.Invariant($"G0{random.Next(2, 4)} I{random.Next(-9, 9)}."),
            < 54 => "G0 " + place,
            < 60 => FormattableString.Invariant($"Z{random.Next(-9, 9)}"),
            < 64 => FormattableString.Invariant($"G1 {place} F{random.Next(-1, 9) * 60}"),
            < 67 => FormattableString.Invariant($"G0 Z{random.Next(-3, 30)}."),
            67 => "G91",
            68 => "G90",
            69 => "G18",
            70 => "G17",
            71 => "G41 D1 " + place,
            72 => "G40",
            73 => "G95 F0.1",
            74 => "G94 F200",
            75 => "G93",
            76 => "G61.1",
            77 => "G64",
            78 => "G55",
            79 => "G68 X0 Y0 R30",
            80 => "G69",
            81 => "G52 X1 Y2",
            82 => "G81 X1 Z-3 R2",
            83 => "G80",
            84 => "M5",
            85 => "M3 S700",
            86 => "M9",
            87 => "T1 M6",
            88 => "G49",
            89 => "G43 H1",
            90 => "#1=4",
            91 => "X[#1+2.5]",
            92 => "X#9",
            93 => "G1 X5 X6",
            94 => "G1 X3 (a comment)",
            95 => "G2 X4 R",
            96 => FormattableString.Invariant($"G1 Y{y} I3"),
            97 => "G28 Z0",
            98 => "G53 G0 Z0",
            _ => random.Next(6) switch { 0 => "G33 Z-3 K1", 5 => "\uFEFFX1 Y2", 1 => "G20", 2 => "F0", 3 => "M30", _ => "S0" },
        };
    }

    [Theory]
    [InlineData("X20 Y5", true)]
    [InlineData("N7 G1 Z-2. F80", true)]
    [InlineData("G02 X10 Y0 I-5.", true)]
    [InlineData("G2 X30 Y0 R2", true)]
    [InlineData("G0 X20", false)]
    [InlineData("X5 F-1", false)]
    [InlineData("G1 X[5]", false)]
    [InlineData("G1 X5 I2", false)]
    [InlineData("G1 X5 S900", false)]
    [InlineData("G1 X5 X6", false)]
    [InlineData("X10 Y0", false)]
    [InlineData("G2 K1 X3", false)]
    [InlineData("G1 X5 (slowly)", false)]
    [InlineData("N1.5 X5", false)]
    public void What_is_followed_behind_a_cut(string block, bool isFollowed)
    {
        var text = "G21 G90 G17 G54\nT1 M6\nS900 M3\nG43 H1 Z40\nG0 X0 Y0\nG1 Z-1 F100\nX5\nX10 Y0\n" + block;
        var setup = new Setup { Tools = [new Tool { Number = 1, Kind = ToolKind.EndMill, Diameter = 8, Length = 100, LengthOffset = 1 }] };
        var last = false;
        EachStep.SameAsWorkedOut(text, MachineProfile.IsoMill, setup, step => last = step.IsPlainMove);
        Assert.Equal(isFollowed, last);
    }
}
