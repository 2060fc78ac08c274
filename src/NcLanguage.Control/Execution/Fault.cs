using NcLanguage.Control.State;

namespace NcLanguage.Control.Execution;

/// <summary>What a control refuses, or cannot do, in a block.</summary>
public enum FaultKind : byte
{
    /// <summary>A code that no table knows.</summary>
    CodeUnknown,

    /// <summary>A code that this machine's readings do not have (G20 where G70 selects inch).</summary>
    CodeNotInReading,

    /// <summary>Two codes of one modal group; <see cref="Fault.Other"/> is the token of the first.</summary>
    CodesConflict,

    /// <summary>Two codes that both want the axis words.</summary>
    AxisWordsClaimedTwice,

    /// <summary>More M codes than a block may hold.</summary>
    TooManyMCodes,

    /// <summary>An address twice.</summary>
    AddressRepeated,

    /// <summary>An address without a meaning on a three-axis mill.</summary>
    WordUnknown,

    /// <summary>A word that nothing in the block uses.</summary>
    WordWithoutEffect,

    /// <summary>Axis words, but no code says how to move.</summary>
    MotionNotSet,

    /// <summary>A word that the code needs is missing; <see cref="Fault.Letter"/> names it.</summary>
    WordMissing,

    /// <summary>A word's value is outside what the code takes; <see cref="Fault.A"/> is the value.</summary>
    ValueNotAllowed,

    /// <summary>A code that cannot be used in the present state.</summary>
    NotAllowedHere,

    /// <summary>G53 without G0 or G1 in force.</summary>
    MachineMoveMode,

    /// <summary>Start and end radius differ; A is the start's, B the end's, mm.</summary>
    ArcRadiusMismatch,

    /// <summary>No such arc; A is the chord, B the radius, mm.</summary>
    ArcImpossible,

    /// <summary>A cycle's R level lies below its bottom; A is R, B the bottom, mm.</summary>
    RBelowBottom,

    /// <summary>The level that back boring reaches up to does not lie above its bottom and below R; A is that level, B the bottom or the R level that it should be beyond or below, mm.</summary>
    BoreTopOutside,

    /// <summary>The first move under radius compensation, or the first after it, is an arc (letter I), or the first is shorter than the radius;
    /// A is the radius, B the length of the move, mm.</summary>
    CompensationEntry,

    /// <summary>No room for the tool: an inside corner, or an arc (letter R) of a radius not above the tool's; A is the tool's radius, B the
    /// arc's, mm.</summary>
    CompensationCorner,

    /// <summary>A code that is recognised but whose motion is not followed.</summary>
    NotFollowed,

    /// <summary>A statement without the value or the further word it needs.</summary>
    StatementIncomplete,

    /// <summary>A variable is read that was never set; <see cref="Fault.A"/> is its number.</summary>
    VariableUnset,

    /// <summary>A value that no number comes of with what its variables hold; <see cref="Fault.A"/> is the <see cref="Syntax.Expressions.ExpressionError"/>.</summary>
    ValueImpossible,

    /// <summary>A jump to a block number that the program does not have; <see cref="Fault.A"/> is the number.</summary>
    JumpMissing,

    /// <summary>A statement that pairs with another by its number, which is not there; <see cref="Fault.A"/> is the number.</summary>
    PairMissing,

    /// <summary>A call of a program that is not found; <see cref="Fault.A"/> is its number.</summary>
    SubprogramMissing,

    /// <summary>A called program comes to its end without a return; <see cref="Fault.A"/> is its number, <see cref="Fault.B"/> 1 where M2 or M30 ends it.</summary>
    ReturnMissing,

    /// <summary>A call within more calls than are allowed; <see cref="Fault.A"/> is how many, <see cref="Fault.B"/> 1 where the program calls itself.</summary>
    CallTooDeep,

    /// <summary>A way back that is taken again and again without end; <see cref="Fault.A"/> is the line it goes back to, from 1.</summary>
    LoopEndless,

    /// <summary>The program makes the control stop with an alarm, whichever way it goes; <see cref="Fault.A"/> is the variable that does it.</summary>
    AlarmReached,

    /// <summary>A condition, count or target is not known: so is which way the run goes. A is 0 where both ways are run, 1 where nothing is known behind it.</summary>
    WayNotKnown,

    /// <summary>A block whose cycle makes more moves than are followed; A is how many that are.</summary>
    TooManyMoves,
}

/// <summary>One refusal, at a token of the block.</summary>
public readonly record struct Fault(FaultKind Kind, int Token, char Letter, int Other, double A, double B)
{
    /// <summary>What decides whether a motion or cycle is allowed.</summary>
    public const Slot ModesThatForbid = Slot.Motion | Slot.Cycle | Slot.FeedMode | Slot.Compensation | Slot.Plane | Slot.ProgramFrame;

    /// <summary>True where it is not known which way the run goes, and not every way has been run.</summary>
    public bool LosesWay => Kind == FaultKind.WayNotKnown && A == 1;

    /// <summary>True for an arc, probe move or cycle that the present modes forbid; A is its code.</summary>
    public bool IsRefusedMotion => Kind == FaultKind.NotAllowedHere && A is (2 or 3 or 31 or (> 38 and < 39) or (>= 73 and <= 89));
}
