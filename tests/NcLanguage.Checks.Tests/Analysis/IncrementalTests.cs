using System.Collections.Immutable;
using CsCheck;
using NcLanguage.Checks.Analysis;
using NcLanguage.Machine.Geometry;
using NcLanguage.Machine.Profiles;
using NcLanguage.Machine.Setups;
using NcLanguage.Syntax.Text;

namespace NcLanguage.Checks.Tests.Analysis;

/// <summary>What an edit leaves as it was is reused, and that changes nothing in what is found.</summary>
public sealed class IncrementalTests
{
    static readonly string[] Blocks =
    [
        "G21 G90 G17 G54", "G91", "G90", "T1 M6", "T2 M6", "G43 H1 Z50", "G43 H2 Z20", "S1200 M3", "M5", "M8", "M9", "F120",
        "G98 G81 X10 Y10 Z-5 R2", "G99 G82 X30 Y10 Z-4 R2 P0.5", "G83 X40 Z-20 R2 Q5", "X50", "Y20", "X60 Y30 L3", "G98", "G99", "X20 G98",
        "G80", "G0 Z50", "G0 X0 Y0", "G1 X10 F200", "G2 X20 Y0 I5 J0", "G3 X0 R30", "G4 P2", "G28 G91 Z0", "G53 G0 Z0", "/X90 Y10", "Z-9",
        "M30", "%", "O2000", "(clamp ahead)", "(nc-allow spindle-off: dry run)", "", "N10 G0 X5", "N10 X6", "G0 G1 X1", "X", "X1 X2", "#1=5", "X#1",
        "G20", "G41 D1", "G40", "G68 X0 Y0 R30", "G69", "IF [#1 GT 2] GOTO 10", "G55", "G92 X0",
    ];

    /// <summary>Blocks that lead the run elsewhere: jumps ahead and back, loops, conditions, calls, returns, and what they pair with.</summary>
    static readonly string[] Steering =
    [
        "GOTO 20", "N20", "IF [#1 LT 4] GOTO 10", "#1=#1+1", "#2=#2+1", "GOTO #2", "WHILE [#1 LT 6] DO1", "DO2", "END1", "END2", "IF [#1 EQ #0] THEN #1=1",
        "M98 P2000", "M98 P2000 L3", "M99", "M99 P20", "G65 P2000 A4 L2", "M98 P77", "O7 SUB", "O7 ENDSUB", "O7 CALL [3]", "O8 IF [#1 GT 2]", "O8 ELSE",
        "O8 ENDIF", "O9 REPEAT [3]", "O9 ENDREPEAT", "O9 BREAK", "O10 WHILE [#2 LT 5]", "O10 ENDWHILE", "O7 RETURN", "G91 X5 G81 Z-5 R2", "O2000", "M30",
    ];

    static readonly Setup Plate = new()
    {
        IsPresent = true,
        Stock = new Box3(new Point3(0, 0, -12), new Point3(100, 60, 0)),
        Obstacles =
        [
            new BoxObstacle("clamp A", new Box3(new Point3(35, 0, 0), new Point3(45, 15, 25))),
            new CylinderObstacle("stud", 20, 30, 12, 0, 30),
        ],
        Supports = [new BoxObstacle("parallel", new Box3(new Point3(0, 0, -40), new Point3(100, 8, -12)))],
        Tools = [new Tool { Number = 1, Diameter = 10, PointAngle = 90, Length = 90 }, new Tool { Number = 2, Diameter = 6.8, PointAngle = 118, Length = 110, FluteLength = 40 }],
        WorkOffsets = ImmutableDictionary<int, Point3>.Empty.Add(54, new Point3(-300, -200, -400)),
    };

    static readonly Gen<MachineProfile> AnyMachine = Gen.Select(Gen.Int[0, (1 << 9) - 1], Gen.Int[0, 2], (bits, dwell) => MachineProfile.IsoMill with
    {
        IsChosen = (bits & 256) != 0,
        Readings = new Readings
        {
            Dwell = (DwellReading)dwell,
            Integers = (IntegerReading)(bits & 1),
            HolePositions = (HolePositionReading)(bits >> 1 & 1),
            ReturnLevel = (ReturnLevelReading)(bits >> 2 & 1),
            RapidPath = (RapidPathReading)(bits >> 3 & 1),
            StopsAct = (StopReading)(bits >> 4 & 1),
            IncrementalR = (IncrementalRReading)(bits >> 5 & 1),
            RapidsEndCycle = (bits & 64) != 0,
            ToolChange = (ToolChangeReading)(bits >> 7 & 1),
            ArcCentre = (ArcCentreReading)(bits >> 7 & 1),
            LengthOffset = (LengthOffsetReading)(bits >> 6 & 1),
            Repeats = (RepeatReading)(bits >> 5 & 1),
        },
    });

