using NcLanguage.Checks.Analysis;
using NcLanguage.Control.Execution;
using NcLanguage.Control.Flow;

namespace NcLanguage.Checks.Rules;

/// <summary>A run that is longer than it is followed.</summary>
public sealed class RunTooLong : Rule
{
    public override RuleInfo Info { get; } = new()
    {
        Id = "NC6035",
        Name = "run-too-long",
        Severity = Severity.Warning,
        Title = "The run is longer than is followed",
        Finds = "A program whose loops and calls make more blocks run than are followed: a million beside its own lines, and fifty thousand while the program is being typed.",
        AtTheMachine = "Perhaps nothing; perhaps the loop never ends.",
        Example = """
            G21 G90 G17 G54
            G0 X0 Y0 Z50 S800 M3
            #1=0
            N10 G1 X10 F200
            G1 X0
            #1=#1+1
            IF [#1 GT 0] GOTO 10
            ~^^^^^^^^^^^^^^^^^^^
            M5 M30
            """,
        Instead = """
            G21 G90 G17 G54
            G0 X0 Y0 Z50 S800 M3
            #1=0
            N10 G1 X10 F200
            G1 X0
            #1=#1+1
            IF [#1 LT 20] GOTO 10
            M5 M30
            """,
        NotFound = "Whatever comes behind the blocks that are followed.",
        Source = "A bound of this program's own.",
    };

    public override bool ReadsFile => true;

    public override void CheckFile(in FileContext file)
    {
        if (file.Run.Flow is not { End: FlowEnd.TooLong } flow)
            return;
        var (line, count) = flow.Busiest;
        var followed = $"The first {flow.BlocksFollowed.ToString("N0", System.Globalization.CultureInfo.InvariantCulture)} blocks of the run are checked, and it is not at its end";
        if (line >= 0)
            file.ReportBlock(this, line, $"{followed}: from here it went back {count.ToString("N0", System.Globalization.CultureInfo.InvariantCulture)} times. What comes behind is not checked.");
        else
            file.ReportBlock(this, 0, $"{followed}. What comes behind is not checked.");
    }
}
