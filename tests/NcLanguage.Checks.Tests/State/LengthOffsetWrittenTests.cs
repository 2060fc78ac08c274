using NcLanguage.Checks.Tests.Rules;

namespace NcLanguage.Checks.Tests.State;

/// <summary>A length that G10 writes for a tool and that is not the setup's: a tool of 122 mm under a length of 100 mm runs 22 mm lower than the program says (NISTIR 6556 §3.5.11: the length is
/// added to Z). That wear is tenths of a millimetre is common practice.</summary>
public sealed class LengthOffsetWrittenTests
{
    const string Setup = """{ "tools": [ { "number": 8, "kind": "drill", "diameter": 5, "length": 122 } ] }""";

    static List<Finding> Of(string blocks, string setup = Setup) => Programs.Of("length-offset-mismatch", "G21 G90 G17 G54\nT8 M6\n" + blocks + "\nM30", setup);

    [Theory]
    [InlineData("G10 L1 P8 R100\nG43 H8 Z50", new[] { 4 })]
    [InlineData("G43 H8 Z50\nG10 L1 P8 R100\nG0 X10", new[] { 4 })] // while it is in force
    [InlineData("G10 L1 P8 R100\nG43 H8 Z50\nG10 L2 P1 X0", new[] { 4 })] // nothing new
    [InlineData("G10 L1 P8 R122\nG43 H8 Z50", new int[0])]
    [InlineData("G10 L1 P8 R121.7\nG43 H8 Z50", new int[0])] // worn
    [InlineData("G10 L11 P8 R-0.3\nG43 H8 Z50", new int[0])]
    [InlineData("G10 L1 P8 R100\nG49", new int[0])] // not used
    [InlineData("G10 L1 P9 R100\nG43 H8 Z50", new int[0])]
    [InlineData("G43 H8 Z50", new int[0])]
    public void It_is_told_where_it_comes_into_force(string blocks, int[] lines) => Assert.Equal(lines, Of(blocks).Select(finding => finding.Line + 1));

    [Theory]
    [InlineData(100, Severity.Error, "written 100 mm into H8, and the setup gives tool 8 a length of 122 mm: the tip runs 22 mm lower than the program says.")]
    [InlineData(130, Severity.Warning, "written 130 mm into H8, and the setup gives tool 8 a length of 122 mm: the tip runs 8 mm higher than the program says.")]
    public void Lower_is_an_error(double written, Severity severity, string words)
    {
        var finding = Assert.Single(Of(FormattableString.Invariant($"G10 L1 P8 R{written}\nG43 H8 Z50")));
        Assert.Equal(severity, finding.Severity);
        Assert.Contains(words, finding.Message, StringComparison.Ordinal);
    }

    [Fact]
    public void Where_the_setup_gives_no_length_nothing_is_known() => Assert.Empty(Of("G10 L1 P8 R100\nG43 H8 Z50", """{ "tools": [ { "number": 8, "kind": "drill", "diameter": 5 } ] }"""));
}
