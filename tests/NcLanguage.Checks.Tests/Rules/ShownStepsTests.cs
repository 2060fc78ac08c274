using System.Collections.Immutable;
using NcLanguage.Checks.Analysis;
using NcLanguage.Control.Execution;
using NcLanguage.Machine.Profiles;
using NcLanguage.Machine.Setups;
using NcLanguage.Syntax.Text;

namespace NcLanguage.Checks.Tests.Rules;

/// <summary>A rule is shown few steps, so that a large program is read quickly. Shown more of them, it finds nothing else.</summary>
public sealed class ShownStepsTests
{
    /// <summary>A rule that is asked in each job, and shown every step of a kind.</summary>
    sealed class ShownMore(Rule rule) : Rule
    {
        public override RuleInfo Info => rule.Info;

        // Some look at the holes of a block that drills, or at the faults of one that has some, without asking whether there are any.
        public override StepEvents Interest => rule.Interest switch
        {
            StepEvents.None => StepEvents.None,
            StepEvents.HolesDiffer => StepEvents.Holes,
            var few when (few & OfFewBlocks) != 0 => StepEvents.Words,
            var few and > StepEvents.Codes => few | StepEvents.Moves,
            var few => few,
        };

        const StepEvents OfFewBlocks = StepEvents.News | StepEvents.Codes | StepEvents.OddText | StepEvents.OddArc | StepEvents.Path | StepEvents.FeedWanted | StepEvents.FeedGiven;

        public override void CheckStep(in StepContext step) => rule.CheckStep(step);

        public override bool ReadsText => rule.ReadsText;

        public override void CheckText(in BlockContext block) => rule.CheckText(block);

        public override bool ReadsFile => rule.ReadsFile;

        public override void CheckFile(in FileContext file) => rule.CheckFile(file);
    }

    static readonly RuleSet More = new(RuleList.All.Select(rule => new ShownMore(rule)));

    static ImmutableArray<Finding> Find(ProgramAnalysis analysis, RuleSet rules) => ProgramAnalysis.Create(
        analysis.Text, analysis.Main.Job.Setup, analysis.Main.Job.Machine, new AnalysisOptions(MentionMissingSetup: true, MostBlocks: AnalysisOptions.MostBlocksWhileTyping, Rules: rules)).Findings;

    static void SameFindings(ProgramAnalysis analysis) =>
        Assert.Equal(
            Find(analysis, More).Select(finding => (finding.Line + 1, finding.Name, finding.StartColumn, finding.Message)),
            Find(analysis, RuleSet.All).Select(finding => (finding.Line + 1, finding.Name, finding.StartColumn, finding.Message)));

    public static TheoryData<string> Names => RuleExampleTests.ProgramRules;

    [Theory]
    [MemberData(nameof(Names))]
    public void In_its_example_nothing_else_is_found(string name)
    {
        var info = RuleList.Find(name)!.Info;
        SameFindings(Examples.Analyse(MarkedProgram.Parse(info.Example, name).Text, info));
        SameFindings(Examples.Analyse(info.Instead.ReplaceLineEndings("\n"), info));
    }

    /// <summary>Blocks put together by chance, between clamps, with and without a height of the clamps, a stock and a machine's travel.</summary>
    [Fact]
    public void In_random_programs_nothing_else_is_found()
    {
        var found = 0;
        for (var seed = 0; seed < 400; seed++)
        {
            var random = new Random(seed);
            var lines = Enumerable.Range(0, 40).Select(_ => Block(random));
            var text = SourceText.From("G21 G90 G17 G54\nT1 M6\nS900 M3\nG43 H1 Z40 F200\n" + string.Join('\n', lines) + "\nM30\n");
            var setup = new Setup
            {
                IsPresent = true,
                Stock = random.Next(3) == 0 ? null : new(new(0, 0, -20), new(100, 60, 0)),
                ClampHeight = random.Next(2) == 0 ? 12 : null,
                Obstacles = random.Next(2) == 0 ? [] : [new BoxObstacle("clamp A", new(new(-30, 20, -5), new(-4, 40, 25))), new BoxObstacle("clamp B", new(new(40, 10, -5), new(60, 30, 15)))],
                Supports = random.Next(2) == 0 ? [] : [new BoxObstacle("vise", new(new(-10, -10, -60), new(110, 70, -20)))],
                Tools =
                [
                    new Tool { Number = 1, Kind = ToolKind.Drill, Diameter = 6.8, PointAngle = 118, Length = 100, FluteLength = 30, HolderDiameter = 40, HolderGauge = 60, LengthOffset = 1 },
                    new Tool { Number = 2, Kind = ToolKind.EndMill, Diameter = 10, Length = 80, FluteLength = 20, LengthOffset = 2 },
                    new Tool { Number = 3, Kind = ToolKind.Tap, Diameter = 8, Pitch = 1.25, Length = 90, LengthOffset = 3 },
                ],
            };
            var machine = MachineProfile.IsoMill with { IsChosen = true };
            if (random.Next(2) == 0)
                machine = ReadingOption.Apply(machine, random.Next(2) == 0 ? "integers=increments" : "repeats=K", out _);
            var analysis = ProgramAnalysis.Create(text, setup, machine);
            found += analysis.Findings.Length;
            SameFindings(analysis);
        }
        Assert.True(found > 4000, $"Only {found} findings in all: the programs hold too little.");
    }

