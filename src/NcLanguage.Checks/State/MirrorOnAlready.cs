using NcLanguage.Checks.Analysis;
using NcLanguage.Control.Execution;
using NcLanguage.Control.State;
using NcLanguage.Machine.Geometry;

namespace NcLanguage.Checks.Rules;

/// <summary>A mirror that is switched on while it is on.</summary>
public sealed class MirrorOnAlready : Rule
{
    public override RuleInfo Info { get; } = new()
    {
        Id = "NC2045",
        Name = "mirror-on-already",
        Severity = Severity.Note,
        Title = "A mirror is switched on that is on already",
        Finds = "G51.1, or G51 with a negative factor, that asks for the very mirror that is in force.",
        AtTheMachine = "What lies between the two was mirrored as well: where it was meant as it is written, it is cut on the wrong side. A lost G50.1 or G50 does it.",
        Example = """
            G21 G90 G17 G54
            M3 S1500
            G0 X10 Y10 Z5
            G51.1 X0
            G1 Z-1 F100
            X30
            G0 Z5
            X10 Y30
            G1 Z-1
            X30
            G0 Z5
            G51.1 X0
            ~^^^^^^^
            X10 Y10
            G1 Z-1
            Y20
            G0 Z5
            G50.1 X0
            M5
            M30
            """,
        Instead = """
            G21 G90 G17 G54
            M3 S1500
            G0 X10 Y10 Z5
            G51.1 X0
            G1 Z-1 F100
            X30
            G0 Z5
            G50.1 X0
            X10 Y30
            G1 Z-1
            X30
            G0 Z5
            G51.1 X0
            X10 Y10
            G1 Z-1
            Y20
            G0 Z5
            G50.1 X0
            M5
            M30
            """,
        NotFound = "Another axis, or another place of the mirror: four quadrants are made by one mirror after the other. A rotation or a scaling that is written again.",
        Source = "Common practice: a mirror stays on until it is cancelled.",
    };

    public override StepEvents Interest => StepEvents.Codes;

    public override void CheckStep(in StepContext step)
    {
        var words = step.Step.Words;
        var (before, after) = (step.Step.Before.ProgramFrame, step.Step.After.ProgramFrame);
        if (words.HasCode('G', 511) && before?.Mirror is { About.IsKnown: true } mirror && mirror == after?.Mirror)
            Tell(step, 511, "G50.1", Slot.Mirror);
        else if (words.HasCode('G', 510) && before?.Scaling is { About.IsKnown: true } scaling && Mirrors(scaling.Factors) && scaling == after?.Scaling)
            Tell(step, 510, "G50", Slot.Scaling);
    }

    static bool Mirrors(Point3 factors) => factors.X < 0 || factors.Y < 0 || factors.Z < 0;

    void Tell(in StepContext step, int tenths, string end, Slot slot)
    {
        var code = Quote.Word(step.Block, step.Block.Tokens[step.Step.Words.TokenOfCode('G', tenths)]);
        step.ReportBlock(this, $"{code} changes nothing: this mirror is on already, and what lies between was mirrored too. Where that was not meant, {end} is missing.", slot, "It was switched on here.", asMet: true);
    }
}