    static readonly Gen<string[]> Lines = Gen.Int[0, Blocks.Length - 1].Select(i => Blocks[i]).Array[1, 30];

    /// <summary>Random programs under every combination of readings, random edits: the same findings and holes as from scratch.</summary>
    [Fact]
    public void Analysis_after_edits_equals_analysis_from_scratch() =>
        Gen.Select(AnyMachine, Lines.Array[1, 12], Gen.Select(Gen.Double[0, 1], Gen.Double[0, 1], Lines).Array[1, 5]).Sample((machine, start, edits) =>
        {
            var text = SourceText.From(string.Join('\n', start.SelectMany(lines => lines)));
            var analysis = ProgramAnalysis.Create(text, Plate, machine);
            foreach (var (a, b, insert) in edits)
            {
                var from = (int)(Math.Min(a, b) * text.Length);
                var to = from + (int)((Math.Max(a, b) - Math.Min(a, b)) * Math.Min(40, text.Length - from));
                text = text.WithChange(from, to, System.Text.Encoding.UTF8.GetBytes(string.Join('\n', insert)));
                analysis = analysis.WithText(text);
                var fresh = ProgramAnalysis.Create(SourceText.From(text.ToBytes()), Plate, machine);
                TellTheSame(fresh, analysis);
            }
        }, iter: 300);

    static readonly Gen<string[]> SteeredLines = Gen.OneOf(
        Gen.Int[0, Blocks.Length + 2 * Steering.Length - 1].Select(i => i < Blocks.Length ? Blocks[i] : Steering[(i - Blocks.Length) / 2]).Array[1, 12],
        Gen.Int[0, 20].Select(i => Blocks[i]).Array[1, 6]);

    /// <summary>The same for programs with loops, jumps and calls, and for edits that make a straight program one of these or the other way round.</summary>
    [Fact]
    public void Analysis_of_steered_programs_after_edits_equals_analysis_from_scratch()
    {
        var (steered, straight) = (0, 0);
        Gen.Select(AnyMachine, SteeredLines.Array[1, 4], Gen.Select(Gen.Double[0, 1], Gen.Double[0, 1], SteeredLines).Array[1, 5]).Sample((machine, start, edits) =>
        {
            var options = AnalysisOptions.Default with { MostBlocks = 3000 };
            var text = SourceText.From(string.Join('\n', start.SelectMany(lines => lines)));
            var analysis = ProgramAnalysis.Create(text, Plate, machine, options);
            foreach (var (a, b, insert) in edits)
            {
                var from = (int)(Math.Min(a, b) * text.Length);
                var to = from + (int)((Math.Max(a, b) - Math.Min(a, b)) * Math.Min(300, text.Length - from));
                text = text.WithChange(from, to, System.Text.Encoding.UTF8.GetBytes(string.Join('\n', insert)));
                analysis = analysis.WithText(text);
                var fresh = ProgramAnalysis.Create(SourceText.From(text.ToBytes()), Plate, machine, options);
                TellTheSame(fresh, analysis);
                Interlocked.Increment(ref analysis.Main.Flow is null ? ref straight : ref steered);
            }
        }, iter: 300);
        Assert.True(steered > 300 && straight > 10, $"{steered} steered, {straight} straight");
    }

    /// <summary>Blocks of programs that do no more than call: those that set variables, and those that call, once or more often.</summary>
    static readonly string[] Calling =
        ["M98 P2000", "M98 P2001", "M98 P2000 L3", "M98 P2001 L2", "G65 P2000 A4", "G65 P2001 B2 L2", "#1=#1+1", "#101=#101+1", "X#101", "G81 X#1 Y5 Z-5 R2"];

    /// <summary>Blocks that make the run lead elsewhere, end where none was, or lose its way.</summary>
    static readonly string[] Bounds = ["O2000", "M99", "M99 P10", "", "GOTO 10", "%", "M30", "M98 P77", "M98 P2000 L#1"];

    static readonly Gen<string> CallingLine = Gen.Int[0, Blocks.Length + 4 * Calling.Length - 1].Select(i => i < Blocks.Length ? Blocks[i] : Calling[(i - Blocks.Length) / 4]).Where(line => line is not ("M30" or "%" or "O2000") && !line.StartsWith("IF", StringComparison.Ordinal));

