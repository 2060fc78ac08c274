using NcLanguage.Checks.Analysis;
using NcLanguage.Control.Execution;
using NcLanguage.Control.State;
using NcLanguage.Machine.Profiles;

namespace NcLanguage.Checks.Rules;

/// <summary>The R level is far above the stock: the tool feeds through air.</summary>
public sealed class RFar : Rule
{
    /// <summary>R this far above the stock, mm, is worth a word.</summary>
    const double Far = 10;

    public override RuleInfo Info { get; } = new()
    {
        Id = "NC3022",
        Name = "r-far",
        Severity = Severity.Note,
        Title = "The R level is far above the stock",
        Finds = "A cycle whose R level is more than 10 mm, and more than three times the clearance, above the top of the setup's stock.",
        AtTheMachine = "Nothing goes wrong: the tool feeds through air from R down to the part, at every hole.",
        Example = CycleExample.Program("""
            G98 G81 X12 Y20 Z-8 R25 F120
            ~                   ^^^
            X40
            """),
        Instead = CycleExample.Program("""
            G98 G81 X12 Y20 Z-8 R2 F120
            X40
            """),
        Setup = CycleExample.Drill,
        NotFound = "Stock that was cut away below its top before. An R level chosen to pass over clamps under G99 is reported too: a low R with G98 does that and feeds less.",
        Source = "R 2 to 5 mm above the part is common practice; the threshold is our own.",
    };

    public override StepEvents Interest => StepEvents.HolesDiffer;

    public override void CheckStep(in StepContext step)
    {
        // Levels that a forgotten G91 makes: incremental-left-on.
        if (IncrementalLeftOn.HasMoved(step.Step.After))
            return;
        // A distance that was meant as a level: initial-level-below-r.
        if (CycleRuns.IsRDistance(step.Step))
            return;
        ref readonly var state = ref step.Step.After;
        if (step.Job.Setup.Stock is not { } stock || state.Plane != WorkPlane.XY || (step.Step.Sets & (Slot.Cycle | Slot.CycleR)) == 0)
            return;
        // By that reading R lies below the part, and above it there is the initial level alone.
        if (state.Cycle == 87 && step.Job.Readings.BackBoring == BackBoringReading.FromRToZ)
            return;
        var gap = state.RLevel + step.Step.ToFrame.Z - stock.Max.Z;
        var clearance = step.Job.Setup.Clearance;
        if (!(gap > Math.Max(Far, 3 * clearance)))
            return;
        var hole = step.Step.Holes[0];
        // A hole that ends above the stock has no more air than down to its bottom.
        var air = Math.Min(gap, hole.RLevel - hole.Bottom);
        var seconds = air / hole.Feed * 60;
        var cost = double.IsFinite(seconds) ? $", {Say.Seconds(seconds)} through air at each hole" : "";
        CycleRuns.Report(this, step, 'R', $"The R level {step.Say.Level(state.RLevel)} is {step.Say.Length(gap)} above the stock{cost}.", Slot.CycleR, "The R level was set here.");
    }
}
