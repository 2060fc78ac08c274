using NcLanguage.Editing.Tests.Support;

namespace NcLanguage.Editing.Tests.Hovers;

/// <summary>Each part of the state in force stands at the line that set it. Programs and their lines are our own; what G52, G92, G51, G51.1, G68, G16 and M29
/// leave in force is NISTIR 6556 §3.5.18 and common practice.</summary>
public sealed class InForceTests
{
    static string Hover(string blocks) => Editor.Markdown("G21 G90 G17 G54\nG0 X10 Y10 Z5\n" + blocks + "\n$0N9 G0 X20");

    [Theory]
    [InlineData("G52 X5", "- line 3: G52 shift X5")]
    [InlineData("G52 X5\nG52 Y-2", "- line 4: G52 shift X5 Y-2")]
    [InlineData("G92 X0 Z5", "- line 3: G92 shift X10")] // where 10 stood now is 0; Z keeps its number
    [InlineData("G92 X0\nG92.2\nG92.3", "- line 5: G92 shift X10")]
    [InlineData("G92 X0\nG52 Y3", "- line 3: G92 shift X10\n- line 4: G52 shift Y3")]
    [InlineData("G51 X0 Y0 Z0 P2\nG68 X0 Y0 R30\nG16", "- line 3: G51 scaled by 2 about X0 Y0 Z0\n- line 4: G68 turned by 30° about X0 Y0\n- line 5: G16 polar coordinates")]
    [InlineData("G51.1 X0\nG51.1 Y-5", "- line 4: G51.1 mirrored about X0 Y-5")]
    [InlineData("M3 S500\nM29 S400", "- line 3: M3\n- line 4: M29 rigid tapping, S400")]
    public void Each_part_stands_at_the_line_that_set_it(string blocks, string expected) =>
        Assert.Contains(expected, Hover(blocks), StringComparison.Ordinal);

    [Theory]
    [InlineData("G52 X5\nG52 X0")]
    [InlineData("G92 X0\nG92.1")]
    [InlineData("G0 X15")]
    public void A_shift_taken_back_is_not_in_force(string blocks) => Assert.DoesNotContain("shift", Hover(blocks), StringComparison.Ordinal);
}
