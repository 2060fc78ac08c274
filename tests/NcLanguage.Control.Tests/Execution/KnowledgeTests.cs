using CsCheck;
using NcLanguage.Control.Execution;
using NcLanguage.Control.State;
using NcLanguage.Machine.Geometry;
using NcLanguage.Machine.Setups;

namespace NcLanguage.Control.Tests.Execution;

/// <summary>Properties of random programs: offsets add up, and what is said to be known is so.</summary>
public sealed class KnowledgeTests
{
    static readonly Setup Full = Setup.None with
    {
        IsPresent = true,
        WorkOffsets = Setup.None.WorkOffsets.Add(54, new Point3(-300, -200, -400)).Add(55, new Point3(-250, -180, -390)).Add(591, new Point3(-1, -2, -3)),
        Tools = [new Tool { Number = 1, Length = 80, Diameter = 6 }, new Tool { Number = 2, Length = 120 }],
        Variables = Setup.None.Variables.Add("#1", 3).Add("#2", 25),
    };

    static readonly Point3 StartPlace = new(10, 20, 30);

    static readonly Gen<string[]> Programs = Gen.OneOf(
        Gen.OneOf("G54", "G55", "G59.1", "G54.1 P1", "G43 H1", "G43 H2", "G44 H1", "G49", "G43 H#1", "T1 M6", "G92.1", "G92.2", "G92.3",
            "G28", "G91 G28 Z0", "G90 G28 X5 Y5", "G80", "G40", "G69", "G20", "G21", "G17", "G18", "G19", "G98", "G99", "G4 P1", "M98 P5", "G10 L2 P1 X1", "G91 G10 L2 P1 Y5 Z1", "G90 G10 L2 P2 X-240 Z-380", "G10 L20 P1 X7 Z3", "G10 L20 P2 Y4", "G10 L10 P1 R85", "G10 L11 P1 R-1",
            "G91 G10 L10 P2 R2", "G10 L2 P#1 X3", "G10 L3 P1",
            "G53 G0 Z0", "G53 G1 X-50 F100", "G41 D1", "G42 D1 G1 F50 X20 Y-20", "G40 X3", "G41", "X9 Y9", "G68 X1 Y1 R10", "G68 R-90", "G91 G68 R20", "G51 P2", "G51 X5 Y5 I-1 J0.5", "G51 X0 Z10 K-2", "G50", "G51.1 X0", "G51.1 Y5 Z1", "G50.1 X0", "G50.1", "G16", "G15", "G38.2 Z-1 F1", "#1=4", "#2=#1", "F#1", "G94 F200", "G95 F0.1", "G93 F2", "M3 S#2",
            "G0 G90", "G1 G91", "X#1", "G90 G0 X0 Y0 Z50", "G82 X5 Z-3 R2 P#1 F50", "G81 R4", "Z-5", "G83 X3 Z-9 R1 Q#1", "G80 G0 Z20", "GOTO 5", "G#1"),
        Gen.Select(Gen.OneOf("G0", "G1", "", "G52", "G92", "G81 Z-4 R2", "G99 G85 Z-6 R3", "G90", "G91", "G2 R50"), Gen.OneOf("X", "Y", "Z", "X5 Y"), Gen.Int[-40, 40])
            .Select((code, axis, number) => $"{code} {axis}{number}")).Array[1, 14];

