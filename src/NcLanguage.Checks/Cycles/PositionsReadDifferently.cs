using NcLanguage.Checks.Analysis;
using NcLanguage.Control.State;
using NcLanguage.Machine.Profiles;

namespace NcLanguage.Checks.Rules;

/// <summary>A control that reads X and Y inside cycles the other way drills elsewhere.</summary>
public sealed class PositionsReadDifferently : Rule
{
    public override RuleInfo Info { get; } = new()
    {
        Id = "NC3030",
        Name = "positions-read-differently",
        Severity = Severity.Warning,
        Title = "Controls that read cycle positions differently drill elsewhere",
        Finds = "A run of holes of which some land elsewhere when X and Y inside a cycle are read the other way (coordinates by G90 and G91, or always distances), at the first that "
            + "does. Only where no machine was chosen, or when portability is asked for.",
        AtTheMachine = "On a control of the other kind the holes are in the wrong places, from this block on.",
        Example = CycleExample.Program("""
            G98 G81 X12 Y20 Z-8 R2 F120
            ~^^^^^^^^^^^^^^^^^^^^^^^^^^
            X45
            """),
        Instead = CycleExample.Program("""
            G98
            G91 G81 X0 Y0 Z-10 R-38 F120
            X33
            G90
            """),
        Portable = true,
        NotFound = "Holes whose place is not known under either reading, and holes along another axis than Z.",
        Source = "NISTIR 6556 §3.5.16 (X and Y follow G90 and G91); that some controls take them as distances is common practice.",
    };

    public override bool ReadsFile => true;

    public override void CheckFile(in FileContext file)
    {
        if (file.Runs.OtherPositions is not { } other)
            return;
        var (number, firstLine, firstNumber, differing) = (0, -1, 0, 0);
        HoleResult here = default, there = default;
        WorkCoordinates? coordinates = null;
        for (var part = 0; part < file.Run.Results.Length; part++)
        {
            var (mine, theirs) = (file.Run.Results[part], other.Results[part]);
            var before = 0;
            foreach (var stretch in mine.CompareTo(theirs).Stretches)
            {
                if (stretch.BeginsRun)
                {
                    Report(file, firstLine, firstNumber, differing, here, there, coordinates);
                    (firstLine, differing) = (-1, 0);
                }
                if (stretch.Differing > 0 && differing == 0)
                {
                    (firstLine, firstNumber) = (file.Run.LineOf(part, mine.Holes.LineOf(stretch.First)), number + stretch.First - before + 1);
                    (here, there) = (mine.Holes[stretch.First], theirs.Holes[stretch.First]);
                    coordinates = mine.CoordinatesAt(here.Line);
                }
                differing += stretch.Differing;
                number += stretch.Count;
                before += stretch.Count;
            }
        }
        Report(file, firstLine, firstNumber, differing, here, there, coordinates);
    }

    void Report(in FileContext file, int line, int number, int differing, in HoleResult here, in HoleResult there, WorkCoordinates? coordinates)
    {
        if (line < 0)
            return;
        var say = file.SayAt(line, coordinates);
        var control = file.Run.Job.Readings.HolePositions == HolePositionReading.DistanceMode
            ? "a control that takes cycle positions as distances"
            : "a control that reads cycle positions by G90 and G91";
        var more = differing > 1 ? $", and {Say.Count(differing - 1, "more hole")} of this run elsewhere too" : "";
        file.ReportBlock(
            this, line, $"Hole {number}: at {say.Place(here.Hole.X, here.Hole.Y)} here; {control} drills at {say.Place(there.Hole.X, there.Hole.Y)}{more}.");
    }
}
