using NcLanguage.Machine.Geometry;
using NcLanguage.Machine.Setups;

namespace NcLanguage.Checks.Tests.Rules;

/// <summary>One cause gives one finding, and a number that cannot be read is not judged by a part of it. The programs are our own;
/// what a number, an arc and G80 are is in NISTIR 6556 §3.3.2.1, §3.5.3.1 and §3.5.15.</summary>
public sealed class OneCauseTests
{
    const string Head = "%\nO1\nG21 G17 G90 G94 G40 G49 G80\nG91 G28 Z0\nG90\nT2 M6\nG54 G0 X10 Y10 S1200 M3\nG43 H2 Z30 M8\n";
    const string Tail = "G80 G0 Z30 M9\nG91 G28 Z0 M5\nG90 G49\nM30\n%\n";

    static readonly Setup Plate = new()
    {
        IsPresent = true,
        Stock = new Box3(new(0, 0, -20), new(100, 60, 0)),
        Clearance = 2,
        Tools = [new Tool { Number = 2, Kind = ToolKind.Drill, Diameter = 6.8, Length = 100 }],
    };

    static (int Line, string Name)[] Findings(string program, string readings = "") =>
        [.. Check.Analyse(program, readings, Plate).Findings.Select(finding => (finding.Line + 1, finding.Name))];

    [Theory]
    [InlineData("G98 G81 X3,5 Y10 Z-10 R2 F150", "number-malformed")]
    [InlineData("G98 G81 X30-5 Y10 Z-10 R2 F150", "number-malformed")]
    [InlineData("G98 G81 X--30 Y10 Z-10 R2 F150", "number-malformed")]
    [InlineData("G98 G81 X3O Y10 Z-10 R2 F150", "number-malformed")]
    [InlineData("G98 G81 X30 Y10 Z-10 R-12 F150", "r-below-bottom")]
    [InlineData("G80 G81 X30 Y10 Z-10 R2 F150", "codes-conflict")]
    [InlineData("GO X30 Y10", "word-without-number")]
    [InlineData("G98 G81 X10 Y10 Z-10 R2 F150\nR3", "cycle-word-missing")]
    [InlineData("G98 G81 X10 Y10 Z-10 R2 F150\nG51.1", "word-missing")]
    [InlineData("G98 G81 X10 Y10 Z-10 R2 F150\nG92", "word-missing")]
    [InlineData("G98 G81 X10 Y10 Z-10 R2 F150\nG52", "word-missing")]
    public void OneCauseOneFinding(string blocks, string expected)
    {
        var finding = Assert.Single(Findings(Head + blocks + "\n" + Tail));
        Assert.Equal((9 + blocks.Count(c => c == '\n'), expected), finding);
    }

    /// <summary>That it lies outside the stock comes of it.</summary>
    [Theory]
    [InlineData("X20 Y10", "X200 Y10", "hole-missing", "where the drawing has none, at X200 Y10. One more finding may come of it and is not told by itself: hole-outside-stock.")]
    [InlineData("X20 Y10", "X20 Y11", "hole-missing", "where the drawing has none, at X20 Y11, 1 mm off.")]
    public void AHoleAtAWrongPlaceIsToldOnce(string right, string wrong, string name, string end)
    {
        var plate = Plate with { Holes = [new DrawingHole(10, 10, 6.8, null, null), new DrawingHole(20, 10, 6.8, null, null)] };
        var program = Head + $"G99 G81 X10 Y10 Z-10 R2 F150\n{right}\n" + Tail;
        Assert.Empty(Check.Analyse(program, "", plate).Findings);
        var found = Assert.Single(Check.Analyse(program.Replace(right, wrong, StringComparison.Ordinal), "", plate).Findings);
        Assert.Equal((name, 10), (found.Name, found.Line + 1));
        Assert.EndsWith(end, found.Message, StringComparison.Ordinal);
    }

    /// <summary>By radius and angle (G16, common practice): 40 mm at 30, 45 and 70 degrees, the places by sine and cosine.</summary>
    [Theory]
    [InlineData("G16\n", null)]
    [InlineData("", "X and Y are the radius and the angle of the drawing's holes, and no G16 is in force. One more finding may come of it and is not told by itself: hole-outside-stock.")]
    public void PolarWordsWithoutTheirCodeAreOneSlip(string code, string? end)
    {
        var holes = new[] { 30.0, 45, 70 }.Select(angle => new DrawingHole(40 * Math.Cos(angle * Math.PI / 180), 40 * Math.Sin(angle * Math.PI / 180), 6.8, null, null));
        var found = Check.Analyse(Head + code + "G99 G81 X40 Y30 Z-10 R2 F150\nY45\nY70\nG80\nG15\n" + Tail, "", Plate with { Holes = [.. holes] }).Findings;
        Assert.Equal(end is null ? [] : [(9, "hole-missing")], found.Select(finding => (finding.Line + 1, finding.Name)));
        Assert.All(found, finding => Assert.EndsWith(end!, finding.Message, StringComparison.Ordinal));
    }

