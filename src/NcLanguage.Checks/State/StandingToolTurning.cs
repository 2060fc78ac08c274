using NcLanguage.Checks.Analysis;
using NcLanguage.Control.Execution;
using NcLanguage.Control.State;
using NcLanguage.Machine.Setups;

namespace NcLanguage.Checks.Rules;

/// <summary>A tool that works with the spindle standing, fed into the work while it turns.</summary>
public sealed class StandingToolTurning : Rule
{
    public override RuleInfo Info { get; } = new()
    {
        Id = "NC2040",
        Name = "standing-tool-turning",
        Severity = Severity.Error,
        Title = "A tool that works standing is fed with the spindle turning",
        Finds =
            "The first feed into the stock of a tool of which the setup says \"turns\": false, while the spindle is known to turn, once for each time that it is started. A probe is probe-turning's.",
        AtTheMachine = "A broach or a scriber that turns breaks off and tears up the work; a puller for bars, which is not balanced, is thrown about with its holder.",
        Setup = """
            { "tools": [ { "number": 7, "diameter": 6, "turns": false } ] }
            """,
        Example = """
            G21 G90 G17 G54
            G0 G53 Z0
            T7 M6
            S800 M3
            G0 X20 Y30
            G43 H7 Z5
            G1 Z-12 F2000
            ~^^^^^^^^^^^^
            G0 Z50
            G0 G53 Z0
            M5
            M30
            """,
        Instead = """
            G21 G90 G17 G54
            G0 G53 Z0
            T7 M6
            M19
            G0 X20 Y30
            G43 H7 Z5
            G1 Z-12 F2000
            G0 Z50
            G0 G53 Z0
            M30
            """,
        FixSafety = FixSafety.Choice,
        Fix = "Writes M5 as a block of its own before the block. A choice, since a tool whose edge has to point along the way it goes needs M19 instead.",
        NotFound = "Tools of which the setup does not say it; feeds straight up, and feeds at or above the top of the setup's stock.",
        Source = "NISTIR 6556 §3.6.2 for M3 to M5; that such tools stand while they work is common practice, from memory.",
    };

    public override StepEvents Interest => StepEvents.News;

    public override bool Concerns(Job job) => job.Setup.Tools.Any(IsStanding);

    public override void CheckStep(in StepContext step)
    {
        if (SpindleTurn.StandingToolFed(step) is { } tool && IsStanding(tool))
            step.ReportBlock(this, $"The setup says that T{tool.Number} does not turn while it works, and here it is fed with the spindle turning.", Slot.Spindle, "The spindle was switched on here.");
    }

    public override IEnumerable<Fix> Fixes(Finding finding, ProgramAnalysis analysis)
    {
        ArgumentNullException.ThrowIfNull(finding);
        return SpindleTurn.StopBefore(analysis, finding.Line);
    }

    static bool IsStanding(Tool tool) => tool.Stands && tool.Kind != ToolKind.Probe;
}
