using NcLanguage.Checks.Analysis;
using NcLanguage.Checks.Tests.Rules;
using NcLanguage.Machine.Geometry;
using NcLanguage.Machine.Profiles;
using NcLanguage.Machine.Setups;

namespace NcLanguage.Checks.Tests.Program;

/// <summary>Programs with loops, conditions and calls as they are commonly written, with nothing wrong in them: nothing is found. Common practice, from memory.</summary>
public sealed class SoundSteeredProgramTests
{
    const string Modes = "G21 G90 G17 G54 G94 G40 G49 G80\n";
    const string Start = Modes + "T1 M6\nS2000 M3\nG43 H1 G0 Z50 M8\n";
    const string End = "G0 Z50 M9\nM5\nG28 G91 Z0\nG90\nM30\n";

    public static TheoryData<string> Programs() =>
    [
        // Rows of holes: the cycle in front, the positions in a subprogram, once for each tool.
        "O1\n" + Modes + "T1 M6\nS2000 M3\nG43 H1 G0 Z50 M8\nX0 Y0\nG99 G81 X10 Y10 Z-3 R2 F100\nM98 P100\nG80\nG0 Z50 M9\nM5\n"
            + "G28 G91 Z0\nG90\nT2 M6\nS1500 M3\nG43 H2 G0 Z50 M8\nX0 Y0\nG99 G83 X10 Y10 Z-20 R2 Q4 F80\nM98 P100\nG80\n" + End + "O100\nX20\nX30\nY20\nX20\nX10\nM99\n",
        // The cycle within the subprogram, ended by the caller.
        "O1\n" + Start + "X0 Y0\nM98 P100\nG80\n" + End + "O100\nG98 G82 X10 Y10 Z-3 R2 P0.5 F100\nX20\nM99\n",
        // Levels of a pocket: each pass deeper.
        "O1\n" + Start + "G0 X10 Y10\nZ2\nG1 Z0 F100\nM98 P50004\n" + End + "O4\nG91 G1 Z-1 F100\nG90 X40 F300\nY30\nX10\nY10\nM99\n",
        // The same by a loop that goes down to a depth.
        "O1\n" + Start + "#1=0\nG0 X10 Y10\nZ2\nWHILE [#1 GT -5] DO1\n#1=#1-1\nG1 Z#1 F100\nX40 F300\nY30\nX10\nY10\nEND1\n" + End,
        // A grid by two loops.
        "O1\n" + Start + "#1=0\nWHILE [#1 LT 3] DO1\n#2=0\nWHILE [#2 LT 4] DO2\nG98 G81 X[10+#2*15] Y[10+#1*12] Z-5 R2 F100\n#2=#2+1\nEND2\n#1=#1+1\nEND1\nG80\n" + End,
        // With jumps.
        "O1\n" + Start + "#1=0\nN100 IF [#1 GE 6] GOTO 200\n#2=#1*60\nG98 G81 X[30*COS[#2]] Y[30*SIN[#2]] Z-5 R2 F100\n#1=#1+1\nGOTO 100\nN200 G80\n" + End,
        // A call with arguments, and one that looks whether an argument was given.
        "O1\n" + Start + "G65 P900 X50 Y50 R20 H6 Z-8 F120\nG80\n" + End
            + "O900\nIF [#1 EQ #0] THEN #1=0\n#30=0\nWHILE [#30 LT #11] DO1\n#31=#1+#30*360/#11\nG98 G81 X[#24+#18*COS[#31]] Y[#25+#18*SIN[#31]] Z#26 R2 F#9\n#30=#30+1\nEND1\nM99\n",
        // O words: a subroutine, its call and a repeated body.
        Modes.Replace("G80\n", "G80\n") + "O100 SUB\nG1 Z#1 F100\nG91\nO101 REPEAT [3]\nX10 F300\nY2\nX-10\nY2\nO101 ENDREPEAT\nG90\nG0 Z2\nX0 Y0\nO100 ENDSUB\nT1 M6\nS2000 M3\nG43 H1 G0 Z50 M8\nX0 Y0\nZ2\n"
            + "#5=-1\nO102 WHILE [#5 GE -3]\nO100 CALL [#5]\n#5=[#5-1]\nO102 ENDWHILE\n" + End,
        // A condition on what was measured: one way or the other, the same modes.
        "O1\n" + Start + "G0 X0 Y0\nZ5\nG31 Z-5 F50\n#100=#5063\nG0 Z5\nIF [#100 GT 0] GOTO 10\n#101=2\nGOTO 20\nN10 #101=1\nN20 G0 X20\nG1 Z-1 F100\nX40\n" + End,
        // Measured, then machined by it.
        "O1\n" + Start + "G0 X0 Y0\nZ5\nG31 Z-5 F50\n#100=#5063\nG0 Z5\nG0 X20\nG1 Z[#100-1] F100\nX40\n" + End,
        // A loop that tries again, with a counter.
        "O1\n" + Start + "#1=0\nN10 #1=#1+1\nG0 X0 Y0\nZ5\nG31 Z-5 F50\nG0 Z5\nIF [#1 GE 3] GOTO 20\nIF [#5063 LT -1] GOTO 10\nN20 G0 X20\n" + End,
        // A stop where a count was not given.
        "O1\n" + Start + "#100=4\nIF [#100 EQ #0] GOTO 900\nG0 X0 Y0\nZ2\nG1 Z-1 F100\nX[#100*10]\n" + End + "N900 M0\nM30\n",
        // A common variable that the setter may have set before, else a value of its own.
        "O1\n" + Start + "IF [#500 EQ #0] THEN #500=4\nG0 X0 Y0\nZ2\nG1 Z-1 F100\nX40\n" + End,
        // A contour with radius compensation in a subprogram, once rough and once fine.
        "O1\n" + Start + "G0 X-20 Y-20\nZ2\nG1 Z-2 F100\nM98 P100\nG0 Z2\nX-20 Y-20\nG1 Z-4 F100\nM98 P100\n" + End
            + "O100\nG41 D1 G1 X0 Y-12 F300\nY40\nX60\nY0\nX-12\nG40 X-20 Y-20\nM99\n",
        // Several parts under offsets of their own.
        "O1\n" + Start + "G54\nM98 P100\nG55\nM98 P100\nG54\n" + End + "O100\nG0 X10 Y10\nZ2\nG1 Z-2 F100\nX30\nG0 Z50\nM99\n",
        // By a shift of the datum.
        "O1\n" + Start + "#1=0\nWHILE [#1 LT 3] DO1\nG52 X[#1*40] Y0\nG0 X10 Y10\nZ2\nG1 Z-2 F100\nX30\nG0 Z50\n#1=#1+1\nEND1\nG52 X0 Y0\n" + End,
        // Back and forth in increments, with the direction in a variable.
        "O1\n" + Start + "#1=1\n#2=0\nG0 X0 Y0\nZ2\nG1 Z-1 F100\nG91\nWHILE [#2 LT 4] DO1\nG1 X[#1*50] F300\nY5\n#1=-#1\n#2=#2+1\nEND1\nG90\n" + End,
        // A subprogram that calls another, and a plain end of a long file.
        "%\nO1\n" + Start + "G0 X0 Y0\nM98 P10 L2\n" + End + "O10\nM98 P20\nG91 G0 X50\nG90\nM99\nO20\nG0 Z2\nG1 Z-1 F100\nG91 X5\nY5\nX-5\nY-5\nG90\nG0 Z2\nM99\n%\n",
        // Measured or not, as an option of the setter.
        "O1\n#500=1\n" + Start + "IF [#500 NE 1] GOTO 10\nG0 X0 Y0\nZ5\nG31 Z-5 F50\nG0 Z50\nN10 G0 X20 Y0\nZ2\nG1 Z-1 F100\nX40\n" + End,
        // A chosen size with ELSEIF.
        Start + "#1=2\nO1 IF [#1 EQ 1]\n#2=10\nO1 ELSEIF [#1 EQ 2]\n#2=20\nO1 ELSE\n#2=30\nO1 ENDIF\nG0 X0 Y0\nZ2\nG1 Z-1 F100\nX#2\n" + End,
        // A helix down in half turns.
        "O1\n" + Start + "G0 X10 Y0\nZ1\nG1 Z0 F100\n#1=0\nWHILE [#1 LT 4] DO1\n#1=#1+1\nG3 X-10 Y0 I-10 J0 Z[-#1+0.5] F200\nG3 X10 Y0 I10 J0 Z[-#1]\nEND1\nG1 X0\n" + End,
        // Tapping by a subprogram of positions.
        "O1\n" + Modes + "T1 M6\nS500 M3\nG43 H1 G0 Z50 M8\nX0 Y0\nG99 G84 X10 Y10 Z-10 R5 F500\nM98 P7\nG80\n" + End + "O7\nX20\nX30\nM99\n",
    ];

