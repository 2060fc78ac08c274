using NcLanguage.Checks.Analysis;
using NcLanguage.Control.Execution;
using NcLanguage.Control.State;

namespace NcLanguage.Checks.Rules;

/// <summary>A cut while the spindle stands.</summary>
public sealed class SpindleOff : Rule
{
    public override RuleInfo Info { get; } = new()
    {
        Id = "NC2013",
        Name = "spindle-off",
        Severity = Severity.Error,
        Title = "A cut with the spindle standing",
        Finds =
            "The first feed, arc or cycle that runs while the spindle is known to stand: never started, stopped by M5 or by a tool change, or at S0. "
            + "Tools that work standing are not reported: probes, and those of which the setup says \"turns\": false.",
        AtTheMachine = "A tool that does not turn is pushed into the work: it breaks, or tears the work out of the clamps.",
        Example = """
            G21 G90 G17 G54
            S1500
            G0 X10 Y10 Z5
            G1 Z-2 F100
            ~^^^^^^^^^^
            G0 Z50
            M5
            M30
            """,
        Instead = """
            G21 G90 G17 G54
            S1500
            G0 X10 Y10 Z5
            M3
            G1 Z-2 F100
            G0 Z50
            M5
            M30
            """,
        FixSafety = FixSafety.Safe,
        Fix =
            "Writes M3 (M4 for left-hand tapping) as a block of its own before the block, where a speed is known: in the same block the spindle would still "
            + "run up while the tool goes in; M5 goes to the end of the program where no block behind stops the spindle. A choice where M5 has stopped the spindle since the last tool change, where the speed is the tool's before, and where the block ends the program.",
        NotFound = "Feeds straight up, and feeds at or above the top of the setup's stock; spindles started by hand.",
        Source = "NISTIR 6556 §3.6.2 and §3.5.16.",
    };

    public override StepEvents Interest => StepEvents.News;

    public override void CheckStep(in StepContext step)
    {
        ref readonly var after = ref step.Step.After;
        if (!step.HasHappened(Happened.CutStanding) || after.IsCalled || step.Job.Setup.FindTool(after.Tool) is { Stands: true })
            return;
        var why = after.Speed == 0 ? "The speed is S0" : step.Step.Before.HasSet(Slot.Spindle) ? "The spindle is stopped" : "The spindle was never started";
        var (concerns, where) = after.Speed == 0 ? (Slot.Speed, "The speed is set to 0 here.") : (Slot.Spindle, "The spindle is stopped here.");
        step.ReportBlock(this, $"{why}: this block pushes a tool that does not turn into the work.", concerns, where);
    }

    public override IEnumerable<Fix> Fixes(Finding finding, ProgramAnalysis analysis)
    {
        var step = analysis.Main.StepAt(finding.Line);
        // What the block before starts, this one stops; and where it turns in the first of several runs, starting it is not what a later one lacks.
        if (!(step.After.Speed > 0) || step.Before.Spindle is SpindleState.Clockwise or SpindleState.Counterclockwise || step.Words.HasCode('M', 50) || step.Words.HasCode('M', 190) || (step.Events & StepEvents.ToolChange) != 0)
            return [];
        var code = step.After.Cycle == 74 ? "M4" : "M3";
        // Of a tool that has no speed of its own nobody knows that it is to turn at all: it may pull a bar or shape a keyway.
        // Where the block ends the program too, the spindle would have to stop in it.
        var mayStand = (step.Before.Happened & Happened.SpeedOfOtherTool) != 0 || (step.Events & StepEvents.ProgramEnd) != 0 || WasStopped(analysis.Main, finding.Line);
        return [new Fix(
            $"Start the spindle with {code} in the block before", mayStand ? FixSafety.Choice : FixSafety.Safe,
            [Inserts.BlockBefore(analysis, finding.Line, code), .. StopAtEnd.Of(analysis.Main, finding.Line, Slot.Spindle, 5)])];
    }

    static int OrderOf(ProgramRun run, int line) => line < 0 ? -1 : run.OrderOf(line);

    /// <summary>Whether an M5 since the last tool change let the spindle stand: the stop may have been meant, and the cut may be what is wrong.</summary>
    static bool WasStopped(ProgramRun run, int line)
    {
        var setter = run.LastSetterBefore(Slot.Spindle, line);
        return setter >= 0 && run.OrderOf(setter) > OrderOf(run, run.LastSetterBefore(Slot.Tool, line)) && WordEdits.IndexOfCode(run.BlockAt(setter), 'M', 5) >= 0;
    }
}
