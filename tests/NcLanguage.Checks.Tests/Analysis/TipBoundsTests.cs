using System.Collections.Immutable;
using System.Text;
using NcLanguage.Checks.Analysis;
using NcLanguage.Checks.Rules;
using NcLanguage.Control.Execution;
using NcLanguage.Machine.Geometry;
using NcLanguage.Machine.Profiles;
using NcLanguage.Machine.Setups;
using NcLanguage.Syntax.Text;

namespace NcLanguage.Checks.Tests.Analysis;

/// <summary>Rules that are shown a move only where it may leave the machine's travel, go deeper than the flutes, or drill at the edge of the stock, say what they say when they are shown each move.</summary>
public sealed class TipBoundsTests
{
    sealed class Shown(Rule rule, StepEvents interest) : Rule
    {
        public override RuleInfo Info => rule.Info;

        public override StepEvents Interest => interest;

        public override bool Concerns(Job job) => rule.Concerns(job);

        public override void CheckStep(in StepContext step) => rule.CheckStep(step);
    }

    static Setup Setup(Random random) => new()
    {
        IsPresent = true,
        Stock = new Box3(new(0, 0, -20), new(100, 60, 0)),
        WorkOffsets = random.Next(5) == 0 ? ImmutableDictionary<int, Point3>.Empty : ImmutableDictionary<int, Point3>.Empty.Add(54, new Point3(-300, -200, -400)).Add(55, new Point3(-350, -210, -390)),
        Tools =
        [
            new Tool { Number = 1, Kind = ToolKind.EndMill, Diameter = random.Next(3) == 0 ? null : 8, Length = 100, LengthOffset = 1, FluteLength = random.Next(4) == 0 ? null : 4 },
            new Tool { Number = 2, Kind = ToolKind.Drill, Diameter = 5, Length = 80, LengthOffset = 2, FluteLength = 6 },
        ],
    };

    static string Program(Random random)
    {
        var text = new StringBuilder("G21 G90 G17 G54\nT1 M6\nS900 M3\nG0 X10 Y10\nG43 H1 Z5\nG1 Z-3 F200\n");
        for (var i = 0; i < 400; i++)
            text.Append(Block(random)).Append('\n');
        return text.Append("M30\n").ToString();
    }

    static string Block(Random random)
    {
        var (x, y, z, r) = (random.Next(-15, 120), random.Next(-15, 75), random.Next(-9, 3), random.Next(1, 40));
        return random.Next(40) switch
        {
            0 => FormattableString.Invariant($"G5{random.Next(4, 7)}"),
            1 => FormattableString.Invariant($"G{random.Next(17, 20)}"),
            2 => "G28 Z0",
            3 => "G53 G0 Z-5",
            4 => FormattableString.Invariant($"T{random.Next(1, 3)} M6"),
            5 => "G43 H1 Z5",
            6 => "G49",
            7 => FormattableString.Invariant($"G91 G1 X{x / 4}\nG90"),
            8 => FormattableString.Invariant($"G92 X{x}"),
            9 => FormattableString.Invariant($"G81 X{x} Y{y} R2 Z{z}\nX{y} Y{x}\nG80"),
            < 20 => FormattableString.Invariant($"G{random.Next(2, 4)} X{x} Y{y} R{r * 3}"),
            < 24 => FormattableString.Invariant($"G{random.Next(2, 4)} X{x} Z{z} R{r * 3}"),
            < 28 => FormattableString.Invariant($"G{random.Next(2, 4)} I{r} J{z}"),
            < 30 => FormattableString.Invariant($"G{random.Next(2, 4)} I{r} K{z}"),
            < 33 => FormattableString.Invariant($"G0 X{x} Z{z + 4}"),
            _ => FormattableString.Invariant($"G1 X{x} Y{y} Z{z}"),
        };
    }

    [Fact]
    public void Nothing_is_passed_over()
    {
        Rule[] rules = [new TravelExceeded(), new DeeperThanFlutes(), new HoleOutsideStock()];
        var (sometimes, always) = (new RuleSet(rules.Select(rule => new Shown(rule, rule.Interest))), new RuleSet(rules.Select(rule => new Shown(rule, StepEvents.Moves | StepEvents.Holes))));
        var found = new HashSet<string>();
        for (var seed = 0; seed < 60; seed++)
        {
            var random = new Random(seed);
            var (text, setup) = (SourceText.From(Program(random)), Setup(random));
            var machine = MachineProfile.IsoMill with { IsChosen = true, TravelX = new Limits(-310, -200), TravelY = random.Next(2) == 0 ? null : new Limits(-220, -120), TravelZ = new Limits(-305, 0) };
            var findings = ProgramAnalysis.Create(text, setup, machine, AnalysisOptions.Default with { Rules = sometimes }).Findings;
            Assert.Equal(ProgramAnalysis.Create(text, setup, machine, AnalysisOptions.Default with { Rules = always }).Findings.AsSpan(), findings.AsSpan());
            found.UnionWith(findings.Select(finding => finding.Rule.Info.Id));
        }
        Assert.Equal(rules.Length, found.Count);
    }
}
