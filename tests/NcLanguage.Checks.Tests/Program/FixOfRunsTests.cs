using NcLanguage.Checks.Analysis;
using NcLanguage.Checks.Tests.Rules;

namespace NcLanguage.Checks.Tests.Program;

/// <summary>A fix changes a block for all of its runs: it is certain only where each of them shows the same. Feed of a tap = pitch · speed (NISTIR 6556 §3.5.16.5); the programs are our own.</summary>
public sealed class FixOfRunsTests
{
    const string Setup = """{ "tools": [ { "number": 4, "kind": "tap", "diameter": 8, "pitch": 1.25, "length": 120 } ] }""";

    static string TwoCalls(int first, int second, int feed) =>
        $"O1\nG21 G90 G17 G54\nG53 G0 Z0\nT4 M6\nS{first} M3\nG0 X20 Y20\nG43 H4 Z20 M8\nM98 P200\nS{second}\nG52 X30\nM98 P200\nG52 X0\nG53 G0 Z0 M9\nM5\nM30\nO200\nG98 G84 X20 Y20 Z-10 R5 F{feed}\nG80\nM99";

    [Theory]
    [InlineData(500, 400, 500, FixSafety.Choice)] // right at the second run
    [InlineData(400, 500, 500, FixSafety.Choice)] // right at the first
    [InlineData(400, 600, 400, FixSafety.Choice)] // wrong at both, each wants its own
    [InlineData(400, 400, 400, FixSafety.Safe)]
    public void A_fix_is_certain_where_all_runs_want_it(int first, int second, int feed, FixSafety safety)
    {
        var analysis = Programs.Analyse(TwoCalls(first, second, feed), Setup);
        var finding = Assert.Single(analysis.Findings, finding => finding.Name == "tap-feed");
        Assert.Equal(safety, Assert.Single(analysis.FixesOf(finding)).Safety);
    }

    static string DrilledInLoop(string inHead, string inLoop) =>
        $"G21 G90 G17 G40 G49 G80 G54\nT1 M6\nS1000 M3\nG43 H1 G0 X0 Y0 Z50\n#111=0\n{inHead}WHILE [#111 LT 4] DO2\n{inLoop}G99 G81 X[12 + #111 * 14] Y5 Z-6 R2 F380\n#111 = #111 + 1\nEND2\nG80\nM5\nM30\n";

    /// <summary>A block before the head of a loop runs once, and not before the later runs of the head: the loop's end leads past it.</summary>
    [Theory]
    [InlineData("M0 ", "", false)]
    [InlineData("", "M0\n", true)]
    public void Nothing_is_put_before_a_loop_for_its_later_runs(string inHead, string inLoop, bool isOffered)
    {
        var analysis = Programs.Analyse(DrilledInLoop(inHead, inLoop));
        var finding = Assert.Single(analysis.Findings, finding => finding.Name == "cycle-not-cancelled");
        Assert.Equal(isOffered, analysis.FixesOf(finding).Any());
    }
}
