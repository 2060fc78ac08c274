using NcLanguage.Checks.Tests.Rules;

namespace NcLanguage.Checks.Tests.Cutting;

/// <summary>Helices one after the other go one way: common practice. The programs are our own.</summary>
public sealed class HelixTurnsBackTests
{
    const string Setup = """
        { "tools": [ { "number": 5, "kind": "end-mill", "diameter": 12, "length": 90 }, { "number": 6, "kind": "thread-mill", "diameter": 10, "pitch": 1.5, "length": 90 } ] }
        """;

    static List<Finding> Of(string blocks, int tool = 5) =>
        Programs.Of("helix-turns-back", $"G21 G90 G17 G54\nT{tool} M6\nS3000 M3\nG0 X12 Y0\nG43 H{tool} Z2\nG1 Z0 F300\n{blocks}\nG1 X5\nG0 Z50\nM5\nM30", Setup);

    [Theory]
    [InlineData("G3 I-12 Z-3\nI-12 Z-6\nI-12 Z9\nI-12 Z-12\nI-12", 9, "This helix climbs from Z-6 to Z9, between others that go down: one of the two levels is wrong.")]
    [InlineData("G3 I-12 Z-3\nI-12 Z-6\nI-12 Z-12\nI-12 Z-9\nI-12 Z-10\nI-12", 10, "This helix climbs from Z-12 to Z-9, between others that go down: one of the two levels is wrong.")]
    [InlineData("G3 I-12 Z3\nI-12 Z6\nI-12 Z-9\nI-12 Z12", 9, "This helix goes down from Z6 to Z-9, between others that climb: one of the two levels is wrong.")]
    // Back to a level where it was: Z-6 would make even steps.
    [InlineData("G3 I-12 Z-3\nI-12 Z-12\nI-12 Z-9\nI-12 Z-12\nI-12", 9, "This helix climbs from Z-12 to Z-9, between others that go down: one of the two levels is wrong.")]
    public void A_level_out_of_step_is_told(string blocks, int line, string message)
    {
        var found = Assert.Single(Of(blocks));
        Assert.Equal((line, message), (found.Line + 1, found.Message));
    }

    [Theory]
    [InlineData("G3 I-12 Z-3\nI-12 Z-6\nI-12 Z-9\nI-12")]
    // Down, a level turn, and up again to leave.
    [InlineData("G3 I-12 Z-3\nI-12 Z-6\nI-12\nI-12 Z-3")]
    [InlineData("G3 I-12 Z-6\nI-12 Z0")]
    // Rubbed up and down without another level: a spring pass both ways.
    [InlineData("G3 I-12 Z-6\nI-12 Z0\nI-12 Z-6\nI-12")]
    [InlineData("G3 I-12 Z-6\nI-12 Z0\nI-12 Z-12\nI-12")]
    // Another radius, and half turns.
    [InlineData("G3 I-12 Z-3\nI-12 Z-6\nG1 X11 Z0\nG3 I-11 Z-3\nI-11 Z-7")]
    [InlineData("G3 X-12 I-12 Z-1\nX12 I12 Z0\nX-12 I-12 Z-2\nX12 I12 Z-3")]
    public void Rows_that_go_one_way_are_not(string blocks) => Assert.Empty(Of(blocks));

    [Fact]
    public void A_thread_mill_is_another_rule_s_matter() => Assert.Empty(Of("G3 I-12 Z-1.5\nI-12 Z-3\nI-12 Z4.5\nI-12 Z-6", tool: 6));
}
