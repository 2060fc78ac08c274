using NcLanguage.Control.Codes;
using NcLanguage.Control.Execution;
using NcLanguage.Control.Moves;
using NcLanguage.Control.State;
using NcLanguage.Control.Tests.Execution;
using NcLanguage.Machine.Geometry;
using NcLanguage.Machine.Setups;

namespace NcLanguage.Control.Tests.Codes;

/// <summary>Published tables against the product's own: address letters, cycles, miscellaneous functions, parameters. Where the product differs, the row says so and why.</summary>
public sealed class PublishedTablesTests
{
    /// <summary>Address letters of ISO 6983-1, as in RS-274-D (from memory), by a word of their meaning. Letters that the standard leaves free or
    /// gives a further meaning are used as NISTIR 6556 table 3 uses them.</summary>
    [Theory]
    [InlineData('A', "about X")]
    [InlineData('B', "about Y")]
    [InlineData('C', "about Z")]
    [InlineData('F', "feed")]
    [InlineData('G', "preparatory")]
    [InlineData('I', "centre along X")]
    [InlineData('J', "centre along Y")]
    [InlineData('K', "centre along Z")]
    [InlineData('M', "miscellaneous")]
    [InlineData('N', "block number")]
    [InlineData('R', "R level")] // the standard: rapid Z dimension
    [InlineData('S', "spindle speed")]
    [InlineData('T', "tool")]
    [InlineData('X', "X position")]
    [InlineData('Y', "Y position")]
    [InlineData('Z', "Z position")]
    [InlineData('D', "radius offset")] // the standard: an angle, a third feed or a second tool function
    [InlineData('E', "no meaning")] // the standard: an angle or a second feed
    [InlineData('H', "length offset")] // free in the standard
    [InlineData('L', "repeats")] // free in the standard
    [InlineData('O', "program number")] // not to be used by the standard; common practice
    [InlineData('P', "dwell")] // the standard: a third axis or a parameter
    [InlineData('Q', "peck")] // the same
    [InlineData('U', "no meaning")] // the standard: a second axis along X, which the mill does not have
    [InlineData('V', "no meaning")]
    [InlineData('W', "no meaning")]
    public void Address(char letter, string meaning) => Assert.Contains(meaning, AddressTable.Find(letter)!.Name, StringComparison.Ordinal);

    /// <summary>The fixed cycles of ISO 6983-1, ISO 1056 and RS-274-D (from memory): in-feed, dwell and spindle at the bottom, way out. G86 and G87 are read
    /// as NISTIR 6556 §3.5.16.7 and .8 has them.</summary>
    [Theory]
    [InlineData("G81", "feed rapid")]
    [InlineData("G82", "feed dwell rapid")]
    [InlineData("G83", "feed rapid rapid feed rapid")] // intermittent
    [InlineData("G84", "feed dwell spindle feed spindle")] // the standard waits only where P asks for it, here as there
    [InlineData("G85", "feed feed")]
    [InlineData("G86", "feed dwell spindle rapid spindle")] // the standard has no dwell, the report has
    [InlineData("G87", "rapid spindle rapid rapid spindle feed feed spindle rapid rapid rapid spindle")] // the standard: bore, stop, out by hand; the report: back boring
    [InlineData("G88", "feed dwell spindle stop rapid spindle")] // out by hand: the stop
    [InlineData("G89", "feed dwell feed")]
    public void Cycle(string code, string moves)
    {
        var words = code switch { "G83" => "Q3", "G87" => "I1 K-3", "G82" or "G84" or "G86" or "G88" or "G89" => "P1", _ => "" };
        var session = new Session(start: new Point3(0, 0, 2)).Run("G90 G99 M3 S500 F100").Clear().Run($"{code} X0 Y0 Z-4 R2 {words}");
        Assert.Empty(session.Faults);
        Assert.Equal(moves, string.Join(' ', session.Moves.Select(move => move.Kind.ToString().ToLowerInvariant())));
    }

    /// <summary>Which words a cycle's row takes: the dwell where the table has one, the peck where the in-feed is intermittent (ISO 6983-1, from memory;
    /// NISTIR 6556 §3.5.16).</summary>
    [Theory]
    [InlineData("G82 G86 G88 G89", 'P')]
    [InlineData("G83 G73", 'Q')]
    [InlineData("G81 G82 G83 G84 G85 G86 G87 G88 G89", 'R')]
    [InlineData("G81 G82 G83 G84 G85 G86 G87 G88 G89", 'Z')]
    [InlineData("G81 G82 G83 G84 G85 G86 G87 G88 G89", 'L')]
    public void Cycle_words(string codes, char letter) =>
        Assert.All(codes.Split(' '), code => Assert.True(CodeTable.Find('G', int.Parse(code[1..]) * 10)!.Takes(letter), code));

