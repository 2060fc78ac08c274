using System.Collections.Immutable;
using System.Globalization;
using System.Text;
using NcLanguage.Checks.Analysis;
using NcLanguage.Machine.Geometry;
using NcLanguage.Machine.Profiles;
using NcLanguage.Machine.Setups;
using NcLanguage.Syntax.Text;

namespace NcLanguage.Checks.Tests.Analysis;

/// <summary>Blocks that go on as the one before them, of which nothing has to be told, are noted from their traces: what comes of a part is what comes of it where each of its steps is looked at.</summary>
public sealed class QuietBlocksTests
{
    static Setup Setup(Random random) => new()
    {
        IsPresent = true,
        Stock = random.Next(2) == 0 ? new Box3(new(0, 0, -20), new(100, 60, 0)) : null,
        Obstacles = random.Next(4) == 0 ? [] : [new BoxObstacle("clamp", new(new(-20, 10, -5), new(12, 30, 15))), new BoxObstacle("strap", new(new(60, 40, -5), new(70, 60, 4)))],
        Clearance = random.Next(0, 3),
        WorkOffsets = random.Next(2) == 0 ? ImmutableDictionary<int, Point3>.Empty : ImmutableDictionary<int, Point3>.Empty.Add(54, default),
        Material = random.Next(2) == 0 ? null : "aluminium",
        Tools =
        [
            new Tool { Number = 1, Kind = ToolKind.Drill, Diameter = 6, Length = 90, LengthOffset = 1, Material = "HSS", FluteLength = random.Next(2) == 0 ? null : 3 },
            new Tool
            {
                Number = 2, Kind = random.Next(5) switch { 0 => null, 1 => ToolKind.Probe, _ => ToolKind.EndMill }, Diameter = random.Next(4) == 0 ? null : 8, Length = 100, LengthOffset = 2,
                RadiusOffset = 2, Flutes = 3, Material = "carbide", FluteLength = random.Next(3) == 0 ? null : random.Next(1, 5),
            },
        ],
    };

    /// <summary>Some thousand blocks, enough for two hands and for words that are kept.</summary>
    static string Program(Random random)
    {
        var text = new StringBuilder("G21 G90 G17 G54 G80\n");
        for (var lines = 0; lines < 8_600;)
        {
            var (isDrilling, isRounded) = (random.Next(2) == 0, random.Next(3) == 0);
            var count = random.Next(5, 400);
            text.Append(CultureInfo.InvariantCulture, $"T{(isDrilling ? 1 : 2)} M6\nS{random.Next(1, 9) * 300} M3\n");
            text.Append(random.Next(3) == 0 ? "" : "G0 X20 Y5\n").Append(random.Next(4) == 0 ? "" : FormattableString.Invariant($"G43 H{(isDrilling ? 1 : 2)} Z{random.Next(5, 40)}.\n"));
            if (isDrilling)
                text.Append(CultureInfo.InvariantCulture, $"G9{random.Next(8, 10)} G8{random.Next(1, 4)} X10 Y10 Z-{random.Next(2, 9)} R{random.Next(1, 8)} P100 Q2 F{random.Next(0, 9) * 50}\n");
            else
                text.Append(random.Next(4) == 0 ? "G1 F200\n" : FormattableString.Invariant($"G1 Z{random.Next(-3, 3)} F{random.Next(0, 9) * 60}\n"));
            for (var i = 0; i < count; i++)
                text.Append(isDrilling ? Hole(random, i) : isRounded ? Rounded(random, i) : Move(random, i)).Append('\n');
            text.Append(isDrilling && random.Next(5) > 0 ? "G80\n" : "").Append(random.Next(3) == 0 ? "G91 G28 Z0\nG90\n" : "G90 G0 Z50\nM9\n");
            lines += count + 7;
        }
        return text.Append("M30\n").ToString();
    }

    static string Hole(Random random, int i) => random.Next(60) switch
    {
        0 => "",
        1 => "(next)",
        2 => "G91",
        3 => "G90",
        4 => "R5",
        5 => "F90",
        6 => "/X1",
        7 => "G55",
        < 12 => FormattableString.Invariant($"X{i % 17 * 5.5}"),
        < 16 => FormattableString.Invariant($"Y{i % 7 * 5.5}"),
        _ => FormattableString.Invariant($"N{i} X{i % 17 * 5.5} Y{i / 17 * 4}"),
    };

    /// <summary>Round and round a rectangle with rounded corners, now and then with a corner the other way round.</summary>
    static string Rounded(Random random, int i)
    {
        var arc = random.Next(40) == 0 ? "G2" : "G3";
        string[] way = ["G1 X20 Y0", "X30 Y0", "X40 Y0", arc + " X45 Y5 R5", "G1 Y10", "Y20", arc + " X40 Y25 R5", "G1 X20", "X0", arc + " X-5 Y20 R5", "G1 Y12", "Y5", arc + " X0 Y0 R5"];
        return way[i % way.Length];
    }

    static string Move(Random random, int i) => random.Next(80) switch
    {
        0 => "",
        1 => "G91",
        2 => "G90",
        3 => "G0 Z5",
        4 => FormattableString.Invariant($"G1 Z-{random.Next(1, 4)}"),
        5 => "G41 D2",
        6 => "G40",
        7 => "M8",
        8 or 9 => FormattableString.Invariant($"F{random.Next(0, 5) * 80}"),
        < 13 => FormattableString.Invariant($"G{random.Next(2, 4)} X{i % 9 * 10 + 5} Y{i / 9 % 7 * 9} R{random.Next(5, 40)}"),
        < 16 => Turn(random),
        < 17 => FormattableString.Invariant($"G2 X{i % 9 * 10} I{random.Next(-9, 9)}"),
        < 22 => "G1 " + Place(i),
        < 23 => FormattableString.Invariant($"{Place(i)} Z{random.Next(-6, 2)}"),
        < 26 => FormattableString.Invariant($"{Place(i)} F{random.Next(1, 5) * 80}"),
        < 32 => FormattableString.Invariant($"X{i % 9 * 10}"),
        < 38 => FormattableString.Invariant($"Y{i % 7 * 9}"),
        _ => Place(i),
    };

