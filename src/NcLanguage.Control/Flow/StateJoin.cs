using NcLanguage.Control.Compensation;
using NcLanguage.Control.State;
using NcLanguage.Machine.Geometry;

namespace NcLanguage.Control.Flow;

/// <summary>The state where two ways of the run come together: what is the same on both is kept, what differs is not known.</summary>
public static class StateJoin
{
    public static ControlState Join(in ControlState a, in ControlState b)
    {
        if (a == b)
            return a;
        var unknown = ControlState.Unknown;
        return a with
        {
            Position = Join(a.Position, b.Position),
            MachinePosition = Join(a.MachinePosition, b.MachinePosition),
            Programmed = Equals(a.ProgramFrame, b.ProgramFrame) ? Join(a.Programmed, b.Programmed) : Point3.Unknown,
            ProgramFrame = ProgramFrame.Join(a.ProgramFrame, b.ProgramFrame),
            OffsetData = Equals(a.OffsetData, b.OffsetData) ? a.OffsetData : OffsetData.Lost,
            Shift = Join(a.Shift, b.Shift),
            LocalShift = Join(a.LocalShift, b.LocalShift),
            StoredShift = Join(a.StoredShift, b.StoredShift),
            OffPath = a.OffPath.Equals(b.OffPath) ? a.OffPath : new(double.NaN, double.NaN),
            CompensationRadius = Join(a.CompensationRadius, b.CompensationRadius),
            IsOnOffsetPath = a.IsOnOffsetPath || b.IsOnOffsetPath,
            D = Join(a.D, b.D, -1),
            Motion = Join(a.Motion, b.Motion, MotionMode.Unknown),
            Plane = Join(a.Plane, b.Plane, WorkPlane.Unknown),
            Distance = Join(a.Distance, b.Distance, DistanceMode.Unknown),
            Units = Join(a.Units, b.Units, LengthUnit.Unknown),
            FeedMode = Join(a.FeedMode, b.FeedMode, FeedMode.Unknown),
            Spindle = Join(a.Spindle, b.Spindle, SpindleState.Unknown),
            Coolant = Join(a.Coolant, b.Coolant, CoolantState.Unknown),
            LengthOffset = Join(a.LengthOffset, b.LengthOffset, LengthOffsetMode.Unknown),
            Compensation = Join(a.Compensation, b.Compensation, CompensationSide.Unknown),
            ReturnLevel = Join(a.ReturnLevel, b.ReturnLevel, ReturnLevel.Unknown),
            PathControl = Join(a.PathControl, b.PathControl, PathControl.Unknown),
            NotFollowed = a.NotFollowed | b.NotFollowed,
            LostAxes = a.LostAxes | b.LostAxes,
            MovesOfLongBlocks = Math.Max(a.MovesOfLongBlocks, b.MovesOfLongBlocks),
            SurfaceSpeed = a.SurfaceSpeed || b.SurfaceSpeed,
            OverridesOff = a.OverridesOff || b.OverridesOff,
            RigidTapping = a.RigidTapping || b.RigidTapping,
            Ended = a.Ended && b.Ended,
            InLeader = a.InLeader && b.InLeader,
            Started = a.Started || b.Started,
            IsCalled = a.IsCalled || b.IsCalled,
            StandsAtHole = a.StandsAtHole && b.StandsAtHole,
            CycleLeftOn = a.CycleLeftOn && b.CycleLeftOn,
            HasCut = a.HasCut || b.HasCut,
            // What has happened silences a second report of it; what was set keeps the rules on what is missing quiet.
            Happened = a.Happened | b.Happened,
            Set = a.Set | b.Set,
            IncrementalUse = Join(a.IncrementalUse, b.IncrementalUse, IncrementalUse.None),
            BottomGiven = a.BottomGiven && b.BottomGiven,
            RGiven = a.RGiven && b.RGiven,
            BoreShiftGiven = a.BoreShiftGiven && b.BoreShiftGiven,
            DwellHasPoint = a.DwellHasPoint && b.DwellHasPoint,
            Cycle = Join(a.Cycle, b.Cycle, -1),
            WorkOffset = Join(a.WorkOffset, b.WorkOffset, -1),
            H = Join(a.H, b.H, unknown.H),
            Tool = Join(a.Tool, b.Tool, -1),
            SelectedTool = Join(a.SelectedTool, b.SelectedTool, -1),
            Feed = Join(a.Feed, b.Feed),
            OtherFeedMode = Join(a.OtherFeedMode, b.OtherFeedMode, FeedMode.Unknown),
            OtherFeed = a.OtherFeedMode == b.OtherFeedMode ? Join(a.OtherFeed, b.OtherFeed) : double.NaN,
            Speed = Join(a.Speed, b.Speed),
            InitialLevel = Join(a.InitialLevel, b.InitialLevel),
            RLevel = Join(a.RLevel, b.RLevel),
            Bottom = Join(a.Bottom, b.Bottom),
            DwellNumber = Join(a.DwellNumber, b.DwellNumber),
            Peck = Join(a.Peck, b.Peck),
            BoreShift = Join(a.BoreShift, b.BoreShift),
            BoreTop = Join(a.BoreTop, b.BoreTop),
            Variables = Variables.Join(a.Variables ?? Variables.None, b.Variables ?? Variables.None),
        };
    }

    static T Join<T>(T a, T b, T unknown) where T : struct => EqualityComparer<T>.Default.Equals(a, b) ? a : unknown;

    static double Join(double a, double b) => a.Equals(b) ? a : double.NaN;

    static Point3 Join(Point3 a, Point3 b) => new(Join(a.X, b.X), Join(a.Y, b.Y), Join(a.Z, b.Z));
}
