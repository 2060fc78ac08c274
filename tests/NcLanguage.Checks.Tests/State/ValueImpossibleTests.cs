using NcLanguage.Checks.Tests.Rules;

namespace NcLanguage.Checks.Tests.State;

/// <summary>Values that no number comes of with what the variables hold, by NISTIR 6556 §3.3.2 (domains of the functions, numbers of variables from 1 to
/// 5399, whole); a division by 0 and results beyond a double by arithmetic.</summary>
public sealed class ValueImpossibleTests
{
    const string Start = "G21 G90 G17 G54\n";

    [Theory]
    [InlineData("#1=0\nG0 X[5/#1]\nX5", "divides by 0")]
    [InlineData("#1=-4\n#2=SQRT[#1]", "has no value")]
    [InlineData("#1=2\n#2=ASIN[#1]", "has no value")]
    [InlineData("#1=0\nG0 X[LN[#1]]\nX5", "has no value")]
    [InlineData("#1=-1\n#2=[#1**0.5]", "has no value")]
    [InlineData("#1=1000\nG0 X[EXP[#1]]\nX5", "larger than any number")]
    [InlineData("#1=6000\nG0 X##1\nX5", "from 1 to 5399")]
    [InlineData("#1=1.5\nG0 X##1\nX5", "not whole")]
    [InlineData("#1=0\nIF [1/#1 GT 2] GOTO 10", "divides by 0")]
    public void What_the_variables_make_impossible_is_told(string blocks, string told)
    {
        var finding = Assert.Single(Check.Of("value-impossible", Start + blocks + "\nN10 M30\n"));
        Assert.Equal(2, finding.Line);
        Assert.Contains(told, finding.Message, StringComparison.Ordinal);
    }

    [Theory]
    [InlineData("#1=2\nG0 X[5/#1]")]
    [InlineData("#1=0\nIF [#1 NE 0] THEN #2=1/#1")] // never carried out
    [InlineData("#1=0\nIF [#1 NE 0] THEN G0 X[5/#1]")]
    [InlineData("G0 X[5/#500]")] // not known here
    [InlineData("#1=4\n#2=SQRT[#1]")]
    [InlineData("#1=5399\n##1=2\nG0 X##1")]
    public void What_has_a_value_or_is_not_known_is_not_told(string blocks) => Assert.Empty(Check.Of("value-impossible", Start + blocks + "\nN10 M30\n"));

    // Common practice: what an operator of the language is, and where a number stands.
    [Theory]
    [InlineData("IF [2 > 1] GOTO 10")]
    [InlineData("#1=1\nIF [ATAN[#1] GT 2] GOTO 10")]
    public void A_condition_that_cannot_be_read_is_one_finding(string blocks)
    {
        var names = Check.Analyse(Start + blocks + "\nN10 M30\n").Findings.Select(finding => finding.Name).ToList();
        Assert.Contains("expression-malformed", names);
        Assert.DoesNotContain("statement-incomplete", names);
    }

    [Fact]
    public void N_behind_GOTO_is_no_number_of_the_block()
    {
        Assert.Empty(Check.Of("number-repeated", Start + "GOTO N10\nN10 M30\n"));
        Assert.Single(Check.Of("number-repeated", Start + "N10 GOTO 20\nN10 X1\nN20 M30\n"));
    }

    [Fact]
    public void The_empty_variable_is_told_as_such()
    {
        Assert.Contains("always empty", Assert.Single(Check.Of("expression-malformed", Start + "G0 X#0 Y5\nM30\n")).Message, StringComparison.Ordinal);
        Assert.Contains("from #1 to #5399", Assert.Single(Check.Of("expression-malformed", Start + "G0 X#6000 Y5\nM30\n")).Message, StringComparison.Ordinal);
    }
}
