using System.Text;
using NcLanguage.Machine.Loading;

namespace NcLanguage.Machine.Tests.Loading;

/// <summary>The drawing's holes from a table of values: RFC 4180 for fields, quotes and line ends; 1 in = 25.4 mm exactly (1959). The tables are our own.</summary>
public sealed class HoleListFileTests
{
    static string Holes(string text, bool isInch = false)
    {
        var list = HoleListFile.Read(text, isInch);
        Assert.Empty(list.Mistakes);
        return string.Join(" ", list.Holes.Select(hole => FormattableString.Invariant($"{hole.X}/{hole.Y}/{hole.Diameter}/{hole.Depth}/{hole.Thread}")));
    }

    [Theory]
    [InlineData("x,y,diameter,depth,thread\n10,20,5,9,M6\n30,20,5,16,\n", "10/20/5/9/M6 30/20/5/16/")]
    [InlineData("X , Y\r\n10,20\r\n\r\n30,-20", "10/20/// 30/-20///")]
    [InlineData("\uFEFFx;y;Depth\n10,5;20;9,25\n", "10.5/20//9.25/")]
    [InlineData("x\ty\n1,5\t2\n", "1.5/2///")]
    [InlineData("no,y [in],x (mm),remark\n1,2,10,\"a, \"\"b\"\"\nc\"\n2,1,10,d\n", "10/50.8/// 10/25.4///")]
    [InlineData("thread,x,y\n\"M8, left\",1,2\n", "1/2///M8, left")]
    [InlineData("x,y\n1,2\n1,2\n1.0,2.00\n", "1/2///")]
    [InlineData("\uFEFF\r\n \nx;y\n1,5;2\n", "1.5/2///")]
    [InlineData("x,y\n", "")]
    public void A_table_is_read_by_the_names_of_its_columns(string text, string expected) => Assert.Equal(expected, Holes(text));

    [Fact]
    public void Columns_that_are_not_used_are_named_and_so_are_lengths_without_a_unit()
    {
        var list = HoleListFile.Read("x [mm],y [mm],dia,Tiefe,thread\n1,2,5,6,M6\n", isInch: false);
        Assert.Equal("dia Tiefe", string.Join(" ", list.Unused));
        Assert.False(list.HasBareLengths);
        Assert.True(HoleListFile.Read("x [mm],y [mm],depth\n1,2,5\n", isInch: false).HasBareLengths);
    }

    [Fact]
    public void The_unit_asked_for_counts_where_a_column_names_none() => Assert.Equal("25.4/2/12.7//", Holes("x,y (mm),diameter\n1,2,0.5\n", isInch: true));

    [Theory]
    [InlineData("", 1, "empty")]
    [InlineData("x,depth\n1,2\n", 1, "no column y")]
    [InlineData("x,y,x\n1,2,3\n", 1, "two columns x")]
    [InlineData("x [cm],y\n1,2\n", 1, "neither mm nor in")]
    [InlineData("x,y\n1,2\n1,zwei\n", 3, "y is zwei, which is no number")]
    [InlineData("x,y\n1,NaN\n", 2, "y is NaN, which is no number")]
    [InlineData("x,y,depth\n1,2,Infinity\n", 2, "depth is Infinity, which is no number")]
    [InlineData("x,y\n1\n", 2, "y is missing")]
    [InlineData("x,y\n1e5,2\n", 2, "no number")]
    [InlineData("x,y,depth\n1,2,-3\n", 2, "depth is -3, but has to be above 0")]
    [InlineData("x,y\n999999,2\n", 2, "too far away")]
    [InlineData("x,y,thread\n1,2,\"M8\n", 2, "not closed")]
    [InlineData("x,y,diameter\n1,2,5,\n10,5,20,25,6,8\n", 3, "6 values, but the first line names 3 columns; where the comma is the decimal sign")]
    [InlineData("x;y\n1,5;2;3\n", 2, "3 values, but the first line names 2 columns")]
    [InlineData("x,y,note\n1,2,\"a\nb\"\n3,,\n", 4, "y is missing")]
    public void A_mistake_is_told_with_its_line_and_there_are_no_holes(string text, int line, string words)
    {
        var list = HoleListFile.Read(text, isInch: false);
        Assert.Empty(list.Holes);
        var mistake = Assert.Single(list.Mistakes);
        Assert.Equal(line, mistake.Line);
        Assert.Contains(words, mistake.Message, StringComparison.Ordinal);
    }

    static string Merge(string setup, string table)
    {
        var merged = SetupHoles.Merge(Encoding.UTF8.GetBytes(setup), HoleListFile.Read(table, isInch: false).Holes, out var error);
        Assert.Null(error);
        return Encoding.UTF8.GetString(merged!);
    }

    [Theory]
    [InlineData("{ // plate\n  \"stock\": null\n}\n")]
    [InlineData("{}")]
    [InlineData("{ \"holes\": [ { \"x\": 1, \"y\": 2 } /* old */ ], \"clearance\": 3, }")]
    public void A_setup_takes_the_holes_and_stays_a_setup(string setup)
    {
        var merged = Merge(setup, "x,y,diameter,depth,thread\n10,20,6.8,15,\"M8 \"\"left\"\"\"\n30,20,5,,\n");
        var read = SetupFile.Read("x.setup.json", Encoding.UTF8.GetBytes(merged));
        Assert.Empty(read.Problems);
        Assert.Equal([(10.0, 20.0, 6.8, 15, "M8 \"left\""), (30, 20, 5, null, null)], read.Setup.Holes.Select(hole => (hole.X, hole.Y, hole.Diameter!.Value, hole.Depth, hole.Thread)));
        Assert.Equal(setup.Contains("clearance", StringComparison.Ordinal) ? 3 : 2, read.Setup.Clearance);
        Assert.Equal(setup.Contains("// plate", StringComparison.Ordinal), merged.Contains("// plate", StringComparison.Ordinal));
    }

    [Fact]
    public void They_are_written_in_the_files_unit_and_with_its_line_ends()
    {
        var merged = Merge("{\r\n  \"units\": \"inch\",\r\n}\r\n", "x,y\n25.4,12.7\n");
        Assert.Contains("\r\n    { \"x\": 1, \"y\": 0.5 },\r\n", merged, StringComparison.Ordinal);
        Assert.DoesNotContain("\n", merged.Replace("\r\n", "", StringComparison.Ordinal), StringComparison.Ordinal);
    }

    [Theory]
    [InlineData("{ \"stock\": ")]
    [InlineData("[]")]
    [InlineData("{ \"units\": \"cubits\" }")]
    [InlineData("{ \"holes\": [], \"holes\": [] }")]
    public void What_is_no_setup_is_left_alone(string setup)
    {
        Assert.Null(SetupHoles.Merge(Encoding.UTF8.GetBytes(setup), [], out var error));
        Assert.NotNull(error);
    }
}
