using NcLanguage.Checks.Analysis;
using NcLanguage.Control.Execution;
using NcLanguage.Control.State;
using NcLanguage.Machine.Setups;

namespace NcLanguage.Checks.Rules;

/// <summary>A probe that is fed or probes with the spindle turning.</summary>
public sealed class ProbeTurning : Rule
{
    public override RuleInfo Info { get; } = new()
    {
        Id = "NC2036",
        Name = "probe-turning",
        Severity = Severity.Warning,
        Title = "A probe works with the spindle turning",
        Finds = "The first probe move, or feed into the stock, of a probe (setup) while the spindle is known to turn, once for each time that it is started.",
        AtTheMachine = "The ball runs round instead of standing still: what is measured is off by its run-out, the turning alone may count as contact, and at a high speed the stylus breaks.",
        Setup = """
            { "tools": [ { "number": 9, "kind": "probe", "diameter": 6 } ] }
            """,
        Example = """
            G21 G90 G17 G54
            G0 G53 Z0
            T9 M6
            S800 M3
            G0 X20 Y30
            G43 H9 Z50
            Z5
            G38.2 Z-2 F100
            ~^^^^^^^^^^^^^
            G0 Z50
            G0 G53 Z0
            M5
            M30
            """,
        Instead = """
            G21 G90 G17 G54
            G0 G53 Z0
            T9 M6
            G0 X20 Y30
            G43 H9 Z50
            Z5
            G38.2 Z-2 F100
            G0 Z50
            G0 G53 Z0
            M30
            """,
        FixSafety = FixSafety.Choice,
        Fix = "Writes M5 as a block of its own before the block. A choice, since some tools that find edges are meant to turn, and some probes are switched on by turning.",
        NotFound = "Tools that the setup does not call a probe, and tools that are measured turning on a probe of the table; finders of edges that are meant to turn, where the setup says \"turns\": true; feeds straight up, and feeds at or above the top of the setup's stock.",
        Source = "Common practice, from memory.",
    };

    public override StepEvents Interest => StepEvents.News;

    public override bool Concerns(Job job) => job.Setup.Tools.Any(IsProbe);

    public override void CheckStep(in StepContext step)
    {
        if (SpindleTurn.StandingToolFed(step) is { } tool && IsProbe(tool))
            step.ReportBlock(this, $"T{tool.Number} is a probe, and the spindle turns while it is fed against the work.", Slot.Spindle, "The spindle was switched on here.");
    }

    public override IEnumerable<Fix> Fixes(Finding finding, ProgramAnalysis analysis)
    {
        ArgumentNullException.ThrowIfNull(finding);
        return SpindleTurn.StopBefore(analysis, finding.Line);
    }

    static bool IsProbe(Tool tool) => tool is { Kind: ToolKind.Probe, Stands: true };
}
