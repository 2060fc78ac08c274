using NcLanguage.Control.Execution;
using NcLanguage.Control.State;
using NcLanguage.Machine.Geometry;
using NcLanguage.Machine.Profiles;
using NcLanguage.Machine.Setups;

namespace NcLanguage.Control.Tests.Execution;

/// <summary>Drilling and boring cycles move for move (NISTIR 6556 §3.5.16; G73, G74, G76: common practice).</summary>
public sealed class CycleTests
{
    static readonly Point3 Above = new(0, 0, 10);

    static Session Start(Func<Readings, Readings>? change = null) =>
        new Session(OrderTests.Reading(change ?? (r => r)), OrderTests.Datum, Above).Run("G90 G17 M3 S500 F100").Clear();

    /// <summary>§3.5.16.2 to .10: what each cycle does below R, in absolute positions and with return to R.</summary>
    [Theory]
    // §3.5.16.2
    [InlineData("G81 X5 Y6 Z-3 R2", "feed 5 6 -3|rapid 5 6 2")]
    // §3.5.16.3
    [InlineData("G82 X5 Y6 Z-3 R2 P1.5", "feed 5 6 -3|dwell 1.5|rapid 5 6 2")]
    // §3.5.16.4, with the strokes of the handbook formula (facts 3.8); the way back in ends 1 mm above the last bottom (own choice, the report leaves it open)
    [InlineData("G83 X5 Y6 Z-20 R2 Q5",
        "feed 5 6 -3|rapid 5 6 2|rapid 5 6 -2|feed 5 6 -8|rapid 5 6 2|rapid 5 6 -7|feed 5 6 -13|rapid 5 6 2|rapid 5 6 -12|feed 5 6 -18|rapid 5 6 2|rapid 5 6 -17|feed 5 6 -20|rapid 5 6 2")]
    // common practice: backs off by a little only
    [InlineData("G73 X5 Y6 Z-8 R2 Q5", "feed 5 6 -3|rapid 5 6 -2|feed 5 6 -8|rapid 5 6 2")]
    // §3.5.16.5
    [InlineData("G84 X5 Y6 Z-3 R2", "feed 5 6 -3|spindle|feed 5 6 2|spindle")]
    // common practice
    [InlineData("G74 X5 Y6 Z-3 R2", "feed 5 6 -3|spindle|feed 5 6 2|spindle")]
    // §3.5.16.6
    [InlineData("G85 X5 Y6 Z-3 R2", "feed 5 6 -3|feed 5 6 2")]
    // §3.5.16.7
    [InlineData("G86 X5 Y6 Z-3 R2 P1", "feed 5 6 -3|dwell 1|spindle|rapid 5 6 2|spindle")]
    // §3.5.16.8
    [InlineData("G87 X5 Y6 Z-20 R2 I0.5 J-0.25 K-15",
        "rapid 5.5 5.75 2|spindle|rapid 5.5 5.75 -20|rapid 5 6 -20|spindle|feed 5 6 -15|feed 5 6 -20|spindle|rapid 5.5 5.75 -20|rapid 5.5 5.75 2|rapid 5 6 2|spindle")]
    // §3.5.16.9: the operator brings the tool out, which is shown as the way it takes
    [InlineData("G88 X5 Y6 Z-3 R2 P1", "feed 5 6 -3|dwell 1|spindle|stop|rapid 5 6 2|spindle")]
    // §3.5.16.10
    [InlineData("G89 X5 Y6 Z-3 R2 P1", "feed 5 6 -3|dwell 1|feed 5 6 2")]
    // common practice: oriented stop, off the wall, out, back on the axis
    [InlineData("G76 X5 Y6 Z-3 R2 Q0.2", "feed 5 6 -3|spindle|rapid 5.2 6 -3|rapid 5.2 6 2|rapid 5 6 2|spindle")]
    [InlineData("G76 X5 Y6 Z-3 R2 I0.1 J0.3", "feed 5 6 -3|spindle|rapid 5.1 6.3 -3|rapid 5.1 6.3 2|rapid 5 6 2|spindle")]
    public void Moves_below_R(string block, string below)
    {
        string[] expected = ["rapid 5 6 10", "rapid 5 6 2", .. below.Split('|')];
        Assert.Equal(expected, Start().Run("G99", block).Log);

        // §3.5.16: the same hole in increments; X, Y, R from where the tool stands, Z from R, the K of G87 from Z.
        var incremental = Start().Run("G99 G91", block.Replace("Z-3", "Z-5").Replace("Z-20", "Z-22").Replace("Z-8", "Z-10").Replace("R2", "R-8").Replace("K-15", "K5"));
        Assert.Equal(expected, incremental.Log);
        Assert.Empty(incremental.Faults);
        Assert.Equal(SpindleState.Clockwise, incremental.State.Spindle);
    }

