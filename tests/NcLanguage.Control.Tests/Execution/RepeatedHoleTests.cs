using System.Collections.Immutable;
using System.Globalization;
using NcLanguage.Control.Execution;
using NcLanguage.Machine.Geometry;
using NcLanguage.Machine.Profiles;
using NcLanguage.Machine.Setups;
using NcLanguage.Syntax.Lexing;
using NcLanguage.Syntax.Text;

namespace NcLanguage.Control.Tests.Execution;

/// <summary>The next hole of a run is drilled as the one before, without going through the order of a block again: what comes of it is what comes of a block worked out by itself.</summary>
public sealed class RepeatedHoleTests
{
    static readonly ImmutableDictionary<int, Point3> Datums =
        ImmutableDictionary<int, Point3>.Empty.Add(54, new(-300, -200, -250)).Add(55, new(-100, -200, -250));

    static Setup Setup(Random random) => new()
    {
        IsPresent = true,
        Stock = random.Next(2) == 0 ? null : new Box3(new(0, 0, -20), new(100, 60, 0)),
        WorkOffsets = random.Next(2) == 0 ? ImmutableDictionary<int, Point3>.Empty : Datums,
        Tools = [new Tool { Number = 1, Kind = ToolKind.Drill, Diameter = 6.8, PointAngle = 118, Length = 100, LengthOffset = 1 }],
    };

    [Fact]
    public void A_random_run_of_holes_is_drilled_as_block_by_block()
    {
        var (repeated, fromWords) = (0, 0);
        for (var seed = 0; seed < 1500; seed++)
        {
            var random = new Random(seed);
            var machine = MachineProfile.IsoMill with
            {
                Readings = new Readings
                {
                    ReturnLevel = random.Next(3) == 0 ? ReturnLevelReading.BeforeMove : ReturnLevelReading.AfterHole,
                    HolePositions = random.Next(6) == 0 ? HolePositionReading.Incremental : HolePositionReading.DistanceMode,
                    RapidPath = random.Next(3) == 0 ? RapidPathReading.PerAxis : RapidPathReading.Straight,
                    Integers = random.Next(6) == 0 ? IntegerReading.Increments : IntegerReading.Whole,
                },
            };
            var lines = Enumerable.Range(0, 60).Select(_ => Block(random));
            var steps = EachStep.SameAsWorkedOut($"{Head(random)}\n{string.Join('\n', lines)}\nG80\nM30\n", machine, Setup(random), step => step.RepeatsHole);
            (repeated, fromWords) = (repeated + steps.All, fromWords + steps.FromWords);
        }
        Assert.InRange(repeated, 4_000, int.MaxValue);
        Assert.InRange(fromWords, 2_000, repeated);
    }

    static string Head(Random random) =>
        (random.Next(4) == 0 ? "" : "G21 G90 G17 G54\n") + "T1 M6\nS900 M3\n" + (random.Next(3) == 0 ? "" : "G43 H1 Z40\n") + (random.Next(3) == 0 ? "" : "G0 X5 Y5 Z30\n")
        + $"{(random.Next(2) == 0 ? "G98" : "G99")} {Cycle(random)} X10 Y10 Z-8 R2 Q3 P1 F120";

    static string Cycle(Random random) => "G" + random.GetItems([73, 74, 76, 81, 82, 83, 84, 85, 86, 87, 88, 89], 1)[0].ToString(CultureInfo.InvariantCulture);

    /// <summary>Mostly a place alone; now and then a block that makes something else of the next.</summary>
    static string Block(Random random)
    {
        var (x, y) = (random.Next(0, 8) * 12.5, random.Next(0, 5) * 10);
        return random.Next(60) switch
        {
            < 20 => FormattableString.Invariant($"X{x:0.###} Y{y}"),
            < 30 => FormattableString.Invariant($"X{x:0.###}"),
            < 38 => FormattableString.Invariant($"N{random.Next(200_000)} Y{y}."),
            38 => FormattableString.Invariant($"X{x:0.###} Y{y} Z-{random.Next(1, 9)}"),
            39 => FormattableString.Invariant($"X{x:0.###} R{random.Next(1, 9)}"),
            40 => Cycle(random) + FormattableString.Invariant($" X{x:0.###}"),
            41 => "G98",
            42 => "G99",
            43 => FormattableString.Invariant($"G91 X{random.Next(-9, 9)}"),
            44 => "G90",
            45 => FormattableString.Invariant($"G0 X{x:0.###} Z{random.Next(2, 50)}"),
            46 => "G80",
            47 => Cycle(random) + FormattableString.Invariant($" X{x:0.###} Y{y} Z-6 R1 Q2 P2"),
            48 => "F90 X3",
            49 => FormattableString.Invariant($"X{x:0.###} L{random.Next(4)}"),
            50 => "#1=4",
            51 => "X[#1+2.5]",
            52 => "X#9",
            53 => "G55",
            54 => "G68 X0 Y0 R30",
            55 => "G69",
            56 => "(a comment)",
            57 => "G52 X1 Y2",
            58 => "M29 S500",
            _ => random.Next(3) switch { 0 => "G18", 1 => "G17", _ => "S700 M4" },
        };
    }
}