    static readonly Gen<string> CallingProgram = Gen.Select(CallingLine.Array[5, 40], CallingLine.Array[0, 10], CallingLine.Array[0, 10]).Select((main, first, second) =>
        string.Join('\n', [.. Blocks[..1], .. main, "M30", "O2000", .. first.Where(line => !line.Contains("P2000", StringComparison.Ordinal)), "M99", "O2001", .. second.Where(line => !line.Contains("P2001", StringComparison.Ordinal)), "M99"]));

    /// <summary>The same for programs that do no more than call, and for edits of a line or a few: of these runs much is gone over.</summary>
    [Fact]
    public void Analysis_of_calling_programs_after_small_edits_equals_analysis_from_scratch()
    {
        var (edited, goneOver) = (0, 0);
        Gen.Select(AnyMachine, CallingProgram, Gen.Select(Gen.Double[0, 1], Gen.Int[0, 2], Gen.OneOf(CallingLine.Array[0, 2], CallingLine.Array[0, 2], Gen.Int[0, Bounds.Length - 1].Select(i => Bounds[i..(i + 1)]))).Array[1, 6]).Sample((machine, start, edits) =>
        {
            var options = AnalysisOptions.Default with { MostBlocks = 1000 };
            var text = SourceText.From(start);
            var analysis = ProgramAnalysis.Create(text, Plate, machine, options);
            foreach (var (where, gone, insert) in edits)
            {
                var line = (int)(where * (text.LineCount - 1));
                var (from, to) = (text.OffsetOf(line, 0), text.OffsetOf(Math.Min(line + gone, text.LineCount - 1), 0));
                text = text.WithChange(from, to, System.Text.Encoding.UTF8.GetBytes(string.Concat(insert.Select(block => block + "\n"))));
                analysis = analysis.WithText(text);
                var fresh = ProgramAnalysis.Create(SourceText.From(text.ToBytes()), Plate, machine, options);
                TellTheSame(fresh, analysis);
                Assert.Equal(fresh.Main.Flow?.BlocksFollowed, analysis.Main.Flow?.BlocksFollowed);
                Assert.Equal(fresh.Main.Flow?.Passages.OrderBy(led => led.Key), analysis.Main.Flow?.Passages.OrderBy(led => led.Key));
                Interlocked.Increment(ref edited);
                if (analysis.Main.Flow is not null && analysis.Main.BlocksRun < fresh.Main.BlocksRun)
                    Interlocked.Increment(ref goneOver);
            }
        }, iter: 500);
        Assert.True(goneOver > 100, $"{edited} edits, {goneOver} that left stretches of a run that calls as they were");
    }

    static void TellTheSame(ProgramAnalysis fresh, ProgramAnalysis edited)
    {
        Assert.Equal(fresh.Findings.ToList(), edited.Findings.ToList());
        Assert.Equal(HolesOf(fresh), HolesOf(edited));
        Assert.Equal(CoordinatesOf(fresh), CoordinatesOf(edited));
        Assert.Equal(fresh.Main.Blocks, edited.Main.Blocks);
        Assert.Equal(fresh.Main.Exit, edited.Main.Exit);
        Assert.Equal(fresh.Main.Flow?.Runs, edited.Main.Flow?.Runs);
    }

    /// <summary>The coordinates that places of each block are meant in.</summary>
    static List<WorkCoordinates> CoordinatesOf(ProgramAnalysis analysis)
    {
        var coordinates = new List<WorkCoordinates>();
        foreach (var part in analysis.Main.Results)
            for (var block = 0; block < part.Sets.Length; block++)
                coordinates.Add(part.CoordinatesAt(block));
        return coordinates;
    }

    /// <summary>Nothing is known where another program begins behind the end of one, wherever the text is cut into chunks before it.</summary>
    [Fact]
    public void The_coordinates_behind_another_programs_beginning_hang_on_no_chunk()
    {
        for (var lines = 100; lines < 140; lines++)
        {
            var text = "O1\nG21 G17 G90\nT1 M6\nG54 G0 X0 Y0\nG92 X5\nM30\n" + string.Concat(Enumerable.Repeat("(between)\n", lines)) + "O2\nG21 G17 G90\nG81 X7 Y7 Z-5 R2 F100\nX8\nM30\n";
            var coordinates = CoordinatesOf(ProgramAnalysis.Create(SourceText.From(text), Plate, MachineProfile.IsoMill));
            Assert.Equal(lines + 12, coordinates.Count);
            Assert.True(coordinates[6].IsKnown);
            Assert.All(coordinates.Skip(lines + 6).SkipLast(2), known => Assert.False(known.IsKnown));
        }
    }

