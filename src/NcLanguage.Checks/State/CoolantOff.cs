using NcLanguage.Checks.Analysis;
using NcLanguage.Control.Execution;
using NcLanguage.Control.State;
using NcLanguage.Machine.Setups;

namespace NcLanguage.Checks.Rules;

/// <summary>A tool that cuts dry in a program that cuts with coolant.</summary>
public sealed class CoolantOff : Rule
{
    public override RuleInfo Info { get; } = new()
    {
        Id = "NC2017",
        Name = "coolant-off",
        Severity = Severity.Note,
        Title = "A tool cuts without the coolant that the tools before it had",
        Finds =
            "The first cut of a tool with the coolant off, when a tool before it has cut with the coolant on and no M7, M8 or M9 has come since the tool "
            + "change. An M9 behind the tool change says that dry is meant; probes and tools that work with the spindle standing (setup) are left out.",
        AtTheMachine = "The tool runs hot, chips weld to it and stay in the hole: it wears fast, and a drill or a tap may break.",
        Example = """
            G21 G90 G17 G54
            T1 M6
            M3 S1500
            G0 X10 Y10
            G43 H1 Z5 M8
            G1 Z-2 F100
            G0 Z50 M9
            G91 G28 Z0
            G90 T2 M6
            M3 S800
            G0 X30 Y10
            G43 H2 Z5
            G1 Z-2 F60
            ~^^^^^^^^^
            G0 Z50 M9
            M5
            M30
            """,
        Instead = """
            G21 G90 G17 G54
            T1 M6
            M3 S1500
            G0 X10 Y10
            G43 H1 Z5 M8
            G1 Z-2 F100
            G0 Z50 M9
            G91 G28 Z0
            G90 T2 M6
            M3 S800
            G0 X30 Y10
            G43 H2 Z5 M8
            G1 Z-2 F60
            G0 Z50 M9
            M5
            M30
            """,
        FixSafety = FixSafety.Choice,
        Fix = "Adds the M7 or M8 that came last before to the block of the cut, and M9 to the end of the program where none follows. A choice, since the tool may be meant to cut dry.",
        NotFound = "Tools before the first that cuts with coolant; programs without a coolant code; coolant that the operator turns on.",
        Source = "NISTIR 6556 §3.6.4; common practice.",
    };

    /// <summary>How many words that switch the coolant are looked through for the last that turned it on.</summary>
    const int MostLookedAt = 50;

    public override StepEvents Interest => StepEvents.News;

    public override void CheckStep(in StepContext step)
    {
        ref readonly var after = ref step.Step.After;
        if (!step.HasHappened(Happened.CutDry) || after.IsCalled || step.Job.Setup.FindTool(after.Tool) is { Kind: ToolKind.Probe } or { Stands: true })
            return;
        var name = after.Tool > 0 ? $"T{after.Tool}" : "This tool";
        step.ReportBlock(this, $"{name} begins to cut with the coolant off, which was on for a tool before it: add M8, or M9 if dry is meant.", Slot.Coolant, "The coolant was turned off here.");
    }

    public override IEnumerable<Fix> Fixes(Finding finding, ProgramAnalysis analysis)
    {
        var run = analysis.Main;
        var line = finding.Line;
        for (var i = 0; i < MostLookedAt && (line = run.LastSetter(Slot.Coolant, line - 1)) >= 0; i++)
        {
            var block = run.BlockAt(line);
            var code = WordEdits.IndexOfCode(block, 'M', 8) >= 0 ? "M8" : WordEdits.IndexOfCode(block, 'M', 7) >= 0 ? "M7" : null;
            if (code is not null)
                return [new Fix($"Add {code}", FixSafety.Choice, [Inserts.Behind(analysis, finding.Line, code), .. StopAtEnd.Of(run, finding.Line, Slot.Coolant, 9)])];
        }
        return [];
    }
}
