using NcLanguage.Editing.Refactorings;
using NcLanguage.Editing.Tests.Support;

namespace NcLanguage.Editing.Tests.Refactorings;

/// <summary>Millimetres and inches: 25.4 mm to the inch, exact by definition (1959).</summary>
public sealed class UnitTests
{
    [Fact]
    public void To_inches() => Assert.Equal(
        "G20 G90 G0 X1. Y0.5\nG4 P500\nG1 Z-0.1 F4.\nG2 X2. Y0.5 I0.5 J0\nG95 F0.01 S100\nG80\nM30\n",
        Rewritten.At(0, "convertUnits", "G21 G90 G0 X25.4 Y12.7\nG4 P500\nG1 Z-2.54 F101.6\nG2 X50.8 Y12.7 I12.7 J0\nG95 F0.254 S100\nG80\nM30\n"));

    [Fact]
    public void To_millimetres() => Assert.Equal(
        "G21 G90 G0 X25.4 Y0 Z25.4\nG99 G83 X19.05 Y19.05 Z-16.51 R2.54 Q3.81 F274.32\nG80\nM30\n",
        Rewritten.At(0, "convertUnits", "G20 G90 G0 X1. Y0 Z1.\nG99 G83 X.75 Y.75 Z-.65 R.1 Q.15 F10.8\nG80\nM30\n"));

    /// <summary>NISTIR 6556 §3.5.5: P of G10 L2 is the number of the coordinate system.</summary>
    [Fact]
    public void The_number_of_a_work_offset_is_no_length() => Assert.Equal(
        "G20 G90 G10 L2 P1 X1. Y0 Z0\nG54 G0 X2.\nM30\n", Rewritten.At(0, "convertUnits", "G21 G90 G10 L2 P1 X25.4 Y0 Z0\nG54 G0 X50.8\nM30\n"));

    [Fact]
    public void Where_no_block_says_the_unit_nothing_is_converted() =>
        Assert.False(Rewritten.IsOffered(new Lines(0, 0, true), "convertUnits", "O5\nG90 G0 X25.4\nM30\n"));

    [Fact]
    public void The_other_pair_of_codes() => Assert.Equal(
        "G70 G90 G0 X1.\nM30\n", Rewritten.At(0, "convertUnits", "G71 G90 G0 X25.4\nM30\n", machine: Editor.Reading("units=G70/G71")));

    [Theory]
    [InlineData("G21\n#1 = 5\nG0 X#1\nM30\n", "Line 3: X#1 hangs on a variable, whose number would not follow.")]
    [InlineData("G21 G90 G0 X1\nG20 X1\nM30\n", "Line 2 is read in the other unit: a program in both cannot be converted.")]
    [InlineData("G21 G90 G0 X1\nM30\nO9\nX5\nM99\n", "Line 4 does not run here, so what its words mean cannot be told.")]
    [InlineData("G21 G90\nG65 P9 A5\nM30\nO9\nG0 X1\nM99\n", "Line 2: whether A5 is a length cannot be told.")]
    [InlineData("G21 G90\nG96 S100 M3\nG1 X5 F100\nM30\n", "Line 2: S is a cutting speed there (G96), in metres or feet per minute by the unit in force.")]
    [InlineData("G21 G90\nG10 L1 P2 Z5\nM30\n", "Line 2: whether P2 is a length cannot be told.")]
    public void What_cannot_be_converted_says_why(string program, string expected) => Assert.Equal(expected, Rewritten.Refused(0, "convertUnits", program));

    [Fact]
    public void A_program_in_another_file_stays_in_its_unit() => Assert.Equal(
        "Line 2 calls a program in another file, which would still be read in millimetres.",
        Rewritten.Refused(0, "convertUnits", "G21 G90 G0 X1\nM98 P9\nM30\n", options: Folder.Of(9, "O9\nX5\nM99\n")));
}
