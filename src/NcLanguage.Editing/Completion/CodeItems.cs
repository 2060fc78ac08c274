using NcLanguage.Control.Codes;
using NcLanguage.Control.Execution;
using NcLanguage.Control.State;
using NcLanguage.Machine.Profiles;
using NcLanguage.Machine.Setups;

namespace NcLanguage.Editing;

/// <summary>The G and M codes that may stand at the cursor.</summary>
static class CodeItems
{
    const int Likely = 0;
    const int Usual = 10;
    const int Idle = 40;

    /// <summary>Offers codes of one letter, or of both (0), that the block has no code against.</summary>
    /// <param name="rank">What the best of them rank.</param>
    public static void Add(Spot spot, CompletionItems items, char letter, int rank)
    {
        var likely = LikelyCodes.Of(spot);
        var mCodes = Own(spot, 'M').Count;
        foreach (var code in CodeTable.All)
        {
            if ((letter != 0 && code.Letter != letter) || !code.ExistsUnder(spot.Readings) || (code.Letter == 'M' && mCodes >= BlockWords.MostMCodes))
                continue;
            var text = Text(spot, code);
            if (!Begins(text, spot) || Conflicts(spot, code))
                continue;
            var idle = Why(code, spot);
            var isLikely = likely.Contains((code.Letter, code.Tenths));
            items.Add(rank + (idle is not null ? Idle : isLikely ? Likely : Usual), new CompletionEntry(
                text, IsCycle(code) ? CompletionKind.Cycle : CompletionKind.Code, code.Name + (idle is not null ? " · " + idle : Needs(spot, code)), text)
            {
                Topic = CompletionTopics.OfCode(code, spot.Readings.Repeats),
            });
        }
    }

    static bool IsCycle(CodeEntry code) => code.Group == ModalGroup.Cycle && code.Tenths != 800;

    // G04 was begun with two digits: so it is written, whatever the blocks above do.
    static string Text(Spot spot, CodeEntry code) =>
        spot.Place.Typed.StartsWith('0') && code.Tenths < 100 && code.Tenths % 10 == 0 && (code.Tenths > 0 || spot.Place.Typed.Length > 1)
            ? spot.Style.Case($"{code.Letter}0{code.Tenths / 10}")
            : spot.Style.Code(code);

    static bool Begins(string text, Spot spot) =>
        spot.Place.Kind != PlaceKind.Word || text.AsSpan(1).StartsWith(spot.Place.Typed, StringComparison.Ordinal)
        || text.AsSpan(1).TrimStart('0').StartsWith(spot.Place.Typed, StringComparison.Ordinal);

    /// <summary>The block's codes but the one at the cursor.</summary>
    static List<CodeEntry> Own(Spot spot, char letter = '\0')
    {
        var own = new List<CodeEntry>();
        var block = spot.Analysis.Main.BlockAt(spot.Line);
        foreach (var word in spot.Step.Words.Codes)
            if (block.Tokens[word.Token].Start != spot.Place.Start && (letter == 0 || word.Code.Letter == letter))
                own.Add(word.Code);
        return own;
    }

    static bool Conflicts(Spot spot, CodeEntry code)
    {
        foreach (var own in Own(spot))
            if (own == code || BlockWords.Conflict(own, code))
                return true;
        return false;
    }

    /// <summary>Why the code would do nothing here; null where it would.</summary>
    static string? Why(CodeEntry code, Spot spot) => code switch
    {
        { Letter: 'M', Tenths: 60 } when spot.Readings.ToolChange == ToolChangeReading.T => "T changes the tool on this control",
        { Letter: 'M', Tenths: 60 } when spot.Before.Tool > 0 && spot.After.SelectedTool == spot.Before.Tool => $"T{spot.Before.Tool} is in the spindle",
        { Group: ModalGroup.LengthOffset } when spot.Readings.LengthOffset == LengthOffsetReading.WithTool => "the length comes with the tool on this control",
        _ => CodesInForce.ChangesNothing(code, spot.Before) ? "in force already" : null,
    };

    /// <summary> · needs Z R Q</summary>
    static string Needs(Spot spot, CodeEntry code)
    {
        var letters = "";
        foreach (var use in code.Words)
            if (use.Need is WordNeed.CarriedOver or WordNeed.Required)
                letters += " " + WordUses.InPlane(code, use, spot.After.Plane).Letter;
        return letters.Length == 0 ? "" : " · needs" + letters;
    }
}

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
