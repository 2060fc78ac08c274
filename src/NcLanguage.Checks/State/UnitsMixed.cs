using NcLanguage.Checks.Analysis;
using NcLanguage.Control.Codes;
using NcLanguage.Control.Execution;
using NcLanguage.Control.State;

namespace NcLanguage.Checks.Rules;

/// <summary>Inches and millimetres in one program.</summary>
public sealed class UnitsMixed : Rule
{
    public override RuleInfo Info { get; } = new()
    {
        Id = "NC2004",
        Name = "units-mixed",
        Severity = Severity.Error,
        Title = "The program goes over from one unit to the other",
        Finds =
            "G20 after lengths under G21, or G21 after lengths under G20 (G70 and G71 by the reading). The first change of a program is reported; a "
            + "change before any length is none.",
        AtTheMachine =
            "The control goes on from where it stands, but reads the same numbers 25.4 times as long or as short: the tool leaves the part or drives "
            + "into it. F keeps its number, so that the feed changes with the unit; offsets keep theirs on some controls.",
        Example = """
            G21 G90 G17 G54
            G0 X10 Y10
            X20
            G20 X50 Y30
            ~^^
            M30
            """,
        Instead = """
            G21 G90 G17 G54
            G0 X10 Y10
            X20
            X50 Y30
            M30
            """,
        NotFound = "A unit that the program before has left; numbers that are meant in the other unit.",
        Source = "NISTIR 6556 §3.5.7 and §4.3.3.3; one unit for one program is common practice.",
    };

    public override StepEvents Interest => StepEvents.News;

    public override void CheckStep(in StepContext step)
    {
        ref readonly var after = ref step.Step.After;
        if (!step.HasHappened(Happened.UnitsMixed) || after.IsCalled || step.Step.Words.Find(ModalGroup.Units) is not { } word)
            return;
        var (into, old, how) = after.Units == LengthUnit.Inch ? ("inches", "millimetres", "long") : ("millimetres", "inches", "short");
        step.Report(
            this, word.Token,
            $"{word.Code.Text} goes over to {into} after lengths in {old}: from here on the same numbers are 25.4 times as {how}{Feed(step)}.",
            Slot.Units, $"The program began in {old} here.");
    }

    /// <summary>What becomes of a feed that is in force and that the block does not give anew.</summary>
    static string Feed(in StepContext step)
    {
        ref readonly var after = ref step.Step.After;
        return after.FeedMode == FeedMode.PerMinute && after.Feed > 0 && !step.Step.Words.Has('F')
            ? $", and F{step.Say.FeedNumber(after.Feed)} now is {step.Say.Feed(after.Feed)}"
            : "";
    }
}
