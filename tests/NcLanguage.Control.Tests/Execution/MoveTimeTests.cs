using CsCheck;
using NcLanguage.Control.Moves;
using NcLanguage.Machine.Geometry;
using NcLanguage.Machine.Profiles;

namespace NcLanguage.Control.Tests.Execution;

/// <summary>Times of moves: trapezoid of speed for rapids, length over feed for cuts.</summary>
public sealed class MoveTimeTests
{
    /// <summary>d/v + v/a, or 2√(d/a) where the way is short (handbook kinematics): 10 m/min, 1000 mm/s².</summary>
    [Theory]
    [InlineData(100, 0.7667)]
    [InlineData(10, 0.2)]
    [InlineData(27.7778, 0.3333)]
    [InlineData(0, 0)]
    public void Trapezoid(double distance, double seconds) => Assert.Equal(seconds, MoveTime.Trapezoid(distance, 10_000, 1000), 4);

    /// <summary>Both forms against the time integral ∫dx/v(x) of v = min(rate, √(2ax), √(2a(d−x))) by the midpoint rule, with x = d·sin²u.</summary>
    [Fact]
    public void Trapezoid_against_the_integral_of_its_motion() =>
        Gen.Select(Gen.Double[0.1, 300], Gen.Double[500, 20_000], Gen.Double[200, 5000]).Sample((distance, rate, acceleration) =>
        {
            const int Steps = 4000;
            var time = 0.0;
            for (var i = 0; i < Steps; i++)
            {
                var (sin, cos) = Math.SinCos((i + 0.5) / Steps * Math.PI / 2);
                var speed = Math.Min(rate / 60, Math.Sqrt(2 * acceleration * distance) * Math.Min(sin, cos));
                time += 2 * distance * sin * cos / speed * (Math.PI / 2 / Steps);
            }
            return Math.Abs(time / MoveTime.Trapezoid(distance, rate, acceleration) - 1) < 1e-4;
        }, iter: 300);

    /// <summary>A straight rapid is as fast as its slowest axis for its way lets it be (§3.5.1: coordinated); each axis by itself: the longest of them.</summary>
    [Fact]
    public void Rapid_path_reading()
    {
        var straight = MachineProfile.IsoMill with { Rapid = new Point3(6000, 6000, 3000), Acceleration = 1e9 };
        var perAxis = straight with { Readings = new Readings { RapidPath = RapidPathReading.PerAxis } };
        var block = "G0 X30 Y40 Z30";
        // Length 58.31 along the line; Z (30 mm at 50 mm/s) rules: 0.6 s. By itself Y takes 0.4 s, Z 0.6 s.
        Assert.Equal(0.6, Time(straight, block), 6);
        Assert.Equal(0.6, Time(perAxis, block), 6);
        var slow = straight with { Acceleration = 500 };
        Assert.Equal(0.6 * 1, Time(straight, "G0 Z30"), 6);
        // Axes alike: the line takes what its longest axis takes by itself, 40 mm at 100 mm/s and 500 mm/s²: 0.4 + 0.2 s.
        Assert.Equal(0.6, Time(slow, "G0 X30 Y40"), 9);
        Assert.Equal(0.6, Time(perAxis with { Acceleration = 500 }, "G0 X30 Y40"), 9);
        // X40 Z30, 50 mm: Z allows 50 · 50/30 mm/s, X accelerates the line by 500 · 50/40 mm/s²: 50/83.33 + 83.33/625 = 0.7333 s.
        // By itself X takes 40/100 + 100/500 = 0.6 s, Z 30/50 + 50/500 = 0.7 s.
        Assert.Equal(0.73333, Time(slow, "G0 X40 Z30"), 5);
        Assert.Equal(0.7, Time(perAxis with { Acceleration = 500 }, "G0 X40 Z30"), 9);

        static double Time(MachineProfile machine, string block) => new Session(machine, start: default(Point3)).Run(block).Moves[0].Seconds;
    }

    /// <summary>Per minute, per turn and inverse time (NISTIR 6556 §2.1.2.5, §3.5.19; G95: ISO 6983, from memory), within the machine's greatest feed.</summary>
    [Theory]
    [InlineData("G94 F120 G1 X10", 120, 5)]
    [InlineData("G95 F0.1 S1200 M3 G1 X10", 120, 5)]
    [InlineData("G93 F12 G1 X10", 120, 5)]
    [InlineData("G94 F3000 G1 X10", 2000, 0.3)]
    [InlineData("G93 F2000 G1 X10", 2000, 0.3)]
    [InlineData("G20 G94 F10 G1 X1", 254, 6)]
    [InlineData("G20 G95 F0.01 S1000 M3 G1 X1", 254, 6)]
    public void Feeds(string block, double feed, double seconds)
    {
        var move = new Session(MachineProfile.IsoMill with { MaxFeed = 2000 }, start: default(Point3)).Run(block).Moves[^1];
        Assert.Equal(feed, move.Feed, 9);
        Assert.Equal(seconds, move.Seconds, 9);
    }

    /// <summary>What is needed for a time and not there leaves it unknown: no feed, F0, a standing spindle under G95, no F in a block under G93 (§3.5.19).</summary>
    [Theory]
    [InlineData("G1 X10")]
    [InlineData("F0 G1 X10")]
    [InlineData("G95 F0.1 S1000 G1 X10")]
    [InlineData("G95 F0.1 M3 G1 X10")]
    [InlineData("G93 F2 G1 X5", "X10")]
    [InlineData("G94 F100 G1 X5", "G95 M3 S100 X10")]
    [InlineData("G93 F2 G1 X5", "G94 X10")]
    public void Time_not_known(params string[] blocks)
    {
        var move = new Session(start: default(Point3)).Run(blocks).Moves[^1];
        Assert.True(double.IsNaN(move.Feed));
        Assert.True(double.IsNaN(move.Seconds));
    }

    /// <summary>G33 (ISO 6983, from memory): K is the lead of each turn.</summary>
    [Fact]
    public void Thread_feed()
    {
        var session = new Session(start: default(Point3)).Run("M3 S500", "G33 Z-10 K1.5");
        Assert.Equal(750, session.Moves[^1].Feed);
    }

    /// <summary>A tool change takes the profile's time; a stop none that is known beforehand is counted as 0.</summary>
    [Fact]
    public void Actions() =>
        Assert.Equal([4.0, 0.0], new Session(MachineProfile.IsoMill with { ToolChangeSeconds = 4 }, start: default(Point3)).Run("T1 M6", "M0").Moves.Select(move => move.Seconds));

    /// <summary>Feed per revolution (G95: ISO 6983, from memory) counts the turns that the spindle makes: asked for 9000 or 30 of them in a minute, it makes 8000 and 50.</summary>
    [Theory]
    [InlineData("S9000", 800)]
    [InlineData("S30", 5)]
    [InlineData("S1000", 100)]
    public void A_feed_per_revolution_counts_turns_within_the_machine(string speed, double feed)
    {
        var session = new Session(MachineProfile.IsoMill with { Spindle = new Limits(50, 8000) }, start: default(Point3));
        session.Run($"{speed} M3");
        Assert.Equal(feed, session.Run("G95 G1 X10 F0.1").Moves[^1].Feed, 9);
    }
}
