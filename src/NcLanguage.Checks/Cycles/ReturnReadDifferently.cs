using NcLanguage.Checks.Analysis;
using NcLanguage.Checks.Clearance;
using NcLanguage.Machine.Profiles;

namespace NcLanguage.Checks.Rules;

/// <summary>A traverse between two holes clears only because of when the control returns.</summary>
public sealed class ReturnReadDifferently : Rule
{
    public override RuleInfo Info { get; } = new()
    {
        Id = "NC3031",
        Name = "return-read-differently",
        Severity = Severity.Error,
        Title = "Controls that return at another time cross at another level",
        Finds = "A traverse between two holes that runs into something under one reading of G98 and G99 only (an error), or keeps the clearance under one only (a warning). Only where "
            + "no machine was chosen, or when portability is asked for.",
        AtTheMachine = "The program runs well on one control, and on another the tool crosses at the other level and strikes the clamp.",
        Example = CycleExample.Program("""
            G91 G99 G81 X0 Z-10 R-38 F120
            G98 X8
            G99 X40
            ~^^^^^^
            G90
            """),
        Instead = CycleExample.Program("""
            G91 G99 G81 X0 Z-10 R-38 F120
            G98 X8
            X40
            G90
            """),
        Setup = HopExample.Setup,
        Portable = true,
        NotFound = "Traverses whose place is not known, and levels that differ where both clear.",
        Source = "NISTIR 6556 §3.5.20 (the return belongs to the hole just drilled); that some controls lift before the move is common practice.",
    };

    public override bool ReadsFile => true;

    public override void CheckFile(in FileContext file)
    {
        if (file.Runs.OtherReturns is not { } other || !HopClearance.CanJudge(file.Run.Job))
            return;
        for (var part = 0; part < file.Run.Results.Length; part++)
        {
            var result = file.Run.Results[part];
            var (mine, theirs) = (result.Holes, other.Results[part].Holes);
            if (mine.Length != theirs.Length)
                continue;
            for (var i = 0; i < mine.Length; i++)
                if (mine[i].Hole.IsHop && theirs[i].Hole.IsHop)
                    Compare(file, file.Run.LineOf(part, mine[i].Line), result.CoordinatesAt(mine[i].Line), mine[i], theirs[i]);
        }
    }

    void Compare(in FileContext file, int line, WorkCoordinates coordinates, in HoleResult mine, in HoleResult theirs)
    {
        var job = file.Run.Job;
        var (mineDistance, theirDistance) = (HopClearance.DistanceOf(job, mine), HopClearance.DistanceOf(job, theirs));
        var (here, there) = (HopClearance.Of(job, mineDistance), HopClearance.Of(job, theirDistance));
        if (here == there || here == HopOutcome.Unknown || there == HopOutcome.Unknown)
            return;
        var say = file.SayAt(line, coordinates);
        var axis = CycleRuns.DepthAxis(mine.Plane);
        var isContact = here == HopOutcome.Contact || there == HopOutcome.Contact;
        var lifts = job.Readings.ReturnLevel == ReturnLevelReading.AfterHole ? "lifts before it moves" : "returns after the hole";
        file.ReportBlock(
            this, line,
            $"The traverse to {(axis == 'Z' ? say.Place(mine.Hole.X, mine.Hole.Y) : "this hole")} at {say.Level(mine.Hole.ArriveAt, axis)} {Outcome(job, here, mineDistance, mine, say)} here; "
            + $"a control that {lifts} crosses at {say.Level(theirs.Hole.ArriveAt, axis)} and {Outcome(job, there, theirDistance, theirs, say)}.",
            severity: isContact ? Severity.Error : Severity.Warning);
    }

    static string Outcome(Job job, HopOutcome outcome, double distance, in HoleResult hole, LengthText say)
    {
        var name = hole.Traverse.ObstacleIndex >= 0 ? job.Obstacles[hole.Traverse.ObstacleIndex].Name : "the clamps' top";
        return outcome switch
        {
            HopOutcome.Contact => $"runs into {(hole.Traverse.ObstacleIndex >= 0 ? name : "the clamps")}",
            HopOutcome.Close => $"passes {name} at only {say.Length(distance)}",
            _ => "clears",
        };
    }
}
