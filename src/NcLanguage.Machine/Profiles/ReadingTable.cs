using System.Collections.Immutable;

namespace NcLanguage.Machine.Profiles;

/// <summary>All readings: the one table that the file reader, the schema, the options and the explanations share.</summary>
public static class ReadingTable
{
    public static ImmutableArray<Reading> All { get; } =
    [
        new(
            "dwell", "The unit of a dwell's number.",
            "A dwell meant as half a second lasts eight minutes, or is over before the spindle has turned once.",
            [
                new("milliseconds", "P500 waits half a second."),
                new("seconds", "P0.5 waits half a second."),
                new("byPoint", "P500 is milliseconds, P0.5 (and X0.5 with G4) is seconds: the decimal point decides."),
            ],
            r => (int)r.Dwell, (r, i) => r with { Dwell = (DwellReading)i }),
        new(
            "integers", "What a length without a decimal point means.",
            "A missing point makes a move a thousand times too short or too long.",
            [
                new("whole", "X15 is 15 mm."),
                new("increments", "X15 is 15 least increments: 0.015 mm, or 0.0015 inch."),
            ],
            r => (int)r.Integers, (r, i) => r with { Integers = (IntegerReading)i }),
        new(
            "holePositions", "What X and Y of a block inside a cycle count from.",
            "The same text drills its holes in different places.",
            [
                new("distanceMode", "G90 and G91 rule X and Y inside a cycle as they do outside."),
                new("incremental", "X and Y inside a cycle are always distances from where the tool stands; Z and R still follow G90 and G91."),
            ],
            r => (int)r.HolePositions, (r, i) => r with { HolePositions = (HolePositionReading)i }),
        new(
            "returnLevel", "When G98 and G99 act.",
            "A traverse that clears a clamp on one control goes through it on another.",
            [
                new("afterHole", "After the hole of their block: the traverse to a hole runs at the level that the hole before left."),
                new("beforeMove", "Every hole ends at its R level; a block under G98 first lifts to the initial level, then traverses."),
            ],
            r => (int)r.ReturnLevel, (r, i) => r with { ReturnLevel = (ReturnLevelReading)i }),
        new(
            "rapidPath", "The path of a rapid that moves several axes.",
            "The straight line clears an obstacle, the bent path does not.",
            [
                new("straight", "The tool runs along the straight line."),
                new("perAxis", "Each axis runs at its own rate until it arrives, so the path bends."),
            ],
            r => (int)r.RapidPath, (r, i) => r with { RapidPath = (RapidPathReading)i }),
        new(
            "repeats", "The address that counts the repeats of a cycle.",
            "A row of holes becomes one hole, or the control stops at a word it does not know.",
            [
                new("L", "L4 drills four times."),
                new("K", "K4 drills four times."),
            ],
            r => (int)r.Repeats, (r, i) => r with { Repeats = (RepeatReading)i }),
        new(
            "arcCentre", "What I, J and K of an arc count from.",
            "The arc runs about another centre.",
            [
                new("incremental", "From the arc's start."),
                new("absolute", "From the program's zero point."),
            ],
            r => (int)r.ArcCentre, (r, i) => r with { ArcCentre = (ArcCentreReading)i }),
        new(
            "toolChange", "The word that changes the tool.",
            "The program cuts on with the tool before.",
            [
                new("M6", "T readies a tool, M6 changes it."),
                new("T", "The T word changes the tool at once."),
            ],
            r => (int)r.ToolChange, (r, i) => r with { ToolChange = (ToolChangeReading)i }),
        new(
            "units", "The codes that select inch and millimetre.",
            "Every length is taken 25.4 times too large or too small.",
            [
                new("G20/G21", "G20 is inch, G21 is millimetre."),
                new("G70/G71", "G70 is inch, G71 is millimetre."),
            ],
            r => (int)r.Units, (r, i) => r with { Units = (UnitReading)i }),
        new(
            "lengthOffset", "What applies the length of a tool.",
            "The tool comes down by its whole length too far, or stays above the part.",
            [
                new("G43", "G43 with an H word."),
                new("withTool", "The tool change itself."),
            ],
            r => (int)r.LengthOffset, (r, i) => r with { LengthOffset = (LengthOffsetReading)i }),
        new(
            "stopsAct", "When M5 and M9 act in a block that also moves.",
            "The last cut is made without spindle or coolant.",
            [
                new("beforeMotion", "Before the motion."),
                new("afterMotion", "After the motion."),
            ],
            r => (int)r.StopsAct, (r, i) => r with { StopsAct = (StopReading)i }),
        new(
            "incrementalR", "What the R of a cycle counts from under G91.",
            "The R level lies higher or lower than meant.",
            [
                new("presentLevel", "From the level where the tool stands when the block is met."),
                new("initialLevel", "From the initial level, where the tool stood before the first block of the cycle."),
            ],
            r => (int)r.IncrementalR, (r, i) => r with { IncrementalR = (IncrementalRReading)i }),
        new(
            "peckReturn", "How far the tool comes out between the pecks of G83.",
            "Deep holes take more or less time than is told, and the tool goes up and down another way than expected.",
            [
                new("returnLevel", "To the level at which the hole is left: the initial level under G98, the R level under G99."),
                new("rLevel", "To the R level, under G98 as under G99; only the way out behind the last peck goes to the initial level."),
            ],
            r => (int)r.PeckReturn, (r, i) => r with { PeckReturn = (PeckReturnReading)i }),
        new(
            "zeroRepeats", "What 0 repeats in a block of a cycle mean.",
            "The control stops where the cycle was only to be kept for the places of a subprogram.",
            [
                new("alarm", "They are refused: the control stops with an alarm."),
                new("keepsCycle", "The cycle and its words are kept for the blocks that follow, and nothing is drilled."),
            ],
            r => (int)r.ZeroRepeats, (r, i) => r with { ZeroRepeats = (ZeroRepeatsReading)i }),
        new(
            "backBoring", "Which words give the levels of back boring (G87).",
            "The bar strikes the part from below, or bores at another depth.",
            [
                new("fromZToK", "Z is the level below the part where the bar begins, K the level that it bores up to; then it goes down again and out. R lies above the part."),
                new("fromRToZ", "R is the level below the part where the bar begins, Z the level that it bores up to; there it stops, steps aside and goes up to the initial level."),
            ],
            r => (int)r.BackBoring, (r, i) => r with { BackBoring = (BackBoringReading)i }),
        new(
            "rapidsEndCycle", "Whether G0, G1, G2 and G3 end a cycle.",
            "Positions after a rapid are drilled that were not meant to be, or the other way round.",
            [
                new("true", "They end it as G80 does."),
                new("false", "Only G80 ends it."),
            ],
            r => r.RapidsEndCycle ? 0 : 1, (r, i) => r with { RapidsEndCycle = i == 0 }),
    ];

    /// <summary>The reading of that name, or null.</summary>
    public static Reading? Find(string name) => All.FirstOrDefault(reading => reading.Name == name);
}