    /// <summary>Miscellaneous functions of ISO 6983-1 (from memory): what holds until it is replaced, and what acts in its block only.</summary>
    [Theory]
    [InlineData("M0 M1 M2 M6 M30 M60", false)]
    [InlineData("M3 M4 M5 M7 M8 M9 M48 M49", true)]
    public void Holds(string codes, bool holds) =>
        Assert.All(codes.Split(' '), code => Assert.Equal(holds, CodeTable.Find('M', int.Parse(code[1..]) * 10)!.IsModal));

    /// <summary>NISTIR 6556 table 2: parameters that the control keeps for itself (probe result, reference points, shift, system in use, origins).
    /// Their values are the machine's: here they are not known, and never 0.</summary>
    [Theory]
    [InlineData(5061)]
    [InlineData(5066)]
    [InlineData(5166)]
    [InlineData(5181)]
    [InlineData(5186)]
    [InlineData(5216)]
    [InlineData(5221)]
    [InlineData(5386)]
    public void A_parameter_of_the_control_is_not_known(int number)
    {
        var session = new Session(start: default(Point3)).Run($"G90 G0 X#{number}");
        Assert.True(double.IsNaN(session.State.Position.X));
        Assert.Empty(session.Faults);
    }

    /// <summary>Table 2: 5161 the home place of G28, 5211 the G92 offset, 5220 the number of the system, 5221 and 5241 the origins of systems 1 and 2.</summary>
    [Theory]
    [InlineData(5162, 0)]
    [InlineData(5211, 3)]
    [InlineData(5220, 2)]
    [InlineData(5221, -300)]
    [InlineData(5242, -180)]
    public void A_parameter_that_the_control_fills(int number, double x)
    {
        var setup = Setup.None with
        {
            IsPresent = true,
            WorkOffsets = Setup.None.WorkOffsets.Add(54, new Point3(-300, -200, -400)).Add(55, new Point3(-250, -180, -390)),
        };
        var session = new Session(setup: setup, start: default(Point3)).Run("G55", "G92 X-3", $"#1=#{number}");
        Assert.Equal(x, session.State.Variables!.Get(1) - (number == 5211 ? session.State.Shift.X - 3 : 0), 9);
    }

    /// <summary>Table 2: what is written into #5221 or #5241 is where the datum lies, and G10 writes the same place.</summary>
    [Theory]
    [InlineData("#5221=-1000\nG0 X1", -999)]
    [InlineData("#5241=-500\nG55\nG0 X2", -498)]
    [InlineData("G20\n#5221=-10\nG21\nG0 X1", -253)]
    [InlineData("#5241=-130\nG10 L2 P2 X-1000\nG0 X#5241", -1300)]
    public void A_datum_written_through_its_variable(string blocks, double machineX)
    {
        var setup = Setup.None with
        {
            IsPresent = true,
            WorkOffsets = Setup.None.WorkOffsets.Add(54, new Point3(-300, -200, -400)).Add(55, new Point3(-250, -180, -390)),
        };
        Assert.Equal(machineX, new Session(setup: setup, start: default(Point3)).Run(["G90", .. blocks.Split('\n')]).State.MachinePosition.X, 9);
    }

    /// <summary>§3.3.2.2: parameters run from 1 to 5399.</summary>
    [Theory]
    [InlineData("#1=7", "X#1", 7)]
    [InlineData("#5399=7", "X#5399", 7)]
    [InlineData("#1=2\n##1=7", "X#2", 7)] // #2 by way of #1
    public void Parameters(string settings, string word, double x)
    {
        var session = new Session(start: default(Point3)).Run([.. settings.Split('\n')]);
        Assert.Equal(x, session.Run("G90 G0 " + word).State.Position.X, 12);
    }

    /// <summary>Appendix C.2 as blocks: "#1=2.0", "##1=0.375", "x #2"; #3 was 7: "#3=5.0 x #3" goes to X7, then "x #3 #3=1.1" to X5.</summary>
    [Fact]
    public void Appendix_C_2_settings()
    {
        var session = new Session(start: default(Point3)).Run("g90 g0", "#1=2.0", "##1=0.375", "x #2");
        Assert.Equal(0.375, session.State.Position.X);
        Assert.Equal(7, session.Run("#3=7", "#3=5.0 x #3").State.Position.X);
        Assert.Equal(5, session.Run("x #3 #3=1.1").State.Position.X);
        Assert.Equal(1.1, session.State.Variables!.Get(3));
    }
}
