using System.Globalization;
using System.Text;
using NcLanguage.Checks.Analysis;
using NcLanguage.Checks.Rules;
using NcLanguage.Machine.Profiles;
using NcLanguage.Machine.Setups;
using NcLanguage.Syntax.Text;

namespace NcLanguage.Checks.Tests.Cycles;

/// <summary>Holes that one run drills twice are found without a look at each: what is found is what comparing each hole with all before it in its run finds.</summary>
public sealed class HoleRepeatedTests
{
    [Fact]
    public void What_is_found_is_what_comparing_all_holes_of_a_run_finds()
    {
        var found = 0;
        for (var seed = 0; seed < 150; seed++)
        {
            var random = new Random(seed);
            var (text, expected) = Program(random);
            var analysis = ProgramAnalysis.Create(SourceText.From(text), new Setup(), MachineProfile.IsoMill with { IsChosen = true });
            Assert.Equal(expected.Take(HoleRepeated.MostTold), analysis.Findings.Where(finding => finding.Id == "NC3025").Select(finding => finding.Line));
            found += expected.Count;
        }
        Assert.InRange(found, 1_000, int.MaxValue);
    }

    /// <summary>Runs of holes that reach over the chunks of a text, and the lines of those that their run has drilled before.</summary>
    static (string Text, List<int> Expected) Program(Random random)
    {
        var text = new StringBuilder("G21 G90 G17 G54\nT1 M6\nS1000 M3\nG0 X0 Y0\nG43 H1 Z50\n");
        var (line, expected) = (5, new List<int>());
        for (var runs = random.Next(1, 6); runs > 0; runs--)
        {
            var seen = new HashSet<(int, int, int)>();
            // Rows upon rows, a drift that never comes back, or places of chance.
            var (kind, columns, holes) = (random.Next(3), random.Next(3, 60), random.Next(1, 700));
            var depth = random.Next(5, 8);
            for (var i = 0; i < holes; i++)
            {
                var (x, y) = kind switch
                {
                    0 => (i % columns * 7, i / columns * 5),
                    1 => (i * 7, i * 3),
                    _ => (random.Next(columns), random.Next(400)),
                };
                if (random.Next(300) == 0)
                    (x, y) = (0, 0);
                if (random.Next(200) == 0)
                    depth = random.Next(5, 8);
                text.Append(CultureInfo.InvariantCulture, $"{(i == 0 ? "G99 G81 R2. F100 " : "")}X{x}. Y{y}. Z-{depth}.\n");
                if (!seen.Add((x, y, depth)))
                    expected.Add(line);
                line++;
            }
            // A stop between two runs: what it lets the operator change may be why the places are drilled again.
            text.Append("G80\nM1\n");
            line += 2;
        }
        return (text.Append("M5\nM30\n").ToString(), expected);
    }
}
