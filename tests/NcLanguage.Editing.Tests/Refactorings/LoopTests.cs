using NcLanguage.Editing.Refactorings;
using NcLanguage.Editing.Tests.Support;

namespace NcLanguage.Editing.Tests.Refactorings;

/// <summary>Bolt circles and loops. Places on a circle: x = r cos a, y = r sin a, the angle from X counterclockwise.</summary>
public sealed class LoopTests
{
    const string Six = "G21 G90 G0 X70 Y40 Z20\nG99 G81 X70 Y40 Z-5 R2 F100\nX60 Y57.321\nX40\nX30 Y40\nX40 Y22.679\nX60\nG80\nM30\n";
    const string SixInALoop =
        "G21 G90 G0 X70 Y40 Z20\nG99 G81 X70 Y40 Z-5 R2 F100\n#101 = 1\nWHILE [#101 LT 6] DO 1\nX[50 + 20 * COS[#101 * 60]] Y[40 + 20 * SIN[#101 * 60]]\n#101 = #101 + 1\nEND 1\nG80\nM30\n";

    [Fact]
    public void A_bolt_circle_becomes_a_loop() => Assert.Equal(SixInALoop, Rewritten.At(3, "holesToLoop", Six));

    [Fact]
    public void And_back() => Assert.Equal(
        "G21 G90 G0 X70 Y40 Z20\nG99 G81 X70 Y40 Z-5 R2 F100\n#101 = 1\nX60 Y57.3205\nX40 Y57.3205\nX30 Y40\nX40 Y22.6795\nX60 Y22.6795\nG80\nM30\n",
        Rewritten.At(4, "writeOutLoop", SixInALoop));

    [Fact]
    public void Clockwise_in_sevenths_from_straight_up()
    {
        var places = Enumerable.Range(1, 6).Select(i => (X: 30 * Math.Cos((90 - i * 360 / 7.0) * Math.PI / 180), Y: 30 * Math.Sin((90 - i * 360 / 7.0) * Math.PI / 180)));
        var program = "G21 G90 G0 X0 Y30 Z20\nG99 G81 X0 Y30 Z-5 R2 F100\n" + string.Concat(places.Select(place => FormattableString.Invariant($"X{place.X:0.###} Y{place.Y:0.###}\n"))) + "G80\nM30\n";
        Assert.Contains("X[30 * COS[90 - #101 * 360 / 7]] Y[30 * SIN[90 - #101 * 360 / 7]]\n", Rewritten.At(2, "holesToLoop", program), StringComparison.Ordinal);
    }

    [Fact]
    public void A_variable_and_a_loop_number_that_are_free() => Assert.Contains(
        "#102 = 1\nWHILE [#102 LT 6] DO 2\n",
        Rewritten.At(5, "holesToLoop", "#101 = 0\nWHILE [#101 LT 1] DO 1\n#101 = #101 + 1\nEND 1\n" + Six), StringComparison.Ordinal);

    [Fact]
    public void Holes_beside_the_circle_are_no_bolt_circle() =>
        Assert.False(Rewritten.IsOffered(Lines.At(1), "holesToLoop", Six.Replace("Y57.321", "Y57.4", StringComparison.Ordinal)));

    [Fact]
    public void A_loop_is_not_written_as_a_loop()
    {
        Assert.True(Rewritten.IsOffered(Lines.At(3), "holesToLoop", Six));
        for (var line = 0; line < 9; line++)
            Assert.False(Rewritten.IsOffered(Lines.At(line), "holesToLoop", SixInALoop));
    }

    [Fact]
    public void A_hole_that_says_more_stays_written_out() =>
        Assert.Equal("Line 4 says more than where its hole lies.", Rewritten.Refused(1, "holesToLoop", Six.Replace("X40\n", "X40 (third)\n", StringComparison.Ordinal)));

    [Fact]
    public void Inner_loops_and_conditions_are_carried_out() => Assert.Equal(
        "G21 G90 G0 X0 Y0\n#1 = 0\nG0 X0 (column)\nY0\nY5\nG0 X10\nY0\nY5\nM30\n",
        Rewritten.At(2, "writeOutLoop",
            "G21 G90 G0 X0 Y0\n#1 = 0\nWHILE [#1 LT 2] DO 1\nG0 X[#1 * 10] (column)\n#2 = 0\nWHILE [#2 LT 2] DO 2\nY[#2 * 5]\n#2 = #2 + 1\nEND 2\n#1 = #1 + 1\nEND 1\nM30\n"));

    [Fact]
    public void A_variable_needed_behind_the_loop_keeps_it() => Assert.StartsWith(
        "The new text would not move as this one does",
        Rewritten.Refused(2, "writeOutLoop", "G21 G90 G0 X0\n#1 = 0\nWHILE [#1 LT 2] DO 1\nX[#1 * 10]\n#1 = #1 + 1\nEND 1\nX#1\nM30\n"), StringComparison.Ordinal);
}
