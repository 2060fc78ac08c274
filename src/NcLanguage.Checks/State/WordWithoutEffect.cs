using NcLanguage.Checks.Analysis;
using NcLanguage.Control.Execution;
using NcLanguage.Control.Moves;
using NcLanguage.Control.State;

namespace NcLanguage.Checks.Rules;

/// <summary>A word that nothing in its block uses.</summary>
public sealed class WordWithoutEffect : Rule
{
    public override RuleInfo Info { get; } = new()
    {
        Id = "NC2021",
        Name = "word-without-effect",
        Severity = Severity.Warning,
        Title = "A word has no effect in its block",
        Finds =
            "A word that no code of its block and no mode in force uses, such as H without G43, D without G41 or G42, I beside R, or R outside arcs and "
            + "cycles. Q in a tapping cycle is a note: on some controls it is a peck.",
        AtTheMachine = "The control ignores the word or stops with an alarm; what it was meant to do does not happen.",
        Example = """
            G21 G90 G17 G54
            G0 X10 Y10 Q2
            ~          ^^
            M30
            """,
        Instead = """
            G21 G90 G17 G54
            G0 X10 Y10
            M30
            """,
        NotFound = "Words beside a code that this product does not know; D0 and H0.",
        Source = "NISTIR 6556 §3.3.5 and table 3; that some controls tap by steps of Q: common practice, from memory.",
    };

    public override StepEvents Interest => StepEvents.Faults;

    public override void CheckStep(in StepContext step)
    {
        // Where the way of moving is not known, or a code was refused, the word may well be used.
        if (step.Step.After.IsCalled)
            return;
        foreach (ref readonly var fault in step.Step.Faults.Items)
            if (fault.Kind is FaultKind.CodeUnknown or FaultKind.CodesConflict or FaultKind.AxisWordsClaimedTwice)
                return;
        var isArcTold = IsArcTold(step);
        foreach (ref readonly var fault in step.Step.Faults.Items)
        {
            if (fault.Letter is 'I' or 'J' or 'K' && isArcTold)
                continue;
            // One that cannot be read is told as that.
            if (fault.Kind != FaultKind.WordWithoutEffect || (fault.Letter is 'D' or 'H' && fault.A == 0) || step.Block.Tokens[fault.Token].IsMalformed)
                continue;
            var word = Quote.Word(step.Block, step.Block.Tokens[fault.Token]);
            if (fault.Letter == 'Q' && step.Step.After.Cycle is 84 or 74)
                step.Report(this, fault.Token, $"G{step.Step.After.Cycle} is taken to tap in one stroke, so that {word} has no effect here: on a control that taps by steps it is the depth of each.", severity: Severity.Note);
            else
                step.Report(this, fault.Token, $"{word} has no effect here: {Why(fault.Letter, step.Step)}.", IsOfXY(step, fault.Letter) ? Slot.Plane : Slot.None, "The plane is set here.");
        }
    }

    /// <summary>Whether it is a word of an arc's centre that another plane than XY has no use for, where that may have been left on.</summary>
    static bool IsOfXY(in StepContext step, char letter) =>
        letter is 'I' or 'J' && step.Step.After.Plane != WorkPlane.XY && !step.Step.Words.Has('R') && CutsArc(step.Step);

    /// <summary>True for an arc whose centre words another rule speaks of: it has none in its plane, or all are for another plane.</summary>
    static bool IsArcTold(in StepContext step)
    {
        if (!CutsArc(step.Step))
            return false;
        foreach (ref readonly var fault in step.Step.Faults.Items)
            if (fault.Kind == FaultKind.WordMissing)
                return true;
        return ArcWords.OfOtherPlane(step) >= 0;
    }

    static string Why(char letter, Step step) => letter switch
    {
        'D' => "a radius offset is taken only with G41 or G42 in the same block",
        'H' => "a length offset is taken only with G43 or G44 in the same block",
        'I' or 'J' or 'K' when CutsArc(step) => step.Words.Has('R')
            ? "the arc has its radius R already, and takes that or its centre, not both"
            : "the arc lies in a plane that does not hold this direction",
        'I' or 'J' or 'K' => "no arc by its centre is cut in this block",
        'L' => "nothing is repeated in this block",
        'P' when step.Words.HasCode('G', 510) => "the factors by I, J and K go before it",
        'P' => "neither a dwell nor a call or an offset number is asked for in this block",
        'Q' => "no pecking cycle is in force",
        'R' => "neither a cycle nor an arc by its radius is in force",
        _ => "no code of this block uses it",
    };

    static bool CutsArc(Step step)
    {
        foreach (ref readonly var move in step.Moves.Items)
            if (move.Kind == MoveKind.Arc)
                return true;
        return false;
    }
}
