using NcLanguage.Checks.Analysis;
using NcLanguage.Control.State;
using NcLanguage.Machine.Profiles;

namespace NcLanguage.Checks.Rules;

/// <summary>A program whose numbers fit the setup in the other unit than the one it gives.</summary>
public sealed class UnitsAgainstSetup : Rule
{
    public override RuleInfo Info { get; } = new()
    {
        Id = "NC2035",
        Name = "units-against-setup",
        Severity = Severity.Error,
        Title = "The numbers fit the setup in the other unit",
        Finds = "G20 or G21 (G70 or G71 by the reading), the only unit of the program, where the work does not fit the setup and in the other unit does: no hole of the drawing is at its place, and all are; or under inches the work reaches over twenty times the stock's length or width, "
            + "or over three times and as far below it; or under millimetres the holes of the first tool that makes some each lie nearer to another than half its diameter. Once, at the code; what else is found of places, depths, feeds and clearances is counted and named with it, and told by itself when the unit is settled, or this finding silenced.",
        AtTheMachine = "All is 25.4 times as large or as small: the tool leaves the part and drives into what stands about it, or cuts the whole part into one corner, by feeds that are off as much.",
        Setup = """
            { "stock": { "min": [0, 0, -20], "max": [100, 60, 0] }, "tools": [ { "number": 5, "kind": "face-mill", "diameter": 50, "length": 90 } ] }
            """,
        Example = """
            G20 G90 G17 G54
            ~^^
            G0 G53 Z0
            T5 M6
            S900 M3
            G0 X-30 Y30 M8
            G43 H5 Z40
            Z-1
            G1 X130 F400
            G0 Z40
            G0 G53 Z0 M9
            M5
            M30
            """,
        Instead = """
            G21 G90 G17 G54
            G0 G53 Z0
            T5 M6
            S900 M3
            G0 X-30 Y30 M8
            G43 H5 Z40
            Z-1
            G1 X130 F400
            G0 Z40
            G0 G53 Z0 M9
            M5
            M30
            """,
        FixSafety = FixSafety.Choice,
        Fix = "Writes the code of the other unit wherever the program gives one. Where the setup's \"units\" are wrong, it is these that have to change.",
        NotFound = "Small patterns on a large stock, unless the setup lists the drawing's holes, and contours in millimetres that are meant in inches; programs under another work offset than the setup's or under more than one, with shifts, or with both units. Moves behind the first 5,000 and holes behind the first tool's first 200 are not looked at.",
        Source = "The inch is 25.4 mm by definition (1959); how far a program may reach beside its stock: common practice.",
    };

    public override bool ReadsFile => true;

    // A length or a feed that another rule would write follows from the unit.
    public override bool PutsFixesInDoubt => true;

    public override bool MayExplain(Rule other) => HangsOnUnit.Is(other);

    public override void CheckFile(in FileContext file)
    {
        var run = file.Run;
        ref readonly var end = ref run.Results[^1];
        if (run.Results[0].Entry.IsCalled || !run.Job.Setup.IsPresent || run.NamesCoordinates || end.Exit.Units == LengthUnit.Unknown || (end.Exit.Happened & Happened.UnitsMixed) != 0)
            return;
        var isInch = end.Exit.Units == LengthUnit.Inch;
        var (code, other) = Codes(run.Job.Readings.Units, isInch);
        var line = run.FirstSetter(Slot.Units);
        if (line < 0 || run.BlockAt(line) is var block && WordEdits.IndexOfCode(block, 'G', code) is not (>= 0 and var token)
            || new OtherUnitFit(file, isInch ? 1 / UnitLength.MmPerInch : UnitLength.MmPerInch).Sign(line) is not { } sign)
            return;
        file.Report(this, line, block.Tokens[token].Start, block.Tokens[token].End,
            $"Under G{code} {sign} when the same numbers are read in {(isInch ? "millimetres" : "inches")}: is G{other} meant, or are the units of the setup wrong?");
    }

    /// <summary>The number of the code of a unit and of the other one.</summary>
    static (int Code, int Other) Codes(UnitReading reading, bool isInch) => (UnitLength.CodeOf(isInch, reading), UnitLength.CodeOf(!isInch, reading));

    public override IEnumerable<Fix> Fixes(Finding finding, ProgramAnalysis analysis)
    {
        ArgumentNullException.ThrowIfNull(finding);
        ArgumentNullException.ThrowIfNull(analysis);
        var run = analysis.Main;
        var (code, other) = Codes(analysis.Machine.Readings.Units, analysis.Main.StepAt(finding.Line).After.Units == LengthUnit.Inch);
        var edits = new List<Edit>();
        for (var line = 0; line < analysis.Text.LineCount; line++)
        {
            var block = run.BlockAt(line);
            if (WordEdits.IndexOfCode(block, 'G', code) is >= 0 and var token)
                edits.Add(WordEdits.Replace(line, block, token, $"G{other}"));
        }
        return [new Fix($"Write G{other}", FixSafety.Choice, [.. edits])];
    }
}
