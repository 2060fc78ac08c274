using System.Text;
using NcLanguage.Checks;
using NcLanguage.Checks.Analysis;
using NcLanguage.Control.State;

namespace NcLanguage.Editing;

/// <summary>The modal state in words, with the line that set each part.</summary>
static class StateText
{
    public static string InForce(ProgramAnalysis analysis, int line, in ControlState state)
    {
        var text = new StringBuilder("In force: ");
        var parts = new List<string>
        {
            Part(analysis, line, Slot.Distance, state.Distance switch { DistanceMode.Absolute => "G90", DistanceMode.Incremental => "G91", _ => "G90 or G91 not known" }),
            Part(analysis, line, Slot.Units, Units(analysis, state)),
            Part(analysis, line, Slot.Plane, state.Plane switch { WorkPlane.XY => "G17", WorkPlane.ZX => "G18", WorkPlane.YZ => "G19", _ => "plane not known" }),
            Part(analysis, line, Slot.WorkOffset, WorkOffset(state.WorkOffset)),
        };
        if (state.Cycle > 0)
        {
            parts.Add(Part(analysis, line, Slot.Cycle, $"G{state.Cycle}"));
            parts.Add(Part(analysis, line, Slot.ReturnLevel, state.ReturnLevel switch
            {
                ReturnLevel.Initial => $"G98 (back to {Say.Level(state.InitialLevel)})",
                ReturnLevel.RLevel => $"G99 (back to {Say.Level(state.RLevel)})",
                _ => "return level not known",
            }));
            parts.Add(Part(analysis, line, Slot.CycleR, $"R level {Say.Level(state.RLevel)}"));
            parts.Add(Part(analysis, line, Slot.CycleBottom, $"bottom {Say.Level(state.Bottom)}"));
        }
        if (state.Tool > 0)
            parts.Add(Part(analysis, line, Slot.Tool, $"T{state.Tool}"));
        if (state.LengthOffset is LengthOffsetMode.Plus or LengthOffsetMode.Minus)
            parts.Add(Part(analysis, line, Slot.LengthOffset, $"{(state.LengthOffset == LengthOffsetMode.Plus ? "G43" : "G44")} H{state.H}"));
        parts.Add(Part(analysis, line, Slot.Spindle, Spindle(state)));
        if (!double.IsNaN(state.Feed))
            parts.Add(Part(analysis, line, Slot.Feed, Feed(state)));
        parts.Add(Part(analysis, line, Slot.Coolant, state.Coolant switch
        {
            CoolantState.Off => "coolant off",
            CoolantState.Unknown => "coolant not known",
            _ => "coolant on",
        }));
        return text.AppendJoin(" · ", parts).Append('.').ToString();
    }

    static string Part(ProgramAnalysis analysis, int line, Slot slot, string what)
    {
        var setter = analysis.Main.LastSetter(slot, line);
        if (setter == line)
            return what;
        return setter < 0 ? what + " (not set by the program)" : $"{what} (line {setter + 1})";
    }

    static string Units(ProgramAnalysis analysis, in ControlState state)
    {
        var seventy = analysis.Machine.Readings.Units == Machine.Profiles.UnitReading.G70G71;
        return state.Units switch
        {
            LengthUnit.Millimetre => seventy ? "G71 mm" : "G21 mm",
            LengthUnit.Inch => seventy ? "G70 inch" : "G20 inch",
            _ => "units not known",
        };
    }

    static string WorkOffset(int offset) => offset switch
    {
        < 0 => "work offset not known",
        > 100 => $"G{offset / 10}.{offset % 10}",
        _ => $"G{offset}",
    };

    static string Spindle(in ControlState state)
    {
        var speed = double.IsNaN(state.Speed) ? "" : $" S{Say.Number(state.Speed)}";
        return state.Spindle switch
        {
            SpindleState.Clockwise => "M3" + speed,
            SpindleState.Counterclockwise => "M4" + speed,
            SpindleState.Off => "spindle off",
            _ => "spindle not known",
        };
    }

    static string Feed(in ControlState state) => state.FeedMode switch
    {
        FeedMode.PerMinute => $"F {Say.Number(state.Feed)} mm/min",
        FeedMode.PerTurn => $"F {Say.Number(state.Feed)} mm per turn",
        FeedMode.InverseTime => $"F {Say.Number(state.Feed)} 1/min",
        _ => "feed mode not known",
    };
}
