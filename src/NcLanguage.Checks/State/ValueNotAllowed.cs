using NcLanguage.Checks.Analysis;
using NcLanguage.Control.Execution;
using NcLanguage.Control.State;

namespace NcLanguage.Checks.Rules;

/// <summary>A value that the code does not take.</summary>
public sealed class ValueNotAllowed : Rule
{
    public override RuleInfo Info { get; } = new()
    {
        Id = "NC2028",
        Name = "value-not-allowed",
        Severity = Severity.Error,
        Title = "A word's value is not allowed",
        Finds =
            "A negative feed, speed, tool, offset number or dwell; a tool above the machine profile's number of tools; a number of repeats that is not a whole number from 1; a peck that is not above 0; a "
            + "work offset for G10 that does not exist; a scale factor of 0; a thread's lead that is not above 0.",
        AtTheMachine = "The control stops at the block with an alarm.",
        Example = """
            G21 G90 G17 G54
            G4 P-1
            ~  ^^^
            G0 X10 Y10
            M30
            """,
        Instead = """
            G21 G90 G17 G54
            G4 P1
            G0 X10 Y10
            M30
            """,
        NotFound = "Values that are allowed and senseless.",
        Source = "NISTIR 6556 §3.5.4, §3.5.5, §3.5.16 and §3.7 (a tool above the last place of the changer: §3.7.3); a thread's lead is common practice.",
    };

    public override StepEvents Interest => StepEvents.Faults;

    public override void CheckStep(in StepContext step)
    {
        foreach (ref readonly var fault in step.Step.Faults.Items)
            if (fault.Kind == FaultKind.ValueNotAllowed)
                step.Report(this, fault.Token, $"{Quote.Word(step.Block, step.Block.Tokens[fault.Token])} is not allowed: {Allowed(step, fault.Letter)}; the control stops with an alarm.");
    }

    static string Allowed(in StepContext step, char letter) => letter switch
    {
        'K' when step.Step.After.Motion == MotionMode.Thread && !step.Step.After.InCycle => "the lead of a thread is greater than 0",
        'P' or 'I' or 'J' or 'K' when step.Step.Words.HasCode('G', 510) => "a factor of 0 leaves nothing of the path",
        'F' => "a feed is not negative",
        'S' => "a speed is not negative",
        'T' when step.Step.Words['T'] > step.Job.Machine.Tools => $"the tool changer of this machine has {Say.Number(step.Job.Machine.Tools!.Value)} places",
        'T' => "a tool number is a whole number from 0",
        'D' or 'H' => "an offset number is a whole number from 0",
        'L' or 'K' when step.Step.Words[letter] == 0 && step.Step.After.InCycle => "repeats are a whole number from 1, unless the machine's file says that 0 keeps the cycle (zeroRepeats)",
        'L' or 'K' => "repeats are a whole number from 1",
        'Q' => "a peck is greater than 0",
        'P' when step.Step.Words.HasCode('G', 100) => step.Step.Words['L'] is 2 or 20 ? "G10 sets work offsets 1 to 9" : "an offset number is a whole number from 0",
        'P' when step.Step.Words.HasCode('G', 541) => "a further work offset is a whole number from 1",
        'P' when step.Step.Words.HasCode('M', 980) || step.Step.Words.HasCode('G', 650) => "the number of a program is a whole number from 0",
        'P' when step.Step.Words.HasCode('M', 990) => "a block number is a whole number from 0",
        'P' or 'X' => "a dwell is not negative",
        _ => "it lies outside what the code takes",
    };
}
