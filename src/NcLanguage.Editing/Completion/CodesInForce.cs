using NcLanguage.Control.Codes;
using NcLanguage.Control.State;

namespace NcLanguage.Editing;

/// <summary>Which codes would change nothing where they stand.</summary>
static class CodesInForce
{
    /// <summary>True where the program itself has set what the code sets. What holds only because no program has changed it is worth being said.</summary>
    public static bool ChangesNothing(CodeEntry code, in ControlState state) => Holds(code, state) is { } slot && state.HasSet(slot);

    /// <summary>The part of the state that the code sets, where it stands as the code would set it; else null.</summary>
    static Slot? Holds(CodeEntry code, in ControlState state)
    {
        var tenths = code.Tenths;
        if (code.Letter == 'M')
            return OfMachine(tenths, state);
        return code.Group switch
        {
            ModalGroup.Motion => When(state.Cycle == 0 && state.Motion != MotionMode.Probe && WordUses.MotionInForce(state.Motion)?.Tenths == tenths, Slot.Motion),
            ModalGroup.Cycle => When(tenths == 800 && state.Cycle == 0, Slot.Cycle),
            ModalGroup.Plane => When(tenths == state.Plane switch { WorkPlane.XY => 170, WorkPlane.ZX => 180, WorkPlane.YZ => 190, _ => -1 }, Slot.Plane),
            ModalGroup.Distance => When(tenths == state.Distance switch { DistanceMode.Absolute => 900, DistanceMode.Incremental => 910, _ => -1 }, Slot.Distance),
            ModalGroup.Units => When(tenths is 200 or 700 ? state.Units == LengthUnit.Inch : state.Units == LengthUnit.Millimetre, Slot.Units),
            ModalGroup.FeedMode => When(tenths == state.FeedMode switch { FeedMode.InverseTime => 930, FeedMode.PerMinute => 940, FeedMode.PerTurn => 950, _ => -1 }, Slot.FeedMode),
            ModalGroup.SpeedMode => When(tenths == 970 && !state.SurfaceSpeed, Slot.SpeedMode),
            ModalGroup.RadiusCompensation => When(tenths == 400 && state.Compensation == CompensationSide.Off, Slot.Compensation),
            ModalGroup.LengthOffset => When(tenths == 490 && state.LengthOffset == LengthOffsetMode.Off, Slot.LengthOffset),
            ModalGroup.ReturnLevel => When(tenths == state.ReturnLevel switch { ReturnLevel.Initial => 980, ReturnLevel.RLevel => 990, _ => -1 }, Slot.ReturnLevel),
            ModalGroup.WorkOffset => When(state.WorkOffset is >= 54 and <= 59 ? tenths == state.WorkOffset * 10 : tenths == state.WorkOffset, Slot.WorkOffset),
            ModalGroup.PathControl => When(tenths == state.PathControl switch { PathControl.ExactPath => 610, PathControl.ExactStop => 611, PathControl.SlowerInCorners => 620, PathControl.Continuous => 640, _ => -1 }, Slot.PathControl),
            ModalGroup.Scaling => When(tenths == 500 && state.ProgramFrame?.Scaling is null, Slot.Scaling),
            ModalGroup.Rotation => When(tenths == 690 && state.ProgramFrame?.Rotation is null, Slot.Rotation),
            ModalGroup.Mirror => When(tenths == 501 && state.ProgramFrame?.Mirror is null, Slot.Mirror),
            ModalGroup.Polar => When(tenths == 150 && state.ProgramFrame?.Polar is null, Slot.Polar),
            _ => null,
        };
    }

    static Slot? OfMachine(int tenths, in ControlState state) => tenths switch
    {
        30 => When(state.Spindle == SpindleState.Clockwise, Slot.Spindle),
        40 => When(state.Spindle == SpindleState.Counterclockwise, Slot.Spindle),
        50 => When(state.Spindle == SpindleState.Off, Slot.Spindle),
        70 => When((state.Coolant & CoolantState.Mist) != 0, Slot.Coolant),
        80 => When((state.Coolant & CoolantState.Flood) != 0, Slot.Coolant),
        90 => When(state.Coolant == CoolantState.Off, Slot.Coolant),
        480 => When(!state.OverridesOff, Slot.Override),
        490 => When(state.OverridesOff, Slot.Override),
        _ => null,
    };

    static Slot? When(bool holds, Slot slot) => holds ? slot : null;
}