    /// <summary>§3.5.16.4: under G98 each peck comes out to the level the hole is left at, the initial one.</summary>
    [Fact]
    public void Pecks_come_out_to_the_clear_level() =>
        Assert.Equal(
            ["rapid 5 0 10", "rapid 5 0 2", "feed 5 0 -3", "rapid 5 0 10", "rapid 5 0 -2", "feed 5 0 -8", "rapid 5 0 10"],
            Start().Run("G98 G83 X5 Z-8 R2 Q5").Log);

    /// <summary>Reading peckReturn=rLevel (common practice): under G98 too the pecks come out to R only, and the hole is left at the initial level.</summary>
    [Fact]
    public void Pecks_come_out_to_R_where_it_is_read_so()
    {
        var session = Start(r => r with { PeckReturn = PeckReturnReading.RLevel }).Run("G98 G83 X5 Z-8 R2 Q5");
        Assert.Equal(["rapid 5 0 10", "rapid 5 0 2", "feed 5 0 -3", "rapid 5 0 2", "rapid 5 0 -2", "feed 5 0 -8", "rapid 5 0 10"], session.Log);
        Assert.Equal(10, session.Holes[0].ReturnTo);

        // Without any return word the way out is not known, the pecks are.
        session = Start(r => r with { PeckReturn = PeckReturnReading.RLevel }).Run("G83 X5 Z-8 R2 Q5");
        Assert.Equal(["rapid 5 0 10", "rapid 5 0 2", "feed 5 0 -3", "rapid 5 0 2", "rapid 5 0 -2", "feed 5 0 -8", "rapid 5 0 ?"], session.Log);
    }

    /// <summary>Handbook formula ceil((R−Z)/Q) (facts 3.8): strokes of random depths, the last one to the bottom.</summary>
    [Theory]
    [InlineData(2, -20, 5, 5)]
    [InlineData(2, -18, 5, 4)]
    [InlineData(1, -2, 0.3, 10)]
    [InlineData(0.1, -0.2, 0.1, 3)]
    [InlineData(2, -3, 50, 1)]
    public void Strokes(double r, double z, double q, int strokes)
    {
        foreach (var cycle in new[] { "G73", "G83" })
        {
            var feeds = Start().Run($"G99 {cycle} X1 Z{z} R{r} Q{q}").Moves.Where(move => move.Kind == Moves.MoveKind.Feed).ToList();
            Assert.Equal(strokes, feeds.Count);
            Assert.Equal(z, feeds[^1].To.Z, 12);
        }
    }

    /// <summary>§3.5.16, rule 6: the cycles work alike in XZ and YZ planes, along Y and X. The tool stands at 0 along them, so the first
    /// move lifts it to R (rule 4).</summary>
    [Theory]
    [InlineData("G18 G99 G81 X5 Z6 Y-3 R2", "rapid 0 2 10|rapid 5 2 6|feed 5 -3 6|rapid 5 2 6")]
    [InlineData("G19 G99 G81 Y5 Z6 X-3 R2", "rapid 2 0 10|rapid 2 5 6|feed -3 5 6|rapid 2 5 6")]
    [InlineData("G18 G99 G76 X5 Z6 Y-3 R2 I0.1 K0.2", "rapid 0 2 10|rapid 5 2 6|feed 5 -3 6|spindle|rapid 5.1 -3 6.2|rapid 5.1 2 6.2|rapid 5 2 6|spindle")]
    [InlineData("G19 G99 G87 Y5 Z6 X-20 R2 J0.5 K0.25 I-15",
        "rapid 2 0 10|rapid 2 5 6|rapid 2 5.5 6.25|spindle|rapid -20 5.5 6.25|rapid -20 5 6|spindle|feed -15 5 6|feed -20 5 6|spindle|rapid -20 5.5 6.25|rapid 2 5.5 6.25|rapid 2 5 6|spindle")]
    public void Other_planes(string block, string moves) => Assert.Equal(moves.Split('|'), Start().Run(block).Log);

