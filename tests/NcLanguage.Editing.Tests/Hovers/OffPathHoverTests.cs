using NcLanguage.Editing.Tests.Support;

namespace NcLanguage.Editing.Tests.Hovers;

/// <summary>Under radius compensation a hover tells the place of the tool's centre beside the programmed one. Tool 4 of the setup has 10 mm.</summary>
public sealed class OffPathHoverTests
{
    const string Head = "G21 G90 G17 G54 G40\nT4 M6\nG43 H4\nS1500 M3 F120\nG0 X-20 Y-20 Z50\nG1 Z-2\n";

    [Theory]
    [InlineData("G41 D4 X0 Y-10\n$0N1 Y50\nX80", "The tool's centre ends at X-5 Y50, 5 mm to the left of the path; programmed is X0 Y50.")]
    [InlineData("G42 D4 X0 Y-20\n$0N1 X40\nY80", "The tool's centre ends at X40 Y-25, 5 mm to the right of the path; programmed is X40 Y-20.")]
    [InlineData("G41 D4 X0 Y-10\nY50\n$0N1 G40", "Programmed is X0 Y50: the next move in X or Y takes the tool's centre back onto the path.")]
    [InlineData("G41 D4 X0 Y-10\n$0N1 Y50", "G41 by 5 mm")]
    public void A_block_off_the_path(string blocks, string expected) => Assert.Contains(expected, Editor.Markdown(Head + blocks, Editor.PlateSetup), StringComparison.Ordinal);

    [Theory]
    [InlineData("$0N1 X0 Y-10")]
    [InlineData("G41 D4 X0 Y-10\nY50\n$0N1 G40 X-20")]
    [InlineData("G41 D0 X0 Y-10\n$0N1 Y50")]
    public void Nothing_on_the_path(string blocks) => Assert.DoesNotContain("rogrammed is", Editor.Markdown(Head + blocks, Editor.PlateSetup), StringComparison.Ordinal);
}
