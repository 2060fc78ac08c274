using NcLanguage.Checks;
using NcLanguage.Control.Codes;
using NcLanguage.Editing.Tests.Support;

namespace NcLanguage.Editing.Tests.Hovers;

/// <summary>What hovering a part of an expression says, and that every hover on the language's own words names its source.</summary>
public sealed class ExpressionHoverTests
{
    /// <summary>Values from NISTIR 6556 §3.3.2.</summary>
    [Theory]
    [InlineData("#3=15\nG90 G1 X$0#3 F1", "`#3` local variable\n\nIts value is 15.\n\nSource: NISTIR 6556 §3.3.2, local: common practice")]
    [InlineData("#15=2\n#3=15\nX$0##3", "`#` (#15) local variable\n\nIts value is 2.\n\nSource: NISTIR 6556 §3.3.2, local: common practice")]
    [InlineData("#3=7\n#4=$0#[1+2]", "`#` (#3) local variable\n\nIts value is 7.\n\nSource: NISTIR 6556 §3.3.2, local: common practice")]
    [InlineData("X$0#5220", "`#5220` number of the work offset in force\n\nThe number of the work offset in force, from 1 for G54 to 9 for G59.3.\n\n"
        + "Its value is 1.\n\nSource: NISTIR 6556 table 2")]
    [InlineData("X$0#<depth>", "`#<depth>` variable\n\nIts value is not known here.\n\nSource: NISTIR 6556 §3.3.2, names: common practice")]
    [InlineData("X[$0FIX[-2.8]]", "**FIX** round down\n\nGives the next whole number below, also for negative values.\n\nIts value is -3.\n\nSource: NISTIR 6556 §3.3.2")]
    [InlineData("X[1 + f$0up[-2.8]]", "**FUP** round up\n\nGives the next whole number above, also for negative values.\n\nIts value is -2.\n\nSource: NISTIR 6556 §3.3.2")]
    [InlineData("X[2 $0** 3]", "`**` power\n\nRaises the left value to the right one.\n\nSource: NISTIR 6556 §3.3.2")]
    [InlineData("X[15 m$0od 4]", "**MOD** remainder\n\nGives what is left of the left value after taking out the right one as often as it goes.\n\nSource: NISTIR 6556 §3.3.2")]
    [InlineData("X[#1$0-2]", "**-** minus\n\nTakes the right value from the left one.\n\nSource: NISTIR 6556 §3.3.2")]
    [InlineData("X[SIN[30]$0/2]", "**/** divided by\n\nDivides the left value by the right one.\n\nSource: NISTIR 6556 §3.3.2")]
    [InlineData("IF [#1 $0GT 3] GOTO 5", "**GT** greater\n\nGives 1 when the left value is the greater, else 0.\n\nSource: common practice")]
    public void A_part(string marked, string expected) => Assert.Equal(expected, Editor.WithSource(marked));

    /// <summary>Signs of numbers, the slash of ATAN, brackets and numbers belong to the word around them.</summary>
    [Theory]
    [InlineData("X[$0-2]", "`X[-2]`")]
    [InlineData("X[1 * $0-2]", "`X[1*-2]`")]
    [InlineData("X[1 * $0+#1]", "`X[1*+#1]`")]
    [InlineData("X[ATAN[10]$0/[-10]]", "`X[ATAN[10]/[-10]]`")]
    [InlineData("X[$01+2]", "`X[1+2]`")]
    [InlineData("$0X[1+2]", "`X[1+2]`")]
    public void No_part(string marked, string word) => Assert.StartsWith(word + " ", Editor.WithSource(marked), StringComparison.Ordinal);

    [Fact]
    public void The_range_is_that_of_the_part()
    {
        var answer = Editor.HoverAt("G1 X[#$012 + ABS[-1]] F1");
        Assert.Equal((5, 8), (answer!.StartColumn, answer.EndColumn));
    }

    [Fact]
    public void What_does_not_run_has_no_value() => Assert.Contains("the program has ended", Editor.WithSource("M2\nX$0#3"), StringComparison.Ordinal);

    [Fact]
    public void A_variable_the_control_uses_is_named_where_it_is_set() =>
        Assert.StartsWith("`#5221` datum of work offset 1 (G54), X\n\nBecomes 5.", Editor.Markdown("$0#5221=5"), StringComparison.Ordinal);

    /// <summary>Every function and operator, by its own example.</summary>
    [Fact]
    public void Every_function_and_operator_hovers() => Assert.All(FunctionTable.All, row =>
    {
        var example = row.Example.StartsWith('[') ? row.Example : $"[{row.Example}]";
        var at = row.IsOperator ? example.IndexOf(row.Text, 1, StringComparison.Ordinal) : 1;
        Assert.Contains($" {row.Name}\n\n{row.Meaning}", Editor.WithSource("X" + example.Insert(at, "$0")), StringComparison.Ordinal);
    });

    /// <summary>What is said of each comes from its row, whose source stands at the end.</summary>
    [Fact]
    public void Every_code_address_statement_and_sign_names_its_source()
    {
        Assert.All(CodeTable.All, row => Assert.EndsWith($"Source: {row.Source}", Editor.WithSource($"$0{row.Text} X1 Y1 P1"), StringComparison.Ordinal));
        Assert.All(AddressTable.All.Where(row => row.Letter is not ('G' or 'M' or 'N')), row =>
            Assert.EndsWith($"Source: {row.Source}", Editor.WithSource($"$0{row.Letter}1"), StringComparison.Ordinal));
        Assert.All(StatementTable.All, row =>
        {
            var text = row.Form.Replace("On", "O1", StringComparison.Ordinal).Replace("…", "1", StringComparison.Ordinal).Replace(" n", " 1", StringComparison.Ordinal).Replace("#n=1", "#1=1", StringComparison.Ordinal);
            var at = text.IndexOf(row.Keyword, StringComparison.Ordinal);
            var hover = Editor.WithSource(text.Insert(at, "$0"));
            Assert.StartsWith($"**{row.Keyword}** {row.Name}\n\n{row.Meaning}", hover, StringComparison.Ordinal);
            Assert.EndsWith($"Source: {row.Source}", hover, StringComparison.Ordinal);
        });
        Assert.All(new[] { ("%", "$0%"), ("/", "$0/2 G0"), (":", "$0:12"), ("=", "$0#1=2") }, pair =>
            Assert.EndsWith($"Source: {SignTable.Find(pair.Item1)!.Source}", Editor.WithSource(pair.Item2), StringComparison.Ordinal));
    }

    [Fact]
    public void A_word_of_a_code_names_the_codes_source() => Assert.EndsWith("Source: G82, NISTIR 6556 §3.5.16.3",
        Editor.WithSource("G90 G0 X0 Y0 Z5\nG82 X1 Z-1 R1 $0P1 F100"), StringComparison.Ordinal);

    [Fact]
    public void A_comment_that_silences_a_rule_explains_it() => Assert.All(RuleList.All, rule =>
    {
        var hover = Editor.WithSource($"G0 X1 (nc-$0allow {rule.Info.Name}: tried out)");
        Assert.StartsWith($"**{rule.Info.Name}** ({rule.Info.Id}) {rule.Info.Title}", hover, StringComparison.Ordinal);
        Assert.EndsWith($"Source: {rule.Info.Source}", hover, StringComparison.Ordinal);
    });

    [Fact]
    public void A_comment_that_names_no_rule_says_nothing() => Assert.Null(Editor.HoverAt("G0 X1 (nc-$0allow no-such-rule: why)"));
}
