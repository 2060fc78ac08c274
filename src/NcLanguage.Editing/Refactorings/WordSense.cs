using NcLanguage.Control.Codes;
using NcLanguage.Control.Execution;
using NcLanguage.Control.Moves;
using NcLanguage.Control.State;
using NcLanguage.Machine.Profiles;
using NcLanguage.Syntax.Lexing;

namespace NcLanguage.Editing.Refactorings;

/// <summary>What the number of a word is.</summary>
enum WordSense
{
    /// <summary>No length: a count, an angle, a factor, a time.</summary>
    Other,

    Length,

    /// <summary>A feed in lengths by the minute or the turn.</summary>
    Feed,

    /// <summary>It may be a length.</summary>
    NotClear,
}

/// <summary>Tells what the words of a block that has run are.</summary>
static class WordSenses
{
    /// <param name="step">What the block did.</param>
    public static WordSense Of(Step step, in Token token, Readings readings)
    {
        if (token.Kind != TokenKind.Word)
            return WordSense.Other;
        var letter = (char)token.Letter;
        if (step.Words.Find(ModalGroup.MacroCall) is not null)
            return letter is 'G' or 'N' or 'P' or 'L' ? WordSense.Other : WordSense.NotClear;
        if (step.Words.HasCode('G', 100))
            return letter is 'G' or 'N' or 'L' ? WordSense.Other
                // The offset's number and how far its datum lies off; of other tables nobody knows here.
                : step.Words['L'] is not (2 or 20) ? WordSense.NotClear
                : letter == 'P' ? WordSense.Other : letter is 'X' or 'Y' or 'Z' ? OfAxis(step, letter - 'X') : WordSense.NotClear;
        return letter switch
        {
            'X' or 'Y' or 'Z' => OfAxis(step, letter - 'X'),
            'I' or 'J' or 'K' => OfCentre(step, letter, readings),
            'R' => step.Words.HasCode('G', 680) ? WordSense.Other : WordSense.Length,
            'Q' => step.After.InCycle ? WordSense.Length : WordSense.Other,
            'P' => step.Words.HasCode('G', 640) ? WordSense.Length : WordSense.Other,
            'F' => step.After.FeedMode switch { FeedMode.PerMinute or FeedMode.PerTurn => WordSense.Feed, FeedMode.InverseTime => WordSense.Other, _ => WordSense.NotClear },
            _ => WordSense.Other,
        };
    }

    static WordSense OfAxis(Step step, int axis)
    {
        if (step.Words.HasCode('G', 40))
            return WordSense.Other;
        if ((step.Before.ProgramFrame?.Polar ?? step.After.ProgramFrame?.Polar) is not { } polar)
            return WordSense.Length;
        return polar.Plane == WorkPlane.Unknown ? WordSense.NotClear : axis == Arcs.Axes(polar.Plane).Second ? WordSense.Other : WordSense.Length;
    }

    static WordSense OfCentre(Step step, char letter, Readings readings)
    {
        if (step.Words.HasCode('G', 510))
            return WordSense.Other;
        return letter == 'K' && readings.Repeats == RepeatReading.K && step.After.InCycle ? WordSense.Other : WordSense.Length;
    }
}
