using NcLanguage.Checks.Analysis;
using NcLanguage.Machine.Setups;

namespace NcLanguage.Checks.Tests.Clearance.Retract;

public class HoleTableTests
{
    static HoleTable Table(string blocks, Setup setup) => HoleTable.Of(HopJob.Analyse(HopJob.Program(blocks), setup).Main);

    [Fact]
    public void Least_return_is_what_the_next_traverse_needs()
    {
        // By hand: over the middle clamp 25 + 2; none in the way: the R level; last of its run: not known.
        var table = Table("G99 G81 X10 Y20 Z-5 R2\nX20\nX50\nG80 G0 X60\nG81 X60 Z-5 R3\nX65", HopJob.Setup(HopJob.Middle));
        Assert.Equal([2, 27, double.NaN, 3, double.NaN], table.Select(row => row.LeastReturn));
        Assert.Equal([1, 2, 3, 4, 5], table.Select(row => row.Number));
        Assert.Equal([6, 7, 8, 10, 11], table.Select(row => row.Line));
        Assert.Equal((2, 1), table.At(8));
        Assert.Equal((3, 0), table.At(9));
        Assert.Equal((0, 3), table.RunOf(1));
        Assert.Equal((3, 5), table.RunOf(4));
    }

    [Fact]
    public void Least_return_is_not_known_without_obstacles_or_without_the_tool_s_size()
    {
        Assert.All(Table("G99 G81 X10 Y20 Z-5 R2\nX20", HopJob.Setup()), row => Assert.True(double.IsNaN(row.LeastReturn)));
        // An empty list says that nothing is in the way.
        Assert.Equal(2, Table("G99 G81 X10 Y20 Z-5 R2\nX20", HopJob.Setup() with { ObstaclesAreListed = true })[0].LeastReturn);
        Assert.All(Table("G99 G81 X10 Y20 Z-5 R2\nX20", HopJob.Setup(HopJob.Middle) with { Tools = [] }), row => Assert.True(double.IsNaN(row.LeastReturn)));
        Assert.Equal(27, Table("G99 G81 X10 Y20 Z-5 R2\nX20", HopJob.Setup() with { ClampHeight = 25 })[0].LeastReturn);
    }

    [Fact]
    public void A_block_with_repeats_drills_several()
    {
        var table = Table("G99\nG91 G81 X10 Z-7 R-38 L3\nX5", HopJob.Setup(HopJob.Middle));
        Assert.Equal((0, 3), table.At(7));
        Assert.Equal([20, 30, 40, 45], table.Select(row => row.Hole.X));
    }

    [Fact]
    public void Lines_are_found_across_many_parts_of_a_long_text()
    {
        var blocks = "G99 G81 X1 Y20 Z-5 R2\n" + string.Join("\n", Enumerable.Range(2, 999).Select(x => $"X{x}"));
        var table = Table(blocks, HopJob.Setup(HopJob.Middle));
        Assert.Equal(1000, table.Count);
        Assert.Equal((0, 1000), table.RunOf(500));
        for (var i = 0; i < 1000; i += 37)
        {
            Assert.Equal(HopJob.FirstBlock + i, table[i].Line);
            Assert.Equal((i, 1), table.At(HopJob.FirstBlock + i));
            Assert.Equal(i + 1, table[i].Hole.X);
        }
    }
}
