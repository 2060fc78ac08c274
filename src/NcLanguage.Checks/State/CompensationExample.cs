namespace NcLanguage.Checks.Rules;

/// <summary>The job that the rules on radius compensation show themselves with: an end mill of 10 mm beside the left edge of a part.</summary>
static class CompensationExample
{
    public const string EndMill = """
        { "tools": [ { "number": 2, "diameter": 10, "length": 90 } ] }
        """;

    /// <summary>A program that brings the end mill to X-30 Y-10 and down to Z-2 before the blocks given.</summary>
    public static string Program(string blocks) => """
        G21 G90 G17 G54 G40 G49 G80
        T2 M6
        M3 S1500
        G0 X-30 Y-10
        G43 H2 Z5
        G1 Z-2 F200

        """.ReplaceLineEndings("\n") + blocks;
}