    /// <summary>§3.5.16, rule 4: once only, when Z is below R, up to R before the traverse.</summary>
    [Fact]
    public void Lift_when_below_R()
    {
        var session = new Session(start: new Point3(0, 0, 1)).Run("F100 G90 G98 G81 X5 Z-3 R2 ");
        Assert.Equal(["rapid 0 0 2", "rapid 5 0 2", "feed 5 0 -3", "rapid 5 0 2"], session.Log);
        Assert.Equal(1, session.State.InitialLevel);
    }

    /// <summary>§3.5.16, rules 1 and 3: repeats step on in increments; in absolute positions they drill the same place.</summary>
    [Fact]
    public void Repeats()
    {
        Assert.Equal([(10.0, 0.0), (20.0, 0.0), (30.0, 0.0)], Places(Start().Run("G91 G99 G81 X10 R-8 Z-5 L3")));
        Assert.Equal([(10.0, 0.0), (10.0, 0.0)], Places(Start().Run("G90 G99 G81 X10 R2 Z-5 L2")));
        Assert.All(Start().Run("G91 G99 G81 X10 R-8 Z-5 L3").Holes, hole => Assert.Equal((2.0, -3.0), (hole.RLevel, hole.Bottom)));
    }

    /// <summary>§3.5.16 error list: repeats are a positive whole number. A block refused drills nothing.</summary>
    [Theory]
    [InlineData("L0")]
    [InlineData("L1.5")]
    [InlineData("L-2")]
    public void Repeats_refused(string word)
    {
        var session = Start().Run("G99 G81 X10 R2 Z-5 " + word);
        Assert.Empty(session.Log);
        Assert.Equal([FaultKind.ValueNotAllowed], session.Faults.Select(fault => fault.Kind));
    }

    /// <summary>Repeats from a variable that is not known: the last hole may be anywhere in increments, and is here in absolute positions.</summary>
    [Fact]
    public void Repeats_not_known()
    {
        Assert.True(double.IsNaN(Start().Run("G91 G99 G81 X10 R-8 Z-5 L#5").State.Position.X));
        Assert.Equal(10, Start().Run("G90 G99 G81 X10 R2 Z-5 L#5").State.Position.X);
    }

    /// <summary>Sticky words keep their place when G91 comes in between (control.md; §3.5.16, rule 3: R and Z positions stay).</summary>
    [Fact]
    public void Sticky_words_keep_their_place()
    {
        var session = Start().Run("G90 G99 G81 X10 R2 Z-5", "G91 X10", "X10 Z-1", "G90 X50");
        Assert.Equal([(2.0, -5.0), (2.0, -5.0), (2.0, 1.0), (2.0, 1.0)], session.Holes.Select(hole => (hole.RLevel, hole.Bottom)));
        session = Start().Run("G91 G99 G81 X10 R-8 Z-5", "X10", "X10 R-1");
        Assert.Equal([(2.0, -3.0), (2.0, -3.0), (1.0, -3.0)], session.Holes.Select(hole => (hole.RLevel, hole.Bottom)));
    }

    /// <summary>Common practice: the initial level is that before the first block of the run, whatever levels came since.</summary>
    [Fact]
    public void Initial_level_of_a_run()
    {
        var session = Start().Run("G99 G81 X10 R2 Z-5", "X20", "G98 G82 P1 R3 Z-4 X30", "G99 X40");
        Assert.Equal([2.0, 2.0, 10.0, 3.0], session.Holes.Select(hole => hole.ReturnTo));
        Assert.All(session.Holes, hole => Assert.Equal(10, hole.InitialLevel));
        Assert.Equal(6, Start().Run("G99 G81 X10 R2 Z-5", "G80 G0 Z6", "G98 G81 X20 R2 Z-5").Holes[^1].ReturnTo);
    }

