namespace NcLanguage.Control.State;

/// <summary>The parts of the state that words set, as bits: what a block set, and what a program has set so far.</summary>
[Flags]
public enum Slot : long
{
    None = 0,
    Motion = 1 << 0, Cycle = 1 << 1, Plane = 1 << 2, Distance = 1 << 3, Units = 1 << 4, FeedMode = 1 << 5,
    Feed = 1 << 6, Speed = 1 << 7, Spindle = 1 << 8, Coolant = 1 << 9, Tool = 1 << 10, SelectedTool = 1 << 11,
    LengthOffset = 1 << 12, Compensation = 1 << 13, WorkOffset = 1 << 14, ReturnLevel = 1 << 15,
    X = 1 << 16, Y = 1 << 17, Z = 1 << 18,
    CycleR = 1 << 19, CycleBottom = 1 << 20, CycleDwell = 1 << 21, CyclePeck = 1 << 22,
    Hole = 1 << 23, Shift = 1 << 24, Home = 1 << 25, Cut = 1 << 26,
    Polar = 1 << 27, OffsetData = 1 << 28, PathControl = 1 << 29, SpeedMode = 1 << 30, Override = 1L << 31,
    RigidTapping = 1L << 32, LocalShift = 1L << 33, Scaling = 1L << 34, Rotation = 1L << 35, Mirror = 1L << 36,

    /// <summary>What the program's own places are read through.</summary>
    ProgramFrame = Polar | Scaling | Rotation | Mirror,

    /// <summary>Where the tool is and what it has done: what a block's moves tell, not its words.</summary>
    Doings = X | Y | Z | Hole | Home | Cut,
}
