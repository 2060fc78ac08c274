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
}
