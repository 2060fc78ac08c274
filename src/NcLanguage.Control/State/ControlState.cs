using NcLanguage.Control.Compensation;
using NcLanguage.Machine.Geometry;

namespace NcLanguage.Control.State;

/// <summary>All that the control carries from one block to the next: a value, compared as a whole. Lengths in mm,
/// feeds in mm/min (per turn: mm; inverse time: 1/min), speeds in 1/min, dwell in the number as written. NaN, Unknown
/// and −1 mean not known. It holds no line numbers: where something was set is looked up in the text.</summary>
public record struct ControlState
{
    /// <summary>The tool tip in the work coordinates in force: where it is, not where the program says while radius compensation is on.</summary>
    public Point3 Position;

    /// <summary>The spindle's gauge point in machine coordinates.</summary>
    public Point3 MachinePosition;

    /// <summary>Where the words of the program say the tool stands; only while <see cref="ProgramFrame"/> is in force, otherwise that is <see cref="Position"/>.</summary>
    public Point3 Programmed;

    /// <summary>What G92 adds to the work offset.</summary>
    public Point3 Shift;

    /// <summary>What G52 adds to the work offset.</summary>
    public Point3 LocalShift;

    /// <summary>The shift that G92.3 brings back: what G92 set last, until G92.1 forgets it.</summary>
    public Point3 StoredShift;

    /// <summary>How far radius compensation keeps the tool's centre off the programmed place, in X and Y; 0 where it stands on it.</summary>
    public Point2 OffPath;

    /// <summary>The radius that compensation keeps off the path.</summary>
    public double CompensationRadius;

    public MotionMode Motion;
    public WorkPlane Plane;
    public DistanceMode Distance;
    public LengthUnit Units;
    public FeedMode FeedMode;
    public SpindleState Spindle;
    public CoolantState Coolant;
    public LengthOffsetMode LengthOffset;
    public CompensationSide Compensation;
    public ReturnLevel ReturnLevel;
    public PathControl PathControl;
    public NotFollowed NotFollowed;

    /// <summary>Axes, as bits, along which an offset has changed by an amount not known: where the tool stands there was known before, and is not now.</summary>
    public int LostAxes;

    /// <summary>Moves that blocks of very many moves have made since the program began: <see cref="Execution.MoveBudget"/>.</summary>
    public int MovesOfLongBlocks;

    /// <summary>True once a move has taken the tool onto the offset path of the compensation in force.</summary>
    public bool IsOnOffsetPath;

    /// <summary>True while S is a cutting speed (G96): the spindle's speed then follows from a diameter that a mill does not know.</summary>
    public bool SurfaceSpeed;

    /// <summary>True while the override switches do nothing (M49).</summary>
    public bool OverridesOff;

    /// <summary>True once M29 has coupled the spindle to the tapping cycle that follows, which starts and stops it.</summary>
    public bool RigidTapping;

    /// <summary>True once the program has ended; blocks after it do not run.</summary>
    public bool Ended;

    /// <summary>True before the % that begins the program, where other text stands there.</summary>
    public bool InLeader;

    /// <summary>True once a block of the program has run.</summary>
    public bool Started;

    /// <summary>True in a part of the file that another program calls: what it starts from is not known.</summary>
    public bool IsCalled;

    /// <summary>True while the tool stands where the last hole of the present run of cycles left it.</summary>
    public bool StandsAtHole;

    /// <summary>True while a cycle is on that a tool change or the end of the program has met and that has neither been given anew nor drilled since.</summary>
    public bool CycleLeftOn;

    /// <summary>True since the tool in the spindle has cut.</summary>
    public bool HasCut;

    /// <summary>What has happened already, so that what is missing is said once.</summary>
    public Happened Happened;

    /// <summary>What the G91 in force has served for so far.</summary>
    public IncrementalUse IncrementalUse;

    /// <summary>True when the present cycle's Z, or R, was given in that cycle.</summary>
    public bool BottomGiven;
    public bool RGiven;

    /// <summary>Number of the cycle in force (73 to 89), 0 for none, −1 not known.</summary>
    public int Cycle;

    /// <summary>The work offset: 54 to 59, 591 to 593, 541001 and up for G54.1 P1 and up; −1 not known.</summary>
    public int WorkOffset;

    /// <summary>The D number in force; −1 where none was given.</summary>
    public int D;

    /// <summary>The H number in force; 0 for none.</summary>
    public int H;

    /// <summary>The tool in the spindle; 0 for none, −1 not known.</summary>
    public int Tool;

    /// <summary>The tool that the next change brings; −1 not known.</summary>
    public int SelectedTool;

    /// <summary>Which parts the program has set by its own words.</summary>
    public Slot Set;

    public double Feed;
    public double Speed;

    /// <summary>The last F where the feed mode has changed since, as <see cref="Feed"/> had it; NaN where it has not.</summary>
    public double OtherFeed;

    /// <summary>What <see cref="OtherFeed"/> counted by.</summary>
    public FeedMode OtherFeedMode;

