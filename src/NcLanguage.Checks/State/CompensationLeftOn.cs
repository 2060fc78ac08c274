using NcLanguage.Checks.Analysis;
using NcLanguage.Control.Codes;
using NcLanguage.Control.Execution;
using NcLanguage.Control.State;

namespace NcLanguage.Checks.Rules;

/// <summary>Radius compensation that a tool change or the end of the program meets while it is on.</summary>
public sealed class CompensationLeftOn : Rule
{
    public override RuleInfo Info { get; } = new()
    {
        Id = "NC2010",
        Name = "compensation-left-on",
        Severity = Severity.Warning,
        Title = "Radius compensation is still on at a tool change or the end",
        Finds = "A tool change or the end of the program, also by M99 in a program that nothing calls, that meets G41 or G42 which no G40 has ended. Told once for each time it is left on.",
        AtTheMachine = "The next tool keeps the radius of the tool before off its path, and its first moves are led as if they were part of the contour.",
        Setup = CompensationExample.EndMill,
        Example = CompensationExample.Program("""
            G1 G41 D2 X0 Y0
            Y60
            G0 Z50
            M5
            M30
            ~^^
            """),
        Instead = CompensationExample.Program("""
            G1 G41 D2 X0 Y0
            Y60
            G40 X-30
            G0 Z50
            M5
            M30
            """),
        FixSafety = FixSafety.Choice,
        Fix = "Writes G40 as a block of its own before the block; the tool then stands off the path by its radius until the next move in X or Y.",
        NotFound = "Compensation that another program has switched on.",
        Source = "NISTIR 6556 §3.5.10 and §3.6.1: the end of a program switches it off, a tool change does not. That the program says so itself is common practice.",
    };

    public override StepEvents Interest => StepEvents.ToolChange | StepEvents.ProgramEnd | StepEvents.StartsAgain;

    public override void CheckStep(in StepContext step)
    {
        if (!step.HasHappened(Happened.CompensationLeftOn))
            return;
        var code = step.Step.Before.Compensation == CompensationSide.Left ? "G41" : "G42";
        step.ReportBlock(this, (step.Step.Events & StepEvents.ToolChange) != 0
            ? $"{code} is still on at this tool change: the next tool is led with the radius of this one."
            : (step.Step.Events & StepEvents.StartsAgain) != 0
            ? $"M99 begins the program again with {code} still on: its first moves are led as if they were part of the contour."
            : $"The program ends with {code} still on: a control that does not switch it off here starts the next program with it.",
            Slot.Compensation, $"{code} was switched on here.", asMet: true);
    }

    public override IEnumerable<Fix> Fixes(Finding finding, ProgramAnalysis analysis)
    {
        ArgumentNullException.ThrowIfNull(finding);
        ArgumentNullException.ThrowIfNull(analysis);
        // A block that chooses compensation itself would switch it on again.
        if (analysis.Main.StepAt(finding.Line).Words.Find(ModalGroup.RadiusCompensation) is not null)
            return [];
        return [new Fix("End the compensation with G40", FixSafety.Choice, [Inserts.BlockBefore(analysis, finding.Line, "G40")])];
    }
}