    /// <summary>What a rule finds in blocks of a kind that few hold.</summary>
    [Theory]
    [InlineData("\uFEFFG21 G90 G17 G54\nG0 X1 Y1\n\uFEFFG0 X2\nM30\n", "character-not-sendable", "1 3")]
    [InlineData("G21 G90 G17 G54\nN10 N1.5 G0 X1\nN-4 G0 X2\nN2.0 G0 X3\nN000005 G0 X4\nM30\n", "number-malformed", "2 3 5")]
    [InlineData("G21 G90 G17 G54\nT1 M6\nG43 H1 G0 X0 Y0 Z20\nG38.2 Z-5\nG0 Z20\nX30\nG38.2 Z-5\nG0 Z20\nG1 X40\nX50\nM30\n", "feed-missing", "4 7 9")]
    [InlineData("G21 G90 G17 G54\nT1 M6\nM3 S1000\nG43 H1 G0 Z50\nG99 G82 X10 Y10 R2 Z-5 P0.5 F100\nZ2\nG80\nG0 Z50\nM30\n", "hole-under-obstacle", "5 6")]
    [InlineData("G21 G90 G17 G54\nT1 M6\nG43 H1 G0 X0 Y0 Z60\nG91\nG28 Z0\nX5\nM30\n", "incremental-left-on", "6")]
    public void Each_block_of_a_kind_is_shown(string program, string name, string lines)
    {
        var setup = new Setup
        {
            IsPresent = true,
            Obstacles = [new BoxObstacle("clamp A", new(new(0, 0, -5), new(20, 20, 22)))],
            Tools = [new Tool { Number = 1, Kind = ToolKind.Drill, Diameter = 8, PointAngle = 118, Length = 100, LengthOffset = 1 }],
        };
        var analysis = ProgramAnalysis.Create(SourceText.From(program), setup, MachineProfile.IsoMill with { IsChosen = true });
        Assert.Equal(lines, string.Join(' ', analysis.Findings.Where(finding => finding.Name == name).Select(finding => finding.Line + 1)));
    }

    /// <summary>A feed is held against the tool where it cuts with it.</summary>
    [Fact]
    public void A_feed_in_a_block_that_does_not_cut_is_not_judged()
    {
        var info = RuleList.Find("feed-per-tooth")!.Info;
        var program = MarkedProgram.Parse(info.Example, info.Name).Text;
        Assert.Contains(Examples.Analyse(program, info).Findings, finding => finding.Name == info.Name);
        var parted = string.Join('\n', program.Split('\n').Select(line => line.Contains(" F", StringComparison.Ordinal) ? "F3000\n" + line[..line.IndexOf(" F", StringComparison.Ordinal)] : line));
        Assert.DoesNotContain(Examples.Analyse(parted, info).Findings, finding => finding.Name == info.Name);
    }

    static string Block(Random random) => random.Next(33) switch
    {
        0 => "G80",
        1 => $"G0 Z{random.Next(-4, 60)}",
        2 => $"G99 G81 X{random.Next(110)} Y{random.Next(70)} Z-{random.Next(1, 40)} R{random.Next(-3, 20)}",
        3 => $"G98 G83 X{random.Next(110)} Y{random.Next(70)} Z-{random.Next(1, 60)} R2 Q{random.Next(0, 30)}",
        4 => $"G84 X{random.Next(110)} Z-12 R{random.Next(2, 12)} F{random.Next(1, 2000)}",
        5 => $"G82 X{random.Next(110)} Z-3 R2 P{random.Next(0, 5000)}",
        6 => $"T{random.Next(1, 5)} M6",
        7 => $"G43 H{random.Next(1, 5)} Z{random.Next(2, 60)}",
        8 => $"S{random.Next(0, 4000)} M{random.Next(3, 6)}",
        9 => random.Next(2) == 0 ? "M8" : "M9",
        10 => random.Next(2) == 0 ? "G91" : "G90",
        11 => random.Next(2) == 0 ? "G20" : "G21",
        12 => $"G{random.Next(17, 20)}",
        13 => $"G4 P{random.Next(0, 9000)}",
        14 => random.Next(2) == 0 ? "M0" : "G28 Z0",
        15 => $"G2 X{random.Next(110)} Y{random.Next(70)} I{random.Next(-9, 9)} J{random.Next(-9, 9)}",
        16 => $"G1 X{random.Next(110)} Z{random.Next(-30, 4)} F{random.Next(0, 900)}",
        17 => $"Z-{random.Next(1, 30)}",
        18 => $"R{random.Next(-2, 30)}",
        19 => $"F{random.Next(0, 900)}",
        20 => $"G{random.Next(54, 60)}",
        21 => $"G{random.Next(93, 96)}",
        22 => $"G38.2 Z{random.Next(-30, 60)}",
        23 => $"N{random.Next(20)} N{random.Next(-3, 3)}.5 X{random.Next(110)}",
        24 => $"\uFEFFX{random.Next(110)}",
        25 => $"X{random.Next(110)} (20 \u00B0C)",
        26 => $"X{random.Next(110)} ({new string('x', random.Next(240, 260))})",
        _ => $"X{random.Next(-5, 110)} Y{random.Next(-5, 70)}",
    };
}
