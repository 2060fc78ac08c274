using NcLanguage.Editing.Refactorings;
using NcLanguage.Editing.Tests.Support;

namespace NcLanguage.Editing.Tests.Refactorings;

/// <summary>Subprograms written out and lifted (M98 and M99: common practice).</summary>
public sealed class SubprogramTests
{
    const string Caller = "%\nO1\nN10 G90 G0 X0 Y0\nN20 M98 P7 L2\nN30 G90 G0 X50\nN40 M98 P7 (again)\nM30\n\nO7 (ROUND)\nN1 G91 G1 X5 F100 (there)\nN2 Y5\n\nX-5\nG90 M99\n%\n";

    [Fact]
    public void A_call_is_written_out_as_often_as_it_is_made() => Assert.Equal(
        Caller.Replace("N20 M98 P7 L2\n", "N20 G91 G1 X5 F100 (there)\nY5\n\nX-5\nG90\nG91 G1 X5 F100 (there)\nY5\n\nX-5\nG90\n", StringComparison.Ordinal),
        Rewritten.At(3, "writeOutCall", Caller));

    [Fact]
    public void A_program_of_another_file_too() => Assert.Equal(
        "G90 G0 X0\nX5\nX9\nM30\n", Rewritten.At(1, "writeOutCall", "G90 G0 X0\nM98 P9\nM30\n", options: Folder.Of(9, "%\nO9 (POSTS)\nX5\nX9\nM99\n%\n")));

    /// <summary>Times and number in one word (common practice, from memory): three times O1000. A program of the whole number comes first.</summary>
    [Theory]
    [InlineData("G91 G0 X0\nM98 P31000\nM30\nO1000\nX5\nM99\n", "G91 G0 X0\nX5\nX5\nX5\nM30\nO1000\nX5\nM99\n")]
    [InlineData("G91 G0 X0\nM98 P31000\nM30\nO1000\nX5\nM99\nO31000\nY5\nM99\n", "G91 G0 X0\nY5\nM30\nO1000\nX5\nM99\nO31000\nY5\nM99\n")]
    public void A_call_with_its_times_before_the_number_is_written_out(string program, string written) => Assert.Equal(written, Rewritten.At(1, "writeOutCall", program));

    [Theory]
    [InlineData("G0 X0\nM98 P9\nM30\n", "O9 stands neither in this file nor in one beside it.")]
    [InlineData("G0 X0\nM98 P9\nM30\nO9\nGOTO 5\nN5 X1\nM99\n", "O9 cannot be written out: line 5 jumps to a block number.")]
    [InlineData("G0 X0\nM98 P9 L50\nM30\nO9\nX1\nM99\n", "O9 is called 50 times: written out more than 20 times nobody reads it.")]
    public void What_cannot_be_written_out_says_why(string program, string expected) => Assert.Equal(expected, Rewritten.Refused(1, "writeOutCall", program));

    [Fact]
    public void A_block_that_does_more_than_call_is_not_offered() => Assert.False(Rewritten.IsOffered(Lines.At(0), "writeOutCall", "G0 X5 M98 P9\nM30\n"));

    const string Twice = "%\nO3100 (PLATE)\nN10 G90 G0 X0 Y0 Z5\nN20 G1 Z-1 F100\nN30 X10\nN40 Y10\nN50 G0 Z5\nN60 X30 Y0\nN70 G1 Z-1 F100\nN80 X10\nN90 Y10\nN100 G0 Z5\nM30\n%\n";

    [Fact]
    public void What_stands_twice_is_lifted() => Assert.Equal(
        "%\nO3100 (PLATE)\nN10 G90 G0 X0 Y0 Z5\nN20 M98 P3101\nN60 X30 Y0\nN70 M98 P3101\nM30\n\nO3101 (REPEATED BLOCKS)\nG1 Z-1 F100\nX10\nY10\nG0 Z5\nM99\n%\n",
        Rewritten.At(0, "liftBlocks", Twice));

    [Fact]
    public void The_lines_marked_are_lifted_wherever_they_stand() => Assert.Equal(
        "%\nO3100 (PLATE)\nN10 G90 G0 X0 Y0 Z5\nN20 G1 Z-1 F100\nN30 M98 P3101\nN60 X30 Y0\nN70 G1 Z-1 F100\nN80 M98 P3101\nM30\n\nO3101 (REPEATED BLOCKS)\nX10\nY10\nG0 Z5\nM99\n%\n",
        Rewritten.In(new Lines(9, 11, false), "liftBlocks", Twice));

    [Fact]
    public void Lifted_and_written_out_again_it_is_what_it_was()
    {
        var lifted = Rewritten.At(0, "liftBlocks", Twice);
        var back = Rewritten.At(8, "writeOutCall", Rewritten.At(3, "writeOutCall", lifted));
        Assert.StartsWith("%\nO3100 (PLATE)\nN10 G90 G0 X0 Y0 Z5\nN20 G1 Z-1 F100\nX10\nY10\nG0 Z5\nN60 X30 Y0\n", back, StringComparison.Ordinal);
    }

    [Fact]
    public void A_file_without_marks_gets_it_at_its_end() => Assert.Equal(
        "G90 G0 X0\nM98 P1001\nX9\nM98 P1001\nM30\n\nO1001 (REPEATED BLOCKS)\nX1\nX2\nX3\nM99", Rewritten.At(0, "liftBlocks", "G90 G0 X0\nX1\nX2\nX3\nX9\nX1\nX2\nX3\nM30"));

    [Fact]
    public void Two_lines_or_lines_that_steer_are_not_lifted()
    {
        Assert.False(Rewritten.IsOffered(Lines.At(0), "liftBlocks", "G0 X1\nX2\nX9\nX2\nX9\nX5\nM30\n"));
        Assert.False(Rewritten.IsOffered(Lines.At(0), "liftBlocks", "G0 X1\nX2\nGOTO 5\nN5 X3\nX1\nX2\nGOTO 6\nN6 X3\nM30\n"));
    }
}
