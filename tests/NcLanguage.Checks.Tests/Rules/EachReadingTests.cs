using System.Text;
using NcLanguage.Checks.Analysis;
using NcLanguage.Machine.Loading;
using NcLanguage.Machine.Profiles;
using NcLanguage.Machine.Setups;
using NcLanguage.Syntax.Text;

namespace NcLanguage.Checks.Tests.Rules;

/// <summary>Each reading of a profile changes what comes of a text: one text, every choice, outcomes worked out by hand. What the choices mean is NISTIR
/// 6556 where it lays them down (seconds §3.5.4, whole numbers §3.3.2.1, straight rapids §3.5.1, L and increments §3.5.16, centre words §3.5.3.2, M6 §3.6.3,
/// G20 and G21 §3.5.7, G43 §3.5.11, stops before motion table 8), ISO 6983-1 (from memory) for G70 and G71 and for stops after motion, common practice for the others.</summary>
public sealed class EachReadingTests
{
    const string Start = "G21 G90 G17 G54 G94\n";

    const string Setup =
        """
        { "workOffsets": { "G54": [-300, -200, -400] }, "clearance": 2,
          "tools": [ { "number": 3, "kind": "end-mill", "diameter": 8, "length": 90 } ],
          "obstacles": [ { "name": "low", "min": [60, 22, 0], "max": [70, 30, 30] }, { "name": "high", "min": [60, 138, 0], "max": [70, 142, 30] } ] }
        """;

    // A row of holes by distances; L and K name different numbers of them.
    const string Row = Start + "G0 X0 Y0 Z20\nG91 G99 G81 X10 Y0 R-18 Z-7 F100 L3 K2\nG80 G90\nM30";

    // Straight from X0 Y0 to X100 Y40 the tool passes X65 at Y26; each axis at its own, equal rate it is at X40 Y40 first and passes X65 at Y40.
    const string Low = Start + "T3 M6\nG0 X0 Y0\nG43 H3 Z5\nX100 Y40\nG53 G0 Z0\nM30";

    // From Y100 to Y140 likewise: Y126, or Y140.
    const string High = Start + "T3 M6\nG0 X0 Y100\nG43 H3 Z5\nX100 Y140\nG53 G0 Z0\nM30";

    const string Levels = Start + "G0 X0 Y0 Z20\nG99 G81 X0 Y0 Z-5 R2 F100\nG98 X20\nG80\nM30";

    const string Steps = Start + "G0 X0 Y0 Z20\nG91 G99 G81 X10 R-18 Z-7 F100\nX10 R-1\nG80 G90\nM30";

    const string Pecks = Start + "G0 X0 Y0 Z50\nG98 G83 X0 Y0 Z-8 R2 Q5 F600\nG80\nM30";

    const string Kept = Start + "T3 M6\nS1000 M3\nG0 X10 Y0\nG43 H3 Z20\nG99 G81 X10 Y0 Z-5 R2 F100 L0\nX20\nG80\nG53 G0 Z0\nM5\nM30";

    const string Back = Start + "T3 M6\nS400 M3\nG0 X10 Y0\nG43 H3 Z20\nG98 G87 X10 Y0 R-35 Z-24 Q3 F40\nG80\nG53 G0 Z0\nM5\nM30";

    // Once round from X10 Y0 about X30 (radius 20, 2π·20 mm at 1200 mm/min) or about X20 (radius 10).
    const string Circle = Start + "G0 X10 Y0\nG2 X10 Y0 I20 J0 F1200\nM30";

    const string Positions = Start + "G0 X10 Y10 Z20\nG99 G81 X10 Y10 Z-5 R2 F100\nX20\nG80\nM30";

    const string Cut = Start + "T3 M6\nS1000 M3\nG0 X0 Y0\nG43 H3 Z5\nG1 Z-1 F100\nX10 M5\nG0 Z5\nM30";

