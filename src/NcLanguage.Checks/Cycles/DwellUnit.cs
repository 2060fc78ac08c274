using NcLanguage.Checks.Analysis;
using NcLanguage.Control.Execution;
using NcLanguage.Machine.Profiles;

namespace NcLanguage.Checks.Rules;

/// <summary>A dwell whose number makes no sense in the unit in force.</summary>
public sealed class DwellUnit : Rule
{
    /// <summary>A dwell this long in a hole, or with the spindle turning, is not meant; seconds.</summary>
    const double TooLong = 30;

    /// <summary>The same with the spindle standing, where a pause does no harm; seconds.</summary>
    const double TooLongStanding = 120;

    /// <summary>Dwells as they are usual in a hole: up to so many turns of the spindle, or so many seconds.</summary>
    const double UsualTurns = 20;
    const double UsualInHole = 3;

    /// <summary>Dwells as they are usual in G4; seconds.</summary>
    const double UsualLeast = 0.1;
    const double UsualMost = 10;

    const string Usual = "usual";

    public override RuleInfo Info { get; } = new()
    {
        Id = "NC3010",
        Name = "dwell-unit",
        Severity = Severity.Error,
        Title = "A dwell's number makes no sense in the unit in force",
        Finds = "P in a cycle or in G4, or X in G4 where the point decides, that is shorter than one turn of the spindle, or lasts 30 s or more (G4 with the spindle standing: 120 s). A warning where the other "
            + "unit makes no more sense, unless it is a long one in a cycle, and for a long G4 before the tool has cut, which may be a warm-up.",
        AtTheMachine = "Read in seconds, P500 lets the tool rub at the bottom of the hole for more than eight minutes; read in milliseconds, P0.5 does not dwell at all.",
        Example = CycleExample.Program("""
            G98 G82 X12 Y20 Z-3 R2 P500 F120
            ~                      ^^^^
            X40
            """),
        Instead = CycleExample.Program("""
            G98 G82 X12 Y20 Z-3 R2 P0.5 F120
            X40
            """),
        FixSafety = FixSafety.Safe,
        Fix = "Writes the time that the other unit gives in the unit in force; none where that makes no sense either. A choice to be looked at for a warning, where no machine is chosen, and where that time is "
            + "not a usual one: in a hole up to 20 turns or 3 s, in G4 from 0.1 to 10 s.",
        NotFound = "Numbers that make sense in the wrong unit too, dwells while the speed is not known that are only too short, and long ones by G4 before any tool is called, as in a warm-up, unless the other unit makes 0.1 to 10 s of them. X in G4 where it is seconds with a point and without.",
        Source = "NISTIR 6556 §3.5.4 and §3.5.16 (P in seconds); milliseconds and the rule by decimal point are common practice. The thresholds are our own.",
    };

    public override StepEvents Interest => StepEvents.Codes | StepEvents.News;

    public override void CheckStep(in StepContext step)
    {
        if (!DwellWord.TryRead(step, out var dwell))
            return;
        var isLong = dwell.Seconds >= (dwell.InCycle || dwell.Turns ? TooLong : TooLongStanding);
        var isShort = dwell.Seconds < dwell.Turn && (dwell.InCycle || dwell.Turns);
        if (!isLong && !isShort)
            return;
        var otherFits = dwell.OtherSeconds < TooLong && dwell.OtherSeconds > 0.001 && !(dwell.OtherSeconds < dwell.Turn);
        // A short wait outside a hole does no harm unless another was meant.
        if (isShort && !dwell.InCycle && !otherFits)
            return;
        // Without a tool that would cut this is a warm-up, unless the other unit gives a wait as programs have it.
        if (isLong && !dwell.InCycle && !step.Step.Before.HasCut && step.Step.After.Tool <= 0 && !IsUsual(dwell))
            return;
        var mayBeMeant = !otherFits || (isLong && !dwell.InCycle && !(step.Step.Before.HasCut && dwell.Turns));
        step.Report(
            this, dwell.Token, Message(step, dwell, isShort, otherFits), value: otherFits ? dwell.OtherSeconds : double.NaN,
            text: IsUsual(dwell) ? Usual : "", severity: mayBeMeant && !(isLong && dwell.InCycle) ? Severity.Warning : Severity.Error);
    }

    /// <summary>Whether the other reading gives a dwell that programs commonly have.</summary>
    static bool IsUsual(in DwellWord dwell) => dwell.InCycle
        ? dwell.OtherSeconds <= UsualInHole || dwell.OtherSeconds <= UsualTurns * dwell.Turn
        : dwell.OtherSeconds is >= UsualLeast and <= UsualMost;

    static string Message(in StepContext step, in DwellWord dwell, bool isShort, bool otherFits)
    {
        var word = Quote.Word(step.Block, step.Block.Tokens[dwell.Token]);
        var here = dwell.Seconds < 60 ? Say.Number(dwell.Seconds, 6) + " s" : $"{Say.Number(dwell.Seconds)} s ({Say.Seconds(dwell.Seconds)})";
        var turns = !isShort ? "" : dwell.Seconds / dwell.Turn < 0.01 ? ", less than a hundredth of a turn of the spindle" : $", {Say.Number(dwell.Seconds / dwell.Turn, 2)} of a turn of the spindle";
        if (!otherFits)
            return $"{word} is {here} here{turns}: {Harm(step, dwell, isShort)}";
        var hasPoint = step.Block.Tokens[dwell.Token].HasPoint;
        var other = DwellReadings.IsByPoint(dwell.Letter, step.Job.Readings) ? hasPoint ? "without the point" : "with a point"
            : DwellReadings.IsMilliseconds(dwell.Letter, hasPoint, step.Job.Readings) ? "as seconds" : "as milliseconds";
        return $"{word} is {here} here{turns}; {other} it would be {Say.Seconds(dwell.OtherSeconds)}.";
    }

    /// <summary>What is wrong with a dwell that makes no sense in either unit, and what to write.</summary>
    static string Harm(in StepContext step, in DwellWord dwell, bool isShort)
    {
        if (!dwell.InCycle)
            return $"the machine waits all that time{(dwell.Turns ? " with the spindle turning" : "")}. Write a shorter time, unless the wait is meant.";
        var enough = double.IsNaN(dwell.Turn) ? "A turn or two of the spindle are enough"
            : $"A turn or two of the spindle are enough, {DwellWord.Write(DwellWord.Handy(dwell.Turn), step.Job.Readings.Dwell)} to {DwellWord.Write(DwellWord.Handy(2 * dwell.Turn), step.Job.Readings.Dwell)}";
        return (isShort ? "the bottom is not cut all round. " : "all that time the tool rubs at the bottom of the hole. ") + enough + ".";
    }

    public override IEnumerable<Fix> Fixes(Finding finding, ProgramAnalysis analysis)
    {
        ArgumentNullException.ThrowIfNull(finding);
        ArgumentNullException.ThrowIfNull(analysis);
        if (double.IsNaN(finding.Value))
            yield break;
        var isX = analysis.Text.Line(finding.Line)[finding.StartColumn] is (byte)'X' or (byte)'x';
        var word = isX ? DwellWord.WriteX(finding.Value) : DwellWord.Write(finding.Value, analysis.Machine.Readings.Dwell);
        var safety = finding.Severity == Severity.Error && finding.Text == Usual ? Certainty.OfReading(analysis) : FixSafety.Choice;
        yield return new Fix(
            $"Dwell for {Say.Seconds(finding.Value)} ({word})", safety, [new Edit(finding.Line, finding.StartColumn, finding.EndColumn, word)]);
    }
}
