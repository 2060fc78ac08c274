using NcLanguage.Checks.Tests.Rules;

namespace NcLanguage.Checks.Tests.Program;

/// <summary>A loop all turns of which cut over the same places; spring passes and loops that change a place, a level or the coordinates are none (common practice).</summary>
public sealed class LoopRepeatsCutTests
{
    const string Setup = """
        { "stock": { "min": [0, 0, -15], "max": [100, 60, 0] }, "tools": [ { "number": 5, "kind": "end-mill", "diameter": 10 } ] }
        """;

    static List<Finding> Of(string loop, string condition = "[#1 LT 5]") =>
        Programs.Of("loop-repeats-cut", $"G21 G90 G17 G54\nT5 M6\nS3000 M3\nG0 X-10 Y5\nG43 H5 Z2\n#1=0\nWHILE {condition} DO1\n{loop.Replace('|', '\n')}\nEND1\nG90 G0 Z50\nM30", Setup);

    [Theory]
    [InlineData("G0 X-10 Y5|G1 Z-2 F300|X110|G0 Z2|#1=#1+1")]
    [InlineData("#1=#1+1|G0 X-10 Y5|G1 Z-2 F300|X110|G0 Z2")]
    [InlineData("G0 X30 Y30|G1 Z-2 F300|G3 I5|G0 Z2|#1=#1+1")]
    [InlineData("#2=5+10*#1|G0 X-10 Y5|G1 Z-2 F300|X110|G0 Z2|#1=#1+1")] // worked out, and not used
    public void The_same_cut_at_each_turn_is_told(string loop)
    {
        var finding = Assert.Single(Of(loop));
        Assert.Equal((6, "All 5 turns of this loop cut over the same places, and no word in it reads a variable: the first cuts, the others go over it again. Has a word lost its variable?"), (finding.Line, finding.Message));
    }

    [Theory]
    [InlineData("G0 X-10 Y[5+10*#1]|G1 Z-2 F300|X110|G0 Z2|#1=#1+1")]
    [InlineData("G0 X-10 Y5|G1 Z[-1-#1] F300|X110|G0 Z2|#1=#1+1")]
    [InlineData("G91 G1 Z-3 F300|X110|Z-1|X-110|G90|#1=#1+1")] // distances
    [InlineData("G0 X-10 Y5|G1 Z2 F300|X110|#1=#1+1")] // above the stock: warming up
    [InlineData("G0 X-10 Y80|G1 Z-2 F300|X110|G0 Z2|#1=#1+1")] // beside it
    [InlineData("G0 X5|G4 P1|#1=#1+1")]
    [InlineData("G99 G81 X20 Y20 R2 Z-5 F100|G80|#1=#1+1")] // hole-repeated
    [InlineData("G52 Y[10*#1]|G0 X-10 Y5|G1 Z-2 F300|X110|G0 Z2|G52 Y0|#1=#1+1")]
    public void A_loop_that_moves_on_is_not(string loop) => Assert.Empty(Of(loop));

    [Fact]
    public void Two_turns_may_be_spring_passes() => Assert.Empty(Of("G0 X-10 Y5|G1 Z-2 F300|X110|G0 Z2|#1=#1+1", "[#1 LT 2]"));

    /// <summary>A call with repeats moves on by G91 within what it calls, or it goes over the same places.</summary>
    [Theory]
    [InlineData("L5", "G0 X-10 Y5|G1 Z-2 F300|X110|G0 Z2", "", 1)]
    [InlineData("L5", "G1 Z-2 F300|G91 X120|X-120|G90", "", 1)]
    [InlineData("L2", "G0 X-10 Y5|G1 Z-2 F300|X110|G0 Z2", "", 0)] // a spring pass
    [InlineData("L5", "G91 G1 X120 F300|Y5|X-120|Y5|G90", "", 0)]
    [InlineData("L5", "G91 G1 Z-3 F300|G90 X110|X-10", "", 0)]
    [InlineData("L5", "G0 X-10 Y5|G1 Z2 F300|X110", "", 0)] // above the stock
    [InlineData("L5", "G0 X-10 Y5|G1 Z-2 F300|X110|G0 Z2", "G52 Y20|M98 P2|G52 Y0", 0)] // called elsewhere too
    public void A_call_that_repeats_the_same_cut_is_told(string repeats, string called, string more, int count)
    {
        var found = Programs.Of("loop-repeats-cut", $"G21 G90 G17 G54\nT5 M6\nS3000 M3\nG0 X-10 Y5\nG43 H5 Z2\nM98 P2 {repeats}\nG90 G0 Z50\n{more.Replace('|', '\n')}\nM30\nO2\n{called.Replace('|', '\n')}\nM99\n", Setup);
        Assert.Equal(count, found.Count);
        Assert.All(found, finding => Assert.Equal((5, "All 5 runs of this call cut over the same places: the first cuts, the others go over it again. Does the called program lack its step, or G91?"), (finding.Line, finding.Message)));
    }
}
