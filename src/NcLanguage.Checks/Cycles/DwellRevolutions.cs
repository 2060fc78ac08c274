using NcLanguage.Checks.Analysis;
using NcLanguage.Control.Execution;

namespace NcLanguage.Checks.Rules;

/// <summary>A dwell in a cycle that lasts many turns of the spindle.</summary>
public sealed class DwellRevolutions : Rule
{
    /// <summary>Half a second, the usual round figure, is 20 turns at 2400 1/min: only what goes beyond is worth a word.</summary>
    const double ManyTurns = 20;

    const double Absurd = 30;

    public override RuleInfo Info { get; } = new()
    {
        Id = "NC3012",
        Name = "dwell-revolutions",
        Severity = Severity.Note,
        Title = "A dwell lasts many turns of the spindle",
        Finds = "P in a cycle that lasts more than 20 turns of the spindle and less than 30 s.",
        AtTheMachine = "Two or three turns clean the bottom; after that the edges rub: the tool gets blunt, and tough materials harden.",
        Example = CycleExample.Program("""
            G98 G82 X12 Y20 Z-3 R2 P2 F120
            ~                      ^^
            X40
            """),
        Instead = CycleExample.Program("""
            G98 G82 X12 Y20 Z-3 R2 P0.1 F120
            X40
            """),
        NotFound = "Dwells of G4, and speeds that change after P was given.",
        Source = "Turns = seconds · speed / 60; how many are enough is common practice, and the threshold our own.",
    };

    public override StepEvents Interest => StepEvents.Codes | StepEvents.News;

    public override void CheckStep(in StepContext step)
    {
        if (!DwellWord.TryRead(step, out var dwell) || !dwell.InCycle || dwell.Seconds >= Absurd || !(dwell.Seconds / dwell.Turn > ManyTurns))
            return;
        step.Report(
            this, dwell.Token, $"The dwell of {Say.Seconds(dwell.Seconds)} lasts {Say.Number(dwell.Seconds / dwell.Turn, 1)} turns of the spindle at S{Say.Number(step.Step.After.Speed)}: two or three clean the bottom.");
    }
}
