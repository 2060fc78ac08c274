using NcLanguage.Checks;

namespace NcLanguage.Corpus.Tests;

/// <summary>One fault planted in a sound program yields the finding that names it, at its line, and nothing else.</summary>
public sealed class PlantedFaultTests
{
    /// <summary>Rows of tests/corpus/planted-faults.txt.</summary>
    static readonly PlantedFault[] Faults = [.. PlantedFault.ReadAll()];

    public static TheoryData<string> Rows => [.. Faults.Select(fault => fault.Row)];

    [Fact]
    public void There_are_many_faults_in_many_programs_of_all_areas()
    {
        Assert.InRange(Faults.Length, 64, 1000);
        Assert.InRange(Faults.Select(fault => fault.Program).Distinct().Count(), 25, 1000);
        var areas = RuleList.All.Where(rule => Faults.Any(fault => fault.Finding == rule.Info.Name)).Select(rule => rule.Info.Id[..3]).Distinct().Order();
        Assert.Equal(["NC1", "NC2", "NC3", "NC4", "NC5", "NC6", "NC7"], areas);
    }

    [Theory]
    [MemberData(nameof(Rows))]
    public void A_planted_fault_is_found_and_nothing_else(string row)
    {
        var fault = Faults.First(fault => fault.Row == row);
        var program = CorpusProgram.Of(fault.Program);
        var before = program.Analyse().Findings.Select(finding => $"{finding.Name} {finding.Line + 1}");
        var found = program.Analyse(fault.PlantIn(program.Text)).Findings;
        // Notes say no more than the program's own: the fault itself is the one finding more.
        Assert.Equal(
            [.. before, $"{fault.Finding} {fault.FindingLine}", .. fault.Second is null ? Array.Empty<string>() : [$"{fault.Second} {fault.SecondLine}"]],
            found.Select(finding => $"{finding.Name} {finding.Line + 1}"));
    }
}
