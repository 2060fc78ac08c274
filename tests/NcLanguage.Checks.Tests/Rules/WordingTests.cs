namespace NcLanguage.Checks.Tests.Rules;

/// <summary>Messages read as one sentence of the trade.</summary>
public sealed class WordingTests
{
    const string Plate = """
        { "stock": { "min": [0, 0, -15], "max": [100, 60, 0] }, "clampHeight": 30,
          "supports": [ { "name": "parallel", "min": [0, 50, -45], "max": [100, 60, -15] } ],
          "tools": [ { "number": 3, "kind": "end-mill", "diameter": 8 }, { "number": 4, "kind": "counterbore", "diameter": 8 } ] }
        """;

    const string Start = "G21 G90 G17 G54\nT3 M6\nS1500 M3\nG0 X20 Y30\nG43 H3 Z40\n";

    [Theory]
    [InlineData("hits-support", "G81 X20 Y55 Z-20 R2 F100", "5 mm into the support parallel, which begins at Z-15")]
    [InlineData("hole-outside-stock", "T4 M6\nG81 X20 Y-0.5 Z-10 R2 F100", "drills about half in air.")]
    [InlineData("hole-outside-stock", "T4 M6\nG81 X20 Y-3 Z-10 R2 F100", "drills mostly in air.")]
    [InlineData("hole-outside-stock", "T4 M6\nG81 X20 Y-4 Z-10 R2 F100", "drills air.")]
    [InlineData("expression-malformed", "G1 X[SINN[20]] F100", "There is no function SINN:")]
    [InlineData("spindle-off", "M5\nG1 X30 Z-1 F100", "The spindle is stopped:")]
    [InlineData("retract-below-clamp", "G0 Z5\nG81 X10 Y10 Z-10 R2 F100", "The traverse to the first hole at X10 Y10")]
    public void A_message_reads(string rule, string blocks, string part) =>
        Assert.Contains(Programs.Of(rule, Start + blocks + "\nM30", Plate), message => message.Message.Contains(part, StringComparison.Ordinal));
}
