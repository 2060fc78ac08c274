using NcLanguage.Checks.Analysis;
using NcLanguage.Checks.Tests.Rules;
using NcLanguage.Machine.Profiles;
using NcLanguage.Machine.Setups;
using NcLanguage.Syntax.Text;

namespace NcLanguage.Checks.Tests.State;

/// <summary>The rules on radius compensation (NISTIR 6556 §3.5.10, appendix B). Tool 1 has 10 mm, tool 2 6 mm under D22, tool 3 none.</summary>
public sealed class CompensationRuleTests
{
    static readonly Setup Tools = Setup.None with
    {
        IsPresent = true,
        Tools =
        [
            new Tool { Number = 1, Diameter = 10, Length = 90 }, new Tool { Number = 2, Diameter = 6, Length = 80, RadiusOffset = 22 },
            new Tool { Number = 3, Length = 70 },
        ],
    };

    const string Head = "G21 G90 G17 G54 G40 G49 G80\nT1 M6\nM3 S900\nG0 X-40 Y-10\nG43 H1 Z5\nG1 Z-2 F200\n";

    static List<Finding> Of(string rule, string blocks) => Check.Of(rule, Head + blocks.Replace('|', '\n') + "\nM5\nM30", setup: Tools);

    /// <summary>A sound contour, inside and outside corners, arcs either way, in and out straight: nothing is found at all.</summary>
    [Theory]
    [InlineData("G41 D1 X0 Y-5|Y50|X80|G2 X90 Y40 J-10|G1 Y0|X-10|G40 X-30|G0 Z50")]
    [InlineData("G42 D1 X0 Y-5|X40|Y12|X60|Y0|X90|G3 X100 Y10 J10|G1 Y40|G40 Y60|G0 Z50")]
    [InlineData("G41 X0 Y-5|Y50|G40 X-30|G0 Z50")]
    [InlineData("G41 D1 X0 Y-5|Y50|G40|G0 Z50")]
    [InlineData("G41 D0 X0 Y-5|Y50|G40 X-30|G0 Z50")]
    public void A_sound_contour_is_silent(string blocks) =>
        Assert.Empty(Check.Analyse(Head + blocks.Replace('|', '\n') + "\nM5\nM30", setup: Tools).Findings.Select(finding => finding.Message));

    [Theory]
    [InlineData("G41 D1 X-37 Y-10|Y50|G40 X-60", "is 3 mm long, shorter than the tool's radius of 5 mm")]
    [InlineData("G41 D1 G3 X0 Y30 R50|G1 Y50|G40 X-60", "first move under G41 is an arc")]
    [InlineData("G42 D1 X0 Y-10|X40|G40 G2 X60 Y-30 J-20", "first move after G40 is an arc")]
    public void Ways_in_and_out(string blocks, string said) => Assert.Contains(said, Of("compensation-entry", blocks).Single().Message, StringComparison.Ordinal);

    [Theory]
    [InlineData("G41 D1 X0 Y-5|Y50|G3 X-4 Y54 I-4|G1 X-30|G40 Y80", "The arc's radius of 4 mm is not larger than the tool's of 5 mm", 8)]
    [InlineData("G41 D1 X0 Y-5|Y50|X-3|Y80|G40 X-40", "leaves no room for the tool's radius of 5 mm", 7)]
    public void No_room(string blocks, string said, int line)
    {
        var finding = Of("compensation-corner", blocks).Single();
        Assert.Contains(said, finding.Message, StringComparison.Ordinal);
        Assert.Equal(line, finding.Line);
    }

    /// <summary>In inches the numbers are said in inches.</summary>
    [Fact]
    public void In_inches() => Assert.Contains("radius of 0.1969 in", Check.Of("compensation-entry",
        "G20 G90 G17 G54\nT1 M6\nM3 S900\nG0 X0 Y0\nG43 H1 Z1\nG1 G41 D1 X0.1 F8\nY2\nG40 X-1\nM30", setup: Tools).Single().Message, StringComparison.Ordinal);

    [Theory]
    [InlineData("G41 D1 X0 Y-5|Y50|G0 Z50|T2 M6|T1 M6", 1)] // once, until it is switched
    [InlineData("G41 D1 X0 Y-5|Y50|G0 Z50|T2 M6|G40 X-40", 1)]
    [InlineData("G41 D1 X0 Y-5|Y50|G40 X-40|T2 M6", 0)]
    [InlineData("G41 D1 X0 Y-5|Y50|G0 Z50|G40 T2 M6", 0)]
    [InlineData("G41 D1 X0 Y-5|Y50|G0 Z50", 1)] // M30
    public void Left_on(string blocks, int findings) => Assert.Equal(findings, Of("compensation-left-on", blocks).Count);

