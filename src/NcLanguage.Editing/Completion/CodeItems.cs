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
        foreach (var code in spot.Machine.Codes)
            if ((letter == 0 || code.Letter == letter) && (code.Letter != 'M' || mCodes < BlockWords.MostMCodes) && Begins(code.Text, spot))
                items.Add(rank + Usual, new CompletionEntry(spot.Style.Case(code.Text), CompletionKind.Code, code.Does, spot.Style.Case(code.Text))
                {
                    Documentation = OwnCodeHover.Of(spot.Analysis, code),
                });
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
