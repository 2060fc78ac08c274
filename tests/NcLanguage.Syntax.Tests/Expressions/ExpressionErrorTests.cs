using System.Text;
using CsCheck;
using NcLanguage.Syntax.Expressions;

namespace NcLanguage.Syntax.Tests.Expressions;

public class ExpressionErrorTests
{
    /// <summary>The mark ^ stands before the place of the error, | where reading goes on.</summary>
    [Theory]
    [InlineData(ExpressionError.UnclosedBracket, "^[1+2|")]
    [InlineData(ExpressionError.UnclosedBracket, "^[|")]
    [InlineData(ExpressionError.UnclosedBracket, "^[1 |;rest")]
    [InlineData(ExpressionError.UnclosedBracket, "^[1+[2*3]|")]
    [InlineData(ExpressionError.UnclosedBracket, "^[1+COS[3] Y5|")]
    [InlineData(ExpressionError.UnclosedBracket, "^[#1 LE 120 THEN #2=25|")]
    [InlineData(ExpressionError.MissingOperand, "|^")]
    [InlineData(ExpressionError.MissingOperand, "|^Y5")]
    [InlineData(ExpressionError.MissingOperand, "|^Y[5]")]
    [InlineData(ExpressionError.MissingOperand, "|^YZ5")]
    [InlineData(ExpressionError.MissingOperand, "|^LN5")] // X has no number; L and N are the next words.
    [InlineData(ExpressionError.MissingOperand, "|^(comment)")]
    [InlineData(ExpressionError.MissingOperand, "|^;comment")]
    [InlineData(ExpressionError.MissingOperand, "|^-")]
    [InlineData(ExpressionError.MissingOperand, "|-^Y5")]
    [InlineData(ExpressionError.MissingOperand, "#|^")]
    [InlineData(ExpressionError.MissingOperand, "#|^Y5")]
    [InlineData(ExpressionError.MissingOperand, "[^]| Y5")]
    [InlineData(ExpressionError.MissingOperand, "[1+^]| Y5")]
    [InlineData(ExpressionError.MissingOperand, "[1+^*2]| Y5")]
    [InlineData(ExpressionError.MissingOperand, "[1+^--2]| Y5")]
    [InlineData(ExpressionError.MissingOperand, "[1+[2*^]]| Y5")]
    [InlineData(ExpressionError.MissingOperand, "[1+^Y]| Z5")]
    [InlineData(ExpressionError.MissingOperator, "[1 ^#2]| Y5")]
    [InlineData(ExpressionError.MissingOperator, "[1 ^[2]]| Y5")]
    [InlineData(ExpressionError.MissingOperator, "[1 ^Y2]| Z5")]
    [InlineData(ExpressionError.UnexpectedCharacter, "[2*3 ^= 6]|")]
    [InlineData(ExpressionError.UnexpectedCharacter, "[2 |^(2)]")]
    [InlineData(ExpressionError.NumberMalformed, "^1.2.3|")]
    [InlineData(ExpressionError.NumberMalformed, "[^1.2.3+1]|")]
    [InlineData(ExpressionError.UnknownFunction, "^asim[0.5]|")] // NISTIR 6556 table 10.
    [InlineData(ExpressionError.UnknownFunction, "[1+^FOO[2]]| Y5")]
    [InlineData(ExpressionError.UnknownFunction, "[1+^FOO]| Y5")]
    [InlineData(ExpressionError.FunctionWithoutBracket, "[1+^SIN 30]| Y5")]
    [InlineData(ExpressionError.AtanWithoutSecond, "^ATAN[1]| Y5")]
    [InlineData(ExpressionError.AtanWithoutSecond, "[^ATAN[1]]|")]
    [InlineData(ExpressionError.AtanWithoutSecond, "^ATAN[1]|/2")]
    [InlineData(ExpressionError.DivisionByZero, "[1^/0]|")]
    [InlineData(ExpressionError.DivisionByZero, "[1 ^MOD 0]|")]
    [InlineData(ExpressionError.DivisionByZero, "[0 ^** -1]|")]
    [InlineData(ExpressionError.DivisionByZero, "[#1 ^/ [2-2]]| Y5")]
    [InlineData(ExpressionError.OutsideDomain, "^SQRT[-1]| Y5")]
    [InlineData(ExpressionError.OutsideDomain, "ATAN[^SQRT[-1]]/[2]| Y5")]
    [InlineData(ExpressionError.OutsideDomain, "^ASIN[1.001]|")]
    [InlineData(ExpressionError.OutsideDomain, "^ACOS[-1.001]|")]
    [InlineData(ExpressionError.OutsideDomain, "^LN[0]|")]
    [InlineData(ExpressionError.OutsideDomain, "^LN[-2]|")]
    [InlineData(ExpressionError.OutsideDomain, "^TAN[90]|")]
    [InlineData(ExpressionError.OutsideDomain, "^TAN[-270]|")]
    [InlineData(ExpressionError.OutsideDomain, "[[-2]^**0.5]|")]
    [InlineData(ExpressionError.ResultTooLarge, "^EXP[1000]|")]
    [InlineData(ExpressionError.ResultTooLarge, "[10^**400]|")]
    [InlineData(ExpressionError.VariableNotWhole, "^#1.5|")]
    [InlineData(ExpressionError.VariableNotWhole, "^#1.0002|")]
    [InlineData(ExpressionError.VariableOutOfRange, "^#0|")]
    [InlineData(ExpressionError.VariableOutOfRange, "^#-1|")]
    [InlineData(ExpressionError.VariableOutOfRange, "^#5400| Y5")]
    [InlineData(ExpressionError.VariableOutOfRange, "^#99999999999|")]
    [InlineData(ExpressionError.VariableNameMalformed, "^#<>|")]
    [InlineData(ExpressionError.VariableNameMalformed, "^#<|edge")]
    public void Names_the_error_and_its_place(ExpressionError error, string marked)
    {
        var text = marked.Replace("^", "", StringComparison.Ordinal).Replace("|", "", StringComparison.Ordinal);
        var result = Read(text);

        Assert.Equal(error, result.Error);
        Assert.Equal(marked, Mark(text, result));
        Assert.False(result.IsKnown);
    }

