using NcLanguage.Checks.Analysis;
using NcLanguage.Control.Execution;
using NcLanguage.Control.State;
using NcLanguage.Machine.Geometry;

namespace NcLanguage.Checks.Rules;

/// <summary>Rotation, scaling, mirror, polar words or a local shift that the end of the program meets while they are on.</summary>
public sealed class FrameLeftOn : Rule
{
    public override RuleInfo Info { get; } = new()
    {
        Id = "NC2031",
        Name = "frame-left-on",
        Severity = Severity.Warning,
        Title = "A rotation, a scaling, a mirror, polar words or a shift is still on at the end",
        Finds = "The end of the program (M2, M30) that meets G68 which no G69, G51 which no G50, G51.1 which no G50.1, G16 which no G15 or a shift by G52 which no G52 with zeros has ended. The first of them is told.",
        AtTheMachine = "On a control that does not switch them off at the end, the next program, or the same one for the next part, is cut turned, mirrored, at another size or beside its place.",
        Example = """
            G21 G90 G17 G54
            G68 X0 Y0 R30
            G0 X10 Y10
            M30
            ~^^
            """,
        Instead = """
            G21 G90 G17 G54
            G68 X0 Y0 R30
            G0 X10 Y10
            G69
            M30
            """,
        FixSafety = FixSafety.Choice,
        Fix = "Writes the code that ends it as a block of its own before the end; none while radius compensation is on, which forbids it.",
        NotFound = "What a tool change meets: a program may well keep a turned frame for several tools. Shifts by G92, by which some programs set their datum; a rotation by nothing.",
        Source = "Common practice: controls differ in what the end of a program switches off.",
    };

    public override StepEvents Interest => StepEvents.ProgramEnd;

    public override void CheckStep(in StepContext step)
    {
        if (step.Step.Before.IsCalled || !(step.Step.Words.HasCode('M', 20) || step.Step.Words.HasCode('M', 300)) || LeftOn(step) is not var (code, what, end, slot))
            return;
        step.ReportBlock(this, $"The program ends with the {what} of {code} still on: a control that does not switch it off here cuts the next part with it.",
            slot, "It was last set here.", text: end, asMet: true);
    }

    public override IEnumerable<Fix> Fixes(Finding finding, ProgramAnalysis analysis)
    {
        ArgumentNullException.ThrowIfNull(finding);
        ArgumentNullException.ThrowIfNull(analysis);
        // Radius compensation forbids it, and has to be ended first.
        if (analysis.Main.StateBefore(finding.Line).IsCompensationOn)
            return [];
        return [new Fix($"End it with {finding.Text}", FixSafety.Choice, [Inserts.BlockBefore(analysis, finding.Line, finding.Text)])];
    }

    /// <summary>What is known to be on when the block has run: its code, its name and the code that ends it.</summary>
    static (string Code, string What, string End, Slot Slot)? LeftOn(in StepContext step)
    {
        var frame = step.Step.Before.ProgramFrame;
        var words = step.Step.Words;
        if (frame?.Rotation is { IsTurned: true, Plane: not WorkPlane.Unknown } && !words.HasCode('G', 690))
            return ("G68", "rotation", "G69", Slot.Rotation);
        if (frame?.Scaling is { } scaling && scaling.Factors.IsKnown && !words.HasCode('G', 500))
            return ("G51", "scaling", "G50", Slot.Scaling);
        if (frame?.Mirror is { About.IsKnown: true } mirror && !words.HasCode('G', 501))
            return ("G51.1", "mirror", EndOf("G50.1", mirror.IsOn), Slot.Mirror);
        if (frame?.Polar is { Plane: not WorkPlane.Unknown } && !words.HasCode('G', 150))
            return ("G16", "polar reading", "G15", Slot.Polar);
        return step.Step.Before.LocalShift is { IsKnown: true } shift && shift != default && !words.HasCode('G', 520) ? ("G52", "shift", EndOf("G52", axis => shift[axis] != 0), Slot.LocalShift) : null;
    }

    /// <summary>G50.1 X0 Y0: with the axes that are concerned it is understood everywhere.</summary>
    static string EndOf(string code, Func<int, bool> isOn) => code + string.Concat(Enumerable.Range(0, 3).Where(isOn).Select(axis => $" {(char)('X' + axis)}0"));
}
