using NcLanguage.Control.Codes;
using NcLanguage.Control.Execution;
using NcLanguage.Control.Moves;
using NcLanguage.Control.State;
using NcLanguage.Machine.Profiles;

namespace NcLanguage.Editing;

/// <summary>Which code a word of a block belongs to, and how that code uses it.</summary>
static class WordUses
{
    /// <summary>The code whose word it is, and how that code uses it: a code of the block, or else the cycle or the motion in force; null
    /// where none uses it.</summary>
    public static (CodeEntry Code, WordUse Use)? Of(char letter, Step step, Readings readings)
    {
        foreach (var word in step.Words.Codes)
            if (Find(word.Code, letter, step.After.Plane, readings) is { } use && !IsOfTheMotion(letter, use, step))
                return (word.Code, use);
        var inForce = StepFacts.CycleOf(step) is > 0 and var cycle ? CodeTable.Find('G', cycle * 10) : MotionInForce(step.After.Motion);
        return inForce is not null && Find(inForce, letter, step.After.Plane, readings) is { } carried ? (inForce, carried) : null;
    }

    // A dwell wants X only where P does not give its time (NISTIR 6556 table 8).
    static bool IsOfTheMotion(char letter, WordUse use, Step step) => letter == 'X' && use.Unit == WordUnit.Dwell && step.Words.Has('P');

    /// <summary>The row of a motion mode; null where there is none.</summary>
    public static CodeEntry? MotionInForce(MotionMode motion) => motion switch
    {
        MotionMode.Rapid => CodeTable.Find('G', 0),
        MotionMode.Linear => CodeTable.Find('G', 10),
        MotionMode.ArcClockwise => CodeTable.Find('G', 20),
        MotionMode.ArcCounterclockwise => CodeTable.Find('G', 30),
        MotionMode.Thread => CodeTable.Find('G', 330),
        MotionMode.Probe => CodeTable.Find('G', 382),
        _ => null,
    };

    /// <summary>A use as it is in a plane: cycles stand in the table for XY, and in XZ and YZ the plane's third axis takes the place of Z.</summary>
    public static WordUse InPlane(CodeEntry code, WordUse use, WorkPlane plane)
    {
        if (code.Group != ModalGroup.Cycle)
            return use;
        var letter = Transposed(use.Letter, plane);
        return letter == use.Letter
            ? use
            : use with { Letter = letter, Meaning = use.Meaning.Replace($"along {use.Letter}", $"along {letter}", StringComparison.Ordinal) };
    }

    static WordUse? Find(CodeEntry code, char letter, WorkPlane plane, Readings readings)
    {
        var inTable = code.Group == ModalGroup.Cycle ? Transposed(letter, plane) : letter;
        foreach (var use in code.Words)
            if (use.Letter == inTable && (use.OnlyUnder is null || use.OnlyUnder == readings.Repeats))
                return InPlane(code, use, plane);
        return code.TakesArguments && CallArguments.NumberOf(letter) is > 0 and var number
            ? new WordUse(letter, WordNeed.Optional, WordUnit.None, $"argument of the call: #{number} in the program called")
            : null;
    }

    // Z and the plane's third axis change places; the map is its own inverse.
    static char Transposed(char letter, WorkPlane plane)
    {
        var depth = (char)('X' + Arcs.Axes(plane).Third);
        return letter == depth ? 'Z' : letter == 'Z' ? depth : letter;
    }
}
