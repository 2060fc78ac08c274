using System.Text;
using NcLanguage.Checks;
using NcLanguage.Control.State;
using NcLanguage.Machine.Profiles;
using NcLanguage.Machine.Setups;

namespace NcLanguage.Reports.MotionView;

/// <summary>What of the control's state is shown beside a block. Lengths mm, feed mm/min (per turn: mm; inverse time: 1/min), speed 1/min; in words, in the unit of the program.</summary>
public readonly record struct MotionState(
    MotionMode Motion, int Cycle, WorkPlane Plane, DistanceMode Distance, LengthUnit Units, FeedMode FeedMode, SpindleState Spindle, CoolantState Coolant,
    LengthOffsetMode LengthOffset, int H, CompensationSide Compensation, ReturnLevel ReturnLevel, int WorkOffset, int Tool, double Feed, double Speed,
    double InitialLevel, double RLevel, double Bottom)
{
    public static MotionState Of(in ControlState state, WorkCoordinates coordinates) => new(
        state.Motion, state.Cycle, state.Plane, state.Distance, state.Units, state.FeedMode, state.Spindle, state.Coolant, state.LengthOffset, state.H,
        state.Compensation, state.ReturnLevel, state.WorkOffset, state.Tool, state.Feed, state.Speed,
        state.InCycle ? state.InitialLevel : double.NaN, state.InCycle ? state.RLevel : double.NaN, state.InCycle ? state.Bottom : double.NaN)
    {
        Coordinates = coordinates,
    };

    /// <summary>The codes in force, such as "G1 G17 G40 G43 H1 G90 G94 M3 M8"; those not known are left out.</summary>
    public string Codes(UnitReading units)
    {
        var text = new StringBuilder();
        Add(text, Cycle > 0 ? $"G{Cycle}" : Motion switch
        {
            MotionMode.Rapid => "G0",
            MotionMode.Linear => "G1",
            MotionMode.ArcClockwise => "G2",
            MotionMode.ArcCounterclockwise => "G3",
            MotionMode.Thread => "G33",
            MotionMode.Probe => "G38.2",
            _ => "",
        });
        Add(text, Plane switch { WorkPlane.XY => "G17", WorkPlane.ZX => "G18", WorkPlane.YZ => "G19", _ => "" });
        Add(text, Units == LengthUnit.Unknown ? "" : $"G{UnitLength.CodeOf(Units == LengthUnit.Inch, units)}");
        Add(text, Compensation switch { CompensationSide.Off => "G40", CompensationSide.Left => "G41", CompensationSide.Right => "G42", _ => "" });
        Add(text, LengthOffset switch
        {
            LengthOffsetMode.Off => "G49",
            LengthOffsetMode.Plus => H < 0 ? "G43" : $"G43 H{H}",
            LengthOffsetMode.Minus => H < 0 ? "G44" : $"G44 H{H}",
            _ => "",
        });
        Add(text, Distance switch { DistanceMode.Absolute => "G90", DistanceMode.Incremental => "G91", _ => "" });
        Add(text, FeedMode switch { FeedMode.InverseTime => "G93", FeedMode.PerMinute => "G94", FeedMode.PerTurn => "G95", _ => "" });
        Add(text, Spindle switch { SpindleState.Clockwise => "M3", SpindleState.Counterclockwise => "M4", SpindleState.Off => "M5", _ => "" });
        Add(text, Coolant switch { CoolantState.Unknown => "", CoolantState.Off => "M9", CoolantState.Mist => "M7", CoolantState.Flood => "M8", _ => "M7 M8" });
        return text.ToString();
    }

    /// <summary>What places of the block are meant in.</summary>
    public required WorkCoordinates Coordinates { get; init; }

    public string Offset(LengthText lengths) => WorkOffset > 0 ? Coordinates.Name(lengths.IsInch) : "not known";

    public string ToolText => Tool < 0 ? "not known" : Tool == 0 ? "none" : $"T{Tool}";

    public string FeedText(LengthText lengths) => double.IsNaN(Feed) ? "not known" : FeedMode switch
    {
        FeedMode.PerTurn => $"{Say.Number(lengths.Of(Feed), 4)} {lengths.Unit} per turn",
        FeedMode.InverseTime => $"{Say.Number(Feed)} 1/min (inverse time)",
        _ => lengths.Feed(Feed),
    };

    public string SpeedText => (double.IsNaN(Speed) ? "not known" : $"{Say.Number(Speed)} 1/min") + (Spindle == SpindleState.Off ? ", stopped" : "");

    /// <summary>The levels of the cycle in force; empty where none is. Along another axis than Z no letter is said.</summary>
    public string Levels(LengthText lengths)
    {
        if (Cycle <= 0)
            return "";
        var axis = Plane switch { WorkPlane.XY => "Z", WorkPlane.ZX => "Y", WorkPlane.YZ => "X", _ => "" };
        var back = ReturnLevel switch
        {
            ReturnLevel.Initial => $"G98, back to {Level(Math.Max(InitialLevel, RLevel))}",
            ReturnLevel.RLevel => $"G99, back to {Level(RLevel)}",
            _ => "return level not known",
        };
        return $"{back}; R {Level(RLevel)}, bottom {Level(Bottom)}";

        string Level(double level) => double.IsNaN(level) ? "not known" : $"{axis}{lengths.Length(level)}";
    }

    static void Add(StringBuilder text, string code)
    {
        if (code.Length > 0)
            text.Append(text.Length > 0 ? " " : "").Append(code);
    }
}
