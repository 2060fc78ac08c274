using NcLanguage.Checks.Tests.Rules;

namespace NcLanguage.Checks.Tests.State;

/// <summary>What an F counts by: NISTIR 6556 §3.5.19 (G93, G94) and common practice (G95). That a number for one is none for another is common
/// practice. The programs are our own.</summary>
public sealed class FeedModeTests
{
    const string Start = "G21 G90 G17 G94 G54\nS1000 M3\nG0 X0 Y0 Z2\n";
    const string End = "\nG0 Z50\nM5\nM30";

    static int[] Lines(string blocks) => [.. Check.Of("feed-missing", Start + blocks + End).Select(finding => finding.Line + 1)];

    [Theory]
    [InlineData("G1 Z-1 F100\nX10\nG95 X20\nX30", new[] { 6 })] // told once
    [InlineData("G1 Z-1 F100\nG95\nG0 Z2\nX20\nG1 Z-1", new[] { 8 })] // at the first cut behind it
    [InlineData("G95 G1 Z-1 F0.1\nG94 X20", new[] { 5 })]
    [InlineData("G93 G1 Z-1 F2\nG94 X20\nX30", new[] { 5 })]
    [InlineData("G1 Z-1 F100\nG95 X20\nX30\nG94 X40\nG93 X50 F2\nG94 X60", new[] { 5, 9 })] // each change without F
    [InlineData("G1 Z-1 F100\nG95 G98 G81 X20 Z-2 R2\nX30\nG80", new[] { 5 })]
    [InlineData("G1 Z-1 F100\nG95 G31 X20", new[] { 5 })] // a probe moves at the feed too
    [InlineData("G1 Z-1 F100\nG95 X20 F0.1\nX30\nG94 X40 F100", new int[0])]
    [InlineData("G1 Z-1 F100\nG95\nF0.1\nX20", new int[0])]
    [InlineData("G1 Z-1 F100\nG95\nG94 X20", new int[0])] // back where the number was given
    [InlineData("G1 Z-1 F100\nG94 X20", new int[0])] // no change
    [InlineData("G1 Z-1 F100\nG95\nG0 Z2\nG33 Z-3 K1\nG0 Z2", new int[0])] // a thread's feed is its lead
    public void An_F_does_not_outlive_its_feed_mode(string blocks, int[] lines) => Assert.Equal(lines, Lines(blocks));

    [Theory]
    [InlineData("G1 Z-1 F100\nG95 X20", "F100 was per minute; in G95 no feed has been given")]
    [InlineData("G95 G1 Z-1 F0.1\nG94 X20", "F0.1 was per turn; in G94 no feed has been given")]
    [InlineData("G93 G1 Z-1 F2\nG94 X20", "F2 was for inverse time; in G94 no feed has been given")]
    [InlineData("G20 G1 Z-0.1 F4\nG95 X2", "F4 was per minute")] // in the unit of the program
    public void It_says_what_the_number_was_for(string blocks, string words) =>
        Assert.Contains(words, Assert.Single(Check.Of("feed-missing", Start + blocks + End)).Message, StringComparison.Ordinal);
}
