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
        FixSafety = FixSafety.Safe,
        Fix = "Adds G21 to the first block, or G20 where the setup file is written in inches: the unit that the program is read in here.",
        NotFound = "Controls that have one unit only.",
        Source = "NISTIR 6556 §3.5.7; a line that sets all modes at the beginning is common practice.",
    };

    public override StepEvents Interest => StepEvents.Words;

    public override void CheckStep(in StepContext step)
    {
        ref readonly var after = ref step.Step.After;
        if (!step.HasHappened(Happened.LengthRead) || after.HasSet(Slot.Units) || after.IsCalled)
            return;
        var (inch, millimetre) = Codes(step.Job.Readings);
        step.ReportBlock(this, $"Neither {inch} nor {millimetre} has been given: these lengths are read in the unit the program before has left, inches or millimetres.");
    }

    public override IEnumerable<Fix> Fixes(Finding finding, ProgramAnalysis analysis)
    {
        var (inch, millimetre) = Codes(analysis.Machine.Readings);
        var code = analysis.Setup.IsInch ? inch : millimetre;
        var line = Inserts.FirstBlock(analysis);
        return line < 0 ? [] : [new Fix($"Add {code} to the first block", FixSafety.Safe, [Inserts.Before(analysis, line, code)])];
    }

    static (string Inch, string Millimetre) Codes(Readings readings) => readings.Units == UnitReading.G70G71 ? ("G70", "G71") : ("G20", "G21");
}
