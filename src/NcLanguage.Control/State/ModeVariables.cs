namespace NcLanguage.Control.State;

/// <summary>Variables that hold the G code in force in each group, by which a called program puts back what it found (common practice, from memory).</summary>
static class ModeVariables
{
    public const int First = 4001;
    public const int Last = 4014;

    /// <summary>The number of the code in force when the block is met, 81 for G81; NaN where it is not known or the number has no meaning here.</summary>
    public static double Get(int number, in ControlState state) => number switch
    {
        4001 => state.Motion switch
        {
            MotionMode.Rapid => 0,
            MotionMode.Linear => 1,
            MotionMode.ArcClockwise => 2,
            MotionMode.ArcCounterclockwise => 3,
            MotionMode.Thread => 33,
            _ => double.NaN,
        },
        4002 => state.Plane switch { WorkPlane.XY => 17, WorkPlane.ZX => 18, WorkPlane.YZ => 19, _ => double.NaN },
        4003 => state.Distance switch { DistanceMode.Absolute => 90, DistanceMode.Incremental => 91, _ => double.NaN },
        4005 => state.FeedMode switch { FeedMode.InverseTime => 93, FeedMode.PerMinute => 94, FeedMode.PerTurn => 95, _ => double.NaN },
        4006 => state.Units switch { LengthUnit.Inch => 20, LengthUnit.Millimetre => 21, _ => double.NaN },
        4007 => state.Compensation switch { CompensationSide.Off => 40, CompensationSide.Left => 41, CompensationSide.Right => 42, _ => double.NaN },
        4008 => state.LengthOffset switch { LengthOffsetMode.Plus => 43, LengthOffsetMode.Minus => 44, LengthOffsetMode.Off => 49, _ => double.NaN },
        4009 => state.Cycle switch { > 0 => state.Cycle, 0 => 80, _ => double.NaN },
        4010 => state.ReturnLevel switch { ReturnLevel.Initial => 98, ReturnLevel.RLevel => 99, _ => double.NaN },
        4014 => state.WorkOffset switch { >= 54 and <= 59 => state.WorkOffset, >= 591 and <= 593 => state.WorkOffset / 10.0, _ => double.NaN },
        _ => double.NaN,
    };
}
