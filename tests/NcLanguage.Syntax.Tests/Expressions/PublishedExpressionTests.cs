using System.Text;
using NcLanguage.Syntax.Expressions;

namespace NcLanguage.Syntax.Tests.Expressions;

/// <summary>The expressions that NISTIR 6556 works out, printed there to four decimals.</summary>
public class PublishedExpressionTests
{
    // NISTIR 6556 appendix C.2.
    [Theory]
    [InlineData("[1 + 2]", 3)]
    [InlineData("[1 - 2]", -1)]
    [InlineData("[1 --3]", 4)]
    [InlineData("[2/5]", 0.4)]
    [InlineData("[3.0 * 5]", 15)]
    [InlineData("[0 OR 0]", 0)]
    [InlineData("[0 OR 1]", 1)]
    [InlineData("[2 or 2]", 1)]
    [InlineData("[0 AND 0]", 0)]
    [InlineData("[0 AND 1]", 0)]
    [InlineData("[2 and 2]", 1)]
    [InlineData("[0 XOR 0]", 0)]
    [InlineData("[0 XOR 1]", 1)]
    [InlineData("[2 xor 2]", 0)]
    [InlineData("[15 MOD 4.0]", 3)]
    [InlineData("[1 + 2 * 3 - 4 / 5]", 6.2)]
    [InlineData("sin[30]", 0.5)]
    [InlineData("cos[0.0]", 1)]
    [InlineData("tan[60.0]", 1.7321)]
    [InlineData("sqrt[3]", 1.7321)]
    [InlineData("asin[1.0]", 90)]
    [InlineData("acos[0.707107]", 45)]
    [InlineData("abs[20.0]", 20)]
    [InlineData("abs[-1.23]", 1.23)]
    [InlineData("round[-0.499]", 0)]
    [InlineData("round[-0.5001]", -1)]
    [InlineData("round[2.444]", 2)]
    [InlineData("round[9.975]", 10)]
    [InlineData("fix[-0.499]", -1)]
    [InlineData("fix[-0.5001]", -1)]
    [InlineData("fix[2.444]", 2)]
    [InlineData("fix[9.975]", 9)]
    [InlineData("fup[-0.499]", 0)]
    [InlineData("fup[-0.5001]", 0)]
    [InlineData("fup[2.444]", 3)]
    [InlineData("fup[9.975]", 10)]
    [InlineData("ln[10.0]", 2.3026)]
    [InlineData("[2 ** 3.0]", 8)]
    [InlineData("sqrt[3**2 + 4**2]", 5)]
    // §3.3.2.
    [InlineData("[2.0 / 3 * 1.5 - 5.5 / 11.0]", 0.5)]
    [InlineData("fix[-2.8]", -3)]
    [InlineData("fup[-2.8]", -2)]
    // Table 10.
    [InlineData("[6-[4*3/2]]", 0)]
    [InlineData("asin[0.5]", 30)]
    // §3.3.
    [InlineData("+0. 12 34", 0.1234)]
    public void Has_the_value_printed(string text, double printed)
    {
        var variables = new UnknownVariables();
        var result = Expression.Read(Encoding.UTF8.GetBytes(text), 0, ref variables);

        Assert.Equal(ExpressionError.None, result.Error);
        Assert.InRange(result.Value, printed - 0.0001, printed + 0.0001);
        Assert.Equal(text.Length, result.End);
        Assert.False(result.ReadsVariables);
    }

    // Appendix C.2 as well: the argument is itself rounded to five figures, so the result agrees with the round number to no more.
    [Theory]
    [InlineData("atan[1.7321]/[1.0]", 60)]
    [InlineData("exp[2.3026]", 10)]
    public void Has_the_value_that_a_rounded_argument_stands_for(string text, double exact)
    {
        var variables = new UnknownVariables();
        var result = Expression.Read(Encoding.UTF8.GetBytes(text), 0, ref variables);

        Assert.Equal(1, result.Value / exact, 2e-5);
    }

    // NISTIR 6556 appendix C.2 prints no value for its last expression; 2.000545 is worked out by hand.
    [Fact]
    public void Works_out_the_hard_one()
    {
        const string Text = "[2 + asin[1/2.1+-0.345] / [atan[fix[4.4] * 2.1 * sqrt[16.8]] /[-18]]**2]";
        var variables = new UnknownVariables();
        var result = Expression.Read(Encoding.UTF8.GetBytes(Text), 0, ref variables);

        Assert.Equal(2.000545, result.Value, 6);
        Assert.Equal(Text.Length, result.End);
    }

    // NISTIR 6556 §3.3.2: #1+2 is [#1]+2, #[1+2] is #3, ##2 is the variable that #2 names. Appendix C.2: ##1=0.375 with #1=2, x #2.
    [Theory]
    [InlineData("#2", 0.375, 2)]
    [InlineData("##1", 0.375, 3)]
    [InlineData("#[1+2]", 7, 6)]
    [InlineData("#1+2", 2, 2)]
    [InlineData("[#1+2]", 4, 6)]
    [InlineData("[ # 1 + # 3 ]", 9, 13)]
    [InlineData("#1.00009", 2, 8)] // §3.3.2.1: within 0.0001 of a whole number.
    [InlineData("#<Edge Length>", 12, 14)]
    [InlineData("#4", double.NaN, 2)]
    [InlineData("#<other>", double.NaN, 8)]
    public void Reads_variables(string text, double expected, int end)
    {
        var variables = new FewVariables();
        var result = Expression.Read(Encoding.UTF8.GetBytes(text), 0, ref variables);

        Assert.Equal(ExpressionError.None, result.Error);
        Assert.Equal(expected, result.Value);
        Assert.Equal(end, result.End);
        Assert.True(result.ReadsVariables);
    }

    /// <summary>#1 = 2, #2 = 0.375, #3 = 7, edgelength = 12.</summary>
    readonly struct FewVariables : IVariables
    {
        public double Get(int number) => number switch { 1 => 2, 2 => 0.375, 3 => 7, _ => double.NaN };

        public double Get(scoped ReadOnlySpan<byte> name) => name.SequenceEqual("edgelength"u8) ? 12 : double.NaN;
    }
}