    [Theory]
    [InlineData("G41 D1", "")]
    [InlineData("G41", "")]
    [InlineData("G41 D0", "")]
    [InlineData("G41 D22", "by custom stands in D1")]
    [InlineData("T2 M6|G41 D2", "stands in D22")]
    [InlineData("T2 M6|G41 D22", "")]
    [InlineData("G41 D31", "")] // a second one of this tool, for roughing: no other's, and path-not-known tells that nobody gives it
    [InlineData("G10 L12 P31 R5.3|G41 D31", "")]
    [InlineData("G10 L12 P22 R5.3|G41 D22", "by custom stands in D1")]
    public void Another_tools_radius(string blocks, string said)
    {
        var found = Of("radius-offset-mismatch", blocks);
        Assert.Equal(said.Length > 0 ? 1 : 0, found.Count);
        Assert.All(found, finding => Assert.Contains(said, finding.Message, StringComparison.Ordinal));
    }

    /// <summary>NISTIR 6556 §3.5.10 takes the radius of the tool in the spindle; that others want D is common practice. It is told once, and where a machine was chosen only if asked for.</summary>
    [Theory]
    [InlineData("G41 X0 Y-5|Y50|G40 X-30|G42 X0 Y-5|X50|G40 Y-30", "G41 has no D, and the radius of tool 1 (5 mm) is what is taken here: a control that wants D takes that of an earlier block or none, and cuts beside the contour, or stops with an alarm.")]
    [InlineData("T3 M6|G41 X0|Y50|G40 X-30", "G41 has no D, and the radius of tool 3 is what is taken here: a control that wants D takes that of an earlier block or none, and cuts beside the contour, or stops with an alarm.")]
    [InlineData("G41 D1 X0 Y-5|Y50|G40 X-30", null)]
    [InlineData("G41 D0 X0 Y-5|Y50|G40 X-30", null)]
    [InlineData("G40 X-30", null)]
    public void No_radius_named(string blocks, string? said)
    {
        var program = Head + blocks.Replace('|', '\n') + "\nM5\nM30";
        var found = Check.Of("word-missing", program, setup: Tools, machine: MachineProfile.IsoMill);
        Assert.Equal(said is null ? [] : [said], found.Select(finding => finding.Message));
        Assert.All(found, finding => Assert.Equal((Severity.Note, "G41"), (finding.Severity, program.Split('\n')[finding.Line][finding.StartColumn..finding.EndColumn])));
        Assert.Empty(Check.Of("word-missing", program, setup: Tools));
        var asked = ProgramAnalysis.Create(SourceText.From(program), Tools, MachineProfile.IsoMill with { IsChosen = true }, new AnalysisOptions(Portable: true));
        Assert.Equal(found.Count, asked.Findings.Count(finding => finding.Name == "word-missing"));
    }

    /// <summary>Where the radius, or the way on, is not known, the note says why, once; where all is known there is none.</summary>
    [Theory]
    [InlineData("G41 D9 X0|Y50|X60", "the setup gives no diameter for D9, and that of tool 1 stands in D1")]
    [InlineData("T3 M6|G41 X0|Y50", "the setup gives no diameter for tool 3")]
    [InlineData("G41 D#9 X0|Y50", "the number of its D is not known")]
    [InlineData("G41 D1 X0|Y50|X#5|X70", "Where the path goes on here is not known")]
    [InlineData("G41 D1 X0|Y50|X70", "")]
    public void The_note_says_why(string blocks, string said)
    {
        var found = Of("path-not-known", blocks);
        Assert.Equal(said.Length > 0 ? 1 : 0, found.Count);
        Assert.All(found, finding => Assert.Contains(said, finding.Message, StringComparison.Ordinal));
    }

    /// <summary>The tool's centre is what meets a clamp: programmed 3 mm past it, a tool of 10 mm on the clamp's side runs into it, on the other side not.</summary>
    [Theory]
    [InlineData("G41", true)]
    [InlineData("G42", false)]
    public void Clearance_is_that_of_the_tools_centre(string side, bool hits)
    {
        var setup = Tools with { Obstacles = [new BoxObstacle("clamp A", new Machine.Geometry.Box3(new(-20, 20, -10), new(-3, 30, 20)))], ObstaclesAreListed = true };
        var found = Check.Of("cut-hits-obstacle", $"G21 G90 G17 G54\nT1 M6\nM3 S900\nG0 X5 Y-30\nG43 H1 Z5\nG1 Z-2 F200\n{side} D1 X0 Y-10\nY50\nG40 Y70\nG0 Z50\nM5\nM30", setup: setup);
        Assert.Equal(hits, found.Count > 0);
    }
}
