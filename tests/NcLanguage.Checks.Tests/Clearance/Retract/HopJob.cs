using System.Collections.Immutable;
using NcLanguage.Checks.Analysis;
using NcLanguage.Machine.Geometry;
using NcLanguage.Machine.Profiles;
using NcLanguage.Machine.Setups;
using NcLanguage.Syntax.Text;

namespace NcLanguage.Checks.Tests.Clearance.Retract;

/// <summary>A plate with clamps for programs under test: our own data.</summary>
static class HopJob
{
    public static readonly BoxObstacle Middle = new("middle clamp", new(new(30, -10, 0), new(40, 60, 25)));

    public static readonly BoxObstacle Right = new("right clamp", new(new(70, -10, 0), new(80, 60, 12)));

    public static readonly CylinderObstacle Stud = new("stud", 55, 20, 12, 0, 18);

    public static Setup Setup(params Obstacle[] obstacles) => new()
    {
        IsPresent = true,
        Stock = new Box3(new(0, 0, -20), new(120, 50, 0)),
        Obstacles = [.. obstacles],
        Tools = [new Tool { Number = 1, Kind = ToolKind.Drill, Diameter = 6 }],
    };

    public static MachineProfile Machine(ReturnLevelReading returns, PeckReturnReading pecks = PeckReturnReading.ReturnLevel) =>
        MachineProfile.IsoMill with { IsChosen = true, Readings = new Readings { ReturnLevel = returns, PeckReturn = pecks } };

    public static ProgramAnalysis Analyse(
        string text, Setup setup, ReturnLevelReading returns = ReturnLevelReading.AfterHole, PeckReturnReading pecks = PeckReturnReading.ReturnLevel) =>
        ProgramAnalysis.Create(SourceText.From(text.ReplaceLineEndings("\n")), setup, Machine(returns, pecks));

    /// <summary>A sound frame around the blocks of a cycle; these begin on line index <see cref="FirstBlock"/>.</summary>
    public static string Program(string blocks, double startLevel = 40) => FormattableString.Invariant($"""
        G21 G90 G17 G54
        T1 M6
        S1500 M3
        M8
        G0 X10 Y20 Z{startLevel}
        F120
        {blocks.ReplaceLineEndings("\n")}
        G80 G0 Z{Math.Max(startLevel, 40)}
        M9
        M5
        M30
        """);

    public const int FirstBlock = 6;

    static readonly string[] HopNames = ["hop-hits-obstacle", "retract-below-clamp", "clearance-small"];

    /// <summary>The findings on traverses between holes, those on other moves left out.</summary>
    public static ImmutableArray<Finding> HopFindings(ProgramAnalysis analysis) =>
        [.. analysis.Findings.Where(finding => HopNames.Contains(finding.Name) && finding.Message.StartsWith("The traverse from", StringComparison.Ordinal))];

    /// <summary>Takes the safe fixes of all findings on traverses at once.</summary>
    public static ProgramAnalysis FixAll(ProgramAnalysis analysis)
    {
        var edits = HopFindings(analysis).SelectMany(analysis.FixesOf).Where(fix => fix.Safety == FixSafety.Safe).SelectMany(fix => fix.Edits);
        return ProgramAnalysis.Create(TextEdits.Apply(analysis.Text, edits), analysis.Setup, analysis.Machine);
    }

    public static string[] Blocks(ProgramAnalysis analysis, int count) =>
        [.. Enumerable.Range(FirstBlock, count).Select(analysis.Text.LineText)];
}
