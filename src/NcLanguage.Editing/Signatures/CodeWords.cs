using NcLanguage.Checks;
using NcLanguage.Checks.Analysis;
using NcLanguage.Control.Codes;
using NcLanguage.Control.Execution;
using NcLanguage.Control.Moves;
using NcLanguage.Control.State;

namespace NcLanguage.Editing;

/// <summary>How a word of a code stands in its block.</summary>
enum WordStanding
{
    /// <summary>It stands in the block.</summary>
    Given,

    /// <summary>An earlier block has given it, and it still counts.</summary>
    Carried,

    /// <summary>The code cannot do without it.</summary>
    Missing,

    /// <summary>The code can do without it, or has what it needs in another word.</summary>
    Free,
}

/// <summary>A word that a code takes, and how it stands in a block.</summary>
/// <param name="Carried">What is carried over, as R2; empty where nothing is.</param>
/// <param name="SetLine">The line (0-based) that gave what is carried over; −1 where that is not known.</param>
readonly record struct CodeWordFact(WordUse Use, WordStanding Standing, string Carried, int SetLine)
{
    /// <summary>length, in the unit in force; what the number counts.</summary>
    public static string UnitOf(WordUnit unit, char letter, ProgramAnalysis analysis, in ControlState state) => unit switch
    {
        WordUnit.Length => state.Units switch { LengthUnit.Inch => "in", LengthUnit.Millimetre => "mm", _ => "mm or in" },
        WordUnit.Degrees => "degrees",
        WordUnit.Feed => state.FeedMode switch
        {
            FeedMode.PerTurn => state.Units == LengthUnit.Inch ? "in per rev" : "mm per rev",
            FeedMode.InverseTime => "1/min",
            _ => state.Units == LengthUnit.Inch ? "in/min" : "mm/min",
        },
        WordUnit.Speed => state.SurfaceSpeed ? "cutting speed" : "rev/min",
        WordUnit.Dwell when DwellReadings.IsByPoint(letter, analysis.Machine.Readings) => "s with a point, ms without",
        WordUnit.Dwell => DwellReadings.IsMilliseconds(letter, hasPoint: true, analysis.Machine.Readings) ? "ms" : "s",
        _ => "",
    };

    /// <summary>bottom of the hole · mm · needed</summary>
    public string Describe(ProgramAnalysis analysis, in ControlState state)
    {
        var unit = UnitOf(Use.Unit, Use.Letter, analysis, state);
        var standing = Standing switch
        {
            WordStanding.Missing => Use.Need == WordNeed.OneOf ? " · one of these is needed" : " · needed",
            WordStanding.Carried => $" · {Carried} carried over{(SetLine >= 0 ? $" from line {SetLine + 1}" : "")}",
            _ => "",
        };
        return Use.Meaning + (unit.Length > 0 ? " · " + unit : "") + standing;
    }
}

/// <summary>The words that codes of a block take.</summary>
static class CodeWords
{
    /// <summary>The words of a code in the order of the table: needed ones first, then those that stand in the block or are carried over, then the rest.</summary>
    /// <param name="line">The block's line, from 0.</param>
    /// <param name="step">The block as it runs.</param>
    public static List<CodeWordFact> Of(ProgramAnalysis analysis, int line, Step step, CodeEntry code)
    {
        var facts = new List<CodeWordFact>();
        foreach (var inTable in code.Words)
        {
            if (inTable.OnlyUnder is { } reading && reading != analysis.Machine.Readings.Repeats)
                continue;
            if (IsOffThePlane(code, inTable.Letter, step.After.Plane) && !step.Words.Has(inTable.Letter))
                continue;
            facts.Add(Of(analysis, line, step, code, WordUses.InPlane(code, inTable, step.After.Plane)));
        }
        return facts;
    }

    /// <summary>An arc's centre lies in the plane: the word along the third axis says nothing of it.</summary>
    static bool IsOffThePlane(CodeEntry code, char letter, WorkPlane plane) =>
        code is { Letter: 'G', Tenths: 20 or 30 } && plane != WorkPlane.Unknown && letter == 'I' + Arcs.Axes(plane).Third;