    [Theory]
    [InlineData("#5399")]
    [InlineData("#1")]
    [InlineData("[1/#7]")]
    [InlineData("[#7 MOD 3]")]
    [InlineData("SQRT[#7]")]
    [InlineData("[#7**0]")]
    [InlineData("[1**#7]")]
    [InlineData("[#7 EQ #7]")]
    [InlineData("[#7 AND 1]")]
    [InlineData("[#7 OR 0]")]
    [InlineData("ATAN[#7]/[1]")]
    [InlineData("##7")]
    [InlineData("[0*#7]")]
    public void What_is_not_known_is_no_error(string text)
    {
        var result = Read(text);

        Assert.Equal(ExpressionError.None, result.Error);
        Assert.False(result.IsKnown);
        Assert.Equal(text.Length, result.End);
        Assert.True(result.ReadsVariables);
    }

    [Theory]
    [InlineData("[0 AND #7]", 0)]
    [InlineData("[#7 AND 0]", 0)]
    [InlineData("[2 OR #7]", 1)]
    [InlineData("[#7 OR -1]", 1)]
    public void One_known_side_settles_a_logical_operation(string text, double value) => Assert.Equal(value, Read(text).Value);

    // A sign binds tighter than any operator, as the sign of a number does in NISTIR 6556 §3.3.2.
    [Theory]
    [InlineData("-[2]", -2)]
    [InlineData("-SIN[30]", -0.5)]
    [InlineData("+ABS[-3]", 3)]
    [InlineData("[-2**2]", 4)]
    [InlineData("[-[2]**2]", 4)]
    [InlineData("[1--[2]]", 3)]
    [InlineData("[2**3**2]", 64)] // Equal ranks from left to right.
    [InlineData("[-7 MOD 4]", 1)]
    [InlineData("[7 MOD -4]", 3)]
    [InlineData("[1+2 GT 2]", 1)]
    [InlineData("[1 LT 2 EQ 1]", 1)]
    [InlineData("ATAN[-1]/[-1]", -135)]
    [InlineData("COS[90]", 0)]
    [InlineData("SIN[36000000180]", 0)]
    [InlineData("[ 1 2 m o d 5 ]", 2)]
    [InlineData("s Q r T [ 1 6 ]", 4)]
    [InlineData("[2 * * 3]", 8)]
    public void Goes_by_the_order_of_the_trade(string text, double value)
    {
        var result = Read(text);

        Assert.Equal(ExpressionError.None, result.Error);
        Assert.Equal(value, result.Value, 12);
        Assert.Equal(text.Length, result.End);
    }

