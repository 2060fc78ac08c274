using NcLanguage.Control.Codes;
using NcLanguage.Control.Execution;
using NcLanguage.Control.State;
using NcLanguage.Machine.Profiles;
using NcLanguage.Machine.Setups;

namespace NcLanguage.Editing;

/// <summary>The codes that a setter would write next.</summary>
static class LikelyCodes
{
    public static HashSet<(char Letter, int Tenths)> Of(Spot spot)
    {
        var codes = new HashSet<(char, int)>();
        ref readonly var state = ref spot.Before;
        AddModes(spot, state, codes);
        if (spot.Readings.ToolChange == ToolChangeReading.M6 && spot.After.SelectedTool > 0 && spot.After.SelectedTool != spot.Before.Tool)
            codes.Add(('M', 60));
        if (state.Tool > 0)
        {
            if (spot.Readings.LengthOffset == LengthOffsetReading.G43 && state.LengthOffset == LengthOffsetMode.Off)
                codes.Add(('G', 430));
            codes.Add(('M', state.Spindle == SpindleState.Off ? 30 : state.Coolant == CoolantState.Off ? 80 : 90));
        }
        if (state.InCycle)
        {
            codes.Add(('G', 800));
            return codes;
        }
        codes.UnionWith([('G', 0), ('G', 10)]);
        foreach (var cycle in Cycles(spot.Tool))
            codes.Add(('G', cycle * 10));
        return codes;
    }

    /// <summary>Cycles that a tool is made for, the usual one first.</summary>
    public static IReadOnlyList<int> Cycles(Tool? tool) => tool?.Kind switch
    {
        ToolKind.Drill => [81, 83, 73],
        ToolKind.SpotDrill or ToolKind.CentreDrill or ToolKind.Countersink or ToolKind.Counterbore or ToolKind.ChamferMill => [82, 81],
        ToolKind.Tap => [84],
        ToolKind.Reamer => [85],
        ToolKind.BoringBar => [86, 85, 76, 89],
        null => [81, 82, 83, 84, 85],
        _ => [],
    };

    static void AddModes(Spot spot, in ControlState state, HashSet<(char, int)> codes)
    {
        if (!state.HasSet(Slot.Units))
            codes.Add(('G', StartLines.UnitCode(spot)));
        if (!state.HasSet(Slot.Distance))
            codes.Add(('G', 900));
        if (!state.HasSet(Slot.WorkOffset) && spot.Setup.Frame is >= 54 and <= 59)
            codes.Add(('G', spot.Setup.Frame * 10));
        if (!state.HasSet(Slot.Plane) && !state.HasSet(Slot.Compensation) && !state.HasSet(Slot.LengthOffset))
            codes.UnionWith([('G', 170), ('G', 400), ('G', 490), ('G', 800), ('G', 940)]);
    }
}
