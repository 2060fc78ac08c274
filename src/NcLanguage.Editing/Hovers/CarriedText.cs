using NcLanguage.Checks.Analysis;
using NcLanguage.Control.Execution;
using NcLanguage.Control.State;

namespace NcLanguage.Editing;

/// <summary>What a word does not say itself: the motion or cycle it belongs to, and the cycle's values that earlier blocks gave.</summary>
static class CarriedText
{
    const Slot CycleValues = Slot.Cycle | Slot.ReturnLevel | Slot.CycleR | Slot.CycleBottom | Slot.CycleDwell | Slot.CyclePeck | Slot.Feed;

    /// <summary>For the code of a cycle: what it takes over from above. Empty where its block gives all.</summary>
    public static string ForCycleCode(ProgramAnalysis analysis, int line, Step step)
    {
        var carried = Carried(analysis, line, step);
        return carried.Length == 0 ? "" : $"Carried over: {carried}.\n\n";
    }

    /// <summary>For a word that moves the tool: the motion in force, or the cycle with its values.</summary>
    public static string ForAxisWord(ProgramAnalysis analysis, int line, Step step)
    {
        if (step.Holes.Count > 0)
        {
            var first = HoleTable.Of(analysis.Main).At(line).First + 1;
            var holes = step.Holes.Count == 1 ? $"Hole {first}" : $"Holes {first} to {first + step.Holes.Count - 1}";
            var carried = Carried(analysis, line, step);
            return carried.Length == 0 ? $"{holes}, G{step.Holes[0].Cycle}." : $"{holes}. Carried over: {carried}.";
        }
        if ((step.Sets & Slot.Motion) != 0 || StepFacts.CycleOf(step) > 0)
            return "";
        if (WordUses.MotionInForce(step.After.Motion) is not { } motion)
            return step.After.Motion == MotionMode.None ? "**No motion code is in force**: the cycle has ended." : "The motion code in force is " + Lengths.NotKnown + ".";
        return $"Moves by {motion.Text} {motion.Name} {StateText.Setter(analysis.Main.LastSetter(Slot.Motion, line))}.";
    }

    static string Carried(ProgramAnalysis analysis, int line, Step step) =>
        StateText.InOneLine(ModalFacts.Of(analysis, line, step.After)
            .Where(fact => (fact.Slot & CycleValues) != 0 && fact.IsKnown && fact.SetLine != line));
}