    /// <summary>Circles and helices that join, some of them a hundredth or more off, and what follows them.</summary>
    static string Turn(Random random)
    {
        var (z, odd) = (random.Next(4) == 0 ? FormattableString.Invariant($" Z{random.Next(-4, 4)}") : "", random.Next(9) == 0 ? 0.01 * random.Next(4) : 0);
        return FormattableString.Invariant($"G1 X{40 + random.Next(2) * 3} Y30 F{random.Next(1, 4) * 300}\nG{random.Next(2, 4)} I5 J{odd}{z}\nX50 I5{z}\nX40 R5\nI-4 J3\nG1 X{38 + random.Next(4)}");
    }

    static string Place(int i) => FormattableString.Invariant($"X{i % 9 * 10} Y{i / 9 % 7 * 9 + i % 2}");

    static void Same(ProgramAnalysis expected, ProgramAnalysis analysis)
    {
        Assert.Equal(expected.Findings.AsSpan(), analysis.Findings.AsSpan());
        Assert.Equal(expected.Main.Exit, analysis.Main.Exit);
        Assert.Equal(expected.Main.Results.Length, analysis.Main.Results.Length);
        for (var i = 0; i < expected.Main.Results.Length; i++)
        {
            var (one, other) = (expected.Main.Results[i], analysis.Main.Results[i]);
            Assert.Equal(one.Entry, other.Entry);
            Assert.Equal(one.Findings, other.Findings);
            Assert.Equal(one.Holes, other.Holes);
            Assert.Equal((one.Blocks, one.AllSets, one.Seconds, one.UntimedMoves, one.LinesAhead), (other.Blocks, other.AllSets, other.Seconds, other.UntimedMoves, other.LinesAhead));
            Assert.Equal(one.Sets, other.Sets);
            Assert.Equal(one.StepSeconds, other.StepSeconds);
            Assert.Equal(one.UntimedSteps, other.UntimedSteps);
            Assert.Equal(one.Rounds, other.Rounds);
            Assert.Equal(one.Plunges, other.Plunges);
            Assert.Equal(CutsOf(one), CutsOf(other));
            Assert.Equal(one.Arcs, other.Arcs);
            Assert.Equal(one.TurnedArcs, other.TurnedArcs);
            Assert.Equal(one.LowRapids, other.LowRapids);
            Assert.Equal(one.Tools, other.Tools);
        }
    }

    static List<StockCut> CutsOf(PartResult part)
    {
        var cuts = new List<StockCut>();
        foreach (ref readonly var cut in part.Cuts)
            cuts.Add(cut);
        return cuts;
    }

    [Fact]
    public void Parts_are_as_where_each_step_is_looked_at()
    {
        for (var seed = 0; seed < 24; seed++)
        {
            var random = new Random(seed);
            var (program, setup) = (Program(random), Setup(random));
            var machine = MachineProfile.IsoMill with
            {
                IsChosen = true,
                MaxFeed = random.Next(2) == 0 ? null : 300,
                TravelX = random.Next(4) == 0 ? new Limits(-20, 60) : null,
                TravelZ = random.Next(4) == 0 ? new Limits(-90, 150) : null,
                Readings = MachineProfile.IsoMill.Readings with { ArcCentre = random.Next(6) == 0 ? ArcCentreReading.Absolute : ArcCentreReading.Incremental },
            };
            var (text, edited) = (SourceText.From(program), SourceText.From(program.Replace("G21 G90 ", "G21 G91 ", StringComparison.Ordinal)));
            var two = ProgramAnalysis.Create(text, setup, machine, AnalysisOptions.Default with { WithTwoHands = true });
            Same(ProgramAnalysis.Create(text, setup, machine), two);
            // Behind the edit the words of its blocks are known.
            var at = program.IndexOf("G90", StringComparison.Ordinal);
            Same(ProgramAnalysis.Create(edited, setup, machine), two.WithText(text.WithChange(at, at + 3, "G91"u8), _ => { }));
        }
    }

    /// <summary>As long as no height is known nothing can be near; the block that says one is looked at.</summary>
    [Fact]
    public void A_place_that_becomes_known_amid_them_is_looked_at()
    {
        var row = string.Concat(Enumerable.Range(0, 3_000).Select(i => $"X{40 + i % 9} Y{5 + i % 7}\n"));
        var text = SourceText.From($"G21 G90 G17 G54\nT2 M6\nS900 M3\nG0 X40 Y5\nG43 H2 Z30\nG91 G28 Z0\nG90 G1 X41 F200\n{row}X0 Y20 Z2\n{row}M30\n");
        var setup = new Setup
        {
            IsPresent = true,
            Obstacles = [new BoxObstacle("clamp", new(new(-20, 10, -5), new(12, 30, 15)))],
            Tools = [new Tool { Number = 2, Kind = ToolKind.EndMill, Diameter = 8, Length = 100, LengthOffset = 2 }],
        };
        var two = ProgramAnalysis.Create(text, setup, MachineProfile.IsoMill, AnalysisOptions.Default with { WithTwoHands = true });
        Assert.Contains(two.Findings, finding => finding.Line >= 3_007 && finding.Message.Contains("clamp", StringComparison.Ordinal));
        Same(ProgramAnalysis.Create(text, setup, MachineProfile.IsoMill), two);
    }
}