    /// <summary>Machine position − position is the sum of datum, shift and length, whenever all of them are known.</summary>
    [Fact]
    public void Offsets_add_up() => Programs.Sample(program =>
    {
        var session = new Session(setup: Full, start: StartPlace);
        foreach (var block in program)
        {
            session.Run(block);
            ref readonly var state = ref session.State;
            if (state.NotFollowed != NotFollowed.None || state.OffsetData is { IsLost: true })
                continue;
            var length = state.H == 0 ? 0 : state.OffsetData?.Length(state.H)?.Sum ?? Full.FindLengthOffset(state.H)?.Length ?? double.NaN;
            var sum = (state.OffsetData?.Datum(state.WorkOffset)?.Origin ?? Full.WorkOffsets.GetValueOrDefault(state.WorkOffset, Point3.Unknown))
                + state.Shift + state.LocalShift + new Point3(0, 0, state.LengthOffset switch
                {
                    LengthOffsetMode.Off => 0,
                    LengthOffsetMode.Plus => length,
                    LengthOffsetMode.Minus => -length,
                    _ => double.NaN,
                });
            for (var axis = 0; axis < 3; axis++)
            {
                var difference = state.MachinePosition[axis] - state.Position[axis] - sum[axis];
                if (Math.Abs(difference) > 1e-6)
                    return false;
            }
        }
        return true;
    }, iter: 6000);

    /// <summary>A control that knows less than another about the same job never says anything else, only less: nothing becomes known by guessing.</summary>
    [Fact]
    public void Less_knowledge_never_gives_other_values() => Gen.Select(RobustnessTests.AnyMachine, Programs, Gen.Int[0, 63]).Sample((machine, program, lacking) =>
    {
        var full = new Session(machine, Full, StartPlace);
        var partial = new Session(machine, Partial(lacking));
        if ((lacking & 32) == 0)
            (partial.State.Position, partial.State.MachinePosition) = (StartPlace, full.State.MachinePosition);
        foreach (var block in program)
        {
            full.Clear().Run(block);
            partial.Clear().Run(block);
            var (knows, says) = (full.State, partial.State);
            // Where the radius is not known, places are those programmed, and are said to be.
            if ((says.NotFollowed & NotFollowed.Compensation) != 0 || says.Compensation == CompensationSide.Unknown)
                return;
            Agree(knows.Position, says.Position, block);
            Agree(knows.MachinePosition, says.MachinePosition, block);
            Agree(knows.Shift, says.Shift, block);
            Agree(knows.LocalShift, says.LocalShift, block);
            if (knows.ProgramFrame is not null && says.ProgramFrame is not null)
                Agree(knows.Programmed, says.Programmed, block);
            Agree(full.Step.ToMachine, partial.Step.ToMachine, block);
            Agree(new Point3(knows.Feed, knows.Speed, knows.RLevel), new Point3(says.Feed, says.Speed, says.RLevel), block);
            Agree(new Point3(knows.Bottom, knows.InitialLevel, knows.DwellNumber), new Point3(says.Bottom, says.InitialLevel, says.DwellNumber), block);
            if (full.Holes.Count == partial.Holes.Count)
                foreach (var (a, b) in full.Holes.Zip(partial.Holes))
                {
                    Agree(new Point3(a.X, a.Y, a.Bottom), new Point3(b.X, b.Y, b.Bottom), block);
                    Agree(new Point3(a.ArriveAt, a.ReturnTo, a.DwellSeconds), new Point3(b.ArriveAt, b.ReturnTo, b.DwellSeconds), block);
                }
        }
    }, iter: 10000);

    static Setup Partial(int lacking) => Full with
    {
        WorkOffsets = Full.WorkOffsets
            .RemoveRange((lacking & 1) != 0 ? [54] : [])
            .RemoveRange((lacking & 2) != 0 ? [55] : [])
            .RemoveRange((lacking & 4) != 0 ? [591] : []),
        Tools = (lacking & 8) != 0 ? [new Tool { Number = 1 }] : Full.Tools,
        Variables = (lacking & 16) != 0 ? Setup.None.Variables : Full.Variables,
    };

    static void Agree(Point3 knows, Point3 says, string block)
    {
        for (var axis = 0; axis < 3; axis++)
            // Where codes not followed leave even the better informed one without a value, there is nothing to compare with.
            if (Math.Abs(knows[axis] - says[axis]) > 1e-6)
                Assert.Fail($"{block}: {says} where {knows} is right");
    }
}
