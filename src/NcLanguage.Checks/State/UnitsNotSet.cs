using NcLanguage.Checks.Analysis;
using NcLanguage.Control.Execution;
using NcLanguage.Control.State;
using NcLanguage.Machine.Profiles;

namespace NcLanguage.Checks.Rules;

/// <summary>Lengths before any G20 or G21.</summary>
public sealed class UnitsNotSet : Rule
{
    public override RuleInfo Info { get; } = new()
    {
        Id = "NC2003",
        Name = "units-not-set",
        Severity = Severity.Warning,
        Title = "No code says inch or millimetre",
        Finds = "The first block that gives a length other than 0 while the program has said neither G20 nor G21 (G70 or G71 by the reading).",
        AtTheMachine = "The control reads the numbers in the unit the program before has left: after an inch program 10 is 254 mm.",
        Example = """
            G90 G17 G54
            G0 X10 Y10
            ~^^^^^^^^^
            M30
            """,
        Instead = """
            G21 G90 G17 G54
            G0 X10 Y10
            M30
            """,
        FixSafety = FixSafety.Choice,
        Fix =
            "Adds G21 or G20 to the first block: the one that the program gives later on and the unit of the setup file. Where these differ both are offered, that of the "
            + "setup first, and so they are without either.",
        NotFound = "Controls that have one unit only.",
        Source = "NISTIR 6556 §3.5.7; a line that sets all modes at the beginning is common practice.",
    };

    public override StepEvents Interest => StepEvents.News;

    public override void CheckStep(in StepContext step)
    {
        ref readonly var after = ref step.Step.After;
        if (!step.HasHappened(Happened.LengthRead) || after.HasSet(Slot.Units) || after.IsCalled)
            return;
        var (inch, millimetre) = Codes(step.Job.Readings.Units);
        step.ReportBlock(this, $"Neither G{inch} nor G{millimetre} has been given: these lengths are read in the unit the program before has left, inches or millimetres.{(step.Job.Setup.IsInch ? " Here they are taken as inches, the unit of the setup." : "")}");
    }

    public override IEnumerable<Fix> Fixes(Finding finding, ProgramAnalysis analysis)
    {
        var (inch, millimetre) = Codes(analysis.Machine.Readings.Units);
        // A program in another unit than the one it gives later, or its setup is written in, would be another part.
        bool? ofSetup = analysis.Setup.IsPresent ? analysis.Setup.IsInch : null;
        var later = GivenLater(analysis);
        int[] codes = (later ?? ofSetup, ofSetup ?? later) switch
        {
            (true, true) => [inch],
            (false, false) => [millimetre],
            (true, false) or (null, _) => [millimetre, inch],
            _ => [inch, millimetre],
        };
        return codes.Select(code => Inserts.ModeBefore(analysis, finding.Line, $"G{code}")).OfType<Fix>();
    }

    /// <summary>True where the first unit that the program gives anywhere is inch, false where it is millimetre, null where it gives none.</summary>
    static bool? GivenLater(ProgramAnalysis analysis)
    {
        var (inch, millimetre) = Codes(analysis.Machine.Readings.Units);
        for (var line = 0; line < analysis.Text.LineCount; line++)
        {
            var block = analysis.Main.BlockAt(line);
            if (WordEdits.IndexOfCode(block, 'G', inch) >= 0)
                return true;
            if (WordEdits.IndexOfCode(block, 'G', millimetre) >= 0)
                return false;
        }
        return null;
    }

    static (int Inch, int Millimetre) Codes(UnitReading reading) => (UnitLength.CodeOf(isInch: true, reading), UnitLength.CodeOf(isInch: false, reading));
}