    /// <summary>§3.5.20: the initial level, unless it is below R.</summary>
    [Fact]
    public void Return_level()
    {
        Assert.Equal(12, Start().Run("G98 G81 X1 R12 Z-5").Holes[0].ReturnTo);
        Assert.Equal(10, Start().Run("G98 G81 X1 R2 Z-5").Holes[0].ReturnTo);
        Assert.True(double.IsNaN(Start().Run("G81 X1 R2 Z-5").Holes[0].ReturnTo));
        // Where both lead to the same level, it is known.
        Assert.Equal(12, Start().Run("G81 X1 R12 Z-5").Holes[0].ReturnTo);
    }

    /// <summary>§3.5.16, rule 2: the words are compulsory at the first use of a cycle, and again at that of the next.</summary>
    [Theory]
    [InlineData("G81 X4 Y5 Z1.5", 'R')]
    [InlineData("G81 X4 Y5 R2.8", 'Z')]
    [InlineData("G81 R3 Z1", 'X', true)]
    [InlineData("G83 X4 Z1 R2", 'Q')]
    public void Missing_words(string block, char letter, bool drilled = false)
    {
        var session = Start().Run("G98").Run(drilled ? "G81 X4 Z1 R2" : "").Clear().Run(drilled ? "R3" : block);
        Assert.Contains(session.Faults, fault => fault.Kind == FaultKind.WordMissing && fault.Letter == letter);
        session = Start().Run("G98", "G82 X1 Z1 R2 P1").Clear().Run("G81 X2");
        Assert.Equal(['R', 'Z'], session.Faults.Select(fault => fault.Letter));
    }

    /// <summary>§3.5.16 error list (facts 7.2).</summary>
    [Theory]
    [InlineData("G81 X4 Y5 Z2.8 R1.5", FaultKind.RBelowBottom)]
    [InlineData("G82 X4 Z1 R2 P-0.5", FaultKind.ValueNotAllowed)]
    [InlineData("G83 X4 Z1 R2 Q0", FaultKind.ValueNotAllowed)]
    [InlineData("G83 X4 Z1 R2 Q-1", FaultKind.ValueNotAllowed)]
    [InlineData("G93 G81 X4 Z1 R2", FaultKind.NotAllowedHere)]
    [InlineData("G41 D1 G81 X4 Z1 R2", FaultKind.NotAllowedHere)]
    public void Refused(string block, FaultKind kind) => Assert.Contains(Start().Run("G98", block).Faults, fault => fault.Kind == kind);

    /// <summary>control.md: a block with none of X, Y, Z, R does not drill; words of other codes are theirs.</summary>
    [Theory]
    [InlineData("P2")]
    [InlineData("F50")]
    [InlineData("M8")]
    [InlineData("S900 M3")]
    [InlineData("G98")]
    [InlineData("G4 P2")]
    [InlineData("G4 X2")]
    [InlineData("M19 R90")]
    [InlineData("N10 (comment)")]
    [InlineData("G43 H1")]
    [InlineData("M1")]
    public void Blocks_that_do_not_drill(string block)
    {
        var session = Start().Run("G99 G82 X1 R2 Z-5 P1").Clear().Run(block);
        Assert.Empty(session.Holes);
        Assert.Equal(block == "P2" ? 2 : 1, session.State.DwellNumber);
        Assert.Equal(2, session.State.RLevel);
        Assert.Empty(session.Faults);
        Assert.Single(session.Run("X20").Holes);
    }

    /// <summary>control.md: a lone Z is a new depth and drills again where the tool stands.</summary>
    [Fact]
    public void A_lone_Z_drills_again()
    {
        var session = Start().Run("G99 G81 X1 R2 Z-5").Clear().Run("Z-8");
        Assert.Equal(["feed 1 0 -8", "rapid 1 0 2"], session.Log);
        Assert.True(session.Holes[0].IsHop);
        Assert.Equal(["rapid 1 0 3", "feed 1 0 -8", "rapid 1 0 3"], session.Clear().Run("R3").Log);
    }

