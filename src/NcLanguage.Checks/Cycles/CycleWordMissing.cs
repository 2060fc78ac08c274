using NcLanguage.Checks.Analysis;
using NcLanguage.Control.Codes;
using NcLanguage.Control.Execution;
using NcLanguage.Control.State;

namespace NcLanguage.Checks.Rules;

/// <summary>A cycle lacks a word it cannot do without.</summary>
public sealed class CycleWordMissing : Rule
{
    public override RuleInfo Info { get; } = new()
    {
        Id = "NC3003",
        Name = "cycle-word-missing",
        Severity = Severity.Error,
        Title = "A cycle lacks a word it needs",
        Finds = "The first hole of a cycle without an R level, a depth or, for pecking, Q, or for back boring K; and a cycle's block without any of X, Y and Z. Once for each cycle.",
        AtTheMachine = "The control stops with an alarm, or takes a value left over from an earlier cycle and drills to it.",
        Example = CycleExample.Program("""
            G98 G81 X12 Y20 Z-8 F120
            ~   ^^^
            X40
            """),
        Instead = CycleExample.Program("""
            G98 G81 X12 Y20 Z-8 R2 F120
            X40
            """),
        NotFound = "A missing dwell (dwell-missing) and a missing feed (feed-missing).",
        Source = "NISTIR 6556 §3.5.16: R and the depth are needed at first use, one of X, Y, Z always, Q above 0 in G83; §3.5.16.8 for K.",
    };

    public override StepEvents Interest => StepEvents.Faults;

    public override void CheckStep(in StepContext step)
    {
        // A block that has given levels and drilled nothing, with 0 repeats, has been told already what it lacks.
        ref readonly var before = ref step.Step.Before;
        var isFirst = (step.Step.Sets & Slot.Cycle) != 0 || (!before.StandsAtHole && !before.RGiven && !before.BottomGiven);
        var (token, missing) = (-1, "");
        foreach (ref readonly var fault in step.Step.Faults.Items)
        {
            if (fault.Kind != FaultKind.WordMissing || !IsOfCycle(fault, step.Step))
                continue;
            var noPlace = IsPlace(fault, step.Step);
            if (!isFirst && !noPlace)
                continue;
            token = fault.Token;
            missing += (missing.Length == 0 ? "" : " and ") + (noPlace ? "none of X, Y and Z" : $"no {fault.Letter}");
        }
        if (token >= 0)
            step.Report(this, token, $"G{step.Step.After.Cycle} has {missing}: the control stops here, or drills with what an earlier cycle left.{OtherReading(step)}");
    }

    /// <summary>What back boring that is written for another control is told besides.</summary>
    static string OtherReading(in StepContext step) =>
        step.Step.After is { Cycle: 87 } after && after.RLevel < after.Bottom && double.IsNaN(after.BoreTop)
            ? " Where your control bores from R up to Z, its machine file says so: \"backBoring\": \"fromRToZ\"." : "";

    /// <summary>H and P belong to other codes of the block, as I, J and K do but in back boring; so does what another code lacks beside a cycle that is in force.</summary>
    static bool IsOfCycle(in Fault fault, Step step)
    {
        var isBoreTop = step.After.Cycle == 87 && fault.Letter is 'I' or 'J' or 'K';
        if (step.After.Cycle <= 0 || !(isBoreTop || fault.Letter is 'X' or 'Y' or 'Z' or 'R' or 'Q'))
            return false;
        foreach (var word in step.Words.Codes)
            if (word.Token == fault.Token && word.Code.Group != ModalGroup.Cycle)
                return false;
        return true;
    }

    /// <summary>X stands for all three where none is there; where Z is there, X or Y can only be the depth of another plane.</summary>
    static bool IsPlace(in Fault fault, Step step) =>
        fault.Letter == 'X' && !step.Words.Has('X') && !step.Words.Has('Y') && !step.Words.Has('Z');
}