    /// <summary>A plate of 200 × 120 mm under its datum's corner, room all round, a drill and a mill.</summary>
    static readonly Setup Plate = new()
    {
        IsPresent = true,
        Stock = new Box3(new Point3(-60, -60, -30), new Point3(240, 160, 0)),
        Obstacles = [new BoxObstacle("clamp", new Box3(new Point3(400, 0, -30), new Point3(430, 30, 30)))],
        Tools = [new Tool { Number = 1, Diameter = 6, Length = 100 }, new Tool { Number = 2, Diameter = 5, Length = 110 }],
        WorkOffsets = Setup.None.WorkOffsets.Add(54, new Point3(-400, -300, -400)).Add(55, new Point3(-100, -300, -400)),
    };

    [Theory]
    [MemberData(nameof(Programs))]
    public void Nothing_is_found(string program) => Assert.Equal([], Tell(Check.Analyse(program)));

    /// <summary>Nor, but for notes, where a stock, a clamp and tools are given.</summary>
    [Theory]
    [MemberData(nameof(Programs))]
    public void Nothing_is_wrong_under_a_setup(string program) =>
        Assert.DoesNotContain(Tell(Check.Analyse(program, setup: Plate)), told => !told.Contains(" Note ", StringComparison.Ordinal));

    /// <summary>Nor where no machine is chosen, but for what other controls do otherwise.</summary>
    [Theory]
    [MemberData(nameof(Programs))]
    public void Nothing_is_wrong_where_the_control_is_not_known(string program) =>
        Assert.DoesNotContain(Tell(Check.Analyse(program, machine: MachineProfile.IsoMill)), told => !told.Contains("read-differently", StringComparison.Ordinal));

    /// <summary>That the way hangs on what is measured, or a path on a radius that is not given, is said, and no fault.</summary>
    static IEnumerable<string> Tell(ProgramAnalysis analysis) => analysis.Findings.Where(finding => finding.Name != "path-not-known")
        .Select(finding => $"{finding.Line + 1}: {finding.Severity} {finding.Name}: {finding.Message}");
}
