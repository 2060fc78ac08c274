using NcLanguage.Checks.Analysis;
using NcLanguage.Control.Execution;
using NcLanguage.Control.State;

namespace NcLanguage.Checks.Rules;

/// <summary>A speed that the spindle does not have.</summary>
public sealed class SpeedOverMachine : Rule
{
    public override RuleInfo Info { get; } = new()
    {
        Id = "NC5001",
        Name = "speed-over-machine",
        Severity = Severity.Error,
        Title = "A speed the spindle does not have",
        Finds = "An S word above the greatest or below the least speed of the machine profile. S0 counts as a stop.",
        AtTheMachine = "The control stops with an alarm, or turns at its limit: the feed then no longer fits the speed, and a tap tears the thread.",
        Machine = """{ "name": "bench mill", "spindle": { "min": 60, "max": 8000 } }""",
        Example = """
            G21 G90 G17 G54
            S12000 M3
            ~^^^^^
            G0 X20 Y30
            M5
            M30
            """,
        Instead = """
            G21 G90 G17 G54
            S8000 M3
            G0 X20 Y30
            M5
            M30
            """,
        NotFound = "Cutting speeds under G96, and machines whose profile gives no speeds.",
        Source = "Common practice; S is a speed in turns a minute (NISTIR 6556 §3.7.2).",
    };

    public override StepEvents Interest => StepEvents.News;

    public override void CheckStep(in StepContext step)
    {
        if (step.Job.Machine.Spindle is not { } limits || (step.Step.Sets & Slot.Speed) == 0)
            return;
        var speed = step.Step.After.Speed;
        var token = step.Step.Words.TokenOf('S');
        if (speed > limits.Max)
            step.Report(this, token, $"S{Say.Number(speed)} is more than this spindle turns: its greatest speed is {Say.Number(limits.Max)} rev/min.");
        else if (speed > 0 && speed < limits.Min)
            step.Report(this, token, $"S{Say.Number(speed)} is slower than this spindle turns: its least speed is {Say.Number(limits.Min)} rev/min.");
    }
}
