using NcLanguage.Checks.Analysis;
using NcLanguage.Control.State;
using NcLanguage.Machine.Profiles;

namespace NcLanguage.Checks.Rules;

/// <summary>A first tool that is named, but not changed in before the program cuts.</summary>
public sealed class ToolNotChangedIn : Rule
{
    public override RuleInfo Info { get; } = new()
    {
        Id = "NC2042",
        Name = "tool-not-changed-in",
        Severity = Severity.Warning,
        Title = "The first tool is named, but nothing changes it in",
        Finds = "A T word before the program's first cut, when no M6 comes between it and the cut, and none behind that would change this tool in.",
        AtTheMachine = "T alone only brings the tool to the changer: what the program before has left in the spindle does the work, with another diameter and another length.",
        Example = """
            G21 G90 G17 G54
            T3
            ~^
            S1800 M3
            G0 X12 Y20
            G43 H3 Z5
            G1 Z-2 F180
            G0 Z40
            M5
            M30
            """,
        Instead = """
            G21 G90 G17 G54
            T3 M6
            S1800 M3
            G0 X12 Y20
            G43 H3 Z5
            G1 Z-2 F180
            G0 Z40
            M5
            M30
            """,
        FixSafety = FixSafety.Choice,
        Fix = "Adds M6 to the block of the T word. A choice, since the tool may be put into the spindle by hand.",
        NotFound = "Machines that change the tool with T alone (reading toolChange); a tool named for a later M6; T words behind the first cut, with which the tool that comes next is made ready.",
        Source = "NISTIR 6556 §3.6.3 and §3.7.3: T names a tool, and M6 changes it in.",
    };

    public override bool ReadsFile => true;

    public override void CheckFile(in FileContext file)
    {
        var run = file.Run;
        if (run.Job.Readings.ToolChange != ToolChangeReading.M6)
            return;
        var (named, cut, changed) = (run.FirstSetter(Slot.SelectedTool), run.FirstSetter(Slot.Cut), run.FirstSetter(Slot.Tool));
        if (named < 0 || cut < 0 || run.OrderOf(named) >= run.OrderOf(cut) || run.StateBefore(cut).IsCalled)
            return;
        // A change before the cut brings some tool in; one behind it may be what this one is made ready for.
        if (changed >= 0 && (run.OrderOf(changed) <= run.OrderOf(cut) || run.LastSetter(Slot.SelectedTool, changed) == named))
            return;
        var block = run.BlockAt(named);
        if (block.IndexOf('T') is not (>= 0 and var token) || block.IsSkippable || !(run.StepAt(named).After.SelectedTool > 0))
            return;
        ref readonly var word = ref block.Tokens[token];
        file.Report(this, named, word.Start, word.End, $"{Quote.Word(block, word)} only names the tool: no M6 changes it in before the first cut, which is made with whatever stands in the spindle.");
    }

    public override IEnumerable<Fix> Fixes(Finding finding, ProgramAnalysis analysis)
    {
        ArgumentNullException.ThrowIfNull(finding);
        ArgumentNullException.ThrowIfNull(analysis);
        return [new Fix("Add M6", FixSafety.Choice, [new Edit(finding.Line, finding.EndColumn, finding.EndColumn, " M6")])];
    }
}