    /// <summary>§3.5.16 and the code table: a word that the cycle has no use for does nothing and is said to.</summary>
    [Theory]
    [InlineData("G81 X1 R2 Z-5 P1", 'P')]
    [InlineData("G85 X1 R2 Z-5 Q1", 'Q')]
    [InlineData("G81 X1 R2 Z-5 K3", 'K')]
    public void Words_of_other_cycles(string block, char letter)
    {
        var session = Start().Run("G99", block);
        Assert.Equal([letter], session.Faults.Where(fault => fault.Kind == FaultKind.WordWithoutEffect).Select(fault => fault.Letter));
        Assert.True(double.IsNaN(session.State.DwellNumber) && double.IsNaN(session.State.Peck));
    }

    /// <summary>Common practice: shift and level of a bore stay for the next hole of the run.</summary>
    [Fact]
    public void Words_of_boring_stay()
    {
        var log = Start().Run("G99 G87 X5 Y6 Z-20 R2 I0.5 K-15").Clear().Run("X9").Log;
        Assert.Contains("rapid 9.5 6 -20", log);
        Assert.Contains("feed 9 6 -15", log);
        Assert.Contains("rapid 9.1 0 -3", Start().Run("G99 G76 X5 Z-3 R2 I0.1").Clear().Run("X9").Log);
        Assert.Contains(Start().Run("G99 G76 X5 Z-3 R2").Faults, fault => fault.Kind == FaultKind.WordMissing && fault.Letter == 'Q');
    }

    /// <summary>ISO 6983 (from memory): cycles are a group of their own, so G80 and a motion code may share a block; §3.5.15: after G80 alone axis words need one.</summary>
    [Fact]
    public void End_of_a_cycle()
    {
        var session = Start().Run("G99 G81 X1 R2 Z-5").Clear().Run("G80 G0 Z50");
        Assert.Equal(["rapid 1 0 50"], session.Log);
        Assert.Empty(session.Faults);
        Assert.Equal(0, session.State.Cycle);
        session = Start().Run("G0", "G99 G81 X1 R2 Z-5").Clear().Run("G80", "X5");
        Assert.Equal([FaultKind.MotionNotSet], session.Faults.Select(fault => fault.Kind));
        // What the cycle carried is gone.
        Assert.Equal(['R', 'Z'], Start().Run("G99 G81 X1 R2 Z-5", "G80").Clear().Run("G81 X1").Faults.Select(fault => fault.Letter));
    }

    /// <summary>§3.5.4, §3.5.8, §3.5.18 and table 4, group 0: G4, G28 and G92 take their block; the cycle goes on behind it, at the initial level of its run.</summary>
    [Fact]
    public void Codes_between_holes()
    {
        var session = Start().Run("G98 G81 X1 R2 Z-5", "G91 G28 Z0", "G90 X20");
        Assert.Equal([10.0, 400.0], session.Holes.Select(hole => hole.ArriveAt));
        Assert.Equal(10, session.Holes[1].ReturnTo);
        Assert.Equal(2, session.Holes.Count);

        session = Start().Run("G98 G81 X1 R2 Z-5", "G92 Z0", "X20");
        Assert.Equal(0, session.Holes[1].InitialLevel);
        // R and bottom keep their numbers in the shifted coordinates (common practice).
        Assert.Equal((2.0, -5.0), (session.Holes[1].RLevel, session.Holes[1].Bottom));
    }

    /// <summary>Another work offset inside a cycle: numbers of the program hold in it, the initial level is a place and is renumbered.</summary>
    [Fact]
    public void Another_offset_between_holes()
    {
        var setup = OrderTests.Datum with { WorkOffsets = OrderTests.Datum.WorkOffsets.Add(55, new Point3(-200, -200, -395)) };
        var session = new Session(setup: setup, start: Above).Run("F100 G98 G81 X1 R2 Z-5", "G55 X1");
        Assert.Equal((1.0, 2.0, -5.0, 5.0), (session.Holes[1].X, session.Holes[1].RLevel, session.Holes[1].Bottom, session.Holes[1].InitialLevel));
        Assert.True(double.IsNaN(Start().Run("G98 G81 X1 R2 Z-5", "G55 X1").Holes[1].InitialLevel));
    }

