using System.Text;
using NcLanguage.Control.Codes;
using NcLanguage.Syntax.Expressions;

namespace NcLanguage.Control.Tests.Codes;

public class StatementAndFunctionTableTests
{
    public static TheoryData<string> Functions => [.. FunctionTable.All.Select(row => row.Text)];

    [Fact]
    public void Statements_are_unique_and_explained()
    {
        Assert.Equal(StatementTable.All.Length, StatementTable.All.DistinctBy(row => (row.Keyword, row.BehindO)).Count());
        Assert.All(StatementTable.All, row =>
        {
            Assert.Same(row, StatementTable.Find(row.Keyword.ToLowerInvariant(), row.BehindO));
            Assert.Matches($"^{(row.BehindO ? "On " : "")}.*\\b{row.Keyword}\\b", row.Form);
            CodeTableTests.AssertSentence(row.Meaning);
            Assert.NotEmpty(row.Name);
            Assert.NotEmpty(row.Source);
        });
        Assert.Null(StatementTable.Find("GOTO", behindO: true));
        Assert.Null(StatementTable.Find("SUB", behindO: false));
        Assert.Null(StatementTable.Find("", behindO: false));
    }

    [Fact]
    public void Every_statement_of_the_language_has_a_row() => Assert.Equal(
        ["IF", "THEN", "GOTO", "WHILE", "DO", "END"], StatementTable.All.Where(row => !row.BehindO).Select(row => row.Keyword));

    // NISTIR 6556 §3.3.2: the functions and operators; comparisons are common practice.
    [Fact]
    public void Every_function_and_operator_has_a_row()
    {
        const string Published = "ABS ACOS ASIN ATAN COS EXP FIX FUP LN ROUND SIN SQRT TAN ** * / MOD + - AND OR XOR";
        const string Practice = "EQ NE GT GE LT LE";
        Assert.Equal($"{Published} {Practice}".Split(' '), FunctionTable.All.Select(row => row.Text));
        Assert.Equal(Practice.Split(' '), FunctionTable.All.Where(row => row.Source == "common practice").Select(row => row.Text));
    }

    [Theory]
    [MemberData(nameof(Functions))]
    public void A_function_is_explained_and_its_example_is_true(string text)
    {
        var row = FunctionTable.Find(text);
        Assert.NotNull(row);
        Assert.Same(row, FunctionTable.Find(text.ToLowerInvariant()));
        CodeTableTests.AssertSentence(row.Meaning);
        Assert.NotEmpty(row.Name);
        Assert.Contains(text, row.Example, StringComparison.Ordinal);

        var variables = new UnknownVariables();
        var result = Expression.Read(Encoding.UTF8.GetBytes(row.Example), 0, ref variables);
        Assert.Equal(ExpressionError.None, result.Error);
        Assert.Equal(row.ExampleValue, result.Value, 12);
    }

    /// <summary>For every two operators, [a op1 b op2 c] groups as the ranks in the table say.</summary>
    [Fact]
    public void Operators_rank_as_the_table_says()
    {
        double[] values = [0, 1, 2, 3, 5];
        var operators = FunctionTable.All.Where(row => row.IsOperator).ToList();
        var alike = new List<string>();
        foreach (var first in operators)
        {
            foreach (var second in operators)
            {
                var told = false;
                foreach (var (a, b, c) in values.SelectMany(a => values.SelectMany(b => values.Select(c => (a, b, c)))))
                {
                    var plain = Value($"[{a} {first.Text} {b} {second.Text} {c}]");
                    var left = Value($"[[{a} {first.Text} {b}] {second.Text} {c}]");
                    var right = Value($"[{a} {first.Text} [{b} {second.Text} {c}]]");
                    Assert.Equal(first.Rank >= second.Rank ? left : right, plain);
                    told |= !left.Equals(right);
                }

                if (!told)
                    alike.Add($"{first.Text} {second.Text}");
            }
        }

        // Where the grouping makes no difference, the test above could not have failed.
        Assert.Equal(["* *", "+ +", "+ -", "AND AND", "OR **", "OR OR", "XOR XOR"], alike);
    }

    static double Value(string text)
    {
        var variables = new UnknownVariables();
        return Expression.Read(Encoding.UTF8.GetBytes(text), 0, ref variables).Value;
    }
}
