namespace NcLanguage.Control.State;

/// <summary>How axis words move the tool.</summary>
public enum MotionMode : byte { Unknown, Rapid, Linear, ArcClockwise, ArcCounterclockwise, Thread, None, Probe }

/// <summary>The plane of arcs, compensation and cycles.</summary>
public enum WorkPlane : byte { Unknown, XY, ZX, YZ }

public enum DistanceMode : byte { Unknown, Absolute, Incremental }

public enum LengthUnit : byte { Unknown, Inch, Millimetre }

public enum FeedMode : byte { Unknown, InverseTime, PerMinute, PerTurn }

public enum SpindleState : byte { Unknown, Off, Clockwise, Counterclockwise }

[Flags]
public enum CoolantState : byte { Unknown = 0, Off = 1, Mist = 2, Flood = 4 }

public enum LengthOffsetMode : byte { Unknown, Off, Plus, Minus }

public enum CompensationSide : byte { Unknown, Off, Left, Right }

/// <summary>How the control takes the ends of moves (NISTIR 6556 §3.5.14): along the path exactly, resting at each end, or rounding corners; slowing down in inside corners (G62) is common practice.</summary>
public enum PathControl : byte { Unknown, ExactPath, ExactStop, Continuous, SlowerInCorners }

/// <summary>Where a cycle returns to between holes.</summary>
public enum ReturnLevel : byte { Unknown, Initial, RLevel }

/// <summary>What has happened since the program began; for some, since the tool or the spindle was changed.</summary>
[Flags]
public enum Happened : uint
{
    None = 0,

    /// <summary>A length other than 0 was read.</summary>
    LengthRead = 1,

    /// <summary>The tool was moved in work coordinates.</summary>
    WorkMove = 2,

    /// <summary>A cut, other than straight up or above the stock, was made with the spindle standing, and it has not been started since.</summary>
    CutStanding = 4,

    /// <summary>Axis words were met without a motion code, and none has come since.</summary>
    MotionMissing = 8,

    /// <summary>The tool that was changed in has cut, or moved along Z in work coordinates, without its length offset.</summary>
    UsedWithoutOffset = 16,

    /// <summary>The program has said G90.</summary>
    WasAbsolute = 32,

    /// <summary>Blocks were met behind the program's end.</summary>
    PastEnd = 64,

    /// <summary>The tool was moved under the work offset in force, and where that lies in the setup's frame is not known.</summary>
    MovedOffFrame = 128,

    /// <summary>The tool in the spindle has travelled among obstacles or supports, and its diameter is not known.</summary>
    MovedWithoutSize = 256,

    /// <summary>Axis words were read as G90 or G91 say.</summary>
    PlaceRead = 512,

    /// <summary>The program has gone over from inches to millimetres, or back, after lengths were read.</summary>
    UnitsMixed = 1024,

    /// <summary>The feed in force was given for another tool than the one in the spindle, and that one has not cut by it yet.</summary>
    FeedOfOtherTool = 2048,

    /// <summary>A tool has cut with the coolant on.</summary>
    CutWet = 4096,

    /// <summary>The tool in the spindle has cut without coolant, which a tool before it had, and no word has switched it since the change.</summary>
    CutDry = 8192,

    /// <summary>Radius compensation was on at a tool change, on the way home or at the program's end, and no word has switched it since.</summary>
    CompensationLeftOn = 16384,

    /// <summary>The tool was moved while an offset had changed by an amount not known, from or to a place that was not known for it.</summary>
    MovedLost = 32768,

    /// <summary>The motion or cycle in force was refused in the modes in force, and no word has set either since.</summary>
    RefusedInModes = 65536,

    /// <summary>The tool has cut or probed without a feed that counts in the feed mode in force, and no F or other mode has come since.</summary>
    CutWithoutFeed = 131072,

    /// <summary>A rapid went down, to a level that is known, lower than something the setup lists, before it was known where the tool stood in X and Y.</summary>
    WentDownUnseen = 262144,

    /// <summary>The same of a rapid that went across.</summary>
    WentAcrossUnseen = 524288,

    /// <summary>It has been known where the tool stood in X and Y.</summary>
    WasPlaced = 1048576,

    /// <summary>Radius compensation was turned on without a D.</summary>
    CompensatedWithoutD = 2097152,

    /// <summary>The tool in the spindle has cut, other than straight up, above the stock or in a tapping cycle, with the spindle turning counterclockwise.</summary>
    CutReversed = 4194304,

    /// <summary>The tool in the spindle has cut, other than straight up or above the stock, or probed while the spindle turned, and it has not been stopped since.</summary>
    UsedTurning = 8388608,

    /// <summary>The speed in force was given for another tool than the one in the spindle, and that one has not cut at it yet.</summary>
    SpeedOfOtherTool = 16777216,

    /// <summary>A cut was made since the feed in force was given.</summary>
    CutSinceFeed = 33554432,

    /// <summary>A cut was made since the speed in force was given.</summary>
    CutSinceSpeed = 67108864,
}

/// <summary>What a G91 has served for.</summary>
public enum IncrementalUse : byte
{
    /// <summary>No G91 of the program's own is in force.</summary>
    None,

    /// <summary>Nothing was moved since.</summary>
    Fresh,

    /// <summary>The tool was last taken to the reference point, in machine coordinates, or changed.</summary>
    Homed,

    /// <summary>The tool was moved by distances in work coordinates.</summary>
    Moved,

    /// <summary>The tool was moved by distances from where it had been taken away to.</summary>
    MovedFromHome,

    /// <summary>A called program has left it on, and its caller, which was in G90, has not moved the tool since.</summary>
    LeftByCall,

    /// <summary>That caller has moved the tool.</summary>
    MovedBehindCall,
}

/// <summary>What the control does that is not followed here: while any is in force, places in space are not known.</summary>
[Flags]
public enum NotFollowed : byte { None = 0, Compensation = 8 }
