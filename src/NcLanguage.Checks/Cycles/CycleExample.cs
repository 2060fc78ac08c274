namespace NcLanguage.Checks.Rules;

/// <summary>The programs that the examples of the rules on cycles stand in: what comes before the cycle and after it, sound by itself.</summary>
static class CycleExample
{
    const string Start = "G21 G90 G17 G54\nT3 M6\nG43 H3\nS1500 M3\nG0 X12 Y20 Z40\nM8\n";

    const string Off = "M9\nM5\nM30";

    /// <summary>The blocks of a cycle in a whole program that ends the cycle and lifts the tool behind them.</summary>
    public static string Program(string blocks) => Start + blocks.ReplaceLineEndings("\n") + "\nG80 G0 Z40\n" + Off;

    /// <summary>Blocks in a program that lifts and cancels nothing by itself.</summary>
    public static string Bare(string blocks) => Start + blocks.ReplaceLineEndings("\n") + "\n" + Off;

    /// <summary>Blocks to which nothing is added behind.</summary>
    public static string Open(string blocks) => Start + blocks.ReplaceLineEndings("\n");

    /// <summary>A plate with one tool.</summary>
    public static string Setup(string tool) => $$"""
        { "units": "mm", "frame": "G54",
          "stock": { "min": [0, 0, -40], "max": [80, 50, 0] },
          "clearance": 2,
          "tools": [ { "number": 3, {{tool}}, "fluteLength": 60, "length": 120, "lengthOffset": 3 } ] }
        """;

    public static string Drill { get; } = Setup("\"kind\": \"drill\", \"diameter\": 5, \"pointAngle\": 118");

    public static string Tap { get; } = Setup("\"kind\": \"tap\", \"diameter\": 8, \"pitch\": 1.25");
}