    /// <summary>Along the plane's new axis levels have to be given again.</summary>
    [Fact]
    public void Plane_change_in_a_cycle()
    {
        var session = Start().Run("G98 G81 X1 R2 Z-5").Clear().Run("G18 X5");
        Assert.Equal(['R', 'Y'], session.Faults.Where(fault => fault.Kind == FaultKind.WordMissing).Select(fault => fault.Letter));
        Assert.True(double.IsNaN(session.Holes[0].RLevel));
        Assert.Equal(0, session.State.InitialLevel);
        // So has the shift of a bore, part of which would now lie along the hole.
        Assert.Equal(default, Start().Run("G98 G76 X1 R2 Z-5 J0.3").Run("G18").State.BoreShift);
    }

    /// <summary>From a place not known: what the words give is known, the rest is not.</summary>
    [Fact]
    public void Place_not_known()
    {
        var session = new Session().Run("G21 G90 F100 G99 G81 X1 R2 Z-5", "Y3");
        Assert.Equal(["rapid 1 ? ?", "rapid 1 ? 2", "feed 1 ? -5", "rapid 1 ? 2", "rapid 1 3 2", "feed 1 3 -5", "rapid 1 3 2"], session.Log);
        Assert.True(double.IsNaN(session.Holes[0].ArriveAt));
        Assert.Equal(2, session.Holes[1].ArriveAt);
        Assert.True(double.IsNaN(new Session().Run("G21 G91 F100 G99 G81 X1 R-2 Z-5").Holes[0].Bottom));
    }

    /// <summary>Reading returnLevel=beforeMove: the lift of a block under G98 comes before its traverse, also behind an offset change.</summary>
    [Fact]
    public void Lift_before_the_move()
    {
        var session = Start(r => r with { ReturnLevel = ReturnLevelReading.BeforeMove }).Run("G99 G81 X10 R2 Z-5", "G98 X20", "X30", "G99 X40", "G98 G52 X5", "X50");
        Assert.Equal([10.0, 10.0, 10.0, 2.0, 10.0], session.Holes.Select(hole => hole.ArriveAt));
        Assert.All(session.Holes, hole => Assert.Equal(2, hole.ReturnTo));
    }

    /// <summary>Reading returnLevel=afterHole: the traverse runs at the level the hole before left.</summary>
    [Fact]
    public void Lift_after_the_hole()
    {
        var session = Start().Run("G99 G81 X10 R2 Z-5", "G98 X20", "X30", "G99 X40");
        Assert.Equal([10.0, 2.0, 10.0, 10.0], session.Holes.Select(hole => hole.ArriveAt));
        Assert.Equal([2.0, 10.0, 10.0, 2.0], session.Holes.Select(hole => hole.ReturnTo));
    }

    /// <summary>A cycle without a dwell waits 0 s; only a dwell that is not known is not a number.</summary>
    [Fact]
    public void Dwell_of_a_hole()
    {
        Assert.Equal(0, Start().Run("G99 G81 X10 R2 Z-3 F120").Holes[0].DwellSeconds);
        Assert.Equal(0, Start().Run("G99 G83 X10 R2 Z-3 Q1 F120").Holes[0].DwellSeconds);
        Assert.Equal(double.NaN, Start().Run("G99 G82 X10 R2 Z-3 P#600 F120").Holes[0].DwellSeconds);
    }

    /// <summary>The table of holes: levels, dwell, feed and times.</summary>
    [Fact]
    public void Hole()
    {
        var hole = Start().Run("T4 M6 M3 S500", "G99 G82 X10 Y5 R2 Z-3 P0.5 F120").Holes[0];
        Assert.Equal((82, 4, 10.0, 5.0, 2.0, -3.0, 0.5, 120.0, 500.0), (hole.Cycle, hole.Tool, hole.X, hole.Y, hole.RLevel, hole.Bottom, hole.DwellSeconds, hole.Feed, hole.Speed));
        // 5 mm at 120 mm/min are 2.5 s; the rapids are told apart from them in MoveTimeTests.
        Assert.Equal(2.5, Start().Run("G99 G82 X10 R2 Z-3 F120").Moves.Single(move => move.IsCut).Seconds, 9);
        Assert.False(hole.IsHop);
    }

    static IEnumerable<(double X, double Y)> Places(Session session) => session.Holes.Select(hole => (hole.X, hole.Y));
}
