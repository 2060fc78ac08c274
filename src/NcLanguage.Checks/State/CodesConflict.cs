using NcLanguage.Checks.Analysis;
using NcLanguage.Control.Execution;

namespace NcLanguage.Checks.Rules;

/// <summary>Codes that exclude each other in one block.</summary>
public sealed class CodesConflict : Rule
{
    public override RuleInfo Info { get; } = new()
    {
        Id = "NC2001",
        Name = "codes-conflict",
        Severity = Severity.Error,
        Title = "Two codes of a block exclude each other",
        Finds =
            "Two codes of one modal group, or of the group that acts in its own block only (G4 G10 G28 G30 G53 G92 to G92.3); two codes that both want the axis words (G28 beside G1); more than four M codes. G0 beside G28 or G30 is not "
            + "reported: the way home is a rapid anyway.",
        AtTheMachine = "The control stops with an alarm, or silently takes the last of the two: which one depends on the control.",
        Example = """
            G21 G90 G17 G54
            G0 G1 X10 Y10
            ~  ^^
            M30
            """,
        Instead = """
            G21 G90 G17 G54
            G0 X10 Y10
            M30
            """,
        NotFound = "Codes that exclude each other on one machine only.",
        Source = "NISTIR 6556 §3.3.5, §3.4 and table 4.",
    };

    public override StepEvents Interest => StepEvents.Faults;

    public override void CheckStep(in StepContext step)
    {
        foreach (ref readonly var fault in step.Step.Faults.Items)
        {
            if (fault.Kind == FaultKind.CodesConflict)
                step.Report(this, fault.Token, Conflict(step, fault));
            else if (fault.Kind == FaultKind.TooManyMCodes)
                step.Report(this, fault.Token, $"This is the fifth M code of the block, and a block takes {Say.Number(fault.A)}: the control stops with an alarm.");
            else if (fault.Kind == FaultKind.AxisWordsClaimedTwice && !IsRapidHome(step, fault))
                step.Report(this, fault.Token,
                    $"{Quote.Word(step.Block, step.Block.Tokens[fault.Token])} and another code of this block both want the axis words: the control stops with an alarm.");
        }
    }

    static string Conflict(in StepContext step, in Fault fault)
    {
        var first = Quote.Word(step.Block, step.Block.Tokens[fault.Other]);
        var second = Quote.Word(step.Block, step.Block.Tokens[fault.Token]);
        if (first == second)
            return $"{first} stands twice in this block: the control may stop with an alarm.";
        return IsSameCode(step, fault)
            ? $"{first} and {second} are the same code twice: the control may stop with an alarm."
            : $"{first} and {second} exclude each other in one block: the control stops with an alarm, or takes only one of them.";
    }

    static bool IsSameCode(in StepContext step, in Fault fault)
    {
        foreach (ref readonly var word in step.Step.Words.Codes)
            if (word.Token == fault.Other)
                return word.Code.Letter == fault.Letter && word.Code.Tenths == (int)Math.Round(fault.A * 10);
        return false;
    }

    static bool IsRapidHome(in StepContext step, in Fault fault) => fault.A is 28 or 30 && step.Step.Words.HasCode('G', 0);
}
