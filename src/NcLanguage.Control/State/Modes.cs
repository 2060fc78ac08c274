namespace NcLanguage.Control.State;

/// <summary>How axis words move the tool.</summary>
public enum MotionMode : byte { Unknown, Rapid, Linear, ArcClockwise, ArcCounterclockwise, Thread, None }

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

/// <summary>Where a cycle returns to between holes.</summary>
public enum ReturnLevel : byte { Unknown, Initial, RLevel }

/// <summary>What the control does that is not followed here: while any is in force, places in space are not known.</summary>
[Flags]
public enum NotFollowed : byte { None = 0, Rotation = 1, Scaling = 2, Polar = 4, Compensation = 8, Jump = 16, SurfaceSpeed = 32 }
