using NcLanguage.Control.Codes;
using NcLanguage.Syntax.Expressions;

namespace NcLanguage.Control.Tests.Codes;

public class VariableAndSignTableTests
{
    /// <summary>NISTIR 6556 table 2: the numbers that the control reads and writes itself.</summary>
    [Theory]
    [InlineData(5061, "result of a probe move, X")]
    [InlineData(5066, "result of a probe move, C")]
    [InlineData(5161, "reference point of G28, X")]
    [InlineData(5163, "reference point of G28, Z")]
    [InlineData(5181, "reference point of G30, X")]
    [InlineData(5186, "reference point of G30, C")]
    [InlineData(5211, "shift of G92, X")]
    [InlineData(5216, "shift of G92, C")]
    [InlineData(5220, "number of the work offset in force")]
    [InlineData(5221, "datum of work offset 1 (G54), X")]
    [InlineData(5226, "datum of work offset 1 (G54), C")]
    [InlineData(5242, "datum of work offset 2 (G55), Y")]
    [InlineData(5323, "datum of work offset 6 (G59), Z")]
    [InlineData(5341, "datum of work offset 7 (G59.1), X")]
    [InlineData(5386, "datum of work offset 9 (G59.3), C")]
    public void A_number_the_control_uses_itself(int number, string name)
    {
        var row = VariableTable.Find(number);
        Assert.NotNull(row);
        Assert.Equal((name, "NISTIR 6556 table 2"), (row.NameOf(number), row.Source));
    }

    /// <summary>Free numbers, the gaps between the runs of table 2 among them; 1 to 5399 exist (NISTIR 6556 §3.3.2).</summary>
    [Theory]
    [InlineData(34)]
    [InlineData(5060)]
    [InlineData(5067)]
    [InlineData(5219)]
    [InlineData(5227)]
    [InlineData(5240)]
    [InlineData(5387)]
    [InlineData(5399)]
    public void A_free_number(int number) => Assert.Same(VariableTable.All[1], VariableTable.Find(number));

    /// <summary>Common practice: #1 to #33 belong to the call, the rest to all programs.</summary>
    [Theory]
    [InlineData(1, "local variable")]
    [InlineData(33, "local variable")]
    [InlineData(34, "common variable")]
    [InlineData(100, "common variable")]
    public void A_free_number_is_local_or_common(int number, string name) => Assert.Equal(name, VariableTable.Find(number)!.NameOf(number));

    [Theory]
    [InlineData(-1)]
    [InlineData(5400)]
    public void No_such_number(int number) => Assert.Null(VariableTable.Find(number));

    [Fact]
    public void Runs_lie_apart_and_are_explained()
    {
        Assert.Equal((Expression.FirstVariable, 33, 34, Expression.LastVariable), (VariableTable.All[0].First, VariableTable.All[0].Last, VariableTable.All[1].First, VariableTable.All[1].Last));
        Assert.Equal(2, VariableTable.All.Count(row => row.IsFree));
        foreach (var (row, next) in VariableTable.All.Skip(2).Zip(VariableTable.All.Skip(3)))
            Assert.True(row.Last < next.First, $"{row.Text} and {next.Text} meet.");
        Assert.All(VariableTable.All, row =>
        {
            CodeTableTests.AssertSentence(row.Meaning);
            Assert.NotEmpty(row.Name);
            Assert.NotEmpty(row.Source);
        });
        Assert.Equal(["#1 to #33", "#34 to #5399", "#0", "#3000", "#4001 to #4014", "#5220"], VariableTable.All.Where(row => !row.IsByAxis).Select(row => row.Text));
    }

    [Fact]
    public void Work_offsets_are_called_as_in_the_table_of_codes() => Assert.All(VariableTable.All.Where(row => row.Name.Contains("work offset ", StringComparison.Ordinal) && row.IsByAxis), row =>
    {
        var code = CodeTable.All.Single(code => row.Name.EndsWith($"({code.Text})", StringComparison.Ordinal));
        Assert.Equal($"datum of {code.Name} ({code.Text})", row.Name);
    });

    [Fact]
    public void Signs_are_unique_and_explained()
    {
        Assert.Equal(["%", "/", ":", "( )", "(MSG, )", ";", "#", "#<name>", "=", "[ ]"], SignTable.All.Select(row => row.Text));
        Assert.All(SignTable.All, row =>
        {
            Assert.Same(row, SignTable.Find(row.Text));
            CodeTableTests.AssertSentence(row.Meaning);
            Assert.NotEmpty(row.Name);
            Assert.NotEmpty(row.Source);
        });
        Assert.Null(SignTable.Find("&"));
    }
}