    [Theory]
    [InlineData("[", "1", "]")]
    [InlineData("ABS[", "1", "]")]
    [InlineData("#", "1", "")]
    [InlineData("#[", "1", "]")]
    [InlineData("-[", "1", "]")]
    public void Is_limited_in_depth(string open, string core, string close)
    {
        var depth = open == "#[" ? Expression.DeepestNesting / 2 : Expression.DeepestNesting;
        Assert.Equal(ExpressionError.None, Read(Nest(depth)).Error);
        foreach (var tooDeep in (int[])[depth + 1, 100_000])
        {
            var result = Read(Nest(tooDeep));
            Assert.Equal(ExpressionError.TooDeep, result.Error);
            Assert.True(close.Length == 0 || result.End == Nest(tooDeep).Length);
        }

        string Nest(int levels) => string.Concat(Enumerable.Repeat(open, levels)) + core + string.Concat(Enumerable.Repeat(close, levels));
    }

    [Fact]
    public void A_name_may_be_as_long_as_the_limit_and_no_longer()
    {
        Assert.Equal(ExpressionError.None, Read($"#<{new string('a', Expression.LongestName)}>").Error);
        Assert.Equal(ExpressionError.VariableNameMalformed, Read($"#<{new string('a', Expression.LongestName + 1)}>").Error);
    }

    /// <summary>Any bytes, any start: no exception, an end and a place within the line, and an error leaves no value.</summary>
    [Fact]
    public void Never_throws()
    {
        string[] pieces = ["[", "]", "#", "<", ">", "/", "*", "+", "-", ".", "7", "0", " ", "SIN", "ATAN", "MOD", "OR", "(", ";", "X", "LN["];
        Gen.Select(Gen.OneOf<byte[]>(Gen.OneOf(pieces).Array[0, 30].Select(p => Encoding.UTF8.GetBytes(string.Concat(p))), Gen.Byte.Array[0, 60]), Gen.Int[0, 70])
            .Sample((line, start) =>
            {
                var variables = new UnknownVariables();
                var result = Expression.Read(line, start, ref variables);
                Assert.InRange(result.End, Math.Min(start, line.Length), Math.Max(start, line.Length));
                if (result.Error == ExpressionError.None)
                {
                    Assert.Equal(-1, result.ErrorAt);
                    Assert.True(result.End > start);
                    Assert.True(result.IsKnown || result.ReadsVariables);
                }
                else
                {
                    Assert.InRange(result.ErrorAt, Math.Min(start, line.Length), Math.Max(start, line.Length));
                    Assert.False(result.IsKnown);
                }
            }, iter: 100_000);
    }

    [Fact]
    public void Allocates_nothing()
    {
        var line = "[SQRT[#1 ** 2 + 3.5] / ATAN[1]/[#<edge>]] MOD"u8.ToArray();
        var variables = new UnknownVariables();
        Expression.Read(line, 0, ref variables);
        var before = GC.GetAllocatedBytesForCurrentThread();
        for (var i = 0; i < 1000; i++)
            Expression.Read(line, 0, ref variables);
        Assert.Equal(0, GC.GetAllocatedBytesForCurrentThread() - before);
    }

    static ExpressionResult Read(string text)
    {
        var variables = new UnknownVariables();
        return Expression.Read(Encoding.UTF8.GetBytes(text), 0, ref variables);
    }

    static string Mark(string text, ExpressionResult result) => result.ErrorAt < result.End
        ? text.Insert(result.End, "|").Insert(result.ErrorAt, "^")
        : text.Insert(result.ErrorAt, "^").Insert(result.End, "|");
}