    /// <summary>Under G91 R is a distance from where the tool stands (NISTIR 6556 §3.5.16): R2 leads up from Z30. What hangs on it is not told besides.</summary>
    [Theory]
    [InlineData("G91 G99 G81 X10 Z-12 R-28 F150", new string[0])]
    [InlineData("G91 G99 G81 X10 Z-12 R2 F150", new[] { "initial-level-below-r" })]
    public void AnRThatIsADistanceIsToldOnce(string block, string[] expected)
    {
        var found = Check.Analyse(Head + block + "\nX10\nX10\nG90\n" + Tail, "", Plate).Findings;
        Assert.Equal(expected, found.Select(finding => finding.Name));
        Assert.All(found, finding => Assert.EndsWith(" Under G91 R2 is a distance from there, and a minus sign leads down.", finding.Message, StringComparison.Ordinal));
    }

    /// <summary>What a cycle lacks is told at its first block, also where that drills nothing yet.</summary>
    [Fact]
    public void ACycleThatIsKeptForLaterIsToldOnceWhatItLacks() =>
        Assert.Equal([(9, "cycle-word-missing")], Findings(Head + "G99 G83 X10 Y10 Z-10 R2 F150 L0\nX20\nX30\n" + Tail, "zeroRepeats=keepsCycle"));

    [Fact]
    public void AProgramThatIsNotThereIsToldAtItsFirstCall()
    {
        var found = Check.Analyse("G21 G90 G17 G54\nG0 X0 Y0 Z50\nM98 P71\nG0 X10\nM98 P72\nM98 P71\nM98 P71\nM30", "", null).Findings.Where(finding => finding.Name == "subprogram-missing");
        Assert.Equal([(2, " It is called again in 2 blocks, the last in line 7."), (4, "")], found.Select(finding => (finding.Line, finding.Message[(finding.Message.IndexOf("alarm.", StringComparison.Ordinal) + 6)..])));
    }

    [Fact]
    public void AnUnknownMachineCodeMayHaveStartedTheSpindle()
    {
        var program = (Head + "G98 G81 X10 Y10 Z-10 R2 F150\n" + Tail).Replace("S1200 M3", "S1200 M13");
        Assert.Equal([(7, "code-unknown")], Findings(program));
    }

    [Fact]
    public void AForgottenG90IsSaidOnce()
    {
        var program = (Head + "G98 G81 X10 Y10 Z-10 R2 F150\n" + Tail).Replace("G28 Z0\nG90\nT2", "G28 Z0\nT2");
        Assert.Equal(["incremental-left-on"], Findings(program).Select(f => f.Name).Where(n => n is "incremental-left-on" or "r-far" or "initial-level-below-r"));
    }

    [Fact]
    public void AToolThatIsNoneIsNotChangedLow()
    {
        var program = Head + "G98 G81 X10 Y10 Z-10 R2 F150\nG80\nT1.5 M6\n" + Tail;
        Assert.Equal(["value-not-allowed"], Check.NamesOn(11, program, "", Plate));
    }

    [Fact]
    public void AStopInACycleIsAWarningAndTheEndAnError()
    {
        var cycle = "G99 G81 X10 Y10 Z-10 R2 F150\n";
        Assert.Equal(Severity.Warning, Assert.Single(Check.Of("cycle-not-cancelled", Head + cycle + "M1\nX50\n" + Tail)).Severity);
        Assert.Equal(Severity.Error, Assert.Single(Check.Of("cycle-not-cancelled", Head + cycle + "M9\nM5\nM30\n")).Severity);
    }

    [Fact]
    public void APlaceWithoutPointIsNoHoleBesideTheStock() =>
        Assert.Equal(["number-without-point"], Check.NamesOn(10, Head + "G98 G81 X10. Y10. Z-10. R2. F150\nX30\n" + Tail, "integers=increments", Plate));

    // NISTIR 6556 §3.5.3.1: in the radius format one of the plane's axis words is needed.
    [Theory]
    [InlineData("G2 R5 F100", "word-missing", "where the arc ends")]
    [InlineData("G2 X20 Y20 I5 J5 K3 F100", "word-without-effect", "plane")]
    [InlineData("G2 X20 Y20 R10 I10 F100", "word-without-effect", "radius R already")]
    public void AnArcSaysWhatIsWrongWithItsWords(string block, string name, string words)
    {
        var finding = Assert.Single(Check.Analyse(Head + block + "\n" + Tail).Findings, f => f.Line == 8);
        Assert.Equal(name, finding.Name);
        Assert.Contains(words, finding.Message, StringComparison.Ordinal);
    }

    [Theory]
    [InlineData("X3,5", "decimal point, not a comma")]
    [InlineData("X30-5", "sign inside")]
    [InlineData("X--30", "sign inside")]
    [InlineData("X3O", "ends in the letter O")]
    [InlineData("X3O0", "letter O inside")]
    [InlineData("X3O5.O", "ends in the letter O")]
    [InlineData("F1OO0", "letter O inside")]
    public void ANumberThatCannotBeReadSaysWhy(string word, string words)
    {
        var finding = Assert.Single(Check.Of("number-malformed", Head + $"G0 {word} Y20\n" + Tail));
        Assert.Equal((3, 3 + word.Length), (finding.StartColumn, finding.EndColumn));
        Assert.Contains(words, finding.Message, StringComparison.Ordinal);
    }

    // A corner's radius after a comma, a block number before a program number and text are other things.
    [Theory]
    [InlineData("G1 X20,R5 F100")]
    [InlineData("N10O1")]
    [InlineData("G0 X20 OR Y20")]
    public void WhatFollowsANumberOtherwiseIsLeftToOtherRules(string block) =>
        Assert.Empty(Check.Of("number-malformed", Head + block + "\n" + Tail));
}