    static CodeWordFact Of(ProgramAnalysis analysis, int line, Step step, CodeEntry code, WordUse use)
    {
        if (step.Words.Has(use.Letter))
            return new CodeWordFact(use, WordStanding.Given, "", -1);
        if (Carried(analysis, step, code, use) is ({ } value, var slot))
            return new CodeWordFact(use, WordStanding.Carried, value, analysis.Main.LastSetterBefore(slot, line));
        var isMissing = use.Need switch
        {
            WordNeed.Required => true,
            WordNeed.CarriedOver => true,
            WordNeed.OneOf => !HasOneOf(step, code),
            // What is not in force yet has to be said by the code that works with it.
            _ => (use.Unit == WordUnit.Feed && code.Group != ModalGroup.FeedMode) || (use.Unit == WordUnit.Speed && code.Group == ModalGroup.Spindle),
        };
        return new CodeWordFact(use, isMissing ? WordStanding.Missing : WordStanding.Free, "", -1);
    }

    static bool HasOneOf(Step step, CodeEntry code)
    {
        // A shift of fine and back boring may have been given by a block before.
        if (code.Group == ModalGroup.Cycle && (step.After.BoreShiftGiven || !double.IsNaN(step.After.Peck)))
            return true;
        foreach (var use in code.Words)
            if (use.Need == WordNeed.OneOf && step.Words.Has(WordUses.InPlane(code, use, step.After.Plane).Letter))
                return true;
        return false;
    }

    /// <summary>What an earlier block leaves in force for a word, as it would be written; null where it leaves nothing.</summary>
    static (string? Value, Slot Slot) Carried(ProgramAnalysis analysis, Step step, CodeEntry code, WordUse use)
    {
        ref readonly var state = ref step.After;
        var say = new LengthText(state.Units);
        if (use.Unit == WordUnit.Feed)
            return double.IsNaN(state.Feed) ? default : ("F" + FeedNumber(state, say), Slot.Feed);
        if (use.Unit == WordUnit.Speed)
            return double.IsNaN(state.Speed) ? default : ("S" + Say.Number(state.Speed), Slot.Speed);
        if (code.Group != ModalGroup.Cycle || state.Cycle != code.Tenths / 10)
            return default;
        var isIncremental = state.Distance == DistanceMode.Incremental;
        return use switch
        {
            { Letter: 'R', Unit: WordUnit.Length } when state.RGiven => (Level("R", state.RLevel, say, isIncremental), Slot.CycleR),
            { Need: WordNeed.CarriedOver } when use.Letter == StepFacts.DepthLetter(state) && state.BottomGiven =>
                (Level(use.Letter.ToString(), state.Bottom, say, isIncremental), Slot.CycleBottom),
            { Letter: 'Q' } when !double.IsNaN(state.Peck) => ("Q" + say.Number(state.Peck), Slot.CyclePeck),
            { Unit: WordUnit.Dwell } when !double.IsNaN(state.DwellNumber) => ("P" + Say.Number(state.DwellNumber), Slot.CycleDwell),
            _ => default,
        };
    }

    // What is carried over is the level, not the distance that was written.
    static string Level(string letter, double level, LengthText say, bool isIncremental) =>
        double.IsNaN(level) ? letter : isIncremental ? $"{letter} at Z{say.Number(level)}" : letter + say.Number(level);

    static string FeedNumber(in ControlState state, LengthText say) => state.FeedMode switch
    {
        FeedMode.PerTurn => Say.Number(say.IsInch ? state.Feed / UnitLength.MmPerInch : state.Feed, say.IsInch ? 5 : 4),
        FeedMode.PerMinute => say.FeedNumber(state.Feed),
        _ => Say.Number(state.Feed),
    };

    /// <summary>The codes of a block that take words, in the order written, and then the cycle or the motion in force where none of them takes the axis words.</summary>
    public static List<CodeEntry> Codes(Step step)
    {
        var codes = new List<CodeEntry>();
        var hasAxes = false;
        foreach (var word in step.Words.Codes)
        {
            if (word.Code.Words.Length > 0 || word.Code.TakesArguments)
                codes.Add(word.Code);
            hasAxes |= word.Code.TakesArguments || word.Code.Group is ModalGroup.Motion || (word.Code.Group == ModalGroup.Cycle && word.Code.Tenths != 800)
                || (word.Code.Letter == 'G' && word.Code.Group is ModalGroup.NonModal or ModalGroup.Scaling or ModalGroup.Rotation or ModalGroup.Mirror && word.Code.Takes('X'));
        }
        if (hasAxes)
            return codes;
        var inForce = step.After.InCycle ? CodeTable.Find('G', step.After.Cycle * 10) : step.After.Cycle == 0 ? WordUses.MotionInForce(step.After.Motion) : null;
        if (inForce is not null)
            codes.Add(inForce);
        return codes;
    }
}
