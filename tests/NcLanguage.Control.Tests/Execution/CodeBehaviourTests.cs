using NcLanguage.Control.Codes;
using NcLanguage.Control.Execution;
using NcLanguage.Control.Moves;
using NcLanguage.Control.State;
using NcLanguage.Machine.Geometry;
using NcLanguage.Machine.Profiles;
using NcLanguage.Machine.Setups;

namespace NcLanguage.Control.Tests.Execution;

/// <summary>No code of the table is known and then ignored: for each a few blocks with it and the same without it, or with another one of its group,
/// make other moves or leave another state. What they make is tested elsewhere, against named sources.</summary>
public sealed class CodeBehaviourTests
{
    // Code | blocks with it | blocks without it. Blocks are parted by semicolons.
    const string Table = """
        G0    | G1 F100; G0 X5                          | G1 F100; X5
        G1    | G0; F100 G1 X5                          | G0; F100 X5
        G2    | F100 G1; G2 X10 I5                      | F100 G1; X10
        G3    | F100 G2; G3 X10 I5                      | F100 G2; X10 I5
        G4    | G4 P1                                   | P1
        G9    | F6000 G1 G9 X50                         | F6000 G1 X50
        G10   | G10 L2 P1 Z5                            |
        G15   | G16; G15; G0 X5 Y5                      | G16; G0 X5 Y5
        G16   | G16 G0 X5 Y5                            | G0 X5 Y5
        G17   | G18; G17; F100; G2 X10 R9               | G18; F100; G2 X10 R9
        G18   | G18; F100; G2 X10 R9                    | F100; G2 X10 R9
        G19   | G19; G81 X-9 R1 F100                    | G81 X-9 R1 F100
        G20   | G20 G0 X1                               | G0 X1
        G21   | G20; G21; G0 X1                         | G20; G0 X1
        G28   | G28 Z0                                  |
        G30   | G30 Z0                                  |
        G31   | G1; F10; G31 Z-1                        | G1; F10; Z-1
        G33   | M3 S100; G1 F1; G33 Z-1 K2              | M3 S100; G1 F1; Z-1
        G38.2 | G1 F10; G38.2 Z-1                       | G1 F10; Z-1
        G38.3 | G1 F10; G38.3 Z-1                       | G1 F10; Z-1
        G38.4 | G1 F10; G38.4 Z-1                       | G1 F10; Z-1
        G38.5 | G1 F10; G38.5 Z-1                       | G1 F10; Z-1
        G40   | G41 D1; G40                             | G41 D1
        G41   | G41 D1                                  | D1
        G42   | G42 D1                                  | G41 D1
        G43   | G43 H1                                  | H1
        G44   | G44 H1                                  | G43 H1
        G49   | G43 H1; G49                             | G43 H1
        G50   | G51 P2; G50; G0 X5                      | G51 P2; G0 X5
        G50.1 | G51.1 X0; G50.1 X0; G0 X5               | G51.1 X0; G0 X5
        G51   | G51 P2; G0 X5                           | G0 X5
        G51.1 | G51.1 X0; G0 X5                         | G0 X5
        G52   | G52 X5; G0 X5                           | G0 X5
        G53   | G0 G53 X5                               | G0 X5
        G54   | G55; G54                                | G55
        G54.1 | G54.1 P1                                | P1
        G55   | G55                                     |
        G56   | G56                                     |
        G57   | G57                                     |
        G58   | G58                                     |
        G59   | G59                                     |
        G59.1 | G59.1                                   |
        G59.2 | G59.2                                   |
        G59.3 | G59.3                                   |
        G60   | G60; F6000; G1 X50                      | F6000; G1 X50
        G61   | G64; G61                                | G64
        G61.1 | G61.1; F6000; G1 X50                    | F6000; G1 X50
        G62   | G62                                     |
        G64   | G64                                     |
        G65   | G65 P9                                  | P9
        G68   | G68 X0 Y0 R30; G0 X5                    | G0 X5
        G69   | G68 X0 Y0 R30; G69; G0 X5               | G68 X0 Y0 R30; G0 X5
        G70   | G70 G0 X1                               | G0 X1
        G71   | G70; G71; G0 X1                         | G70; G0 X1
        G73   | F100; G73 X1 Z-9 R2 Q3                  | F100; G83 X1 Z-9 R2 Q3
        G74   | F100 M4; G74 X1 Z-9 R2                  | F100 M4; G81 X1 Z-9 R2
        G76   | F100 M3; G76 X1 Z-9 R2 Q1               | F100 M3; G81 X1 Z-9 R2
        G80   | F100; G81 X1 Z-9 R2; G80; G0 X5         | F100; G81 X1 Z-9 R2; X5
        G81   | F100; G81 X1 Z-9 R2                     | F100; G0 X1 Z-9
        G82   | F100; G82 X1 Z-9 R2 P1                  | F100; G81 X1 Z-9 R2
        G83   | F100; G83 X1 Z-9 R2 Q3                  | F100; G81 X1 Z-9 R2
        G84   | F100 M3; G84 X1 Z-9 R2                  | F100 M3; G81 X1 Z-9 R2
        G85   | F100; G85 X1 Z-9 R2                     | F100; G81 X1 Z-9 R2
        G86   | F100 M3; G86 X1 Z-9 R2 P1               | F100 M3; G81 X1 Z-9 R2
        G87   | F100 M3; G87 X1 Z-9 R2 I1 K-3           | F100 M3; G81 X1 Z-9 R2
        G88   | F100 M3; G88 X1 Z-9 R2 P1               | F100 M3; G82 X1 Z-9 R2 P1
        G89   | F100; G89 X1 Z-9 R2 P1                  | F100; G82 X1 Z-9 R2 P1
        G90   | G91; G90; G0 X5                         | G91; G0 X5
        G91   | G91 G0 X5; X5                           | G0 X5; X5
        G92   | G92 X5                                  |
        G92.1 | G92 X5; G92.1                           | G92 X5
        G92.2 | G92 X5; G92.2                           | G92 X5
        G92.3 | G92 X5; G92.2; G92.3                    | G92 X5; G92.2
        G93   | G93; G1 X5 F2                           | G1 X5 F2
        G94   | G95; G94; G1 X5 F2                      | G95; G1 X5 F2
        G95   | G95; M3 S50; G1 X5 F2                   | M3 S50; G1 X5 F2
        G96   | G96 S50                                 | S50
        G97   | G96; G97; S50                           | G96; S50
        G98   | F100; G99; G98 G81 X1 Z-9 R2            | F100; G99; G81 X1 Z-9 R2
        G99   | F100; G98; G99 G81 X1 Z-9 R2            | F100; G98; G81 X1 Z-9 R2
        M0    | M0                                      |
        M1    | M1                                      |
        M2    | G91; M2                                 | G91
        M3    | M3                                      |
        M4    | M4                                      | M3
        M5    | M3; M5                                  | M3
        M6    | T1; M6                                  | T1
        M7    | M7                                      |
        M8    | M8                                      | M7
        M9    | M8; M9                                  | M8
        M19   | M3; M19                                 | M3
        M29   | F100 M29 S50; G84 X1 Z-9 R2             | F100 S50; G84 X1 Z-9 R2
        M30   | G91; M30                                | G91
        M48   | M49; M48                                | M49
        M49   | M49                                     |
        M60   | M60                                     |
        M98   | M98 P9                                  | P9
        M99   | M99                                     |
        """;

