using NcLanguage.Checks.Tests.Rules;

namespace NcLanguage.Checks.Tests.State;

/// <summary>Whether a message says what is so. The programs are our own; what is in force is NISTIR 6556 §3.3.5, §3.5.9, §3.5.12 and §3.5.15, for G51
/// common practice.</summary>
public sealed class MessageTests
{
    const string Start = "G21 G90 G17 G54 G80\nS1000 M3\n";

    [Theory]
    [InlineData("codes-conflict", "G1 G01 X4 F100", "G1 and G01 are the same code twice")]
    [InlineData("codes-conflict", "G1 G1 X4 F100", "G1 stands twice")]
    [InlineData("codes-conflict", "G0 G1 X4 F100", "G0 and G1 exclude each other")]
    [InlineData("machine-move-mode", "G0 X0 Y0 Z5\nG38.2 X50 F100\nG53 Z0", "a probe move (G38.2 to G38.5) is in force")]
    [InlineData("machine-move-mode", "G53 Z0", "none has come since G80")]
    [InlineData("machine-move-mode", "G2 X10 Y0 I5 J0 F100\nG53 Z0", "G2 is in force")]
    [InlineData("word-without-effect", "G51 P2 X0 Y0 I3", "the factors by I, J and K go before it")]
    [InlineData("word-without-effect", "G0 X5 P2", "neither a dwell nor a call")]
    [InlineData("motion-not-set", "X10", "No G0, G1, G2 or G3 has come since G80: the control does not know how to move to X10 and stops.")]
    [InlineData("motion-not-set", "X[SQRT[-1]]R-5J0G73%", "does not know how to move and stops.")] // no garbage is quoted
    public void It_says_what_is_so(string rule, string blocks, string words) =>
        Assert.Contains(words, Check.Of(rule, Start + blocks + "\nM30")[0].Message, StringComparison.Ordinal);

    // NISTIR 6556 §3.5.16.5 has no Q; that some controls tap by steps of it is common practice, from memory.
    [Theory]
    [InlineData("G84 X0 Y0 Z-10 R5 F1000 Q2", Severity.Note, "G84 is taken to tap in one stroke, so that Q2 has no effect here: on a control that taps by steps it is the depth of each.")]
    [InlineData("G74 X0 Y0 Z-10 R5 F1000 Q2", Severity.Note, "G74 is taken to tap in one stroke, so that Q2 has no effect here: on a control that taps by steps it is the depth of each.")]
    [InlineData("G81 X0 Y0 Z-10 R5 F100 Q2", Severity.Warning, "Q2 has no effect here: no pecking cycle is in force.")]
    public void A_peck_of_a_tapping_cycle_is_a_note(string block, Severity severity, string message)
    {
        var finding = Assert.Single(Check.Of("word-without-effect", Start + "G0 Z20\n" + block + "\nG80\nM30"));
        Assert.Equal((severity, message), (finding.Severity, finding.Message));
    }
}