    static List<HoleResult> HolesOf(ProgramAnalysis analysis)
    {
        var holes = new List<HoleResult>();
        for (var part = 0; part < analysis.Main.Results.Length; part++)
            foreach (var hole in analysis.Main.Results[part].Holes)
                holes.Add(hole with { Line = analysis.Main.LineOf(part, hole.Line), CutsBefore = 0 }); // counted within the part, which edits cut otherwise
        return holes;
    }

    /// <summary>Typing a digit costs a chunk or two of blocks wherever in a long program it happens.</summary>
    [Theory]
    [InlineData(0.0)]
    [InlineData(0.3)]
    [InlineData(0.999)]
    public void A_keystroke_runs_few_blocks(double where)
    {
        var program = "G21 G90 G17 G54\nT1 M6\nG43 H1 Z50\nS1200 M3\nF120\n"
            + string.Concat(Enumerable.Range(0, 20_000).Select(i => i % 50 == 0 ? "G0 Z50\nG0 X0 Y0\n" : $"N{i} G1 X{i % 90} Y{i % 40} Z-1\n")) + "M30\n";
        var analysis = ProgramAnalysis.Create(SourceText.From(program), Plate, MachineProfile.IsoMill with { IsChosen = true });
        var line = 6 + (int)(where * 20_000);
        var at = analysis.Text.OffsetOf(line, analysis.Text.Line(line).Length);
        var edited = analysis.WithText(analysis.Text.WithChange(at, at, "1"u8));
        Assert.InRange(edited.BlocksRun, 1, 400);
    }

    /// <summary>The same where the program calls, whether the edit is in a line or adds one.</summary>
    [Theory]
    [InlineData(0.0, "1")]
    [InlineData(0.5, "1")]
    [InlineData(0.999, "1")]
    [InlineData(0.0, "\nG4 P1")]
    [InlineData(0.5, "\nG4 P1")]
    [InlineData(0.5, "\n")]
    public void A_keystroke_in_a_program_that_calls_runs_few_blocks(double where, string typed)
    {
        var main = "G21 G90 G17 G54\nT1 M6\nG43 H1 Z50\nS1200 M3\nF120\n"
            + string.Concat(Enumerable.Range(0, 20_000).Select(i => i % 50 == 0 ? "M98 P2000\n" : $"N{i} G1 X{i % 90} Y{i % 40} Z-1\n")) + "M30\n";
        var analysis = ProgramAnalysis.Create(SourceText.From(main + "O2000\nG0 Z50\nG4 P1\nG0 X0 Y0\nM99\n"), Plate, MachineProfile.IsoMill with { IsChosen = true });
        var line = 7 + (int)(where * 20_000);
        var at = analysis.Text.OffsetOf(line, analysis.Text.Line(line).Length);
        var edited = analysis.WithText(analysis.Text.WithChange(at, at, System.Text.Encoding.ASCII.GetBytes(typed)));
        Assert.NotNull(edited.Main.Flow);
        Assert.InRange(edited.BlocksRun, 1, 1_000);
        Assert.Equal(ProgramAnalysis.Create(edited.Text, Plate, edited.Machine).Findings.ToList(), edited.Findings.ToList());
    }

    /// <summary>Lines inserted at the top change no state: what stands below is not run again.</summary>
    [Fact]
    public void Lines_inserted_above_run_nothing_below()
    {
        var program = string.Concat(Enumerable.Range(0, 20_000).Select(i => $"G1 X{i % 90} Y{i % 40} F100\n"));
        var analysis = ProgramAnalysis.Create(SourceText.From(program), Plate, MachineProfile.IsoMill with { IsChosen = true });
        var edited = analysis.WithText(analysis.Text.WithChange(0, 0, "(plate)\n(first side)\n"u8));
        Assert.InRange(edited.BlocksRun, 1, 400);
    }

    [Fact]
    public void Cancelling_stops_a_long_analysis()
    {
        using var cancel = new CancellationTokenSource();
        cancel.Cancel();
        Assert.Throws<OperationCanceledException>(() => ProgramAnalysis.Create(SourceText.From("G0"), Plate, MachineProfile.IsoMill, null, cancel.Token));
    }
}
