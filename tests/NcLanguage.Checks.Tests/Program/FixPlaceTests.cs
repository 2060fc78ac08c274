using NcLanguage.Checks.Analysis;
using NcLanguage.Checks.Tests.Rules;
using NcLanguage.Syntax.Text;

namespace NcLanguage.Checks.Tests.Program;

/// <summary>Where a fix puts its block, and where none is offered. Radius compensation forbids G54 and the like while it is on (NISTIR 6556 §3.5.10); the programs are our own.</summary>
public sealed class FixPlaceTests
{
    static string? Fixed(ProgramAnalysis analysis, string name) =>
        analysis.FixesOf(analysis.Findings.First(finding => finding.Name == name)).FirstOrDefault() is { } fix ? TextEdits.Apply(analysis.Text, fix.Edits).ToString() : null;

    /// <summary>A jump to the number comes to the block that was put before, wherever in the block the number stood.</summary>
    [Theory]
    [InlineData("N30 G1 Z-2 F100", "N30 M3\nG1 Z-2 F100")]
    [InlineData("G1 N30 Z-2 F100", "N30 M3\nG1 Z-2 F100")]
    [InlineData("(slot) N30 G1 Z-2 F100", "N30 M3\n(slot) G1 Z-2 F100")]
    public void The_block_before_takes_the_number_over(string cut, string expected)
    {
        var analysis = Programs.Analyse($"G21 G90 G17 G54\nT1 M6\nS1500\nG0 X10 Y10 Z5\nGOTO30\n{cut}\nG0 Z50\nM5\nM30\n");
        Assert.Contains(expected, Fixed(analysis, "spindle-off"), StringComparison.Ordinal);
    }

    [Theory]
    [InlineData("G1 Z-2 F100\nM5\nM30\n", FixSafety.Safe)]
    [InlineData("G1 Z-2 F100 M30\n", FixSafety.Choice)]
    public void A_spindle_is_started_for_sure_where_the_program_goes_on(string cut, FixSafety safety)
    {
        var analysis = Programs.Analyse($"G21 G90 G17 G54\nT1 M6\nS1500\nG0 X10 Y10 Z5\n{cut}");
        Assert.Equal(safety, analysis.FixesOf(analysis.Findings.Single(finding => finding.Name == "spindle-off")).First().Safety);
    }

    [Theory]
    [InlineData("/G41 D1\nG21 G90 G17\nG1 X5 F100\nG40\nM30\n", false)]
    [InlineData("/M1\nG21 G90 G17\nG1 X5 F100\nM30\n", true)]
    public void No_mode_is_given_where_a_block_that_may_be_skipped_has_turned_compensation_on(string text, bool isOffered)
    {
        var analysis = Programs.Analyse(text, """{ "workOffsets": { "G54": [0, 0, 0] }, "frame": "G54" }""");
        Assert.Equal(isOffered, Fixed(analysis, "work-offset-not-set") is not null);
    }

    [Fact]
    public void No_return_is_put_behind_a_call_of_itself()
    {
        var analysis = Programs.Analyse("O200SUB\nO220IF\nO200CALL\nO200ENDSUB\nO200CALL\nO220ENDIF");
        Assert.Empty(analysis.FixesOf(Assert.Single(analysis.Findings, finding => finding is { Name: "subprogram-return-missing", Line: 2 })));
    }

    /// <summary>Words before a program's number do not take part in what begins with it.</summary>
    [Fact]
    public void The_start_of_a_program_is_behind_its_number()
    {
        var analysis = Programs.Analyse("S500 O8 G0 X5\nM30\n");
        var fix = analysis.Findings.SelectMany(analysis.FixesOf).First(fix => fix.Title.EndsWith("at the start", StringComparison.Ordinal));
        Assert.StartsWith("S500 O8", TextEdits.Apply(analysis.Text, fix.Edits).ToString(), StringComparison.Ordinal);
    }

    /// <summary>NISTIR 6556 §3.5.9: a probe needs 0.254 mm from its point; one that stands there already has none of it.</summary>
    [Fact]
    public void A_probe_that_stands_at_its_point_is_told_so()
    {
        var finding = Assert.Single(Programs.Analyse("G21 G90 G17 G54\nT4 M6\nG0 G43 H4 Z1\nG38.2 Z1 F20\nM30\n").Findings, finding => finding.Name == "not-allowed-here");
        Assert.StartsWith("The probe stands only 0 mm from the point", finding.Message, StringComparison.Ordinal);
    }
}