    /// <summary>Level of the cycle's axis before the present run of cycles.</summary>
    public double InitialLevel;
    public double RLevel;
    public double Bottom;

    /// <summary>P of the cycle as written.</summary>
    public double DwellNumber;
    public bool DwellHasPoint;
    public double Peck;

    /// <summary>I, J, K of G76 and G87 across the hole: by how much the tool is moved off the wall, mm.</summary>
    public Point3 BoreShift;

    /// <summary>True when the present run of cycles has given <see cref="BoreShift"/>.</summary>
    public bool BoreShiftGiven;

    /// <summary>Level that back boring cuts up to, mm.</summary>
    public double BoreTop;

    public Variables? Variables;

    /// <summary>Polar words, scaling and rotation in force; null where all are off.</summary>
    public ProgramFrame? ProgramFrame;

    /// <summary>Offsets that the program has written over those of the setup; null where it has written none.</summary>
    public OffsetData? OffsetData;

    /// <summary>The state before the first block: what a vertical mill's control takes up at the end of the program
    /// before (NISTIR 6556 §3.6.1: G54 G17 G90 G94 G40 M5 M9), places, units, return level and values not known.</summary>
    /// <remarks>None of it counts as set by the program: the rules on modes not set still speak. Lengths are read in mm
    /// until G20 or G21; no offset of length (G49) is in force.</remarks>
    public static ControlState AtStart(int workOffset) => new()
    {
        Position = Point3.Unknown,
        MachinePosition = Point3.Unknown,
        Motion = MotionMode.Unknown,
        Plane = WorkPlane.XY,
        Distance = DistanceMode.Absolute,
        Units = LengthUnit.Millimetre,
        FeedMode = FeedMode.PerMinute,
        Spindle = SpindleState.Off,
        Coolant = CoolantState.Off,
        LengthOffset = LengthOffsetMode.Off,
        Compensation = CompensationSide.Off,
        WorkOffset = workOffset,
        D = -1,
        Tool = -1,
        SelectedTool = -1,
        Feed = double.NaN,
        OtherFeed = double.NaN,
        Speed = double.NaN,
        InitialLevel = double.NaN,
        RLevel = double.NaN,
        Bottom = double.NaN,
        DwellNumber = double.NaN,
        Peck = double.NaN,
        BoreTop = double.NaN,
    };

    /// <summary>A state of which nothing is known: where a called program begins, or behind a jump.</summary>
    public static ControlState Unknown => AtStart(-1) with
    {
        Shift = Point3.Unknown,
        LocalShift = Point3.Unknown,
        StoredShift = Point3.Unknown,
        Plane = WorkPlane.Unknown,
        Distance = DistanceMode.Unknown,
        Units = LengthUnit.Unknown,
        FeedMode = FeedMode.Unknown,
        Spindle = SpindleState.Unknown,
        Coolant = CoolantState.Unknown,
        LengthOffset = LengthOffsetMode.Unknown,
        Compensation = CompensationSide.Unknown,
        Cycle = -1,
        H = -1,
        CompensationRadius = double.NaN,
        IsCalled = true,
        Variables = Variables.Unknown,
    };

    /// <summary>What is left of this state when blocks have run of which nothing is known: what the program had not switched on, or not written, is
    /// taken as still off, here as at the beginning of a called program.</summary>
    public readonly ControlState Forgotten() => Unknown with
    {
        Started = Started,
        Set = Set,
        ProgramFrame = ProgramFrame?.Forgotten(),
        MovesOfLongBlocks = MovesOfLongBlocks,
        Programmed = ProgramFrame is null ? default : Point3.Unknown,
        OffsetData = OffsetData is null ? null : OffsetData.Lost,
    };

    /// <summary>Becomes a state that differs from this one at most in where the tool stands, how and how fast it moves, and what has been set: to copy all takes longer than most
    /// moves need otherwise.</summary>
    internal void GoOnFrom(in ControlState state)
    {
        Position = state.Position;
        MachinePosition = state.MachinePosition;
        (Motion, Feed, Set) = (state.Motion, state.Feed, state.Set);
    }

    /// <summary>The place the program has named last: <see cref="Position"/> but for what radius compensation keeps the tool off it.</summary>
    public readonly Point3 ProgrammedPosition => new(Position.X - OffPath.X, Position.Y - OffPath.Y, Position.Z);

    /// <summary>True while G41 or G42 is in force, whether its offset path is known or not.</summary>
    public readonly bool IsCompensationOn => Compensation is CompensationSide.Left or CompensationSide.Right;

    /// <summary>True while the tool's centre is led along an offset path that is known.</summary>
    public readonly bool IsCompensated => IsCompensationOn && (NotFollowed & NotFollowed.Compensation) == 0;

    /// <summary>True when this part was set by a word of the program.</summary>
    public readonly bool HasSet(Slot slot) => (Set & slot) == slot;

    /// <summary>True when a cycle is known to be in force.</summary>
    public readonly bool InCycle => Cycle > 0;
}
