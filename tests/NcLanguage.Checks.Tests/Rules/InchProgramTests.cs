using NcLanguage.Machine.Geometry;
using NcLanguage.Machine.Setups;

namespace NcLanguage.Checks.Tests.Rules;

/// <summary>Under G20 a message gives what a setter could type, in inches, and lengths with their unit; so do fixes.
/// 1 in = 25.4 mm exactly (1959). The programs are our own.</summary>
public sealed class InchProgramTests
{
    const string Head = "G20 G17 G90 G94 G40 G49 G80 G54\nG0 G53 Z0\nT3 M6\nG0 X.5 Y.5 S400 M3\nG43 H3 Z1. M8\n";
    const string Tail = "\nG80 G0 Z1. M9\nG0 G53 Z0 M5\nM30\n";

    static Setup Plate(ToolKind kind = ToolKind.Drill) => new()
    {
        IsPresent = true,
        Stock = new Box3(new(0, 0, -25.4), new(101.6, 50.8, 0)),
        Clearance = 2.54,
        ClampHeight = 12.7,
        Tools = [new Tool { Number = 3, Kind = kind, Diameter = 3.175, Length = 100, Pitch = kind == ToolKind.Tap ? 1.27 : null }],
    };

    static string Message(string rule, string blocks, ToolKind kind = ToolKind.Drill, string readings = "") =>
        Check.Of(rule, Head + blocks + Tail, readings, Plate(kind))[0].Message;

    [Theory]
    [InlineData("depth-changed-in-cycle", "G98 G81 X.5 Y.5 Z-.6 R.1 F5.\nZ1.", "so Z1 becomes its depth")]
    [InlineData("r-inside-stock", "G98 G81 X.5 Y.5 Z-.6 R-.1 F5.", "The R level Z-0.1 lies 0.1 in inside the stock (top at Z0)")]
    [InlineData("r-below-bottom", "G98 G81 X.5 Y.5 Z-.3 R-.5 F5.", "The R level Z-0.5 lies 0.2 in below the bottom Z-0.3")]
    [InlineData("r-far", "G98 G81 X.5 Y.5 Z-.3 R.75 F5.", "The R level Z0.75 is 0.75 in above")]
    [InlineData("initial-level-below-r", "Z.05\nG98 G81 X.5 Y.5 Z-.3 R.1 F5.", "starts at Z0.05, 0.05 in below its R level Z0.1")]
    [InlineData("retract-below-clamp", "G99 G81 X.5 Y.5 Z-.3 R.1 F5.\nX1.5", "from X0.5 Y0.5 to X1.5 Y0.5 at Z0.1 is 0.4 in below the clamps' top at Z0.5; it clears from Z0.6 up, and the initial level Z1 does")]
    [InlineData("hole-repeated", "G98 G84 X.5 Y.5 Z-.3 R.1 F5.\nX1.5\nX.5", "G84 taps X0.5 Y0.5 to Z-0.3")]
    [InlineData("hole-repeated", "G98 G85 X.5 Y.5 Z-.3 R.1 F5.\nX1.5\nX.5", "G85 bores X0.5 Y0.5 to Z-0.3")]
    [InlineData("hole-repeated", "G98 G81 X.5 Y.5 Z-.3 R.1 F5.\nX1.5\nX.5", "drills X0.5 Y0.5 to Z-0.3")]
    [InlineData("hole-outside-stock", "G98 G81 X5. Y.5 Z-.3 R.1 F5.", "The hole at X5 Y0.5 lies 1 in outside")]
    [InlineData("return-higher-than-needed", "G0 Z20.\nG98 G81 X.5 Y.5 Z-.3 R.7 F5.\nX1.5", "from X0.5 Y0.5 at Z20 would clear at Z0.7 too")]
    public void MessagesSpeakInInches(string rule, string blocks, string words) =>
        Assert.Contains(words, Message(rule, blocks), StringComparison.Ordinal);

    // Speed times pitch (NISTIR 6556 §3.5.16.5): 400 · 0.05 in = 20 in/min.
    [Fact]
    public void TheTappingFeedIsInInches()
    {
        const string Blocks = "G98 G84 X.5 Y.5 Z-.6 R.2 F5.";
        Assert.Contains("F5 at S400 moves 0.0125 in for each turn, and the pitch of T3 is 0.05 in: the feed has to be 20 in/min.", Message("tap-feed", Blocks, ToolKind.Tap));
        Assert.Contains("R.2 F20\n", Check.Fixed("tap-feed", Head + Blocks + Tail, "", Plate(ToolKind.Tap)));
    }

    // The number of F is read in the unit of its own block (G20 there too).
    [Fact]
    public void TheFeedOfABlockThatChangesTheUnitIsWrittenInTheNewOne() =>
        Assert.Contains("R.2 F20\n", Check.Fixed("tap-feed", Head.Replace("G20", "G21").Replace("1.", "25.4") + "G20 G98 G84 X.5 Y.5 Z-.6 R.2 F5." + Tail, "", Plate(ToolKind.Tap)));

    [Fact]
    public void FixesWriteInches()
    {
        Assert.Contains("Z-.6 R0.1 F5.", Check.Fixed("r-inside-stock", Head + "G98 G81 X.5 Y.5 Z-.6 R-.1 F5." + Tail, "", Plate()));
        Assert.Contains("Q0.125", Check.Fixed("peck-missing", Head + "G98 G81 X.5 Y.5 Z-.9 R.1 F5." + Tail, "", Plate()));
    }

    [Fact]
    public void ABlocksOwnFeedNeedsNoOtherPlace()
    {
        var program = Head + "F10.\nG98 G84 X.5 Y.5 Z-.6 R.2 F5." + Tail;
        Assert.Equal("", Check.Of("tap-feed", program, "", Plate(ToolKind.Tap))[0].ConcernsMessage);
        Assert.NotEqual("", Check.Of("tap-feed", program.Replace(" F5.", ""), "", Plate(ToolKind.Tap))[0].ConcernsMessage);
    }
}