    static readonly (string Reading, string What, string Program, string Outcome)[] Table =
    [
        ("dwell=seconds", "seconds", Start + "G4 P500\nM30", "500"),
        ("dwell=milliseconds", "seconds", Start + "G4 P500\nM30", "0.5"),
        ("dwell=byPoint", "seconds", Start + "G4 P500\nM30", "0.5"),
        ("dwell=seconds", "seconds", Start + "G4 P0.5\nM30", "0.5"),
        ("dwell=milliseconds", "seconds", Start + "G4 P0.5\nM30", "0.0005"),
        ("dwell=byPoint", "seconds", Start + "G4 P0.5\nM30", "0.5"),
        ("integers=whole", "place", Start + "G0 X15 Y2.5 Z-4\nM30", "15 2.5 -4"),
        ("integers=increments", "place", Start + "G0 X15 Y2.5 Z-4\nM30", "0.015 2.5 -0.004"),
        ("holePositions=distanceMode", "holes", Positions, "10 10, 20 10"),
        ("holePositions=incremental", "holes", Positions, "20 20, 40 20"),
        ("returnLevel=afterHole", "levels", Levels, "20>2>2, 2>2>20"),
        ("returnLevel=beforeMove", "levels", Levels, "20>2>2, 20>2>2"),
        ("rapidPath=straight", "findings", Low, "rapid-hits-obstacle"),
        ("rapidPath=perAxis", "findings", Low, ""),
        ("rapidPath=straight", "findings", High, ""),
        ("rapidPath=perAxis", "findings", High, "rapid-hits-obstacle"),
        ("repeats=L", "holes", Row, "10 0, 20 0, 30 0"),
        ("repeats=K", "holes", Row, "10 0, 20 0"),
        ("arcCentre=incremental", "seconds", Circle, "6.2832"),
        ("arcCentre=absolute", "seconds", Circle, "3.1416"),
        ("toolChange=M6", "tool", Start + "T3\nM30", "-1"),
        ("toolChange=T", "tool", Start + "T3\nM30", "3"),
        ("units=G20/G21", "place", Start + "G0 X0 Y0 Z0\nG70\nX1\nM30", "? 0 0"),
        ("units=G70/G71", "place", "G71 G90 G17 G54\nG0 X0 Y0 Z0\nG70\nX1\nM30", "25.4 0 0"),
        ("units=G20/G21", "place", "G20 G90 G17 G54\nG0 X1 Y0 Z0\nM30", "25.4 0 0"),
        ("units=G70/G71", "place", "G20 G90 G17 G54\nG0 X1 Y0 Z0\nM30", "? 0 0"),
        // The datum lies at −400 and the tool is 90 long: its tip at Z10 has the gauge line at −390, or at −300 with its length.
        ("lengthOffset=G43", "machine", Start + "T3 M6\nG0 X0 Y0\nZ10\nM30", "-300 -200 -390"),
        ("lengthOffset=withTool", "machine", Start + "T3 M6\nG0 X0 Y0\nZ10\nM30", "-300 -200 -300"),
        ("stopsAct=beforeMotion", "findings", Cut, "spindle-off"),
        ("stopsAct=afterMotion", "findings", Cut, ""),
        ("incrementalR=presentLevel", "levels", Steps, "20>2>2, 2>1>1"),
        ("incrementalR=initialLevel", "levels", Steps, "20>2>2, 19>19>19"), // below R it is lifted first
        // Feeds of 5 and 6 mm at 10 mm/s; rapids of 48 and 58 mm, and between the pecks of 53 and 52, or of 5 and 4, at up to 250 mm/s and 3,000 mm/s².
        // NISTIR 6556 §3.5.16.4 goes up to the level where the hole is left; that other controls stay at R is common practice.
        ("peckReturn=returnLevel", "seconds", Pecks, "2.2773"),
        ("peckReturn=rLevel", "seconds", Pecks, "1.8453"),
        // NISTIR 6556 §3.5.16 refuses 0; that a cycle is kept by it for the places of a subprogram is common practice.
        ("zeroRepeats=alarm", "findings", Kept, "value-not-allowed"),
        ("zeroRepeats=keepsCycle", "findings", Kept, ""),
        ("zeroRepeats=alarm", "holes", Kept, "20 0"),
        ("zeroRepeats=keepsCycle", "holes", Kept, "20 0"),
        // NISTIR 6556 §3.5.16.8 bores from Z up to K; that other controls bore from R up to Z is common practice.
        ("backBoring=fromZToK", "findings", Back, "cycle-word-missing cycle-wrong-tool"),
        ("backBoring=fromRToZ", "findings", Back, "cycle-wrong-tool"),
        ("rapidsEndCycle=true", "holes", Start + "G0 X0 Y0 Z20\nG99 G81 X10 Y0 Z-5 R2 F100\nG0 X20\nG80\nM30", "10 0"),
        ("rapidsEndCycle=false", "holes", Start + "G0 X0 Y0 Z20\nG99 G81 X10 Y0 Z-5 R2 F100\nG0 X20\nG80\nM30", "10 0, 20 0"),
        ("programMarks.percent=false", "findings", "O1\n" + Start + "G0 X1\nM30", ""),
        ("programMarks.percent=true", "findings", "O1\n" + Start + "G0 X1\nM30", "mark-missing mark-missing"), // at the top and at the end
        ("programMarks.number=false", "findings", "%\n" + Start + "G0 X1\nM30\n%", ""),
        ("programMarks.number=true", "findings", "%\n" + Start + "G0 X1\nM30\n%", "mark-missing"),
        ("programMarks.longestBlock=14", "findings", Start.Replace(" G54 G94", "\nG54 G94", StringComparison.Ordinal) + "G0 X100.5 Y100.5\nM30", "block-too-long"),
        ("programMarks.longestBlock=16", "findings", Start.Replace(" G54 G94", "\nG54 G94", StringComparison.Ordinal) + "G0 X100.5 Y100.5\nM30", ""),
        ("programMarks.lowerCase=true", "findings", Start + "g0 X1\nM30", ""),
        ("programMarks.lowerCase=false", "findings", Start + "g0 X1\nM30", "character-not-sendable"),
        ("programMarks.characters=%()+-./:", "findings", Start + "G0 X1.5 (one; two)\nM30", "character-not-sendable"),
        ("programMarks.characters=%()+-./:;", "findings", Start + "G0 X1.5 (one; two)\nM30", ""),
    ];

