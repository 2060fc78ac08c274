using NcLanguage.Checks.Analysis;
using NcLanguage.Control.Execution;
using NcLanguage.Control.State;
using NcLanguage.Syntax.Lexing;

namespace NcLanguage.Checks.Rules;

/// <summary>An arc whose end is not as far from its centre as its start.</summary>
public sealed class ArcRadiusMismatch : Rule
{
    public override RuleInfo Info { get; } = new()
    {
        Id = "NC2024",
        Name = "arc-radius-mismatch",
        Severity = Severity.Error,
        Title = "The arc's end does not lie on its circle",
        Finds = "An arc by its centre (I, J, K) whose radius at the start and at the end differ by more than 0.002 mm (0.0002 in).",
        AtTheMachine = "The control stops with an alarm, or leaves the circle on the way: the contour gets a step or a spiral.",
        Example = """
            G21 G90 G17 G54
            M3 S1500
            G0 X0 Y0 Z5
            G1 Z-1 F100
            G2 X10 Y0 I-5 J0
            ~^
            G0 Z50
            M5
            M30
            """,
        Instead = """
            G21 G90 G17 G54
            M3 S1500
            G0 X0 Y0 Z5
            G1 Z-1 F100
            G2 X10 Y0 I5 J0
            G0 Z50
            M5
            M30
            """,
        FixSafety = FixSafety.Choice,
        Fix = "Where the words of the centre would fit with another sign or the letters exchanged, or as the place of the centre instead of distances from the start, and in one such way only, or in one that goes the short way round: writes them so. Where the arc would fit in XY and another plane is on: adds G17 to the block.",
        NotFound = "Controls that allow more, or less.",
        Source = "NISTIR 6556 §3.5.3.2; which slips are usual: common practice.",
    };

    public override StepEvents Interest => StepEvents.Faults;

    public override void CheckStep(in StepContext step)
    {
        foreach (ref readonly var fault in step.Step.Faults.Items)
        {
            if (fault.Kind != FaultKind.ArcRadiusMismatch || ArcWords.OfOtherPlane(step) >= 0)
                continue;
            var isOfXY = ArcCentreFit.IsOfXY(step);
            var fit = isOfXY ? null : ArcCentreFit.Of(step);
            var hint = fit switch
            {
                null => isOfXY ? $" Under G17 it would fit; {ArcWords.Code(step.Step.After.Plane)} is in force." : "",
                (var words, true) => $" Its words fit as the place of the centre, but are read as distances from the arc's start: those are {words}.",
                (var words, _) => $" With {words} it would fit.",
            };
            step.Report(this, fault.Token,
                $"The arc starts {step.Say.Length(fault.A)} from its centre and ends {step.Say.Length(fault.B)} from it: the control stops with an alarm, or leaves the circle by {step.Say.Length(Math.Abs(fault.A - fault.B))}.{hint}",
                isOfXY ? Slot.Plane : Slot.None, "The plane is set here.", text: fit?.Words ?? "");
        }
    }

    public override IEnumerable<Fix> Fixes(Finding finding, ProgramAnalysis analysis)
    {
        if (finding.Concerns == Slot.Plane)
            return ArcWords.FixOfPlane("G17", finding, analysis);
        if (finding.Text.Length == 0)
            return [];
        var block = analysis.Main.BlockAt(finding.Line);
        var edits = new List<Edit>();
        foreach (var word in finding.Text.Split(' '))
            if ((block.IndexOf(word[0]) is var own and >= 0 ? own : OfCentre(block)) is var token and >= 0)
                edits.Add(WordEdits.Replace(finding.Line, block, token, word));
        return [new Fix($"Write {finding.Text}", FixSafety.Choice, [.. edits])];
    }

    /// <summary>The first word of a centre, where the other letter is meant; −1 where there is none.</summary>
    static int OfCentre(in Block block)
    {
        for (var i = 0; i < block.Tokens.Length; i++)
            if (block.Tokens[i].IsWord('I') || block.Tokens[i].IsWord('J') || block.Tokens[i].IsWord('K'))
                return i;
        return -1;
    }
}