    static readonly Setup Job = OrderTests.Datum with
    {
        WorkOffsets = OrderTests.Datum.WorkOffsets.Add(55, new Point3(-250, -180, -390)),
        Tools = [new Tool { Number = 1, Length = 80 }],
    };

    static readonly Dictionary<string, (string With, string Without)> Proofs = Table.Split('\n')
        .Select(row => row.Split('|', StringSplitOptions.TrimEntries)).ToDictionary(row => row[0], row => (row[1], row[2]));

    public static TheoryData<string> Codes => [.. CodeTable.All.Select(row => row.Text)];

    [Theory]
    [MemberData(nameof(Codes))]
    public void Does_something(string code)
    {
        var (with, without) = Proofs[code];
        Assert.Contains(code, with.Split(' ', ';'));
        Assert.NotEqual(Run(code, without), Run(code, with));
    }

    /// <summary>The moves, where the run goes on and the state that the blocks leave; not what they have set or met on the way, which may change nothing.</summary>
    static (string Moves, ControlState State) Run(string code, string blocks)
    {
        var machine = code is "G70" or "G71" ? OrderTests.Reading(r => r with { Units = UnitReading.G70G71 }) : MachineProfile.IsoMill;
        var session = new Session(machine, Job, new Point3(0, 0, 20)).Run(blocks.Split(';', StringSplitOptions.TrimEntries));
        var moves = session.Moves.Where(move => !(move.IsMotion && move.Length == 0))
            .Select(move => $"{move.Kind} {move.To.X:R} {move.To.Y:R} {move.To.Z:R} {move.Center.X:R} {move.Clockwise} {move.Feed:R} {move.Seconds:R}");
        return ($"{string.Join('\n', moves)} {session.Step.Transfer.Kind}", session.State with { Set = Slot.None, Happened = Happened.None, IncrementalUse = IncrementalUse.None, Started = true });
    }
}