    public static TheoryData<string, string, string, string> Rows
    {
        get
        {
            var rows = new TheoryData<string, string, string, string>();
            foreach (var (reading, what, program, outcome) in Table)
                rows.Add(reading, what, program, outcome);
            return rows;
        }
    }

    [Theory]
    [MemberData(nameof(Rows))]
    public void One_text_under_each_choice(string reading, string what, string program, string outcome) => Assert.Equal(outcome, Outcome(reading, what, program));

    /// <summary>No reading, no choice and no mark is left out, and no two choices come to the same.</summary>
    [Fact]
    public void Every_reading_is_shown_to_matter()
    {
        var shown = Table.Select(row => row.Reading).ToHashSet();
        Assert.All(ReadingTable.All.SelectMany(reading => reading.ChoiceNames.Select(choice => $"{reading.Name}={choice}")), option => Assert.Contains(option, shown));
        Assert.All(ProgramMarkTable.All, mark => Assert.Equal(2, shown.Count(option => option.StartsWith($"programMarks.{mark.Name}=", StringComparison.Ordinal))));
        foreach (var one in shown)
            foreach (var other in shown)
                Assert.True(one == other || NameOf(one) != NameOf(other) || Differ(one, other), $"{one} and {other} come to the same.");
    }

    static string NameOf(string option) => option[..option.IndexOf('=', StringComparison.Ordinal)];

    static bool Differ(string one, string other) => Table.Any(a => a.Reading == one
        && Table.Any(b => b.Reading == other && b.Program == a.Program && b.What == a.What && b.Outcome != a.Outcome));

    static string Outcome(string reading, string what, string program)
    {
        var machine = ReadingOption.Apply(MachineProfile.IsoMill with { IsChosen = true }, reading, out var error);
        Assert.Null(error);
        var setup = SetupFile.Read("x.setup.json", Encoding.UTF8.GetBytes(Setup)).Setup;
        var analysis = ProgramAnalysis.Create(SourceText.From(program), setup, machine);
        var last = analysis.Main.StateBefore(analysis.Text.LineCount - 1);
        var holes = analysis.Main.Results.ToArray().SelectMany(result => result.Holes).Select(result => result.Hole);
        return what switch
        {
            "seconds" => Say.Number(analysis.Main.Results.ToArray().Sum(result => result.Seconds), 4),
            "place" => $"{Say.Number(last.Position.X)} {Say.Number(last.Position.Y)} {Say.Number(last.Position.Z)}",
            "machine" => $"{Say.Number(last.MachinePosition.X)} {Say.Number(last.MachinePosition.Y)} {Say.Number(last.MachinePosition.Z)}",
            "tool" => Say.Number(last.Tool),
            "holes" => string.Join(", ", holes.Select(hole => $"{Say.Number(hole.X)} {Say.Number(hole.Y)}")),
            "levels" => string.Join(", ", holes.Select(hole => $"{Say.Number(hole.ArriveAt)}>{Say.Number(hole.RLevel)}>{Say.Number(hole.ReturnTo)}")),
            _ => string.Join(" ", analysis.Findings.Select(finding => finding.Name)),
        };
    }
}
